"""A gym of 5,000 members on a Monday morning: everyone reviewed in one batch, and one list of whom to look at first.

Each member is their last `state` with the week's log; the answers' states are what is kept for the next Monday. The
reviews go as lines of one batch; rosters of 500 are merged by `priority`. Run it with `STEELYARD_URL` and
`STEELYARD_KEY` set, and the number of members: `python gym_roster.py 5000`. The members are invented.
"""

import sys
from collections.abc import Iterable, Iterator, Mapping
from datetime import date, timedelta
from itertools import islice
from typing import Any, NamedTuple

from eight_weeks import PROFILE, SCREENING, START, Member
from steelyard_client import Steelyard
from steelyard_client.models import ReviewResponse, RosterPlace

ROSTER_MOST = 500
TODAY = START + timedelta(weeks=3)


class Reviewed(NamedTuple):
    """What is kept of a member: the state to send next Monday, and what the coach is told."""

    state: Mapping[str, Any]
    attention: Mapping[str, Any]


def invented(client: Steelyard, count: int) -> Iterator[tuple[str, dict[str, Any]]]:
    """A request for a review by reference: one plan, lived by members who need more or less than it took."""
    plan = client.plan_phases(
        profile=PROFILE, screening=SCREENING, start_date=START, phase={"kind": "cut", "weeks": 8, "deficit_kcal": 400}
    )
    state, intake = plan.state.to_dict(), float(plan.phases[0].weeks[0].intake_kcal)
    for number in range(count):
        member = Member(maintenance_kcal=2300.0 + 7.0 * (number % 100), seed=number)
        weeks = 3 if number % 9 else 1  # some stopped logging
        log: dict[str, list[Any]] = {"weights": [], "intakes": []}
        for week in range(weeks):
            more = member.week(START + timedelta(weeks=week), intake)
            log = {name: [*log[name], *more[name]] for name in log}  # type: ignore[literal-required]
        yield f"member-{number:05}", {"profile": PROFILE, "screening": SCREENING, "state": state, "log": log}


def review_all(client: Steelyard, asked: Iterable[tuple[str, dict[str, Any]]]) -> dict[str, Reviewed]:
    """Everyone's review, in one batch. Who cannot be reviewed is printed, and touches nobody else."""
    lines = ({"reference": name, "operation": "review_phase", "body": body} for name, body in asked)
    found = {}
    for answer in client.run_batch(lines):
        if isinstance(answer.result, ReviewResponse) and answer.reference is not None:
            review = answer.result
            found[answer.reference] = Reviewed(review.state.to_dict(), review.attention.to_dict())
        else:
            print(f"{answer.reference}: {answer.problem}", file=sys.stderr)
    return found


def ranked(
    client: Steelyard, now: Mapping[str, Reviewed], before: Mapping[str, Reviewed], day: date
) -> list[RosterPlace]:
    """One list of everyone, by as many rosters as it takes."""
    members = (
        {
            "reference": name,
            "attention": reviewed.attention,
            **({"before": before[name].attention} if name in before else {}),
        }
        for name, reviewed in now.items()
    )
    places: list[RosterPlace] = []
    while part := list(islice(members, ROSTER_MOST)):
        places += client.rank_roster(as_of_date=day, members=part).members  # type: ignore[typeddict-item]
    return sorted(places, key=lambda place: (-place.priority, place.reference))


def main(count: int) -> None:
    """Review and rank, and print the first ten."""
    with Steelyard() as client:
        now = review_all(client, invented(client, count))
        places = ranked(client, now, {}, TODAY)
    levels = [place.attention.level for place in places]
    print(", ".join(f"level {level}: {levels.count(level)}" for level in (3, 2, 1, 0)))
    for place in places[:10]:
        attention = place.attention
        print(f"{place.reference} {attention.level} {attention.reason.text} {attention.action.text}")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 5000)
