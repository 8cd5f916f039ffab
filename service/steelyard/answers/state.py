"""What an answer knows of a person, to be handed to the next question."""

from datetime import date
from typing import NamedTuple

from steelyard.science.body import ADAPTATION_SHARE, ADAPTATION_SPREAD, Adherence, home_noise_variance, start_body
from steelyard.science.log import LOGGING_RATIO, LOGGING_RATIO_SD, Log, LogMaintenance, Reading, hand_on
from steelyard.science.measures import FAT_FRACTION_FROM, FAT_FRACTION_TO, Assessment, body_of, method_error
from steelyard.science.member import (
    LEAST_FAT_SD,
    FatRead,
    Known,
    Member,
    StartingBody,
    Steered,
    Told,
    ToldBefore,
    adherence_on,
    readings_of,
)
from steelyard.science.numbers import Estimate
from steelyard.science.person import BodyFatMethod, Sex, Training
from steelyard.science.rails import Subject, forbids_fat_target

_MOST_READINGS = 40  # that a state may hold
_ROUNDING = 0.002  # of a share of fat, by masses that are told to a tenth


class StateNow(NamedTuple):
    """What is known on ``day``, each with its error: masses [kg], energies [kcal/d], on the scale of the log but for
    ``physical``. Whoever may not aim at a body fat is handed no such aim on."""

    day: int
    sex: Sex
    height_cm: float
    weight: Estimate
    fat_kg: Estimate
    lean_kg: Estimate
    carried_kg: Estimate
    method: BodyFatMethod
    is_fat_measured: bool
    maintenance: Estimate
    physical: Estimate
    logging_ratio: Estimate
    basis: str
    adaptation_kcal: Estimate
    usual_intake_kcal: float | None
    training: Training
    readings: tuple[FatRead, ...]
    log: Log | None
    may_aim_at_fat: bool
    adherence: Adherence | None
    steered: Steered | None

    @property
    def body(self) -> StartingBody:
        """The body, as a phase that begins now starts from it."""
        return StartingBody(self.weight, self.fat_kg, self.method, self.is_fat_measured)


def weighed_once(weight_kg: float) -> Estimate:
    """A weight that one weighing tells [kg], with the usual noise."""
    return Estimate(weight_kg, float(home_noise_variance(weight_kg)) ** 0.5)


def known_again(now: StateNow, maintenance: Estimate | None) -> Known:
    """What is known, as the next question is told it; ``maintenance`` where the caller told that."""
    return Known(
        day=now.day,
        sex=now.sex,
        height_cm=now.height_cm,
        body=now.body,
        maintenance=maintenance,
        usual_intake_kcal=now.usual_intake_kcal,
        readings=now.readings,
        log=now.log,
        adherence=now.adherence,
        told_before=ToldBefore(now.logging_ratio.mean, now.physical.mean),
        steered=now.steered,
    )


def known_day(member: Member, start: date) -> int:
    """The day that what is known of a member is of: the last of their log, or of a state, else ``start``.

    A state without a log is of no later day than what begins before it, as its own is that of something planned.
    """
    told, first = member.told, start.toordinal()
    days = [] if told.log is None else [told.log.last_day]
    if told.known is not None:
        days.append(told.known.day if told.log is not None else min(told.known.day, first))
    return max(days, default=first)


def state_of(
    member: Member, day: int, fat: Estimate | None = None, maintenance: LogMaintenance | None = None
) -> StateNow:
    """What is known of a member on a day; ``fat`` (fraction) and ``maintenance`` where more is known of them than
    ``member`` does."""
    told = member.told
    now = state_now(
        told,
        member.assessed,
        day,
        fat=member.assessed.fat if fat is None else fat,
        maintenance=member.maintenance if maintenance is None else maintenance.maintenance,
        learnt=member.learnt if maintenance is None else maintenance,
        reading=None if told.log is None else member.log_on(day),
        seen=member.seen,
        is_steered=member.is_steered,
    )
    return not_before(told.known, now)


def not_before(known: Known | None, now: StateNow) -> StateNow:
    """What is known, of no earlier day than the state that was sent: of the time since its last entry it tells too.

    The day of one without a log is the start of what was planned, which may lie ahead: any entry is newer than that.
    """
    if known is None or known.log is None:
        return now
    return now._replace(day=max(now.day, known.day))


def state_now(
    told: Told,
    assessed: Assessment,
    day: int,
    *,
    fat: Estimate,
    maintenance: Estimate,
    learnt: LogMaintenance | None,
    reading: Reading | None,
    seen: Subject,
    is_steered: bool = False,
    adherence: Adherence | None = None,
    steered: Steered | None = None,
) -> StateNow:
    """What is known on a day of whom ``told`` tells and the rails have ``seen``, their log read on it; ``fat`` is a
    fraction, ``adherence`` and ``steered`` what was learned of them, else what was known is handed on.
    ``is_steered``: whether maintenance rests on the scale of who hardly logs food."""
    person, log = told.person, told.log
    recent = (None if log is None else log.intake_lately(day, maintenance.mean)) or told.current_intake_kcal
    if reading is None:
        weight = weighed_once(person.weight_kg)
        carried = Estimate(0.0, weight.sd)
    else:
        log, weight, carried = hand_on(reading)
    # Rounded, it is to be a share of fat that a body can have, as whoever takes the state asks.
    share = min(max(fat.mean, FAT_FRACTION_FROM + _ROUNDING), FAT_FRACTION_TO - _ROUNDING)
    fat_kg = Estimate(share * weight.mean, max(LEAST_FAT_SD, fat.sd) * weight.mean)
    physical = maintenance if learnt is None else learnt.physical
    ratio = Estimate(LOGGING_RATIO, LOGGING_RATIO_SD) if learnt is None else learnt.logging_ratio
    adaptation = float(start_body(body_of(person, assessed, maintenance, recent))[1].adaptation_kcal)
    basis = "log" if learnt is not None or is_steered else "equations" if told.maintenance is None else "told"
    if steered is None and told.known is not None:
        steered = told.known.steered
    method = assessed.fat.method
    return StateNow(
        day=day,
        sex=person.sex,
        height_cm=person.height_cm,
        weight=weight,
        fat_kg=fat_kg,
        lean_kg=Estimate(
            weight.mean - carried.mean - fat_kg.mean, (weight.sd**2 + carried.sd**2 + fat_kg.sd**2) ** 0.5
        ),
        carried_kg=carried,
        method=method,
        is_fat_measured=assessed.fat.is_measured,
        maintenance=maintenance,
        physical=physical,
        logging_ratio=ratio,
        basis=basis,
        adaptation_kcal=Estimate(adaptation, ADAPTATION_SPREAD / ADAPTATION_SHARE * abs(adaptation)),
        usual_intake_kcal=recent,
        training=person.training,
        readings=_all_readings(told, told.known, day),
        log=log,
        may_aim_at_fat=forbids_fat_target(seen) is None,
        adherence=adherence_on(told.known, day) if adherence is None else adherence,
        steered=None if seen.is_pregnant else steered,
    )


def _all_readings(told: Told, known: Known | None, day: int) -> tuple[FatRead, ...]:
    found = list(known.readings) if known is not None else []
    person = told.person
    if told.log is not None:
        found += readings_of(person, told.log)
    if known is None and person.body_fat is not None and told.fat is None:
        error = method_error(person.body_fat.method, person.training.status)
        found.append(FatRead(day, person.body_fat.fat_fraction, error.sd, person.body_fat.method))
    return tuple(found[-_MOST_READINGS:])
