"""A decision through the SDK against a live service, and its suggestion sent back for a plan."""

from sdk_caller import SCREENING, Caller
from steelyard_client import Decision, Plan

PROFILE = {
    "sex": "male",
    "age_years": 29,
    "height_cm": 181,
    "weight_kg": 82.0,
    "body_fat": {"fat_fraction": 0.18, "method": "dxa"},
    "activity": {"kind": "level", "level": "light"},
    "training": {"status": "intermediate", "resistance_sessions_per_week": 4},
}


async def test_a_decision_and_the_plan_it_suggests(caller: Caller) -> None:
    answer = await caller(
        "decide_phase", profile=PROFILE, screening=SCREENING, as_of_date="2026-03-30", phase_history=[]
    )
    assert isinstance(answer, Decision)
    assert (answer.situation, answer.recommended.kind) == ("cut_due", "mini_cut")
    assert repr(answer) == f"<Decision cut_due: mini_cut {answer.recommended.weeks} wk>"
    suggested = answer.recommended.plan.to_dict()
    plan = await caller("plan_phases", profile=PROFILE, screening=SCREENING, **suggested)
    assert isinstance(plan, Plan)
    assert plan.feasible
    assert [phase.kind for phase in plan.phases][:2] == ["mini_cut", "maintenance"]
    assert len(plan.phases[0].weeks) == answer.recommended.weeks
