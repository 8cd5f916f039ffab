"""An intake for a target, of somebody who is known to keep to a part of deficits."""

import pytest
from msgspec.structs import replace
from plan_people import ALL_SOURCES, CLEAR, MAN
from season_people import having
from steelyard.science.body import BodyTarget, TargetQuantity
from steelyard.science.member import Member, Told
from steelyard.science.numbers import Estimate
from steelyard.science.person import Training, TrainingStatus
from steelyard.science.phase import IntakeAnswer, answer_date, answer_intake

DAYS = 42
KEPT = Estimate(0.6, 0.1)


MEMBER = Member(Told(MAN, CLEAR, Estimate(2700.0, 100.0)))


def asked_by(kept: Estimate | None, target: BodyTarget) -> IntakeAnswer:
    return answer_intake(having(MEMBER, body=MEMBER.body._replace(kept=kept)), target, DAYS, 2.0, ALL_SOURCES)


def test_a_target_is_reached_when_the_path_gets_there() -> None:
    target = BodyTarget(TargetQuantity.WEIGHT_KG, 78.0)
    plain, kept = asked_by(None, target), asked_by(KEPT, target)
    # What is told is the same, and gets there by the date where it is followed.
    told_kcal = kept.told.value[0].intake_kcal
    assert plain.told.value[0].intake_kcal == told_kcal
    assert plain.reached_day == DAYS
    assert plain.path.states[-1].weight_kg == pytest.approx(78.0, abs=0.05)
    # Six tenths of the deficit take as long as a deficit of six tenths.
    assert kept.path.states[-1].weight_kg > 78.5
    smaller = answer_date(MEMBER, target, 2700.0 - 0.6 * (2700.0 - told_kcal), 2.0, ALL_SOURCES)
    assert kept.is_feasible
    assert kept.reached_day == smaller.reached_day
    assert kept.reached_day is not None
    assert kept.reached_day > 1.5 * DAYS


def test_a_gain_is_followed_by_whoever_does_not_keep_to_deficits() -> None:
    target = BodyTarget(TargetQuantity.WEIGHT_KG, 80.8)
    assert asked_by(KEPT, target).reached_day == asked_by(None, target).reached_day == DAYS


@pytest.mark.parametrize("target", [0.13, 0.16])
def test_a_far_date_hides_no_target_of_body_fat(target: float) -> None:
    # A year of nothing leaves somebody active who does not lift the quarter of a kilogram of fat that the model keeps,
    # and so little lean tissue that it is a larger share of them than the target.
    training = Training(status=TrainingStatus.INTERMEDIATE)
    member = Member(Told(replace(MAN, training=training), CLEAR, Estimate(4200.0, 100.0)))
    found = answer_intake(member, BodyTarget(TargetQuantity.FAT_FRACTION, target), 371, 2.0, ALL_SOURCES)
    assert found.is_feasible
    end = found.path.states[-1]
    assert end.fat_kg / end.weight_kg == pytest.approx(target, abs=0.001)
