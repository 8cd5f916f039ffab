"""What is known of a member's body fat: how well at best, and when two methods do not say the same."""

import math

import pytest
from msgspec.structs import replace
from plan_people import MAN
from steelyard.science.log import Log, Measured, Weighing
from steelyard.science.measures import method_error
from steelyard.science.member import StartingBody, Told
from steelyard.science.member.known import body_at, settled
from steelyard.science.numbers import Estimate
from steelyard.science.person import BodyFatMethod, BodyFatReading, Person

FIRST = 738_000
UNREAD = replace(MAN, body_fat=None)


def notes(*readings: tuple[int, float, BodyFatMethod], who: Person = UNREAD) -> list[dict[str, object]]:
    """What is said of readings on days of a log of ten weeks."""
    weights = [Weighing(FIRST + day, 80.0) for day in range(0, 70, 3)]
    measured = [
        Measured(
            FIRST + day, BodyFatReading(fat_fraction=fraction, method=method), f"log.measurements[{i}].measurement"
        )
        for i, (day, fraction, method) in enumerate(readings)
    ]
    told = settled(Told(who, log=Log(weights, readings=measured)))
    return [dict(note.params) for note in told.notes if note.code == "BODY_FAT_METHODS_DISAGREE"]


# 2.5 points of body fat (van der Ploeg 2003) and 4.2 (Johnson 1996) make 4.9 between the two; at 1.28 SDs one pair in
# five of the same body is further apart (two-sided normal distribution), and is asked about: 6.26 points.
APART = 1.28 * math.hypot(2.5, 4.2) / 100


def test_two_methods_disagree_further_apart_than_their_errors_make_them() -> None:
    near = notes((50, 0.20, BodyFatMethod.DXA), (60, 0.20 + APART - 0.001, BodyFatMethod.GIRTHS))
    assert near == []
    (told,) = notes((50, 0.20, BodyFatMethod.DXA), (60, 0.20 + APART + 0.001, BodyFatMethod.GIRTHS))
    assert (told["first"], told["second"]) == ("dxa", "girths")
    assert told["first_percent"] == pytest.approx(20.0)
    assert told["second_percent"] == pytest.approx(100 * (0.20 + APART + 0.001))


def test_one_method_or_readings_of_other_months_do_not_disagree() -> None:
    assert notes((50, 0.20, BodyFatMethod.DXA), (60, 0.30, BodyFatMethod.DXA)) == []
    assert notes((0, 0.20, BodyFatMethod.DXA), (66, 0.30, BodyFatMethod.GIRTHS)) == []


def test_the_reading_of_the_profile_is_of_the_last_day() -> None:
    (told,) = notes((60, 0.30, BodyFatMethod.GIRTHS), who=MAN)
    assert {told["first"], told["second"]} == {"dxa", "girths"}
    assert told["second_percent"] == pytest.approx(15.0)


@pytest.mark.parametrize("told_sd", [0.0, 0.001, 0.02])
def test_no_body_fat_is_known_better_than_the_best_method_knows_it(told_sd: float) -> None:
    body = StartingBody(Estimate(80.0, 0.3), Estimate(16.0, 80.0 * told_sd), BodyFatMethod.DXA, is_measured=True)
    best = method_error(BodyFatMethod.FOUR_COMPARTMENT, MAN.training.status).sd
    assert body_at(MAN, body)[1].sd == pytest.approx(max(best, told_sd))
