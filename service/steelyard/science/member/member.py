"""A member: what was told of them, and what follows from it, each computed once and asked for by name."""

from msgspec.structs import replace

from ..body import Body, apart_from_people
from ..log import (
    LOGGING_RATIO_LEAST,
    LOGGING_RATIO_SD,
    SLIPS,
    Log,
    LogMaintenance,
    Reading,
    Tail,
    carried_from_here,
    entries_as_read,
    gathered,
    maintenance_of,
    read_log,
)
from ..measures import (
    Assessment,
    assess,
    bmi,
    body_of,
    check_expenditure,
    doubts_about_expenditure,
    general_cautions,
)
from ..numbers import Estimate, facet
from ..person import Person
from ..rails import (
    BMI_WARN,
    LOGGED_DAYS,
    Logged,
    Scale,
    Subject,
    forbids_fat_target,
    judge_logged,
    logged_of,
    needs_doctor,
    urgent_referral,
    way_from_underweight,
    whom_to_see,
)
from ..register import (
    BY_WEIGHT,
    FAT_FROM_BMI,
    NO_AMOUNT_TO_EAT,
    ON_LOGGING_SCALE,
    Basis,
    Message,
    constant,
    say,
    traced,
)
from .known import adherence_on, body_at, settled
from .pregnancy import without_gestation
from .steering import still_counts, with_steering
from .told import StartingBody, Steered, Told

_LEAST_RESPONSE = constant(
    "carried_response_least",
    0.3,
    unit="1",
    summary="Least of the usual answer of carried mass to a diet that a forecast takes from a log: with less it would "
    "hardly answer at all",
    basis=Basis.JUDGEMENT,
)
_LOG_COUNTS = "LOG_WEIGHT_COUNTS"


class Member:
    """One person with everything that a computation asks of them. Facets raise ``OutOfDomain`` on impossible input.

    ``tail`` says from when on their log is handed on as it was sent, where it is to be handed on.
    """

    def __init__(self, told: Told, tail: Tail | None = None) -> None:
        self.told = settled(told)
        self._tail = tail
        self._readings: dict[int, Reading] = {}
        # Logs, looked at on a day, what they say, and whether food was read in them.
        self._judged: list[tuple[Log, int, Logged, bool]] = []

    @property
    def person(self) -> Person:
        """Who they are, as told."""
        return self.told.person

    @facet
    def assessed(self) -> Assessment:
        """Body fat, resting and total energy from equations alone."""
        found = assess(self.person)
        return found if self.told.fat is None else found._replace(fat=self.told.fat)

    @facet
    def of_log(self) -> LogMaintenance | None:
        """What the log alone says of maintenance; None without one, or where maintenance was told."""
        log = self.told.log
        if self.told.maintenance is not None or log is None:
            return None
        found = self.believed(self._learn(log.last_day if self.told.as_of_day is None else self.told.as_of_day))
        # Weights alone say nothing of the logging scale, nor of maintenance.
        return found if self._holds_food(log) else None

    @facet
    def learnt(self) -> LogMaintenance | None:
        """What the log says of maintenance, with what the scale taught of who hardly logs food."""
        return self.of_log if self.of_log is None or self.steered is None else self._steered(self.of_log, self.steered)

    @facet
    def steered(self) -> Steered | None:
        """What reviews have seen of the maintenance of who hardly logs food, where it counts: never in pregnancy."""
        known = self.told.known
        if known is None or known.steered is None or self.told.maintenance is not None or self.seen.is_pregnant:
            return None
        return known.steered

    @traced
    def _steered(self, found: LogMaintenance, taught: Steered) -> LogMaintenance:
        log, day = self.told.log, self.told.as_of_day
        if day is None:
            day = taught.day if log is None else log.last_day
        return with_steering(found, taught, log, day, self.assessed.resting.mean)

    @traced
    def _learn(self, day: int) -> LogMaintenance:
        return maintenance_of(self.log_on(day), self.assessed)

    def believed(self, found: LogMaintenance) -> LogMaintenance:
        """What a log of theirs says of maintenance, as far as it is believed: in pregnancy it lowers nothing."""
        screening, known = self.told.screening, self.told.known
        if screening is None or not screening.is_pregnant:
            return found
        before = None if known is None else known.told_before
        return without_gestation(found, self.prior.mean, self.assessed.resting.mean, before)

    def log_on(self, day: int) -> Reading:
        """Their log as read on a day, which is read once."""
        log = self.told.log
        assert log is not None
        if day not in self._readings:
            self._readings[day] = read_log(self.person, self.assessed, log, day, tail=self._tail)
        return self._readings[day]

    @facet
    def prior(self) -> Estimate:
        """Maintenance from equations and activity [kcal/d]."""
        return Estimate(self.assessed.total.mean, self.assessed.total.sd)

    def prior_in(self, weight_kg: float, fat_kg: Estimate) -> Estimate:
        """Maintenance from equations and activity of the body that they have by now [kcal/d]."""
        fat = self.assessed.fat
        body = StartingBody(Estimate(weight_kg, 0.0), fat_kg, fat.method, fat.is_measured)
        person, now = body_at(self.person, body, "log" if self.told.known is None else "state")
        return self.told_otherwise(self.told._replace(person=person, fat=now)).prior

    @facet
    def maintenance(self) -> Estimate:
        """Maintenance to plan from [kcal/d]: as told, else from the log, else from the equations."""
        if self.told.maintenance is not None:
            check_expenditure(self.told.maintenance.mean, self.assessed.resting.mean, "maintenance.kcal_per_day")
            return self.told.maintenance
        return self.evidence.maintenance

    @facet
    def evidence(self) -> LogMaintenance:
        """What the log, the equations and the scale say of a maintenance that nobody told."""
        if self.learnt is not None:
            return self.learnt
        prior = self.prior
        # Without a log of food what is told is taken for what is eaten.
        found = LogMaintenance(prior, prior, Estimate(1.0, LOGGING_RATIO_SD), 1.0, 0.0)
        return found if self.steered is None else self._steered(found, self.steered)

    @property
    def is_steered(self) -> bool:
        """Whether maintenance rests on the scale more than on a log of food since."""
        return self.steered is not None and still_counts(self.told.log, self.steered)

    @property
    def cautions(self) -> list[Message]:
        """The cautions that every answer about them carries."""
        physical = self.maintenance if self.learnt is None else self.learnt.physical
        doubts = doubts_about_expenditure(physical.mean, self.assessed.resting.mean)
        cautions = general_cautions(self.person, self.assessed)
        if forbids_fat_target(self.seen) is not None:
            cautions = [caution for caution in cautions if caution != FAT_FROM_BMI]  # it asks to have it measured
        cautions += [doubt for doubt in doubts if doubt not in cautions]
        cautions += [*urgent_referral(self.subject), *way_from_underweight(self.subject), *whom_to_see(self.subject)]
        cautions += [action.message for action in judge_logged(self.subject)]
        if self.learnt is not None:
            # No intake is told to who needs a doctor first, and no estimate as an amount.
            cautions.append(NO_AMOUNT_TO_EAT if needs_doctor(self.subject) else ON_LOGGING_SCALE)
            cautions += [] if self.learnt.doubt is None else [self.learnt.doubt]
        if self.is_steered:
            cautions.append(BY_WEIGHT)
        return [*cautions, *self.told.notes]

    @property
    def slips(self) -> list[Message]:
        """What of their log did not count as it was sent, where it was read: for answers without notes on a log."""
        if not self._readings:
            return []
        *_, reading = self._readings.values()
        return gathered(note for note in reading.daily.notes if note.code in SLIPS)

    @facet
    def subject(self) -> Subject:
        """What the guard rails read of them."""
        prior, learnt = self.prior.mean, self.learnt
        if learnt is None:
            kcal, seen = self.maintenance.mean, self.seen
            if seen.maintenance_kcal == kcal:
                return seen
            need = seen.physical_kcal if self.steered is None else max(seen.physical_kcal, kcal)
            return seen._replace(maintenance_kcal=kcal, physical_kcal=need)
        of_log = learnt if self.of_log is None else self.of_log
        need = max(prior, learnt.physical.mean, of_log.physical.mean)
        return self._read(self.maintenance.mean, self.scale, need)

    @facet
    def scale(self) -> Scale:
        """How much of what they eat they log; 1 without a log, or where maintenance is known."""
        return Scale() if self.learnt is None else self.scale_by(self.learnt)

    def scale_by(self, learnt: LogMaintenance) -> Scale:
        """How much of what they eat a log holds, by what it says of their maintenance."""
        ratio = learnt.logging_ratio
        # Near the underweight range nobody honest with a low maintenance may be taken for somebody who logs little.
        is_near = bmi(self.person.weight_kg, self.person.height_cm) < BMI_WARN
        most = 1.0 if is_near else min(1.0, ratio.upper)
        return Scale(max(LOGGING_RATIO_LEAST, ratio.mean), max(ratio.mean, most))

    @facet
    def logged(self) -> Logged:
        """What their log says as it stands, of which the rails judge."""
        return Logged() if self.told.log is None else self.logged_in(self.told.log)

    def logged_in(self, log: Log) -> Logged:
        """What a log of theirs says as it stands, slips left out: one typing error neither alarms nor hides a loss."""
        return self._looked_at(log)[0]

    def _holds_food(self, log: Log) -> bool:
        """Whether food was ever read in a log of theirs, or before what was handed on: days of nothing, days logged in
        part and what is set aside say nothing of how they log."""
        onset = log.onset
        return (onset is not None and onset.goes_on and onset.days_logged > 0) or self._looked_at(log)[1]

    def _looked_at(self, log: Log) -> tuple[Logged, bool]:
        last = log.last_day if self.told.as_of_day is None else self.told.as_of_day
        for judged, day, found, is_food_read in self._judged:
            if judged is log and day == last:
                return found, is_food_read
        since = last - LOGGED_DAYS
        reading = self._readings.get(last)
        read = None if reading is None or reading.log is not log else reading.daily.read
        weights, intakes = read or entries_as_read(self.person, self.assessed, log, last)
        # Days of nothing count here: a fast, or an app's zeros, is warned of all the same, which is the safe side.
        found = logged_of([row for row in weights if row[0] > since], [row for row in intakes if row[0] > since], last)
        is_food_read = any(kcal > 0.0 for _, kcal in intakes)
        self._judged.append((log, last, found, is_food_read))
        return found, is_food_read

    def as_last_weighed(self) -> "Member":
        """The same member with the weight that their log last has, where that is clearly less than was told of them: a
        profile may be years old, and no limit gives way to a weight that is gone."""
        was_kg = self.person.weight_kg
        lighter_kg = self.logged.lighter_kg(was_kg)
        if lighter_kg is None:
            return self
        note = say(_LOG_COUNTS, profile_kg=was_kg, logged_kg=lighter_kg)
        person = replace(self.person, weight_kg=lighter_kg)
        return Member(self.told._replace(person=person, notes=(*self.told.notes, note)), self._tail)

    @facet
    def seen(self) -> Subject:
        """What the rails read of them before any maintenance is worked out: who they are, and what they logged."""
        return self._read(self.prior.mean, Scale(), self.prior.mean)

    def _read(self, maintenance_kcal: float, scale: Scale, physical_kcal: float) -> Subject:
        person, assessed = self.person, self.assessed
        fat = assessed.fat
        fat_kg = fat.mean * person.weight_kg
        return Subject(
            sex=person.sex,
            age_years=person.age_years,
            height_cm=person.height_cm,
            weight_kg=person.weight_kg,
            fat_kg=fat_kg,
            maintenance_kcal=maintenance_kcal,
            resting_kcal=assessed.resting.mean,
            rested_fat_kg=fat_kg,
            rested_lean_kg=person.weight_kg - fat_kg,
            exercise_kcal=assessed.total.exercise_kcal,
            training_status=person.training.status,
            screening=self.told.screening,
            scale=scale,
            is_fat_measured=fat.is_measured,
            fat_below=fat.mean - fat.lower,
            physical_kcal=physical_kcal,
            logged=self.logged,
            is_plant_based=self.told.is_plant_based,
            weight_field=self._weight_field,
            # Missing water lifts nobody over a floor.
            water_kg=max(0.0, self.told.carried_kg),
        )

    @property
    def _weight_field(self) -> str:
        """Where in what was told their weight stands."""
        if any(note.code == _LOG_COUNTS for note in self.told.notes):
            return "log"
        return "weight_kg" if self.told.known is None else "state.weight_kg"

    @property
    def _carries(self) -> float:
        """How far their carried mass answers a diet, as the log tells it from which maintenance is.

        People's spread stays around it: a log tells how much went, and little of how much of that comes back.
        """
        told, log = self.told, self.told.log
        if log is None or self.learnt is None:
            return 1.0
        reading = self.log_on(log.last_day if told.as_of_day is None else told.as_of_day)
        return max(_LEAST_RESPONSE, carried_from_here(reading.fit).response.mean)

    @facet
    def body(self) -> Body:
        """The body as a forecast starts from it."""
        usual, known, log = self.told.current_intake_kcal, self.told.known, self.told.log
        eaten = None if log is None else log.last_intake_lately(self.maintenance.mean)
        if usual is None and self.learnt is not None:
            # On one scale with maintenance, as that is of the same log.
            usual = eaten
        body = body_of(self.person, self.assessed, self.maintenance, usual)._replace(
            eaten_kcal=eaten, carries=self._carries
        )
        found = None if known is None else adherence_on(known, known.day if log is None else log.last_day)
        return body if found is None else body._replace(kept=found.kept, apart=apart_from_people(found))

    def with_log_read(self, learnt: LogMaintenance, reading: Reading | None = None) -> "Member":
        """The same member, their log read already; ``reading`` where it is that of ``log_on``."""
        other = self.told_otherwise(self.told)
        if reading is not None:
            other._readings[reading.as_of_day] = reading
        other.of_log = learnt if self.told.log is not None and other._holds_food(self.told.log) else None
        return other

    def told_otherwise(self, told: Told) -> "Member":
        """A member of whom this is told; what follows from a body, or a log, that is the same stands."""
        other = Member(told, self._tail)
        other._judged = self._judged
        if other.person is self.person and other.told.fat is self.told.fat:
            other.assessed = self.assessed
        return other

    def with_body_fat(self, fat_fraction: float) -> "Member":
        """The same member, had they this body fat: weight, maintenance, resting energy and the reading's error stay."""
        fat = replace(self.assessed.fat, mean=fat_fraction)
        return self._supposed(self.told, self.assessed._replace(fat=fat))

    def eating_maintenance(self) -> "Member":
        """The same member, had they eaten at maintenance until now."""
        return self._supposed(self.told._replace(current_intake_kcal=self.maintenance.mean), self.assessed)

    def _supposed(self, told: Told, assessed: Assessment) -> "Member":
        other = Member(told)
        other.assessed, other.maintenance = assessed, self.maintenance
        return other
