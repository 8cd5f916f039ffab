"""Five published studies as data: who took part, what they ate, and what was measured.

Figures are the studies' own, with one standard deviation or the standard error where the paper gives it. ``(recalled)``
in ``intake_from`` or ``assumed`` marks what was not seen in the abstract. Nothing here was chosen by looking at a
forecast: where a paper leaves a figure of the simulation open, one rule fills it for every study.

- Resting energy: measured where reported, else Mifflin MD et al. Am J Clin Nutr 1990;51:241-7.
- Maintenance, where not reported: resting energy times the middle of the service's activity band - sedentary for
  sedentary participants, moderate for people who lift, active for track athletes (FAO/WHO/UNU 2004).
- Carbohydrate, where not reported: half of intake, before and during.
- Experience: ``intermediate`` for resistance-trained people, ``advanced`` for competing athletes.
"""

from typing import NamedTuple

from steelyard.science.measures.total_energy import PAL_BANDS
from steelyard.science.person.person import ActivityLevel, BodyFatMethod, TrainingStatus


class Measured(NamedTuple):
    """A measured mean change [kg], its standard error and the SD of change between participants, where known."""

    change_kg: float
    standard_error_kg: float | None = None
    sd_kg: float | None = None


class Eaten(NamedTuple):
    """A diet held for ``days``: intake and carbohydrate [kcal/d]."""

    days: float
    intake_kcal: float
    carbohydrate_kcal: float


class Case(NamedTuple):
    """One arm of a study. Masses kg, energies kcal/d, protein g/kg/d."""

    id: str
    title: str
    source: str
    participants: int
    weight_kg: float
    fat_kg: float
    method: BodyFatMethod
    resting_kcal: float
    maintenance_kcal: float
    status: TrainingStatus
    sessions_per_week: float
    protein_g_per_kg: float
    eaten: tuple[Eaten, ...]
    body_mass: Measured
    fat_mass: Measured
    fat_free_mass: Measured
    intake_from: str
    assumed: str

    @property
    def days(self) -> float:
        """Length of the study [d]."""
        return sum(part.days for part in self.eaten)


def middle(level: ActivityLevel) -> float:
    """The middle of the service's band of physical activity level."""
    low, high = PAL_BANDS[level]
    return (low + high) / 2


_SEDENTARY, _LIFTING, _ATHLETE = (
    middle(level) for level in (ActivityLevel.SEDENTARY, ActivityLevel.MODERATE, ActivityLevel.ACTIVE)
)
_CARBOHYDRATE = 0.5


def _mifflin(weight_kg: float, height_cm: float, age: float, male_share: float = 1.0) -> float:
    return 10 * weight_kg + 6.25 * height_cm - 5 * age + 5 * male_share - 161 * (1 - male_share)


def _even(days: float, intake_kcal: float) -> Eaten:
    return Eaten(days, intake_kcal, _CARBOHYDRATE * intake_kcal)


_CAMPBELL = (
    "Campbell BI et al. J Funct Morphol Kinesiol 2020;5:19, doi 10.3390/jfmk5010019; comment on the group difference "
    "2020;5:85"
)


def _campbell(
    id: str,
    arm: str,
    participants: int,
    weight_kg: float,
    fat_kg: float,
    resting_kcal: float,
    changes: tuple[float, float, float],
) -> Case:
    maintenance = resting_kcal * _LIFTING
    return Case(
        id=id,
        title=f"Campbell 2020, {arm}",
        source=_CAMPBELL,
        participants=participants,
        weight_kg=weight_kg,
        fat_kg=fat_kg,
        method=BodyFatMethod.BIOIMPEDANCE,
        resting_kcal=resting_kcal,
        maintenance_kcal=maintenance,
        status=TrainingStatus.INTERMEDIATE,
        sessions_per_week=4,
        protein_g_per_kg=1.8,
        eaten=(_even(49, 0.75 * maintenance),),
        body_mass=Measured(changes[0]),
        fat_mass=Measured(changes[1]),
        fat_free_mass=Measured(changes[2]),
        intake_from="prescribed restriction of about 25 %, the weekly mean of both arms; intake was not seen reported",
        assumed="maintenance; carbohydrate; that restriction was kept; refeeds only through the weekly mean",
    )


_METTLER = "Mettler S, Mitchell N, Tipton KD. Med Sci Sports Exerc 2010;42:326-37, doi 10.1249/MSS.0b013e3181b2ef8e"


def _mettler(id: str, arm: str, protein: float, body_mass: Measured, fat: float, lean: Measured) -> Case:
    weight, height, age = 79.5, 180.0, 25.0
    resting = _mifflin(weight, height, age)
    maintenance = resting * _LIFTING
    return Case(
        id=id,
        title=f"Mettler 2010, {arm}",
        source=_METTLER,
        participants=10,
        weight_kg=weight,
        fat_kg=0.17 * weight,
        method=BodyFatMethod.DXA,
        resting_kcal=resting,
        maintenance_kcal=maintenance,
        status=TrainingStatus.INTERMEDIATE,
        sessions_per_week=4,
        protein_g_per_kg=protein,
        eaten=(_even(14, 0.60 * maintenance),),
        body_mass=body_mass,
        fat_mass=Measured(fat),
        fat_free_mass=lean,
        intake_from="60 % of habitual intake, all food provided; 50 % of energy from carbohydrate in both arms",
        assumed="baseline body (recalled: 78-81 kg, 16-18 % fat, about 25 y); maintenance",
    )


def _of_ten(change_kg: float, standard_error_kg: float) -> Measured:
    return Measured(change_kg, standard_error_kg, standard_error_kg * 10**0.5)


_HUOVINEN_RESTING = _mifflin(77.5, 182.0, 25.0)
_HUOVINEN_MAINTENANCE = _HUOVINEN_RESTING * _ATHLETE
_CALERIE_BASELINE = 2470.0
_BOUCHARD_RESTING = _mifflin(60.3, 174.0, 21.0)
_BOUCHARD_MAINTENANCE = _BOUCHARD_RESTING * _SEDENTARY

CASES = (
    _campbell("V1-refeed", "refeed", 13, 76.4, 16.3, 1703.0, (-3.2, -2.8, -0.4)),
    _campbell("V1-continuous", "continuous", 14, 83.1, 16.7, 1867.0, (-3.6, -2.3, -1.3)),
    _mettler("V2-control", "15 % protein", 1.0, _of_ten(-3.0, 0.4), -1.4, _of_ten(-1.6, 0.3)),
    _mettler("V2-protein", "35 % protein", 2.3, _of_ten(-1.5, 0.3), -1.2, _of_ten(-0.3, 0.3)),
    Case(
        id="V3",
        title="Huovinen 2015, larger restriction",
        source="Huovinen HT et al. J Strength Cond Res 2015;29:29-36, doi 10.1519/JSC.0000000000000619",
        participants=8,
        weight_kg=77.5,
        fat_kg=0.105 * 77.5,
        method=BodyFatMethod.DXA,
        resting_kcal=_HUOVINEN_RESTING,
        maintenance_kcal=_HUOVINEN_MAINTENANCE,
        status=TrainingStatus.ADVANCED,
        sessions_per_week=4,
        protein_g_per_kg=2.4,
        eaten=(Eaten(28, _HUOVINEN_MAINTENANCE - 740.0, _CARBOHYDRATE * _HUOVINEN_MAINTENANCE - 4.0 * 130.0),),
        body_mass=Measured(-2.2, 1.0 / 8**0.5, 1.0),
        fat_mass=Measured(-1.7, 1.6 / 8**0.5, 1.6),
        # By difference; reported as no significant change, so that its sign is not judged.
        fat_free_mass=Measured(-0.5),
        intake_from="measured change of intake, -740 kcal/d, with -130 g/d of carbohydrate",
        assumed="baseline body (recalled: 75-80 kg, 10-11 % fat, 20-35 y); protein (high); maintenance",
    ),
    Case(
        id="V4",
        title="CALERIE-2, restricted",
        source="Das SK et al. Am J Clin Nutr 2017;105:913-27, doi 10.3945/ajcn.116.137232; Ravussin E et al. "
        "J Gerontol A 2015;70:1097-104",
        participants=143,
        weight_kg=72.0,
        fat_kg=23.5,
        method=BodyFatMethod.DXA,
        resting_kcal=_mifflin(72.0, 100 * (72.0 / 25.1) ** 0.5, 38.0, male_share=0.3),
        maintenance_kcal=_CALERIE_BASELINE,
        status=TrainingStatus.UNTRAINED,
        sessions_per_week=0,
        protein_g_per_kg=0.8,
        eaten=(
            _even(182.5, (1 - 0.195) * _CALERIE_BASELINE),
            _even(547.5, (1 - 0.09) * _CALERIE_BASELINE),
        ),
        body_mass=Measured(-7.6, 0.3, 0.3 * 143**0.5),
        fat_mass=Measured(-5.4, 0.3, 0.3 * 143**0.5),
        fat_free_mass=Measured(-2.0, 0.2, 0.2 * 143**0.5),
        intake_from="measured by labelled water and change of stores: -19.5 % in the first half year, -9 % after",
        assumed="baseline body and split of the restriction in time (recalled); protein at the base of the partition",
    ),
    Case(
        id="V5",
        title="Bouchard 1990, overfeeding",
        source="Bouchard C et al. N Engl J Med 1990;322:1477-82, doi 10.1056/NEJM199005243222101; SD of fat and "
        "fat-free mass from Bouchard C et al. Int J Obes 2014;38:236-42, doi 10.1038/ijo.2013.77",
        participants=24,
        weight_kg=60.3,
        fat_kg=6.9,
        method=BodyFatMethod.HYDROSTATIC,
        resting_kcal=_BOUCHARD_RESTING,
        maintenance_kcal=_BOUCHARD_MAINTENANCE,
        status=TrainingStatus.UNTRAINED,
        sessions_per_week=0,
        protein_g_per_kg=0.15 * (_BOUCHARD_MAINTENANCE + 840.0) / 4.0 / 60.3,
        eaten=(_even(100, _BOUCHARD_MAINTENANCE + 840.0),),
        body_mass=Measured(8.1, 2.4 / 24**0.5, 2.4),
        fat_mass=Measured(5.4, 1.9 / 24**0.5, 1.9),
        fat_free_mass=Measured(2.7, 1.5 / 24**0.5, 1.5),
        intake_from="supervised: 84,000 kcal over 100 days, here spread evenly as 840 kcal/d",
        assumed="maintenance; baseline fat (recalled: about 11 %)",
    ),
)

# Arms whose maintenance rests on an assumed activity level of people who lift.
SENSITIVITY = ("V1-refeed", "V1-continuous", "V2-control", "V2-protein")


def with_activity_level(case: Case, level: float) -> Case:
    """The same arm at another activity level, restricted by the same share."""
    maintenance = level * case.resting_kcal
    scale = maintenance / case.maintenance_kcal
    eaten = tuple(Eaten(e.days, scale * e.intake_kcal, scale * e.carbohydrate_kcal) for e in case.eaten)
    return case._replace(maintenance_kcal=maintenance, eaten=eaten)
