"""Physical activity levels (PAL): total over resting energy, by how somebody lives, and what can be kept up."""

from itertools import pairwise

from ..numbers import Estimate
from ..person import ActivityLevel
from ..register import FAO_2004, THURBER_2019, WESTERTERP_2013, Basis, Message, constant, say


def _edge(name: str, value: float, what: str, basis: Basis = Basis.PUBLISHED) -> float:
    return constant(f"pal_{name}", value, unit="1", summary=what, basis=basis, sources=(FAO_2004,))


_PAL_EDGES = (
    _edge("sedentary_from", 1.40, "Lower end of a sedentary or light-activity lifestyle"),
    _edge("light_from", 1.55, "Middle of the sedentary-or-light band, where light begins", Basis.JUDGEMENT),
    _edge("moderate_from", 1.70, "Lower end of an active or moderately active lifestyle"),
    _edge("active_from", 1.85, "Middle of the moderately active band, where active begins", Basis.JUDGEMENT),
    _edge("very_active_from", 2.00, "Lower end of a vigorously active lifestyle"),
    _edge("sustainable_to", 2.40, "Upper end of a vigorous lifestyle: above it hard to sustain"),
)
PAL_SUSTAINABLE = _PAL_EDGES[-1]
PAL_WITHOUT_EXERCISE = constant(
    "pal_without_exercise",
    1.70,
    unit="1",
    summary="Upper end of a lifestyle without much training: what a level has above it counts as exercise",
    basis=Basis.JUDGEMENT,
    sources=(FAO_2004,),
)
PAL_SUPPLY_LIMIT = constant(
    "pal_supply_limit",
    2.5,
    unit="1",
    summary="Total over resting energy that nobody keeps up: the limit of what can be digested and absorbed for months",
    sources=(THURBER_2019,),
)
PAL_PLAUSIBLE_FROM = constant(
    "pal_plausible_from",
    1.2,
    unit="1",
    summary="Least level of a life that can be kept up (1.1-1.2): below it a person is bedridden or a figure is wrong",
    sources=(WESTERTERP_2013,),
)
SITTING_PAL_SD = 0.07
SITTING_PAL = constant(
    "pal_sitting",
    1.35,
    unit="1",
    summary=(
        "A day of sitting and standing without walking or training, thermic effect included: the lower end of "
        "the sedentary band (1.40) less the few thousand steps that such a day still holds"
    ),
    basis=Basis.JUDGEMENT,
    sources=(FAO_2004,),
    standard_deviation=SITTING_PAL_SD,
)

PAL_BANDS: dict[ActivityLevel, tuple[float, float]] = dict(
    zip(
        (
            ActivityLevel.SEDENTARY,
            ActivityLevel.LIGHT,
            ActivityLevel.MODERATE,
            ActivityLevel.ACTIVE,
            ActivityLevel.VERY_ACTIVE,
        ),
        pairwise(_PAL_EDGES),
        strict=True,
    )
)
PAL = {level: Estimate((low + high) / 2.0, (high - low) / 2.0) for level, (low, high) in PAL_BANDS.items()}

_PAL_HIGH = "PAL_ABOVE_SUSTAINABLE"


def pal_notes(pal: float) -> tuple[Message, ...]:
    """What to say of a PAL: nothing, or that it is hardly sustainable. None is told under that of a day of sitting."""
    return (say(_PAL_HIGH, pal=pal, limit=PAL_SUSTAINABLE),) if pal > PAL_SUSTAINABLE else ()
