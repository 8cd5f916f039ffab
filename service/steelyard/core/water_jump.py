"""Watching for a step of weight that tissue cannot explain: water after creatine, salt, travel or illness.

When a weighing stands out, a step starting there is kept as a hypothesis: a regressor run beside the filter with
the same gains (generalised likelihood ratio, Willsky & Jones 1976). The probability of the
step grows or falls with the weighings after it; until it is settled, answers are the mixture of both cases.
"""

import math
from typing import Any, NamedTuple

from .elementwise import FLOATS, Elementwise, Number
from .evidence import Basis, constant, source

source(
    "willsky_jones_1976",
    "Willsky AS, Jones HL. A generalized likelihood ratio approach to the detection and estimation of jumps in "
    "linear systems. IEEE Trans Autom Control 1976;21:108-12",
    "10.1109/TAC.1976.1101146",
)
JUMP_SD_KG = constant(
    "water_jump", 1.5, unit="kg", basis=Basis.JUDGEMENT,
    summary="Spread of sudden steps of water (creatine loading alone is 0.5-1.5 kg)",
)  # fmt: skip
JUMP_OPENS_SD = constant(
    "water_jump_suspected", 2.0, unit="SD", basis=Basis.JUDGEMENT,
    summary="A weighing this far from its forecast starts the watch for a step of water",
)  # fmt: skip
JUMP_CHANCE = constant(
    "water_jump_chance", 0.03, unit="1/d", basis=Basis.JUDGEMENT,
    summary="Chance that a lasting step of water begins on a given day: about one a month (salt, travel, "
    "illness, cycle)",
)  # fmt: skip
JUMP_GRANTED = constant(
    "water_jump_granted", 0.99, unit="1", basis=Basis.JUDGEMENT,
    summary="Probability from which a step of water counts as a fact",
)  # fmt: skip
_LOG_ODDS = math.log(JUMP_CHANCE / (1.0 - JUMP_CHANCE))
_INFORMATION = 1.0 / JUMP_SD_KG**2


class Step(NamedTuple):
    """A hypothetical step of weight on a day: its answer in the states, its fit and its probability."""

    tissue: Number
    maintenance: Number
    score: Number
    information: Number
    probability: Number

    def correction(self) -> tuple[Number, Number, Number, Number, Number]:
        """What the step, with its probability, adds to the filter's states (mixture of with and without it).

        Means of tissue and maintenance, then the variance of tissue, their covariance, that of maintenance.
        """
        chance = self.probability
        size = self.score / self.information
        spread = chance / self.information + chance * (1.0 - chance) * size * size
        level, maintenance = 1.0 - self.tissue, -self.maintenance
        return (
            chance * size * level,
            chance * size * maintenance,
            spread * level * level,
            spread * level * maintenance,
            spread * maintenance * maintenance,
        )


class JumpWatch:
    """One hypothesis at a time of a step of weight (elementwise over people).

    ``tissue`` and ``maintenance`` say how the filter's states answer to a unit step that it does not know of.
    """

    def __init__(self, ops: Elementwise) -> None:
        self._ops = ops
        self._scalar = ops is FLOATS
        self.is_open: Any = False
        self.day: Number = -1
        self.tissue: Number = 0.0
        self.maintenance: Number = 0.0
        self.score: Number = 0.0
        self.information: Number = _INFORMATION
        self.probability: Number = 0.0
        self.clear: Number = 0.0

    def load(self, link: Number, tissue_load: Number, maintenance_load: Number) -> Number:
        """What a unit step adds to the innovation of this weighing; 0 where nothing is watched."""
        load = 1.0 - link - tissue_load * self.tissue - maintenance_load * self.maintenance
        return load if self._scalar else self._ops.where(self.is_open, load, 0.0)

    def observe(
        self,
        day: int,
        seen: Number,
        load: Number,
        surprise: Number,
        unexplained: Number,
        precision: Number,
        tissue_gain: Number,
        maintenance_gain: Number,
    ) -> Any:
        """Take in a weighing and return who (True, or a mask) now has the step granted.

        ``unexplained`` is the squared standardised surprise, with the step or without, whichever explains the
        weighing better: a weighing that stands out more than the step does starts a new hypothesis.
        """
        ops = self._ops
        opens = unexplained > JUMP_OPENS_SD**2
        if self._scalar:
            opens = opens and unexplained > self.clear
            if opens:
                self.tissue = self.maintenance = self.score = 0.0
                self.information, self.is_open, self.day, load = _INFORMATION, True, day, 1.0
        else:
            opens = opens & (unexplained > self.clear) & (seen > 0.0)
            self.tissue = ops.where(opens, 0.0, self.tissue)
            self.maintenance = ops.where(opens, 0.0, self.maintenance)
            self.score = ops.where(opens, 0.0, self.score)
            self.information = ops.where(opens, _INFORMATION, self.information)
            self.day = ops.where(opens, day, self.day)
            self.is_open = self.is_open | opens
            load = ops.where(opens, 1.0, load)
        self.tissue = self.tissue + tissue_gain * load
        self.maintenance = self.maintenance + maintenance_gain * load
        weight = load * precision
        self.score = score = self.score + weight * surprise
        self.information = information = self.information + weight * load
        clear = score * score / information
        # Odds of the step by Bayes' theorem, its size integrated over its prior.
        evidence = 0.5 * (clear - ops.log(information / _INFORMATION))
        # The watch ends when a step there is no more likely than on any other day.
        if self._scalar:
            if evidence <= 0.0:
                self.close(True)
                return False
            self.clear = clear
        else:
            self.is_open = self.is_open & (evidence > 0.0)
            self.clear = ops.where(self.is_open, clear, 0.0)
        odds = ops.exp(ops.minimum(evidence, 50.0) + _LOG_ODDS)
        probability = odds / (1.0 + odds)
        if self._scalar:
            self.probability = probability
            return probability > JUMP_GRANTED
        self.probability = ops.where(self.is_open, probability, 0.0)
        return self.probability > JUMP_GRANTED

    def step(self, who: Any = None) -> Step:
        """The hypothesis as it stands; with ``who``, taken as certain for them and absent for the others."""
        chance = self.probability if who is None else self._ops.where(who, 1.0, 0.0)
        return Step(self.tissue, self.maintenance, self.score, self.information, chance)

    def close(self, who: Any) -> None:
        """End the watch for ``who``."""
        if self._scalar:
            self.is_open, self.probability, self.clear = False, 0.0, 0.0
        else:
            self.is_open = self.is_open & (who == False)  # noqa: E712 - elementwise
            self.probability = self._ops.where(who, 0.0, self.probability)
            self.clear = self._ops.where(who, 0.0, self.clear)

    def next_day(self, g: Number, keep: Number) -> None:
        """Carry the answer of the states to the next morning."""
        self.tissue = self.tissue - g * self.maintenance
        self.maintenance = keep * self.maintenance
