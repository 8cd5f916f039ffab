"""Eight weeks of an invented member: plan, log, review, change, end, and what comes next. No field is moved by hand.

Run it against a service with `STEELYARD_URL` and `STEELYARD_KEY` set. Each week only that week's log is sent, beside
the `state` of the answer before; the state is all that an app keeps.
"""

import random
from collections.abc import Iterator
from datetime import date, timedelta
from typing import Any

from steelyard_client import Steelyard
from steelyard_client.request_types import LogDict, ProfileDict, ScreeningDict

START = date(2026, 5, 4)
WEEKS = 8
PROFILE: ProfileDict = {
    "sex": "male",
    "age_years": 33,
    "height_cm": 180,
    "weight_kg": 86.0,
    "body_fat": {"fat_fraction": 0.2, "method": "dxa"},
    "activity": {"kind": "level", "level": "light"},
    "training": {"status": "intermediate", "resistance_sessions_per_week": 4},
}
SCREENING: ScreeningDict = {
    "is_pregnant": False,
    "is_breastfeeding": False,
    "eating_disorder": "none",
    "conditions": [],
    "medicines": [],
}


class Member:
    """Somebody who keeps to what they are told, and needs less than the equations say."""

    def __init__(self, maintenance_kcal: float = 2450.0, seed: int = 11) -> None:
        self.rng = random.Random(seed)  # noqa: S311 - an invented log, not a secret
        self.tissue_kg, self.water_kg, self.maintenance_kcal = 86.0, 0.0, maintenance_kcal

    def week(self, first: date, intake_kcal: float) -> LogDict:
        """A week of weights and intakes."""
        weights, intakes = [], []
        for day in range(7):
            on = first + timedelta(days=day)
            eaten = intake_kcal * (1.0 + self.rng.gauss(0.0, 0.04))
            weights.append(
                {"date": on, "weight_kg": round(self.tissue_kg + self.water_kg + self.rng.gauss(0.0, 0.35), 1)}
            )
            intakes.append({"date": on, "intake_kcal": round(eaten)})
            self.tissue_kg += (eaten / 0.9 - self.maintenance_kcal / 0.9) / 7800.0
            self.water_kg += 0.3 * (0.0015 * (eaten - self.maintenance_kcal) - self.water_kg)
        return {"weights": weights, "intakes": intakes}  # type: ignore[typeddict-item]


def story(client: Steelyard) -> Iterator[str]:
    """A line a week: what the review says, and what is eaten next."""
    member = Member()
    before = {"weights": [], "intakes": []}
    for week in range(4, 0, -1):
        more = member.week(START - timedelta(weeks=week), member.maintenance_kcal)
        before = {name: [*before[name], *more[name]] for name in before}  # type: ignore[literal-required]
    who: dict[str, Any] = {"profile": PROFILE, "screening": SCREENING}
    plan = client.plan_phases(
        **who, log=before, start_date=START, phase={"kind": "cut", "weeks": WEEKS, "deficit_kcal": 400}
    )
    state, intake = plan.state, float(plan.phases[0].weeks[0].intake_kcal)
    yield f"plan: {WEEKS} weeks at {intake:.0f} kcal a day"
    member.maintenance_kcal -= 250.0  # less walking than before
    for week in range(1, WEEKS + 1):
        log = member.week(START + timedelta(weeks=week - 1), intake)
        review = client.review_phase(**who, state=state, log=log, as_of_date=START + timedelta(weeks=week))
        state = review.state
        fat = review.change.fat_kg.mean
        yield f"week {week}: {review.verdict}, fat {fat:+.1f} kg, {review.correction_kcal:+d} kcal, {review.decision}"
        if not review.weeks:
            break
        intake = review.weeks[0].intake_kcal
    day = START + timedelta(weeks=week)
    decided = client.decide_phase(**who, state=state, as_of_date=day)
    following = client.plan_phases(**who, state=decided.state, **decided.recommended.plan.to_dict())
    yield f"next: {decided.recommended.kind}, at {following.phases[0].weeks[0].intake_kcal} kcal a day"


if __name__ == "__main__":
    with Steelyard() as steelyard:
        for line in story(steelyard):
            print(line)
