"""The weight that a person states may be that of a log's first morning or of its last: both are the same body."""

from msgspec.structs import replace
from steelyard.science.log.entries import IntakeDay, Log, Weighing
from steelyard.science.log.reader import Reading, maintenance_of, read_log
from steelyard.science.measures.assessment import assess
from steelyard.science.person.person import (
    ActivityLevel,
    BodyFatMethod,
    BodyFatReading,
    Person,
    Sex,
    Training,
    TrainingStatus,
)

FIRST, DAYS = 738_000, 180
PERSON = Person(
    sex=Sex.MALE,
    age_years=35.0,
    height_cm=182.0,
    weight_kg=100.0,
    activity=ActivityLevel.LIGHT,
    training=Training(status=TrainingStatus.INTERMEDIATE, resistance_sessions_per_week=3),
    body_fat=BodyFatReading(fat_fraction=0.26, method=BodyFatMethod.DXA),
)
# A cut of half a year that took 12 kg.
LOG = Log(
    [Weighing(FIRST + day, 100.0 - 12.0 * day / (DAYS - 1)) for day in range(DAYS)],
    [IntakeDay(FIRST + day, 2200.0) for day in range(DAYS)],
)


def read_at(weight_kg: float) -> tuple[Reading, float]:
    person = replace(PERSON, weight_kg=weight_kg)
    assessed = assess(person)
    reading = read_log(person, assessed, LOG, FIRST + DAYS - 1)
    return reading, maintenance_of(reading, assessed).physical.mean


def test_the_body_of_the_first_morning_is_the_same_whichever_weight_is_stated() -> None:
    """The equations tell the lighter body some 200 kcal/d less; it was taken for what the heavier one spent."""
    (first, told_first), (last, told_last) = read_at(100.0), read_at(88.0)
    apart = assess(PERSON).total.mean - assess(replace(PERSON, weight_kg=88.0)).total.mean
    assert apart > 150.0
    # The body model's slope is no equation's: a third of what they are apart is left at most.
    assert abs(first.prior.mean - last.prior.mean) < apart / 3.0
    assert abs(told_first - told_last) < apart / 3.0
    assert first.prior.mean == assess(PERSON).total.mean


def test_a_weight_that_is_none_of_the_log_leaves_a_body_that_spends() -> None:
    person = replace(PERSON, weight_kg=300.0, body_fat=None)
    assert read_log(person, assess(person), LOG, FIRST + DAYS - 1).prior.mean > 800.0
