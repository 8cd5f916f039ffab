"""Review a phase: what happened against what was planned, and what to do about it.

The verdict compares the change of tissue that the log tells with the 80 % interval that the plan's own forecast
had for that day, so that water never counts. Until a fortnight of the phase and enough weighings are there, it is
too early. What restores the target is then sought from the present state, inside every guard rail.
"""

import math

import msgspec

from ..body import Forecast, PathPoint
from ..log import Log, LogMaintenance
from ..measures import body_of
from ..member import Member
from ..numbers import Estimate
from ..phase import DAYS_PER_WEEK, MOST_WEEKS, FollowedPhase, PhaseKind, PromisedPath, Verdict, signs_to_stop
from ..rails import Cleared, RailAction, Subject
from ..register import Basis, Kind, Message, OutOfDomain, equation, say
from . import texts
from .advice import Advice, Aftermath, Ahead, advise, cleared
from .correction import RestOfPhase, Stint
from .reading import Changes, EatenSoFar, Now, body_now, read_phase

_MOST_DAYS_AHEAD = 56


class Probabilities(msgspec.Struct, frozen=True):
    """Where the change of tissue truly lies against the plan's interval; they add up to 1."""

    within_interval: float
    faster: float
    slower: float


class Review(msgspec.Struct, frozen=True):
    """A phase reviewed. Changes since its start [kg], intakes on the logging scale [kcal/d].

    ``since_day`` begins the window that the log covers; ``ratio`` is logged over eaten energy.
    ``planned_tissue`` and ``changes`` are of the window that the log covers, ``tissue``, ``fat`` and ``lean`` of
    the whole phase so far. ``told`` is what is to be eaten from the day reviewed on.
    """

    day: int
    days: int
    since_day: int
    ratio: float
    is_finished: bool
    is_deficit: bool
    protein_reference_kg: float | None
    verdict: Verdict
    probabilities: Probabilities
    more_days_needed: int
    planned_tissue: Estimate
    changes: Changes
    tissue: Estimate
    fat: Estimate
    lean: Estimate
    fat_fraction: Estimate
    eaten: EatenSoFar
    implied_difference: Estimate | None
    maintenance: LogMaintenance
    maintenance_change: Estimate
    told: Cleared[Ahead]
    weight_kg: Estimate
    noise_sd_kg: float
    reasons: list[Message]
    notes: list[Message]

    @property
    def advice(self) -> Advice:
        """What to do, which has passed the gate."""
        return self.told.value.advice

    @property
    def path(self) -> Forecast | None:
        """The days to come, which have passed the gate."""
        return self.told.value.path

    @property
    def stints(self) -> list[Stint]:
        """What to eat in the days to come, which has passed the gate."""
        return self.told.value.stints

    @property
    def aftermath(self) -> Aftermath | None:
        """What comes after the phase, which has passed the gate."""
        return self.told.value.aftermath

    @property
    def ends_early_when(self) -> list[Message]:
        """What ends the days to come before their last; empty where no deficit goes on."""
        return signs_to_stop() if self.is_deficit and self.advice.days_ahead else []

    @property
    def actions(self) -> list[RailAction]:
        """What the rails did."""
        return self.advice.actions

    def points_of(self, path: Forecast) -> list[PathPoint]:
        """The points of a path from the day reviewed on, its start left out: maintenance on the logging scale, and a
        single weighing with the error of today's level and daily noise."""
        weighing = self.weight_kg.sd**2 + self.noise_sd_kg**2
        return [
            at._replace(
                maintenance_kcal=self.ratio * at.maintenance_kcal,
                spread=at.spread._replace(maintenance_kcal=self.ratio * at.spread.maintenance_kcal),
                weighing_sd_kg=(at.spread.weight_kg**2 + weighing) ** 0.5,
            )
            for at in path.points()[1:]
        ]


def probabilities(kind: PhaseKind, planned: Estimate, observed: Estimate) -> Probabilities:
    """Where the true change of tissue lies against the plan's 80 % interval, given what the log tells of it."""
    lower, upper = observed.probability_under(planned.lower), observed.probability_over(planned.upper)
    faster, slower = (lower, upper) if kind.is_deficit else (upper, lower)
    return Probabilities(max(0.0, 1.0 - lower - upper), faster, slower)


def more_days_needed(window_days: int, weighings: int, planned: Estimate, observed: Estimate) -> int:
    """Days of logging until the phase can be judged; 0 when it can.

    A fortnight, a week's worth of weighings, and an error of tissue no larger than half the plan's interval, which
    grows with the days while the error stays.
    """
    need = max(texts.LEAST_DAYS - window_days, texts.LEAST_WEIGHINGS - weighings, 0)
    half = planned.upper - planned.mean
    if observed.sd > half and window_days > 0:
        grown = _MOST_DAYS_AHEAD if half <= 0.0 else math.ceil(window_days * (observed.sd / half - 1.0))
        need = max(need, grown, 1)
    return min(need, _MOST_DAYS_AHEAD)


def judge(likely: Probabilities, *, is_logged_so: bool = False) -> Verdict:
    """The likeliest of the three; off the plan only when that is likelier than not.

    Short of the plan against what the log says (not ``is_logged_so``) it must be clearly likelier: there the scale
    speaks alone.
    """
    if likely.faster > texts.OFF_PLAN:
        return Verdict.FASTER
    if likely.slower > (texts.OFF_PLAN if is_logged_so else texts.OFF_PLAN_UNLOGGED):
        return Verdict.SLOWER
    return Verdict.WITHIN_INTERVAL


def _is_logged_so(kind: PhaseKind, now: Now) -> bool:
    """Whether the log itself says that intake fell short of the plan's purpose."""
    difference = now.eaten.difference
    if difference is None:
        return False
    return difference.lower > 0.0 if kind.is_deficit else difference.upper < 0.0


def contradicts(planned_kg: float, observed: Estimate, likely: Probabilities) -> bool:
    """Whether the scale moves against the plan: by less than half of the way, or the other way.

    Args: change of weight as planned [kg], water included, and as observed; where tissue lies.
    """
    if abs(planned_kg) < texts.LEAST_MOVE_KG or likely.slower < texts.HARDLY_SLOWER:
        return False
    way = observed.mean if planned_kg > 0.0 else -observed.mean
    return way < texts.SHARE_OF_WAY * abs(planned_kg)


@equation(
    "phase_review",
    summary="Verdict on a phase, and the smallest correction of its intake",
    formula=(
        "probability that the change of tissue since the start lies under, in or over the 80 % interval of the "
        f"plan's forecast; too early before {texts.LEAST_DAYS} days or {texts.LEAST_WEIGHINGS} weighings, or while the "
        "error of tissue exceeds half the interval; correction: root of forecast(from today's body) - target in the "
        "intake, rounded to 10 kcal inside every rail"
    ),
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    valid_range="phases of at least two weeks with dated weighings",
)
def review_phase(
    member: Member, phase: FollowedPhase, log: Log, as_of_day: int, *, is_finished: bool = False
) -> Review:
    """Review ``phase`` on the morning of ``as_of_day``.

    Args: ``member`` as at the phase's start; ``log`` may begin before it, which helps.
    Raises: ``OutOfDomain`` on a log that cannot be read or a phase that had not begun; ``guard_rails.Refused``
        where a deficit is still running and the screening was not answered.
    """
    if as_of_day < phase.start_day:
        detail = "The phase begins after the day to review it on."
        raise OutOfDomain("REVIEW_BEFORE_START", "phase.start_date", detail)
    if phase.kind is PhaseKind.MINI_CUT and len(phase.weeks) > MOST_WEEKS:
        detail = f"A mini-cut has at most {MOST_WEEKS} weeks: send a longer one as a `cut`."
        raise OutOfDomain("MINI_CUT_TOO_LONG", "phase.weeks", detail)
    if phase.fat_loss_kg is not None and not phase.kind.is_deficit:
        detail = "Only a `mini_cut` or a `cut` has fat to lose."
        raise OutOfDomain("FAT_LOSS_WITHOUT_DEFICIT", "phase.fat_loss_kg", detail)
    finished = is_finished or as_of_day >= phase.end_day
    day = min(as_of_day, phase.end_day)
    log, later = _until(log, day, as_of_day)
    now = read_phase(member, phase, log, day)

    unseen = now.days - now.window_days
    scale = 1.0 / now.ratio
    usual = None if phase.usual_intake_kcal is None else scale * phase.usual_intake_kcal
    from_start = Estimate(scale * phase.maintenance.mean, scale * phase.maintenance.sd)
    promised = PromisedPath(
        phase, body_of(member.person, member.assessed, from_start, usual), now.ratio, (unseen, now.days)
    )
    planned = promised.change(unseen, now.days).tissue
    body = body_now(member, phase, now, promised.change(0, unseen).tissue)
    likely = probabilities(phase.kind, planned, now.window.tissue)
    more_days = more_days_needed(now.window_days, now.weighings, planned, now.window.tissue)
    subject = _subject(member, log, now)
    is_logged_so = _is_logged_so(phase.kind, now)
    verdict = Verdict.TOO_EARLY if more_days else judge(likely, is_logged_so=is_logged_so or not phase.kind.is_deficit)
    moved_kg = promised.change(unseen, now.days).weight_kg
    if subject.is_pregnant:
        verdict = Verdict.WITHIN_INTERVAL if verdict is Verdict.FASTER else verdict
    elif verdict is Verdict.WITHIN_INTERVAL and contradicts(moved_kg, now.window.weight, likely):
        verdict = Verdict.CONTRADICTED
    elif verdict is Verdict.SLOWER and not is_logged_so and now.water_probability > texts.WATER_IN_PLAY:
        # One week of water is no reason to eat less: ask first.
        verdict = Verdict.CONTRADICTED

    course = RestOfPhase(phase, subject, body, now.ratio, day)
    told = cleared(course, now, advise(phase, course, now, promised, verdict, finished))
    observed = now.window.tissue
    implied = None
    if now.window_days >= DAYS_PER_WEEK:
        per_day = now.rho_kcal_per_kg / now.window_days
        implied = Estimate(per_day * (observed.mean - planned.mean), per_day * math.hypot(observed.sd, planned.sd))
    maintenance = now.maintenance.maintenance
    fat = body.body.fat_kg
    notes = list(now.notes)
    if later:
        notes.append(say(texts.LATER_ENTRIES, count=later))
    if unseen:
        notes.append(say(texts.WINDOW_SHORTER, days=unseen))
    return Review(
        day=day,
        days=now.days,
        since_day=phase.start_day + unseen,
        ratio=now.ratio,
        is_finished=finished,
        is_deficit=phase.kind.is_deficit,
        protein_reference_kg=course.fed_kg if phase.kind.is_deficit else None,
        verdict=verdict,
        probabilities=likely,
        more_days_needed=more_days,
        planned_tissue=planned,
        changes=now.window,
        tissue=body.tissue,
        fat=body.fat,
        lean=body.lean,
        fat_fraction=Estimate(fat.mean / now.weight_kg.mean, fat.sd / now.weight_kg.mean),
        eaten=now.eaten,
        implied_difference=implied,
        maintenance=now.maintenance,
        maintenance_change=Estimate(
            maintenance.mean - phase.maintenance.mean, math.hypot(maintenance.sd, phase.maintenance.sd)
        ),
        told=told,
        weight_kg=now.weight_kg,
        noise_sd_kg=now.noise_sd_kg,
        reasons=[
            *_reasons(phase, now, planned, moved_kg, likely, verdict, more_days, is_pregnant=subject.is_pregnant),
            *told.value.advice.reasons,
        ],
        notes=notes,
    )


def _subject(member: Member, log: Log, now: Now) -> Subject:
    """What the rails read of the member at the phase's start, with what the log tells of their scale."""
    learnt = now.maintenance
    return member.subject._replace(
        maintenance_kcal=learnt.maintenance.mean,
        scale=member.scale_by(learnt),
        physical_kcal=max(member.prior.mean, learnt.physical.mean),
        logged=Member(member.told._replace(log=log)).logged,
    )


def _until(log: Log, day: int, as_of_day: int) -> tuple[Log, int]:
    """The log up to a day, and how many entries were left out. What lies after the as-of day stays, to be refused."""

    def is_kept(entry_day: int) -> bool:
        return entry_day <= day or entry_day > as_of_day

    weighings = [w for w in log.weighings if is_kept(w.day)]
    intakes = [i for i in log.intakes if is_kept(i.day)]
    left_out = len(log.weighings) + len(log.intakes) - len(weighings) - len(intakes)
    return (Log(weighings, intakes), left_out) if left_out else (log, 0)


def _reasons(
    phase: FollowedPhase,
    now: Now,
    planned: Estimate,
    planned_weight_kg: float,
    likely: Probabilities,
    verdict: Verdict,
    more_days: int,
    *,
    is_pregnant: bool,
) -> list[Message]:
    """Why the verdict is what it is, and what was eaten."""
    observed = now.window.tissue.mean
    found: list[Message] = []
    if verdict is Verdict.TOO_EARLY:
        found.append(say(texts.TOO_EARLY, more_days=more_days))
    elif is_pregnant:
        found.append(say(texts.IN_PREGNANCY, observed_kg=observed))
    elif verdict is Verdict.CONTRADICTED:
        found.append(say(texts.CONTRADICTED, weight_kg=now.window.weight.mean, planned_kg=planned_weight_kg))
        found.append(say(texts.SETTLE_CONTRADICTION))
    elif verdict is Verdict.WITHIN_INTERVAL:
        found.append(say(texts.WITHIN, observed_kg=observed, lower_kg=planned.lower, upper_kg=planned.upper))
    else:
        chance = likely.faster if verdict is Verdict.FASTER else likely.slower
        found.append(
            say(
                texts.OUTSIDE,
                observed_kg=observed,
                lower_kg=planned.lower,
                upper_kg=planned.upper,
                probability_percent=100.0 * chance,
            )
        )
    difference = now.eaten.difference
    if difference is None:
        if now.days:
            found.append(say(texts.NO_INTAKE))
    elif difference.lower > 0.0 and difference.mean > texts.NOTABLE_KCAL:
        found.append(say(texts.ATE_MORE, difference_kcal=difference.mean))
    elif difference.upper < 0.0 and difference.mean < -texts.NOTABLE_KCAL:
        found.append(say(texts.ATE_LESS, difference_kcal=-difference.mean))
    elif verdict in (Verdict.FASTER, Verdict.SLOWER):
        maintenance = now.maintenance.maintenance.mean
        code = texts.NEEDS_LESS if observed > planned.mean else texts.NEEDS_MORE
        found.append(say(code, maintenance_kcal=maintenance, planned_kcal=phase.maintenance.mean))
    return found
