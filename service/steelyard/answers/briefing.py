"""What is a member, or their coach, told of a plan: as it starts, week by week, as it ends, and after it?

Codes and numbers only, as everywhere: words are a language's. The short one says what to do and what to expect of each
phase; the long one goes through the weeks, three lines each.
"""

from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from enum import StrEnum
from typing import NamedTuple

from steelyard.science.phase import RETURN_CHECK_WEEKS, PhaseKind
from steelyard.science.register import Message, say
from steelyard.science.review import LEAST_DAYS

NOTABLE_WATER_KG = 0.15  # what a member sees on no scale is less; judgement
_NOTABLE_KG = 0.05  # and what rounds to nothing
# Of a phase without fat loss that is longer, every so many weeks are told beside those with another intake.
_EVERY_WEEKS = 4
_REBOUND = "REBOUND"  # said where it is due: what the scale will do in maintenance
# The reasons that a short briefing tells too: how fast a gain is, and why something else is planned than was asked for.
_ALWAYS_TOLD = frozenset(
    {
        "GAIN_RATE_EXPECTED",
        "GOAL_SMALL",
        "GOAL_FITS_MINI_CUT",
        "HELD_AT_CEILING",
        "HELD_AFTER_CUT",
        "GAIN_NOT_NOW",
        "GAIN_OVER",
        "CUT_TOO_SMALL",
        "SEASON_HOLD",
        "SEASON_HOLD_UNCUT",
        "SEASON_HELD_AT_NEED",
    }
)
_FAT_SOLVED = "FAT_SOLVED"  # what a member has just been told, with its range
_RETURN_CHECKS = "RETURN_CHECKS"


class BriefingReader(StrEnum):
    """Who is told, and how much."""

    MEMBER = "member"
    MEMBER_SHORT = "member_short"
    COACH = "coach"
    COACH_SHORT = "coach_short"

    @property
    def is_coach(self) -> bool:
        """Whether a coach is told, in terms of the trade."""
        return self in (BriefingReader.COACH, BriefingReader.COACH_SHORT)

    @property
    def is_short(self) -> bool:
        """Whether the weeks are left out."""
        return self in (BriefingReader.MEMBER_SHORT, BriefingReader.COACH_SHORT)


class Range(NamedTuple):
    """A value, and the ends of its 80 % interval."""

    mean: float
    lower: float
    upper: float

    def params(self, name: str, unit: str = "kg") -> dict[str, float]:
        """As parameters of a message, to a tenth: ``fat_kg``, ``fat_lower_kg``, ``fat_upper_kg``."""
        ends = (("", self.mean), ("_lower", self.lower), ("_upper", self.upper))
        return {f"{name}{end}_{unit}": _tenth(value) for end, value in ends}


class DayToTell(NamedTuple):
    """A day of a week: 1 Monday to 7 Sunday, what it has, and whether it has training or more than a usual day."""

    weekday: int
    intake_kcal: int
    alcohol_g: int
    has_training: bool
    is_flexible: bool


class WeekToTell(NamedTuple):
    """A week: what is eaten a day, and the body at its end."""

    number: int
    start: date
    last_day: date
    intake_kcal: int
    protein_g: int
    carbohydrate_g: int
    fat_g: int
    higher: tuple[int, int, int] | None  # days a week, their intake, that of the others
    energy_balance_kcal: float
    weight_kg: Range
    fat_kg: float
    lean_kg: float
    carried_kg: float
    days: Sequence[DayToTell] = ()
    meal_g: int = 0  # protein of a meal, where days are told


class PhaseToTell(NamedTuple):
    """A phase: its weeks, the change over it, and what ends it early, guides through it and explains it."""

    kind: PhaseKind
    weeks: Sequence[WeekToTell]
    weight_kg: Range
    fat_kg: Range
    lean_kg: Range
    carried_kg: Range
    ends_early_when: Sequence[Message]
    guidance: Sequence[Message]
    reasons: Sequence[Message]
    cautions: Sequence[Message]


class Section(NamedTuple):
    """A heading and what stands under it."""

    title: Message
    said: list[Message]


def brief(
    phases: Sequence[PhaseToTell],
    cautions: Sequence[Message],
    reader: BriefingReader,
    sizes: Sequence[Message] = (),
    levers: Sequence[Message] = (),
) -> list[Section]:
    """What ``reader`` is told of the phases of a plan; every caution is told, to everyone, once.

    In the long ones, ``sizes``: what other sizes of the phase would do; ``levers``: what more activity would.
    """
    sections = [section for phase in phases for section in _phase(phase, reader)]
    if sizes and not reader.is_short:
        sections.append(Section(say("BRIEFING_SIZES_TITLE"), list(sizes)))
    if levers and not reader.is_short:
        sections.append(Section(say("BRIEFING_LEVERS_TITLE"), list(levers)))
    told = [message for section in sections for message in section.said]
    at_end: list[Message] = []
    for caution in [*cautions, *(caution for phase in phases for caution in phase.cautions)]:
        if caution not in told and caution not in at_end:
            at_end.append(caution)
    return [*sections, please_note(at_end)]


def no_plan_title() -> Message:
    """What anyone is told where no safe plan does what was asked."""
    return say("BRIEFING_NO_PLAN_TITLE")


def please_note(cautions: Sequence[Message]) -> Section:
    """What everyone is told at the end."""
    return Section(say("BRIEFING_CAUTIONS_TITLE"), list(cautions))


def _phase(phase: PhaseToTell, reader: BriefingReader) -> Iterator[Section]:
    first, last = phase.weeks[0], phase.weeks[-1]
    title = say("BRIEFING_PHASE_TITLE", kind=phase.kind.value, weekday=first.start.isoweekday(), date=_iso(first.start))
    start = [*_start(phase, reader)]
    yield Section(title, start)
    if not reader.is_short and len(phase.weeks) > 1:
        for week in _told_weeks(phase):
            yield Section(
                say("BRIEFING_WEEK_TITLE", week=week.number, date=_iso(week.start)), [*_week(phase, week, reader)]
            )
    if phase.kind.is_deficit:
        ends = say("BRIEFING_END_TITLE", kind=phase.kind.value, date=_iso(last.last_day))
        yield Section(ends, [*_end(phase, reader)])


def _start(phase: PhaseToTell, reader: BriefingReader) -> Iterator[Message]:
    first = phase.weeks[0]
    yield from _eat(first, reader)
    yield _scale(first, _water_gone(phase, first))
    if phase.kind.is_deficit:
        yield say("BRIEFING_JUDGE_FROM", day=LEAST_DAYS)
        if reader.is_coach:
            yield say(
                "BRIEFING_BALANCE", first_kcal=first.energy_balance_kcal, last_kcal=phase.weeks[-1].energy_balance_kcal
            )
        else:
            yield from _fat_to_lose(phase)
    elif phase.kind is PhaseKind.GAIN:
        checks = [first.start + timedelta(weeks=weeks) for weeks in RETURN_CHECK_WEEKS if weeks <= len(phase.weeks)]
        is_told_below = not reader.is_short and any(one.code == _RETURN_CHECKS for one in phase.guidance)
        if len(checks) == len(RETURN_CHECK_WEEKS) and not is_told_below:
            yield say("BRIEFING_CHECKS", first_date=_iso(checks[0]), second_date=_iso(checks[1]))
    yield from (caution for caution in phase.cautions if caution.code == _REBOUND)
    for one in phase.reasons:
        is_new = one.code != _FAT_SOLVED or reader.is_coach
        if is_new and (not reader.is_short or one.code in _ALWAYS_TOLD):
            yield one
    if not reader.is_short:
        yield from phase.guidance


def _told_weeks(phase: PhaseToTell) -> Iterator[WeekToTell]:
    """Every week of a fat loss; of another phase those with another intake, every fourth, and the last."""
    before: WeekToTell | None = None
    for week in phase.weeks:
        is_new = before is None or week.intake_kcal != before.intake_kcal
        if phase.kind.is_deficit or is_new or week.number % _EVERY_WEEKS == 0 or week is phase.weeks[-1]:
            yield week
        before = week


def _week(phase: PhaseToTell, week: WeekToTell, reader: BriefingReader) -> Iterator[Message]:
    """Three lines: what to eat, what the scale will say, what is behind it."""
    yield from _eat(week, reader)
    yield _scale(week, 0.0)
    fat, lean, carried = _so_far(phase, week)
    if reader.is_coach:
        yield say(
            "BRIEFING_SO_FAR",
            fat_kg=_tenth(fat),
            lean_kg=_tenth(lean),
            carried_kg=_tenth(carried),
            balance_kcal=week.energy_balance_kcal,
        )
    elif phase.kind.is_deficit:
        water = _water_back(week)
        if fat <= -_NOTABLE_KG and water >= NOTABLE_WATER_KG:
            yield say("BRIEFING_FAT_AND_WATER", fat_kg=-fat, water_kg=water)
        elif fat <= -_NOTABLE_KG:
            yield say("BRIEFING_FAT_GONE", fat_kg=-fat)
        else:
            yield say("BRIEFING_MOSTLY_WATER")
    elif phase.kind is PhaseKind.GAIN and lean >= _NOTABLE_KG and fat >= _NOTABLE_KG:
        yield say("BRIEFING_GAINED", lean_kg=lean, fat_kg=fat)
    else:
        yield say("BRIEFING_STEADY")


def _end(phase: PhaseToTell, reader: BriefingReader) -> Iterator[Message]:
    last = phase.weeks[-1]
    yield _scale_at_end(last, _water_back(last))
    if reader.is_coach:
        yield say(
            "BRIEFING_CHANGE",
            **phase.weight_kg.params("weight"),
            **phase.fat_kg.params("fat"),
            **phase.lean_kg.params("lean"),
            **phase.carried_kg.params("carried"),
        )
    yield from phase.ends_early_when


def _eat(week: WeekToTell, reader: BriefingReader) -> Iterator[Message]:
    if week.days and not reader.is_coach:
        yield say("BRIEFING_EAT_WEEK", week_kcal=7 * week.intake_kcal, intake_kcal=week.intake_kcal)
    elif reader.is_coach:
        yield say(
            "BRIEFING_MACROS",
            intake_kcal=week.intake_kcal,
            protein_g=week.protein_g,
            carbohydrate_g=week.carbohydrate_g,
            fat_g=week.fat_g,
        )
    else:
        yield say("BRIEFING_EAT", intake_kcal=week.intake_kcal, protein_g=week.protein_g)
    yield from _days(week)
    if week.higher is not None:
        days, higher, lower = week.higher
        yield say("BRIEFING_DAYS", days=days, higher_kcal=higher, lower_kcal=lower)


def _days(week: WeekToTell) -> Iterator[Message]:
    for day in week.days:
        on = {"weekday": day.weekday, "intake_kcal": day.intake_kcal}
        if day.alcohol_g:
            yield say("BRIEFING_DAY_ALCOHOL", **on, alcohol_g=day.alcohol_g)
        elif day.is_flexible:
            yield say("BRIEFING_DAY_FLEXIBLE", **on)
        elif day.has_training:
            yield say("BRIEFING_DAY_TRAINING", **on)
        else:
            yield say("BRIEFING_DAY", **on)
    if week.days:
        yield say("BRIEFING_MEALS", protein_g=week.protein_g, meal_g=week.meal_g)


def _scale(week: WeekToTell, water_kg: float) -> Message:
    """What the scale will say at the end of a week, and how much of the drop is water where that is notable."""
    on = {"weekday": week.last_day.isoweekday(), **week.weight_kg.params("weight")}
    if water_kg < NOTABLE_WATER_KG:
        return say("BRIEFING_SCALE", **on)
    return say("BRIEFING_SCALE_WATER", **on, water_kg=water_kg)


def _scale_at_end(week: WeekToTell, water_kg: float) -> Message:
    on = week.weight_kg.params("weight")
    if water_kg < NOTABLE_WATER_KG:
        return say("BRIEFING_END_SCALE", **on)
    return say("BRIEFING_END_SCALE_WATER", **on, water_kg=water_kg)


def _fat_to_lose(phase: PhaseToTell) -> Iterator[Message]:
    fat, weeks = phase.fat_kg, len(phase.weeks)
    least, most = -fat.upper, -fat.lower
    if least >= _NOTABLE_KG:
        yield say("BRIEFING_FAT", weeks=weeks, fat_kg=-fat.mean, fat_lower_kg=least, fat_upper_kg=most)
    elif -fat.mean >= _NOTABLE_KG:
        yield say("BRIEFING_FAT_UP_TO", weeks=weeks, fat_kg=-fat.mean, fat_upper_kg=most)


def _water_gone(phase: PhaseToTell, week: WeekToTell) -> float:
    return max(0.0, -_so_far(phase, week)[2]) if phase.kind.is_deficit else 0.0


def _water_back(week: WeekToTell) -> float:
    """What of a drop comes back at maintenance [kg]: not the water that went with a surplus before the phase."""
    return max(0.0, -week.carried_kg)


def _so_far(phase: PhaseToTell, week: WeekToTell) -> tuple[float, float, float]:
    """Changes of fat, lean tissue and carried mass from the start of the phase to the end of a week [kg]."""
    last = phase.weeks[-1]
    return (
        week.fat_kg - last.fat_kg + phase.fat_kg.mean,
        week.lean_kg - last.lean_kg + phase.lean_kg.mean,
        week.carried_kg - last.carried_kg + phase.carried_kg.mean,
    )


def _iso(day: date) -> str:
    return day.isoformat()


def _tenth(value: float) -> float:
    """As it is told; nothing has no sign."""
    return round(value, 1) + 0.0
