"""What should this member eat in a phase and after it, and where does it lead?"""

import math
from collections.abc import Iterator, Sequence
from contextlib import suppress
from typing import NamedTuple, TypeVar

import msgspec

from steelyard.science import rails
from steelyard.science.body import Forecast, PathChange, PathPoint, UncertaintySource
from steelyard.science.log import LogMaintenance, tail_of
from steelyard.science.measures import RestingEnergy
from steelyard.science.member import Member
from steelyard.science.numbers import Estimate
from steelyard.science.phase import (
    COMMON_FIRST_DROP_KG,
    COMMON_LOSS_KG_PER_WEEK,
    EASING_SHARE,
    STATIC_KCAL_PER_KG,
    BodiesAlong,
    DeficitAim,
    DeficitBefore,
    DeficitKind,
    Dose,
    Element,
    GainAim,
    LeverUse,
    NearestGain,
    NearestSafe,
    Pace,
    PhaseKind,
    Plan,
    PlanChoice,
    PlannedPhase,
    PlannedWeek,
    SizeOffered,
    bodies_along,
    gain_ceiling,
    levers_of,
    no_plan,
    plan_deficit,
    plan_gain,
    plan_hold,
    protein_reference,
    told_week,
    told_weeks,
)
from steelyard.science.rails import (
    Cleared,
    DayFed,
    Macronutrients,
    RailAction,
    Refused,
    SplitWeek,
    Subject,
    ToldWeek,
    clear,
    least_day,
    nothing_told,
    split_week,
    warn_lower_days,
)
from steelyard.science.register import Contradiction, Message, say

from .answered import Answered, answering
from .member import beside_log, known_long_ago, member_of, provisional, what_grows
from .plan_asked import GOALS, LEAST_FAT_LOSS_KG, PlanAsked, check_asked, check_weeks, contradict
from .plan_days import DaysPlanned, caps_on_days, doubts_about_week, notes_on_days, plan_days
from .state import known_day, state_of

_Value = TypeVar("_Value")
# What is tried of a nearest that does not stand, and how many weeks.
_SHARES, _MORE_WEEKS = (1.0, 0.97, 0.9, 0.75), 4


class WeekPlanned(NamedTuple):
    """A week: its day, the energy stored a day, the body at its end, and its days where they were asked for.

    ``split``: its kinds of day; ``days``: each of its days, of which rails have ``warned``.
    """

    week: PlannedWeek
    energy_balance_kcal: float
    at_end: PathPoint
    split: SplitWeek | None = None
    days: DaysPlanned | None = None
    warned: Sequence[RailAction] = ()

    @property
    def fed(self) -> list[DayFed]:
        """Its days, where they differ, as they are fed."""
        if self.days is not None:
            usual = sum(day.training_kcal for day in self.days.days) / len(self.days.days)
            each = zip(self.days.days, self.days.spread.days, strict=True)
            return [DayFed(told.food_kcal, day.training_kcal - usual) for day, told in each]
        return [] if self.split is None else [DayFed(float(self.split.lower.intake_kcal))]

    @property
    def macronutrients(self) -> list[Macronutrients]:
        """Of its days, where they differ."""
        if self.days is not None:
            return [day.macros for day in self.days.days]
        return [] if self.split is None else [self.split.higher, self.split.lower]

    @property
    def least_kcal(self) -> float:
        """Food of its leanest day [kcal]."""
        if self.days is not None:
            return self.days.spread.least_food_kcal
        return float((self.week.intake if self.split is None else self.split.lower).intake_kcal)


class PhasePlanned(NamedTuple):
    """A phase, its weeks, and the change over it."""

    phase: PlannedPhase
    weeks: list[WeekPlanned]
    change: PathChange


class PhaseToFollow(NamedTuple):
    """The phase that was asked for, as it goes under way."""

    place: int  # among the phases
    fat_loss_kg: float | None  # None: its length is the target
    fat_ceiling: float | None  # of a gain
    weeks_before: float  # of a deficit before it that counts as of it, with those of a pause between


class LeverOffered(NamedTuple):
    """A dose of activity and the ways to use it that have passed the gate; ``refusals`` are of those that have not."""

    dose: Dose
    instead: Cleared[LeverUse] | None
    together: Cleared[LeverUse] | None
    refusals: list[RailAction]
    reasons: list[Message]


class SimpleRules(NamedTuple):
    """What simple rules say of the weeks in a deficit, beside the forecast [kg]."""

    static_loss_kg: float
    common_loss_kg: tuple[float, float]
    common_first_drop_kg: tuple[float, float]
    forecast_first_drop_kg: float


class PhasesPlanned(NamedTuple):
    """A plan and what it starts from. ``nearest`` is set where no safe plan does what was asked: then no phases are.
    ``nearest_gain`` is of a gain to a weight.

    ``to_follow`` is the phase that was asked for. ``sizes`` and ``levers`` are empty where they were not asked for.
    """

    start_weight_kg: float
    protein_reference_kg: float
    maintenance: Estimate
    learnt: LogMaintenance | None
    resting: RestingEnergy
    fat_fraction: Estimate
    nearest: NearestSafe | None
    nearest_gain: NearestGain | None
    deficit_kcal: float | None
    told: Cleared[list[PhasePlanned]]
    rules: SimpleRules | None
    dominant_source: UncertaintySource | None
    sizes: list[Cleared[SizeOffered]]
    levers: list[LeverOffered]
    to_follow: PhaseToFollow | None

    @property
    def phases(self) -> list[PhasePlanned]:
        """The phases, which have passed the gate."""
        return self.told.value


@answering
def plan_phases(asked: PlanAsked) -> Answered[PhasesPlanned]:
    """Plan a phase and what follows it.

    Raises: ``Contradiction`` for what no plan could do, whoever the member is; ``OutOfDomain``; ``Refused`` where a
        rule forbids it for this member.
    """
    plants = asked.lived is not None and asked.lived.is_plant_based
    member = member_of(asked.told._replace(is_plant_based=plants), tail_of)
    if isinstance(asked.aim, DeficitAim):
        # Who may run no deficit hears that, and not how to ask for one.
        rails.check_person(member.seen)
    until_event = check_asked(asked, member.person)
    plan = _plan(asked, member, until_event)
    bodies = _bodies(member, plan)
    try:
        told = _told(asked, plan, bodies)
    except Refused as refusal:
        plan = no_plan(NearestSafe(), [*plan.actions, *refusal.actions], refusal.messages)
        told = nothing_told([])
    if plan.nearest is not None:
        plan = plan._replace(nearest=_nearest_that_stands(asked, member, plan.nearest, until_event))
    assessed, path, cut = member.assessed, plan.forecast, plan.cut_phase
    days = _explain_days(asked, member.subject, told.value)
    to_follow = _to_follow(asked, member.subject, told.value)
    doubts = provisional(member, asked.start) if told.value else []
    if asked.lived is not None and told.value:
        doubts += doubts_about_week(asked.lived, member.subject, told.value[-1].phase.weeks[-1].last_day)
    return Answered(
        PhasesPlanned(
            start_weight_kg=member.person.weight_kg,
            protein_reference_kg=member.subject.protein_kg,
            maintenance=member.maintenance,
            learnt=member.learnt,
            resting=assessed.resting,
            fat_fraction=assessed.fat,
            nearest=plan.nearest,
            nearest_gain=plan.nearest_gain,
            deficit_kcal=plan.deficit_kcal,
            told=told,
            rules=None if path is None or cut is None else _simple_rules(cut, plan.deficit_kcal or 0.0, path),
            dominant_source=None
            if path is None or to_follow is None
            else path.dominant_source(plan.phases[to_follow.place].last_point),
            sizes=[*_sizes(asked, member.subject, plan, bodies)] if told.value else [],
            levers=[*_levers(asked, member.subject, plan, bodies, told.value)],
            to_follow=to_follow,
        ),
        reasons=[
            assessed.resting.reason,
            *_why(plan),
            *(protein_reference(member.subject) if told.value else ()),
            *_ask_first(member.subject, plan),
        ],
        cautions=[
            *member.cautions,
            *beside_log(member, asked.start),
            *what_grows(member),
            *known_long_ago(member, asked.start),
            *doubts,
        ],
        actions=rails.with_ratio(
            member.subject, [*_with_days(rails.without_echoes(plan.actions), told.value), *caps_on_days(days)]
        ),
        state=state_of(member, known_day(member, asked.start)),
    )


def _why(plan: Plan) -> list[Message]:
    """The reasons of a plan; where nothing comes near to what was asked, none says that it is given."""
    is_near = any(value is not None for near in (plan.nearest, plan.nearest_gain) for value in near or ())
    if is_near:
        return plan.reasons
    return [say("INFEASIBLE_NOTHING") if reason.code == "INFEASIBLE" else reason for reason in plan.reasons]


def _with_days(actions: list[RailAction], phases: Sequence[PhasePlanned]) -> list[RailAction]:
    """What rails did, with what warns of every day in every phase: of its grams, and of its size where the mean of the
    week does not tell."""
    weeks = [week for phase in phases for week in phase.weeks]
    found = rails.warn_days((week.week.intake, week.macronutrients) for week in weeks)
    codes = {action.message.code for action in found}
    told = {action.message.code for action in actions}
    lower = [
        one
        for one in rails.strongest(one for week in weeks for one in week.warned)
        if one.message.code.replace("_DAY_", "_") not in told
    ]
    return [*(action for action in actions if action.message.code not in codes), *found, *lower]


def _plan(asked: PlanAsked, member: Member, until_event: int | None) -> Plan:
    aim, subject, with_sizes = asked.aim, member.subject, PlanChoice.SIZES in asked.include
    if isinstance(aim, DeficitAim):
        fat_kg = float(subject.fat_kg)
        if aim.fat_loss_kg is not None and aim.fat_loss_kg >= fat_kg:
            detail = f"A body of this kind has less to lose than {aim.fat_loss_kg:g} kg: ask for less."
            contradict("fat_loss_kg", "GOAL_BEYOND_BODY", detail)
        return plan_deficit(
            member,
            asked.start,
            aim,
            asked.then,
            history=asked.history,
            sources=asked.sources,
            pause_weeks=asked.pause_weeks,
            weeks_until_event=until_event,
            with_sizes=with_sizes,
        )
    if asked.split is not None or (asked.lived is not None and asked.lived.has_other_days):
        rails.check_lower_days(subject, "week" if asked.split is None else "day_split")
    if isinstance(aim, GainAim):
        if aim.fat_ceiling is not None:
            rails.refuse_fat_target(subject, "phase.fat_ceiling_fraction")
            rails.refuse_target(subject.sex, aim.fat_ceiling, "phase.fat_ceiling_fraction")
        return plan_gain(
            member, asked.start, aim, sources=asked.sources, pause_weeks=asked.pause_weeks, with_sizes=with_sizes
        )
    if asked.then.fat_ceiling is not None:
        rails.refuse_fat_target(subject, "return_to_gain.fat_ceiling_fraction")
        rails.refuse_target(subject.sex, asked.then.fat_ceiling, "return_to_gain.fat_ceiling_fraction")
    return plan_hold(member, asked.start, aim, asked.then, sources=asked.sources)


def _nearest_that_stands(
    asked: PlanAsked, member: Member, nearest: NearestSafe, until_event: int | None
) -> NearestSafe:
    """The nearest on each axis, such that asking for it is answered with a plan; a little less where it is not."""
    aim = asked.aim
    if not isinstance(aim, DeficitAim):
        return nearest
    no_goal = dict.fromkeys(GOALS)

    def stands(until: int | None = until_event, **moved: object) -> bool:
        again = msgspec.structs.replace(aim, **moved)
        try:
            check_weeks(again)
            trial = asked._replace(aim=again, sources=frozenset[UncertaintySource](), include=frozenset[PlanChoice]())
            plan = _plan(trial, member, until)
            return plan.is_feasible and bool(_told(trial, plan, _bodies(member, plan)).value)
        except (Refused, Contradiction):
            return False

    def stands_for(weeks: int) -> bool:
        kind = aim.kind_of(weeks)
        is_short = kind is DeficitKind.MINI_CUT
        # The goal and the weeks settle the deficit, and a short phase has no breaks.
        moved: dict[str, object] = {"deficit_kcal": None, "pace": Pace.STEADY} if aim.has_goal else {}
        moved |= {"break_every_weeks": None, "break_weeks": 1} if is_short else {}
        return stands(None, kind=kind, weeks=weeks, **moved)

    fat, weeks, kcal = nearest
    if fat:
        enough = (less for less in _less(fat, 0.01) if less >= LEAST_FAT_LOSS_KG)
        fat = next((less for less in enough if stands(**no_goal | {"fat_loss_kg": less})), None)
    if weeks:
        weeks = next((more for more in range(weeks, weeks + _MORE_WEEKS) if stands_for(more)), None)
    if kcal:
        moved = no_goal | {"pace": Pace.STEADY}
        kcal = next((less for less in _less(kcal, 1.0) if stands(**moved | {"deficit_kcal": less})), None)
    return NearestSafe(fat, weeks, kcal)


def _less(value: float, step: float) -> Iterator[float]:
    """A value, and the next smaller ones to try, in whole steps."""
    return (math.floor(share * value / step + 1e-9) * step for share in _SHARES)


def _bodies(member: Member, plan: Plan) -> BodiesAlong:
    """The bodies along the path of a plan; none where it has no path."""
    return BodiesAlong([], []) if plan.forecast is None else bodies_along(member.subject, plan.forecast)


def _told(asked: PlanAsked, plan: Plan, bodies: BodiesAlong) -> Cleared[list[PhasePlanned]]:
    """The phases of a plan, each of their days inside the rails. Raises ``Refused``."""
    path = plan.forecast
    if path is None:
        return nothing_told([])
    phases = _phases(asked, bodies, plan, path)
    each = [[week for planned in phases for week in _told_weeks(planned, along)] for along in bodies.each]
    return _clear(asked, phases, *each)


def _clear(asked: PlanAsked, value: _Value, *each: Sequence[ToldWeek]) -> Cleared[_Value]:
    """What is told, through the gate with the weeks that it tells, each of the ways they may go. Raises ``Refused``."""
    weeks, *also = each
    before, is_known = _deficit_before(asked), asked.history.is_known
    return clear(
        value,
        weeks,
        "phase",
        weeks_before=before.weeks,
        weeks_since=before.weeks_since,
        is_history_known=is_known,
        also=also,
    )


def _deficit_before(asked: PlanAsked) -> DeficitBefore:
    """The deficit that one from the start on may go on with: the same one, or one just before."""
    aim = asked.aim
    if not isinstance(aim, DeficitAim):
        return DeficitBefore()
    return DeficitBefore(float(aim.weeks_done)) if aim.weeks_done else asked.history.deficit_before


def _to_follow(asked: PlanAsked, subject: Subject, phases: Sequence[PhasePlanned]) -> PhaseToFollow | None:
    """The phase that was asked for, or the hold in its place; None where none is planned."""
    aim = asked.aim
    if not phases:
        return None
    kind = PhaseKind.GAIN if isinstance(aim, GainAim) else PhaseKind.MAINTENANCE
    if isinstance(aim, DeficitAim):
        kind = aim.kind.phase
    # A body at the ceiling of the gain it asks for is planned a hold, and is to be followed through it like any other.
    place = next((i for i, one in enumerate(phases) if one.phase.kind is kind), 0)
    is_gain = phases[place].phase.kind is PhaseKind.GAIN
    if not isinstance(aim, DeficitAim):
        # A gain ends at the ceiling that it was planned by, whether or not it was asked for.
        ceiling = gain_ceiling(subject, aim.fat_ceiling) if isinstance(aim, GainAim) and is_gain else None
        return PhaseToFollow(place, None, ceiling, 0.0)
    fat_loss = aim.fat_loss_kg
    if aim.has_goal and fat_loss is None:
        fat_loss = -phases[place].change.fat_kg.mean
    first = phases[place].phase.first
    return PhaseToFollow(place, fat_loss, None, _deficit_before(asked).counted(first))


def _sizes(asked: PlanAsked, subject: Subject, plan: Plan, bodies: BodiesAlong) -> Iterator[Cleared[SizeOffered]]:
    """The other sizes on offer whose every week is inside the rails, where there is a choice."""
    if len(plan.sizes) < 2:
        return
    for size in plan.sizes:
        along = bodies if size.path is plan.forecast else bodies_along(subject, size.path)
        with suppress(Refused):
            yield _clear(asked, size, *(told_weeks(size.phases, each) for each in along.each))


def _levers(
    asked: PlanAsked, subject: Subject, plan: Plan, bodies: BodiesAlong, phases: Sequence[PhasePlanned]
) -> Iterator[LeverOffered]:
    """Activity beside the fat loss of a plan, where it was asked for and nothing speaks against more of it."""
    if PlanChoice.LEVERS not in asked.include or not phases or plan.cut is None or _has_to_ask(subject):
        return
    for lever in levers_of(subject, plan, bodies, [week.least_kcal for week in phases[plan.cut].weeks]):
        refusals: list[RailAction] = []
        together = _cleared_use(asked, lever.together, refusals)
        instead = None if lever.instead is None else _cleared_use(asked, lever.instead, refusals)
        reasons = [lever.burns()]
        if instead is not None:
            reasons.append(lever.eat_more(instead.value))
        if together is not None:
            reasons.append(lever.lose_more(together.value))
        else:
            reasons.append(lever.too_much(is_eaten_for=lever.instead is not None and instead is None))
        leanest = together or instead
        if leanest is not None:
            reasons.append(lever.leaves(leanest.value))
        yield LeverOffered(lever.dose, instead, together, refusals, reasons)


def _cleared_use(asked: PlanAsked, use: LeverUse, refusals: list[RailAction]) -> Cleared[LeverUse] | None:
    try:
        return _clear(asked, use, use.told, *([] if use.told_kept is None else [use.told_kept]))
    except Refused as refusal:
        refusals += [action for action in refusal.actions if action not in refusals]
        return None


def _has_to_ask(subject: Subject) -> bool:
    """Whether a clinician has to be asked before more activity: cleared for a deficit is not cleared for that."""
    screening = subject.screening
    return screening is None or bool(screening.conditions or screening.medicines)


def _ask_first(subject: Subject, plan: Plan) -> list[Message]:
    return [say("LEVER_ASK_FIRST")] if plan.cut_phase is not None and _has_to_ask(subject) else []


def _told_weeks(planned: PhasePlanned, bodies: list[Subject]) -> Iterator[ToldWeek]:
    for one in planned.weeks:
        yield told_week(one.week, one.least_kcal, bodies)


def _phases(asked: PlanAsked, bodies: BodiesAlong, plan: Plan, path: Forecast) -> list[PhasePlanned]:
    points, balances = path.points(), path.energy_balances_kcal()
    return [
        PhasePlanned(
            phase,
            [
                _week(
                    asked,
                    phase,
                    WeekPlanned(week, balances[week.point - 1], points[week.point]),
                    [body for along in bodies.each for body in along[week.point - 1 : week.point + 1]],
                )
                for week in phase.weeks
            ],
            path.change(phase.first, phase.last_point),
        )
        for phase in plan.phases
    ]


def _week(asked: PlanAsked, phase: PlannedPhase, planned: WeekPlanned, on: Sequence[Subject]) -> WeekPlanned:
    """A week with its days, none of which breaks a rail for the bodies that it begins and ends with."""
    if asked.split is None and asked.lived is None:
        return planned
    aim, weeks_in_deficit, week = asked.aim, 0.0, planned.week
    is_deficit = isinstance(aim, DeficitAim) and phase.kind is aim.kind.phase
    if isinstance(aim, DeficitAim) and is_deficit:
        weeks_in_deficit = len(phase.weeks) + _deficit_before(asked).counted(phase.first)
    is_held = not is_deficit or week.element is Element.BREAK
    least = max(least_day(now, weeks_in_deficit, is_held=is_held) for now in on)
    if asked.lived is not None:
        planned = planned._replace(days=plan_days(asked.lived, week, least, on[0], aim.preference))
    else:
        assert asked.split is not None
        split = split_week(week.intake, asked.split.higher_days, asked.split.carbohydrate_shift, least.kcal)
        planned = planned._replace(split=split)
    return planned._replace(warned=[one for body in on for one in warn_lower_days(body, planned.fed)])


def _explain_days(asked: PlanAsked, subject: Subject, phases: list[PhasePlanned]) -> list[DaysPlanned]:
    """Every week's days; what is said of them is added to the guidance of each phase."""
    if asked.lived is None:
        return []
    found, aim = list[DaysPlanned](), asked.aim
    for phase in phases:
        weeks = [week.days for week in phase.weeks if week.days is not None]
        is_asked = (
            isinstance(aim, DeficitAim) and phase.phase.kind is aim.kind.phase and aim.protein_g_per_kg is not None
        )
        is_deficit = phase.phase.kind.is_deficit
        phase.phase.guidance.extend(
            notes_on_days(asked.lived, weeks, subject, is_protein_open=not is_asked, is_deficit=is_deficit)
        )
        found += weeks
    return found


def _simple_rules(cut: PlannedPhase, deficit_kcal: float, path: Forecast) -> SimpleRules:
    elements = [week.element for week in cut.weeks]
    full, eased = elements.count(Element.DEFICIT), elements.count(Element.EASING_IN)
    weeks = full + eased
    lower, upper = COMMON_LOSS_KG_PER_WEEK
    first, second = path.states[cut.first], path.states[cut.first + 1]
    return SimpleRules(
        static_loss_kg=deficit_kcal * 7 * (full + EASING_SHARE * eased) / STATIC_KCAL_PER_KG,
        common_loss_kg=(lower * weeks, upper * weeks),
        common_first_drop_kg=COMMON_FIRST_DROP_KG,
        forecast_first_drop_kg=float(first.weight_kg - second.weight_kg),
    )
