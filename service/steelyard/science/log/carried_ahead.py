"""What carried mass does from the day on that a log was read at, beyond what a body model expects of what is eaten."""

import math
from typing import NamedTuple

from ..numbers import Estimate
from ..register import ROBINSON_1965, SAGAYAMA_2014, constant
from . import kernel as k
from .events import WATER_DAYS
from .witness_errors import WATER_SD_KG
from .witnesses import LogFit, mixed

MORNINGS_APART_KG = constant(
    "carried_between_mornings", 0.5, unit="kg", sources=(SAGAYAMA_2014, ROBINSON_1965),
    summary="SD of what two mornings differ by on an unchanged diet, as what was eaten and drunk on the days before "
    "differs: weight by -0.2 +- 0.5 kg, body water by -0.1 +- 0.4 kg, three days apart in ten men on a balance good to "
    "10 g (Sagayama 2014); 0.50 to 0.54 kg from one day to the next in young women (Robinson & Watson 1965)",
)  # fmt: skip


class CarriedAhead(NamedTuple):
    """``response``: kilograms that move for each one that the body model expects, as the log tells it of this person;
    ``water``: without a cause, in the weight of the day read at, which fades [kg]."""

    response: Estimate
    water: Estimate

    def beyond_model(self, expected_kg: float, days: float) -> Estimate:
        """Change within ``days`` beyond the ``expected_kg`` of the body model [kg], the error of the response left out.

        The water there is fades as the reader has it fade, and as much comes anew without a cause as came before.
        """
        kept = math.exp(-days / WATER_DAYS)
        gone = 1.0 - kept
        variance = (gone * self.water.sd) ** 2 + WATER_SD_KG**2 * (1.0 - kept * kept)
        return Estimate((self.response.mean - 1.0) * expected_kg - gone * self.water.mean, math.sqrt(variance))

    def between_mornings(self, expected: Estimate, days: float) -> Estimate:
        """Change from this morning to one so many ``days`` on, a few at least [kg]. ``expected``: by the body model, of
        a diet that is the same each day, as nobody's is."""
        beyond = self.beyond_model(expected.mean, days)
        return Estimate(expected.mean + beyond.mean, math.hypot(expected.sd, beyond.sd, MORNINGS_APART_KG))


def carried_from_here(fit: LogFit) -> CarriedAhead:
    """As a log tells it on its last day, explanations mixed by their odds."""
    n = k.STATES

    def state(i: int) -> Estimate:
        return mixed([(one.probability, one.mean[i], one.spread[i * n + i]) for one in fit.told])

    return CarriedAhead(state(4), state(5))
