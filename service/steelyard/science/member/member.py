"""A member: what was told of them, and what follows from it, each computed once and asked for by name."""

from functools import cached_property
from typing import NamedTuple

from msgspec.structs import replace

from ..body import Body
from ..log import LOGGING_RATIO_LEAST, Log, LogMaintenance, log_maintenance
from ..measures import (
    Assessment,
    assess,
    body_of,
    check_expenditure,
    doubts_about_expenditure,
    general_cautions,
)
from ..numbers import Estimate
from ..person import Person, Screening
from ..rails import BMI_WARN, LOGGED_DAYS, Logged, Scale, Subject, judge_logged, logged_of, urgent_referral, whom_to_see
from ..register import ON_LOGGING_SCALE, Message, traced


class Told(NamedTuple):
    """What a caller tells of a member.

    ``maintenance`` [kcal/d] where it is known, else it comes from ``log`` read on ``as_of_day`` (its last day when
    None), else from the equations; ``current_intake_kcal`` is eaten a day now, maintenance when None.
    """

    person: Person
    screening: Screening | None = None
    maintenance: Estimate | None = None
    log: Log | None = None
    as_of_day: int | None = None
    current_intake_kcal: float | None = None


class Member:
    """One person with everything that a computation asks of them. Facets raise ``OutOfDomain`` on impossible input."""

    def __init__(self, told: Told) -> None:
        self.told = told

    @property
    def person(self) -> Person:
        """Who they are, as told."""
        return self.told.person

    @cached_property
    def assessed(self) -> Assessment:
        """Body fat, resting and total energy from equations alone."""
        return assess(self.person)

    @cached_property
    def learnt(self) -> LogMaintenance | None:
        """What the log says of maintenance; None without one, or where maintenance was told."""
        log = self.told.log
        if self.told.maintenance is not None or log is None:
            return None
        found = self._learn(log)
        # Weights alone say nothing of the logging scale, nor of maintenance.
        return found if log.intakes else None

    @traced
    def _learn(self, log: Log) -> LogMaintenance:
        day = log.last_day if self.told.as_of_day is None else self.told.as_of_day
        return log_maintenance(self.person, self.assessed, log, day)

    @cached_property
    def prior(self) -> Estimate:
        """Maintenance from equations and activity [kcal/d]."""
        return Estimate(self.assessed.total.mean, self.assessed.total.sd)

    @cached_property
    def maintenance(self) -> Estimate:
        """Maintenance to plan from [kcal/d]: as told, else from the log, else from the equations."""
        if self.told.maintenance is not None:
            check_expenditure(self.told.maintenance.mean, self.assessed.resting.mean, "maintenance.kcal_per_day")
            return self.told.maintenance
        return self.prior if self.learnt is None else self.learnt.maintenance

    @property
    def cautions(self) -> list[Message]:
        """The cautions that every answer about them carries."""
        physical = self.maintenance if self.learnt is None else self.learnt.physical
        doubts = doubts_about_expenditure(physical.mean, self.assessed.resting.mean)
        cautions = general_cautions(self.person, self.assessed)
        cautions += [doubt for doubt in doubts if doubt not in cautions]
        cautions += [*urgent_referral(self.subject), *whom_to_see(self.subject)]
        cautions += [action.message for action in judge_logged(self.subject)]
        if self.learnt is not None:
            cautions.append(ON_LOGGING_SCALE)
        return cautions

    @cached_property
    def subject(self) -> Subject:
        """What the guard rails read of them."""
        return self.seen._replace(
            maintenance_kcal=self.maintenance.mean,
            scale=self.scale,
            physical_kcal=self.prior.mean if self.learnt is None else max(self.prior.mean, self.learnt.physical.mean),
        )

    @cached_property
    def scale(self) -> Scale:
        """How much of what they eat they log; 1 without a log, or where maintenance is known."""
        return Scale() if self.learnt is None else self.scale_by(self.learnt)

    def scale_by(self, learnt: LogMaintenance) -> Scale:
        """How much of what they eat a log holds, by what it says of their maintenance."""
        ratio = learnt.logging_ratio
        # Near the underweight range nobody honest with a low maintenance may be taken for somebody who logs little.
        most = 1.0 if self.seen.bmi < BMI_WARN else min(1.0, ratio.upper)
        return Scale(max(LOGGING_RATIO_LEAST, ratio.mean), max(ratio.mean, most))

    @cached_property
    def logged(self) -> Logged:
        """What their log says as it stands, of which the rails judge."""
        log, until = self.told.log, self.told.as_of_day
        if log is None:
            return Logged()
        last = log.last_day if until is None else until
        since = last - LOGGED_DAYS
        weights = [(row.day, row.weight_kg) for row in log.weighings if row.day > since]
        eaten = [(row.day, row.intake_kcal) for row in log.intakes if row.day > since and not row.is_partial]
        return logged_of(weights, eaten, last)

    @cached_property
    def seen(self) -> Subject:
        """What the rails read of them before any maintenance is worked out: who they are, and what they logged."""
        person, assessed = self.person, self.assessed
        return Subject(
            sex=person.sex,
            age_years=person.age_years,
            height_cm=person.height_cm,
            weight_kg=person.weight_kg,
            fat_kg=assessed.fat.mean * person.weight_kg,
            maintenance_kcal=self.prior.mean,
            resting_kcal=assessed.resting.mean,
            exercise_kcal=assessed.total.exercise_kcal,
            training_status=person.training.status,
            screening=self.told.screening,
            is_fat_measured=assessed.fat.is_measured,
            fat_below=assessed.fat.mean - assessed.fat.lower,
            physical_kcal=self.prior.mean,
            logged=self.logged,
        )

    @cached_property
    def body(self) -> Body:
        """The body as a forecast starts from it."""
        return body_of(self.person, self.assessed, self.maintenance, self.told.current_intake_kcal)

    def with_log_read(self, learnt: LogMaintenance) -> "Member":
        """The same member, their log read already."""
        other = Member(self.told)
        other.assessed = self.assessed
        other.learnt = learnt if self.told.log is not None and self.told.log.intakes else None
        return other

    def with_body_fat(self, fat_fraction: float) -> "Member":
        """The same member, had they this body fat: weight, maintenance, resting energy and the reading's error stay."""
        fat = replace(self.assessed.fat, mean=fat_fraction)
        return self._supposed(self.told, self.assessed._replace(fat=fat))

    def eating_maintenance(self) -> "Member":
        """The same member, had they eaten at maintenance until now."""
        return self._supposed(self.told._replace(current_intake_kcal=None), self.assessed)

    def _supposed(self, told: Told, assessed: Assessment) -> "Member":
        other = Member(told)
        other.assessed, other.maintenance = assessed, self.maintenance
        return other
