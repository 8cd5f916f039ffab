"""Steps of weight that tissue cannot explain: water after creatine, salt, travel or illness.

As the days come, a weighing that stands out opens the hypothesis that a step began there: a regressor run beside the
filter with the same gains (generalised likelihood ratio, Willsky & Jones 1976). Several days are weighed against each
other and against no step at all by Bayes' theorem; until that is settled, what is known of a day is the mixture of all
cases. In hindsight every day is weighed, whether it stood out or not: a step may hide in the noise.
"""

import math
from collections.abc import Sequence
from operator import attrgetter
from typing import Any, NamedTuple

from ..numbers import FLOATS, Elementwise, Number, compiled, inlined
from ..register import Basis, constant, source

WILLSKY_JONES_1976 = source(
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
    "water_jump_suspected", 2.5, unit="SD", basis=Basis.JUDGEMENT,
    summary="A weighing this far from its forecast opens the hypothesis of a step of water on that day",
)  # fmt: skip
JUMP_CHANCE = constant(
    "water_jump_chance", 0.025, unit="1/d", basis=Basis.JUDGEMENT,
    summary="Chance that a lasting step of water begins on a given day (salt, travel, illness, creatine): even odds "
    "of one within four weeks, so that a month with a step and one without are read with the same care. How often "
    "they happen is not known; one in fifteen weeks, read so, is read no worse",
)  # fmt: skip
JUMP_GRANTED = constant(
    "water_jump_granted", 0.99, unit="1", basis=Basis.JUDGEMENT,
    summary="Probability from which a step of water counts as a fact",
)  # fmt: skip
JUMP_DAYS_WATCHED = int(
    constant(
        "water_jump_hypotheses", 3, unit="days", basis=Basis.JUDGEMENT,
        summary="How many days are held at once as the possible first day of a step",
    )
)  # fmt: skip
JUMP_DAYS_AROUND = int(
    constant(
        "water_jump_days_around", 3, unit="d", basis=Basis.JUDGEMENT,
        summary="So many days to each side of the likeliest first day of a step count as the same step",
    )
)  # fmt: skip
JUMP_DROPPED = constant(
    "water_jump_dropped", 1.0, unit="1", basis=Basis.JUDGEMENT,
    summary="Likelihood ratio of a step to none under which a day is no longer held",
)  # fmt: skip
JUMP_DAYS_OPEN = constant(
    "water_jump_open", 21.0, unit="d", basis=Basis.JUDGEMENT,
    summary="After so many days a step less likely than not is no longer held",
)  # fmt: skip
_ODDS = JUMP_CHANCE / (1.0 - JUMP_CHANCE)
_INFORMATION = 1.0 / JUMP_SD_KG**2
_OPENS = JUMP_OPENS_SD**2
_GRANTED = JUMP_GRANTED / (1.0 - JUMP_GRANTED)
_LEAST_EVIDENCE = math.log(JUMP_DROPPED)
_EVEN_EVIDENCE = -math.log(_ODDS)
_UNLIKELY = 0.05  # odds of a step under which nothing is made of it
_odds_of = attrgetter("odds")
_MOST_EVIDENCE = 50.0  # keeps the exponential finite; such a step was granted long before


class Correction(NamedTuple):
    """What the mixture of all cases adds to the filter's states: means, then second moments about them."""

    tissue: Number
    maintenance: Number
    tissue_variance: Number
    covariance: Number
    maintenance_variance: Number
    probability: Number  # that there was a step at all
    day: Number  # the likeliest first day
    nearby: Number = 0.0  # in hindsight: probability of a step within a few days of that one


@compiled
def in_hindsight(
    shocks: Sequence[tuple[Number, Number, Number, Number, Number]],
    last: Sequence[Number],
    *,
    ops: Elementwise = FLOATS,
) -> Correction:
    """What one more step of water, on whichever day but the first, adds to the states of the last day.

    Every first day is weighed against every other and against no step by Bayes' theorem, size and amplitude integrated
    out, which is exact with the filter's own weights. Args: ``shocks`` by day from the smoother; ``last``: the filter's
    last ``Step``.
    """
    _, _, _, _, _, _, _, _, _, _, _, t_amp, m_amp, _, own_score, own_information = last
    per_information = 1.0 / own_information
    scalar, log = ops is FLOATS, ops.log
    total: Number = 0.0
    mean_t: Number = 0.0
    mean_m: Number = 0.0
    tt: Number = 0.0
    tm: Number = 0.0
    mm: Number = 0.0
    best: Number = 0.0
    likeliest: Number = 0.0
    chances: list[Number] = []
    for day, (score, information, cross, tissue, maintenance) in enumerate(shocks):
        if day == 0:
            continue
        share = cross * per_information
        precision = information - cross * share + _INFORMATION
        size = (score - own_score * share) / precision
        evidence = 0.5 * (precision * size * size - log(precision / _INFORMATION))
        if scalar:
            odds = _ODDS * math.exp(evidence if evidence < _MOST_EVIDENCE else _MOST_EVIDENCE)
            if odds > best:
                best, likeliest = odds, day
        else:
            odds = _ODDS * ops.exp(ops.minimum(evidence, _MOST_EVIDENCE))
            likeliest = ops.where(odds > best, day, likeliest)
            best = ops.maximum(best, odds)
        level = tissue + share * t_amp
        spent = maintenance + share * m_amp
        total = total + odds
        chances.append(odds)
        moved = odds * size
        mean_t = mean_t + moved * level
        mean_m = mean_m + moved * spent
        spread = odds / precision + moved * size
        tt = tt + spread * level * level
        tm = tm + spread * level * spent
        mm = mm + spread * spent * spent
    scale = 1.0 / (1.0 + total)
    mixed = _mixed(scale, total, (mean_t, mean_m), (tt, tm, mm), likeliest)
    return mixed._replace(nearby=_nearby(chances, likeliest, ops) * scale)


def _mixed(
    scale: Number,
    total: Number,
    first: tuple[Number, Number],
    second: tuple[Number, Number, Number],
    day: Number,
) -> Correction:
    """The mixture from sums over its cases weighted by their odds: ``first`` and ``second`` moments about no step."""
    mean_t, mean_m = first[0] * scale, first[1] * scale
    tt, tm, mm = second
    return Correction(
        mean_t,
        mean_m,
        tt * scale - mean_t * mean_t,
        tm * scale - mean_t * mean_m,
        mm * scale - mean_m * mean_m,
        total * scale,
        day,
    )


def _nearby(chances: list[Number], likeliest: Number, ops: Elementwise) -> Number:
    """Sum of the odds of first days (the list begins with day 1) around the likeliest."""
    if ops is FLOATS:
        first = int(likeliest) - 1
        return sum(chances[max(0, first - JUMP_DAYS_AROUND) : first + JUMP_DAYS_AROUND + 1])
    near: Number = 0.0
    for at, odds in enumerate(chances, start=1):
        near = near + ops.where(abs(likeliest - at) <= JUMP_DAYS_AROUND, odds, 0.0)
    return near


class Fold(NamedTuple):
    """What granting a step does to a filter: its day, and what to add to states, loads and sums."""

    day: Number
    who: Any
    tissue: Number
    maintenance: Number
    tissue_variance: Number
    covariance: Number
    maintenance_variance: Number
    per_amplitude_tissue: Number
    per_amplitude_maintenance: Number
    score: Number
    information: Number


@inlined
class _Hypothesis:
    """A step from ``day`` on. ``tissue`` and ``maintenance``: how the filter's states answer to a unit step that it
    does not know of; ``score``, ``information`` and ``cross`` its least-squares sums, the latter with the amplitude
    of carried mass; ``odds`` against no step (0 where it is not held). With the amplitude integrated out: ``size`` and
    ``precision`` of the step, and the ``share`` of the amplitude's regressor in its own."""

    __slots__ = (
        "cross", "day", "information", "is_held", "load", "maintenance", "odds", "precision", "score", "share", "size",
        "tissue",
    )  # fmt: skip

    def __init__(self, day: Number, is_held: Any) -> None:
        self.day = day
        self.is_held = is_held
        self.tissue: Number = 0.0
        self.maintenance: Number = 0.0
        self.score: Number = 0.0
        self.information: Number = _INFORMATION
        self.cross: Number = 0.0
        self.load: Number = 1.0
        self.odds: Number = 0.0
        self.share: Number = 0.0
        self.precision: Number = _INFORMATION
        self.size: Number = 0.0


@inlined
class JumpWatch:
    """The hypotheses held (elementwise over people)."""

    def __init__(self, ops: Elementwise) -> None:
        self._ops = ops
        self._scalar = ops is FLOATS
        self._held: list[_Hypothesis] = []
        self._total: Number = 0.0

    @property
    def is_watching(self) -> bool:
        """Whether any day is held, for anyone."""
        return bool(self._held)

    def unexplained(
        self, link: Number, t_load: Number, m_load: Number, surprise: Number, amplitude_load: Number, spread: Number,
        squared: Number,
    ) -> Number:  # fmt: skip
        """The squared standardised surprise of a weighing under the case that explains it best.

        ``surprise`` with variance ``spread`` and ``squared`` are those of no step; ``amplitude_load`` is what a unit of
        the amplitude of carried mass adds to this innovation.
        """
        least = squared
        ops, scalar = self._ops, self._scalar
        fresh = 1.0 - link
        for held in self._held:
            held.load = load = fresh - t_load * held.tissue - m_load * held.maintenance
            own = load - held.share * amplitude_load
            left = surprise - held.size * own
            ratio = left * left / (spread + own * own / held.precision)
            if scalar:
                if ratio < least:
                    least = ratio
            else:
                least = ops.where(held.is_held, ops.minimum(least, ratio), least)
        return least

    def observe(
        self, day: int, seen: Number, unexplained: Number, innovation: Number, precision: Number, t_gain: Number,
        m_gain: Number, amplitude_load: Number, score: Number, information: Number,
    ) -> Any:  # fmt: skip
        """Take in a weighing; return who (True, or a mask) now has a step as a fact.

        A weighing that no case explains well opens its own day. ``score`` and ``information`` are the amplitude's,
        this weighing included.
        """
        ops, scalar = self._ops, self._scalar
        if scalar:
            if unexplained > _OPENS:
                self._held.append(_Hypothesis(day, True))
        else:
            opens: Any = (unexplained > _OPENS) & (seen > 0.0)
            if opens.any():
                self._held.append(_Hypothesis(day, opens))
        total: Number = 0.0
        is_over = len(self._held) > JUMP_DAYS_WATCHED
        for held in self._held:
            load = held.load
            held.tissue = held.tissue + t_gain * load
            held.maintenance = held.maintenance + m_gain * load
            weight = load * precision
            held.score = held.score + weight * innovation
            held.information = held.information + weight * load
            held.cross = cross = held.cross + weight * amplitude_load
            held.share = share = cross / information
            held.precision = own = held.information - cross * share
            left = held.score - score * share
            held.size = size = left / own
            # Odds of the step by Bayes' theorem, its size and the amplitude integrated over their priors.
            evidence = 0.5 * (left * size - ops.log(own / _INFORMATION))
            least = _LEAST_EVIDENCE if day - held.day < JUMP_DAYS_OPEN else _EVEN_EVIDENCE
            if scalar:
                if evidence > least:
                    held.odds = odds = _ODDS * math.exp(evidence if evidence < _MOST_EVIDENCE else _MOST_EVIDENCE)
                    total += odds
                else:
                    held.odds = 0.0
                    is_over = True
            else:
                held.is_held = held.is_held & ((evidence > least) | (seen == 0.0))
                odds = _ODDS * ops.exp(ops.minimum(evidence, _MOST_EVIDENCE))
                held.odds = ops.where(held.is_held, odds, 0.0)
                total = total + held.odds
        if is_over or not scalar:
            self._tidy()
        self._total = total
        return total > _GRANTED

    def _tidy(self) -> None:
        """Keep the likeliest days, and none that is no longer likely."""
        if self._scalar:
            held = [h for h in self._held if h.odds > 0.0]
            if len(held) > JUMP_DAYS_WATCHED:
                held.remove(min(held, key=_odds_of))
            self._held = held
            return
        # Each person keeps their own few; a day stays in the list while anyone holds it.
        if len(self._held) > JUMP_DAYS_WATCHED:
            kept = sum(h.is_held * 1 for h in self._held)
            if (kept > JUMP_DAYS_WATCHED).any():
                where, least = self._ops.where, math.inf
                for h in self._held:
                    least = self._ops.minimum(where(h.is_held, h.odds, math.inf), least)
                for h in self._held:
                    h.is_held = h.is_held & ~((kept > JUMP_DAYS_WATCHED) & (h.odds == least))
                    h.odds = where(h.is_held, h.odds, 0.0)
        self._held = [h for h in self._held if h.is_held.any()]

    def correction(self, t_amp: Number, m_amp: Number) -> Correction | None:
        """What the cases together add to states that know of no step, or None where that is next to nothing.

        ``t_amp`` and ``m_amp``: how the states answer to a unit of the amplitude.
        """
        likely: Any = self._total > _UNLIKELY
        if not (likely if self._scalar else likely.any()):
            return None
        total: Number = 0.0
        mean_t: Number = 0.0
        mean_m: Number = 0.0
        tt: Number = 0.0
        tm: Number = 0.0
        mm: Number = 0.0
        day, best = self._held[0].day, self._held[0].odds
        for held in self._held:
            size, odds = held.size, held.odds
            level = 1.0 - held.tissue + held.share * t_amp
            maintenance = held.share * m_amp - held.maintenance
            spread = odds * (1.0 / held.precision + size * size)
            total = total + odds
            mean_t = mean_t + odds * size * level
            mean_m = mean_m + odds * size * maintenance
            tt = tt + spread * level * level
            tm = tm + spread * level * maintenance
            mm = mm + spread * maintenance * maintenance
            day = self._ops.where(odds > best, held.day, day)
            best = self._ops.maximum(best, odds)
        scale = self._ops.where(total > _UNLIKELY, 1.0 / (1.0 + total), 0.0)
        return _mixed(scale, total, (mean_t, mean_m), (tt, tm, mm), day)

    def fold(self, who: Any) -> list[Fold]:
        """End the watch for ``who``: the likeliest day becomes part of the filter."""
        best: Number = 0.0
        for held in self._held:
            best = self._ops.maximum(best, held.odds)
        folds = []
        for held in self._held:
            here: Any = held.odds == best if self._scalar else who & (held.odds == best) & (best > 0.0)
            if not (here if self._scalar else here.any()):
                continue
            size = held.score / held.information
            share = held.cross / held.information
            level, maintenance = 1.0 - held.tissue, -held.maintenance
            chosen = 1.0 if self._scalar else here * 1.0
            spread = chosen / held.information
            folds.append(
                Fold(
                    held.day,
                    here,
                    chosen * size * level,
                    chosen * size * maintenance,
                    spread * level * level,
                    spread * level * maintenance,
                    spread * maintenance * maintenance,
                    chosen * share * level,
                    chosen * share * maintenance,
                    -chosen * held.cross * size,
                    -chosen * held.cross * share,
                )
            )
            if self._scalar:
                break
        if self._scalar:
            self._held = []
            self._total = 0.0
        else:
            self._total = self._ops.where(who, 0.0, self._total)
            for held in self._held:
                held.is_held = held.is_held & ~who
                held.odds = self._ops.where(who, 0.0, held.odds)
            self._held = [held for held in self._held if held.is_held.any()]
        return folds

    def next_day(self, g: Number, keep: Number) -> None:
        """Carry the answers of the states to the next morning."""
        for held in self._held:
            held.tissue = held.tissue - g * held.maintenance
            held.maintenance = keep * held.maintenance
