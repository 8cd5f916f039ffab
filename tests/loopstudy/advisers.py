"""Who tells members what to eat: Steelyard by its reviews, the plan as it was made, and a simple coach's rule."""

from datetime import date
from typing import Any

import msgspec
import numpy as np
from logstudy.worlds import Logs
from loopstudy.members import ANY_FAT, FIRST_DAY, KINDS, LEAD_DAYS, Member, log_of, person_now, plan, told, usual_kcal
from steelyard import answers
from steelyard.science.phase import (
    DeficitAim,
    DeficitKind,
    FollowedPhase,
    FollowedWeek,
    GainAim,
    HoldAim,
    IntakeChange,
    ReturnAim,
)
from steelyard.science.rails import Refused
from steelyard.science.register import OutOfDomain

WEEK = 7
FLOOR_KCAL = {"male": 1500.0, "female": 1200.0}
# Under this nothing is told, whatever a log holds of what is eaten; between the two the logging ratio decides.
TOLD_FLOOR_KCAL = {"male": 1200.0, "female": 1000.0}
_GAIN_DAYS_LEAST = 14
_PAUSE_WEEKS, _CUT_WEEKS_LEAST, _CUT_WEEKS_MOST = 4, 4, 12  # of a cut that is begun again


def weeks_of(planned: answers.PhasesPlanned) -> list[float]:
    """The intake of each week of a plan, in order [kcal/d]."""
    return [float(week.week.intake.intake_kcal) for phase in planned.phases for week in phase.weeks]


class Adviser:
    """Tells one member what to eat, week by week. ``changes`` counts changes of intake that no plan foresaw."""

    def __init__(self, member: Member) -> None:
        self.member = member
        self.changes = 0
        self.moved_ends = 0

    def advise(self, logs: Logs, person: int, day: int) -> float:
        """The intake of the week to come [kcal/d, as logged], on the morning of a day of the log."""
        raise NotImplementedError

    @property
    def is_in_deficit(self) -> bool:
        """Whether the member takes what they eat for a deficit."""
        raise NotImplementedError


class Unrevised(Adviser):
    """The plan as it was made."""

    def __init__(self, member: Member) -> None:
        super().__init__(member)
        self.weeks = weeks_of(member.plan)
        self.kinds = [phase.phase.kind for phase in member.plan.phases for _ in phase.weeks]
        self.week = 0

    def advise(self, logs: Logs, person: int, day: int) -> float:
        self.week = (day - LEAD_DAYS) // WEEK
        return self.weeks[min(self.week, len(self.weeks) - 1)]

    @property
    def is_in_deficit(self) -> bool:
        return self.kinds[min(self.week, len(self.kinds) - 1)] in ("mini_cut", "cut")


class CoachsRule(Unrevised):
    """Weekly means of weight: when two weeks running miss the plan's change by half, 100 or 200 kcal/d.

    The first week of a phase is water and counts for nothing; a change is given a fortnight. Common practice, no
    published source.
    """

    def __init__(self, member: Member) -> None:
        super().__init__(member)
        self.offset = 0.0
        self.last_change = 0
        starts = [phase.phase.first for phase in member.plan.phases]
        self.starts = starts

    def advise(self, logs: Logs, person: int, day: int) -> float:
        planned = super().advise(logs, person, day)
        week = self.week
        begun = max(start for start in self.starts if start <= week) if week else 0
        if week - begun >= 3 and week - max(self.last_change, begun) >= 3 and week < len(self.weeks) + 1:
            misses = [self._miss(logs, person, week - 1), self._miss(logs, person, week - 2)]
            if None not in misses:
                self._change([miss for miss in misses if miss is not None], week)
        floor = FLOOR_KCAL[self.member.person.sex.value]
        return max(floor, planned + self.offset)

    def _change(self, misses: list[tuple[float, float]], week: int) -> None:
        over = [miss > 0.5 * max(abs(target), 0.15) for miss, target in misses]
        under = [miss < -0.5 * max(abs(target), 0.15) for miss, target in misses]
        if not (all(over) or all(under)):
            return
        size = 200.0 if min(abs(miss) for miss, _ in misses) > 0.3 else 100.0
        self.offset += -size if all(over) else size
        self.changes += 1
        self.last_change = week

    def _miss(self, logs: Logs, person: int, week: int) -> tuple[float, float] | None:
        """Change of the weekly mean beyond the planned one, and that [kg]."""
        weights = self.member.weights_kg
        this, before = self._mean(logs, person, week), self._mean(logs, person, week - 1)
        if this is None or before is None or week + 1 >= len(weights):
            return None
        # The means lie half a week before the ends of their weeks: the change of the last two halves.
        target = 0.5 * (weights[week + 1] - weights[max(0, week - 1)])
        return (this - before) - target, target

    @staticmethod
    def _mean(logs: Logs, person: int, week: int) -> float | None:
        first = LEAD_DAYS + WEEK * week
        seen = logs.is_weighed[first : first + WEEK, person] > 0.0
        weights = logs.weight_kg[first : first + WEEK, person][seen]
        return float(np.mean(weights)) if len(weights) >= 3 else None


class Steelyard(Adviser):
    """Weekly reviews, and a plan for each phase that follows, as the answers say."""

    def __init__(self, member: Member, horizon_days: int) -> None:
        super().__init__(member)
        self.end_day = LEAD_DAYS + horizon_days
        self.person = member.person
        self.legs: list[str] = [phase.phase.kind for phase in member.plan.phases]
        self.followed: FollowedPhase | None = None
        self.leg = 0
        self.given: list[dict[str, Any]] = []

    @property
    def is_in_deficit(self) -> bool:
        return self.followed is not None and self.followed.kind.is_deficit

    def advise(self, logs: Logs, person: int, day: int) -> float:
        log = log_of(logs, person, day)
        if self.followed is None:
            self._begin(self.member.plan, log, day, self.member.course.fat_loss_kg)
            assert self.followed is not None
            return self.followed.weeks[0].intake_kcal
        asked = answers.ReviewAsked(told(self.person, log), self.followed, date.fromordinal(FIRST_DAY + day))
        answer = answers.review_phase(asked)
        found = answer.value.review
        advice = found.advice
        self.given.append(
            {
                "day": day, "verdict": found.verdict.value, "decision": advice.decision.value,
                "change": advice.correction_kcal, "kind": self.followed.kind.value, "days_ahead": advice.days_ahead,
                "maintenance_kcal": found.maintenance.maintenance.mean,
                "intake_kcal": found.stints[0].week.intake_kcal if found.stints else None,
                "codes": [reason.code for reason in answer.reasons],
            }
        )  # fmt: skip
        if advice.days_ahead == 0:
            self._start_again(answer)
            return self._next(answer.value, log, day)
        if advice.correction_kcal:
            self.changes += 1
            change = IntakeChange(day=FIRST_DAY + day, change_kcal=float(advice.correction_kcal))
            self.followed = msgspec.structs.replace(self.followed, changes=(*self.followed.changes, change))
        end = FIRST_DAY + day + advice.days_ahead
        if end != self.followed.end_day:
            self.moved_ends += 1
            self.followed = msgspec.structs.replace(self.followed, moved_end_day=end)
        return answer.value.weeks[0].diet.intake_kcal

    def _start_again(self, answer: answers.Answered[answers.PhaseReviewed]) -> None:
        """Four weeks at maintenance, and another cut for what is missing, where a review says so."""
        if "REVIEW_START_AGAIN" in {reason.code for reason in answer.reasons}:
            self.legs = [*self.legs[: self.leg + 1], "pause", "cut", "maintenance"]

    def _next(self, reviewed: answers.PhaseReviewed, log: Any, day: int) -> float:
        """The phase that follows, planned from the body there is."""
        found = reviewed.review
        weight = float(found.weight_kg.mean)
        self.person = person_now(self.person, round(weight, 1), float(found.fat_fraction.mean))
        self.leg += 1
        kind = self.legs[min(self.leg, len(self.legs) - 1)]
        left = max(1, -((day - self.end_day) // WEEK))
        aim: Any = HoldAim(weeks=left)
        if kind == "gain" and self.end_day - day >= _GAIN_DAYS_LEAST:
            aim = GainAim(weeks=left, fat_ceiling=ANY_FAT)
        elif kind == "maintenance" and self.leg + 1 < len(self.legs):
            aim = HoldAim(weeks=min(left, 2))
        elif kind == "pause":
            aim = HoldAim(weeks=min(left, _PAUSE_WEEKS))
        elif kind == "cut" and left >= _CUT_WEEKS_LEAST:
            aim = DeficitAim(kind=DeficitKind.CUT, weeks=min(left, _CUT_WEEKS_MOST))
        nothing_after = ReturnAim(maintenance_weeks=0, gain_weeks=0)
        try:
            after = nothing_after if not isinstance(aim, DeficitAim) else ReturnAim(maintenance_weeks=2, gain_weeks=0)
            planned = plan(self.person, log, day, aim, after).value
        except (Refused, OutOfDomain):
            planned = None
        if planned is None or not planned.phases:  # refused, or no plan of it is safe
            planned = plan(self.person, log, day, HoldAim(weeks=left), nothing_after).value
        self._begin(planned, log, day, None)
        assert self.followed is not None
        return self.followed.weeks[0].intake_kcal

    def _begin(self, planned: answers.PhasesPlanned, log: Any, day: int, fat_loss_kg: float | None) -> None:
        first = planned.phases[0]
        kind = KINDS[first.phase.kind]
        self.followed = FollowedPhase(
            kind=kind,
            start_day=FIRST_DAY + day,
            weeks=tuple(
                FollowedWeek(
                    intake_kcal=float(week.week.intake.intake_kcal),
                    protein_g=float(week.week.intake.protein_g),
                    carbohydrate_g=float(week.week.intake.carbohydrate_g),
                    is_break=week.week.element.value == "break",
                )
                for week in first.weeks
            ),
            maintenance=planned.maintenance,
            usual_intake_kcal=usual_kcal(log, day),
            fat_loss_kg=fat_loss_kg if kind.is_deficit else None,
        )
