"""Activity on offer with a plan: only where it is safe, and what is said where it is not."""

from typing import Any

import pytest
from plan_people import CLEAR, MAN, ORDINARY, SEATED, START, WOMAN
from steelyard import answers
from steelyard.answers.plan import PhasesPlanned
from steelyard.science.member import Told
from steelyard.science.person import Person
from steelyard.science.person.screening import Clearance, Condition, EatingDisorder, Screening
from steelyard.science.phase import DeficitAim, DeficitKind, GainAim, History, HoldAim, PlanChoice, ReturnAim


def planned(aim: DeficitAim | GainAim | HoldAim, who: Person = MAN, **others: Any) -> answers.Answered[PhasesPlanned]:
    asked = {"told": Told(who, CLEAR), "start": START, "aim": aim, "then": ReturnAim(gain_weeks=2)}
    further = {"history": History(0), "include": frozenset({PlanChoice.LEVERS})}
    return answers.plan_phases(answers.PlanAsked(**{**asked, **further, **others}))


@pytest.mark.parametrize("who", ORDINARY)
def test_a_fat_loss_has_levers(who: Person) -> None:
    found = planned(DeficitAim(weeks=4), who).value
    assert [offered.dose.kind.value for offered in found.levers] == ["steps", "cycling"]
    for offered in found.levers:
        assert offered.instead is not None
        codes = [reason.code for reason in offered.reasons]
        assert codes[:2] == ["LEVER_BURNS", "LEVER_EAT_MORE"]
        assert codes[-1] == "LEVER_AVAILABILITY"


def test_other_phases_have_none() -> None:
    assert not planned(GainAim(weeks=8)).value.levers
    assert not planned(HoldAim(weeks=4), WOMAN).value.levers


def test_what_is_not_safe_is_left_out_and_said() -> None:
    for offered in planned(DeficitAim(kind=DeficitKind.CUT, weeks=16), SEATED).value.levers:
        assert offered.together is None
        assert offered.refusals
        assert "LEVER_LOSE_MORE" not in {reason.code for reason in offered.reasons}
        assert {"LEVER_TOO_MUCH", "LEVER_TOO_MUCH_EVEN_FED"} & {reason.code for reason in offered.reasons}


def test_without_a_known_past_both_together_are_no_way_around_the_default() -> None:
    """A deficit of 500 kcal is the most while past cuts are unknown: activity beside it would make it larger."""
    found = planned(DeficitAim(weeks=4, deficit_kcal=500.0), history=History()).value
    assert all(offered.together is None and offered.instead is not None for offered in found.levers)


def test_cleared_for_a_deficit_is_not_cleared_for_more_activity() -> None:
    screening = Screening(
        is_pregnant=False,
        is_breastfeeding=False,
        eating_disorder=EatingDisorder.NONE,
        conditions=(Condition.HEART_DISEASE,),
        clearance=Clearance(given_by="A physician", reason="Reviewed in spring"),
    )
    found = planned(DeficitAim(weeks=4), told=Told(MAN, screening))
    assert found.value.phases
    assert not found.value.levers
    assert "LEVER_ASK_FIRST" in {reason.code for reason in found.reasons}
