"""What is held at a rail, and the report of it that the answer lists."""

from ..person import TrainingStatus
from ..register import Message, say, traced
from .intake_floors import STEP_KCAL, LeastDay
from .largest_deficits import HISTORY_LIMIT, MEASURE_LIMIT, DeficitLimit
from .person_rails import may_hear_of_leanness
from .portions import usual_protein
from .protein import PROTEIN_DEFAULT_DEFICIT, PROTEIN_FLOOR_DEFICIT
from .subject import (
    RailAction,
    Subject,
    capping,
    warning,
)
from .table import (
    AVAILABILITY,
    DIETARY_FAT,
    FAT_SUPPLY,
    FLOOR,
    GAIN_RATE,
    GAIN_RATE_LIMIT,
    PROTEIN,
    UNANSWERED,
)
from .warnings import warn_kidneys


def capped(limit: DeficitLimit, asked_kcal: float, code: str = "CAPPED_DEFICIT") -> RailAction:
    """The report of a deficit held at a limit; ``code`` says so."""
    if limit is HISTORY_LIMIT:
        message = say("CAPPED_HISTORY_UNKNOWN", deficit_kcal=limit.deficit_kcal)
    elif limit is MEASURE_LIMIT:
        message = say("MEASURE_FIRST", deficit_kcal=limit.deficit_kcal)
    else:
        message = say(code, deficit_kcal=limit.deficit_kcal, rule=limit.rule, why=limit.why)
    return capping(limit.rule, message, limit.deficit_kcal, asked_kcal, "kcal/d")


def capped_for_bmi(limit: DeficitLimit, asked_kcal: float, weeks: int, tissue_kg: float) -> RailAction:
    """The report of a deficit that body mass index limits, with the ``weeks`` that the one asked for would fit into."""
    message = say(
        "CAPPED_DEFICIT_FOR_BMI",
        deficit_kcal=limit.deficit_kcal,
        rule=limit.rule,
        why=limit.why,
        tissue_kg=tissue_kg,
        asked_kcal=asked_kcal,
        weeks=weeks,
    )
    return capping(limit.rule, message, limit.deficit_kcal, asked_kcal, "kcal/d")


def without_room(limit: DeficitLimit, asked_kcal: float) -> RailAction:
    """The report of a limit that leaves no useful deficit. It is an answer, so that nothing is raised."""
    message = say("NO_SAFE_DEFICIT", rule=limit.rule, why=limit.why)
    return RailAction(limit.rule, "refused", max(0.0, limit.deficit_kcal), asked_kcal, "kcal/d", message)


RATIO_DECIDES = "RATIO_DECIDES"
# Rules that compare what is told with the body by how much of what is eaten is logged.
BY_RATIO = frozenset({FLOOR, AVAILABILITY, FAT_SUPPLY})


@traced
def ratio_decides(subject: Subject, *rules: str) -> list[Message]:
    """What is said where one of the rules decides by how much of what is eaten is logged: there is a way to know."""
    if not subject.scale.is_learnt or not BY_RATIO & {*rules}:
        return []
    return [say(RATIO_DECIDES, percent=100 * subject.scale.ratio)]


def with_ratio(subject: Subject, actions: list[RailAction]) -> list[RailAction]:
    """What rails did, and beside what one of them holds by the logging ratio that the ratio decides there."""
    held = [action for action in actions if action.action == "capped" and ratio_decides(subject, action.id)]
    if not held or not may_hear_of_leanness(subject.age_years, subject.screening):
        return actions
    first = held[0]
    (said,) = ratio_decides(subject, first.id)
    if any(action.message.code == said.code for action in actions):
        return actions
    return [*actions, warning(first.id, said, first.limit, first.observed, first.unit)]


@traced
def capped_gain(status: TrainingStatus, surplus_kcal: float, asked_share_per_week: float) -> RailAction:
    """The report of a surplus held under the ceiling on the rate of gain; ``asked_share_per_week`` is without it."""
    limit = GAIN_RATE_LIMIT[status]
    message = say("CAPPED_GAIN_RATE", surplus_kcal=surplus_kcal, percent=100 * limit)
    return capping(GAIN_RATE, message, limit, asked_share_per_week, "of body mass a week")


def raised_to_floor(told_kcal: float, wanted_kcal: float) -> list[RailAction]:
    """The report of a hold or a gain whose intake a floor raises."""
    if told_kcal <= wanted_kcal + STEP_KCAL:
        return []
    return [capping(FLOOR, say("RAISED_TO_FLOOR", intake_kcal=told_kcal), told_kcal, wanted_kcal, "kcal/d")]


def flexible_capped(least: LeastDay, asked_kcal: float, fits_kcal: float) -> RailAction:
    """The report of flexible days of a week held at what its other days can pay for."""
    message = say(
        "CAPPED_FLEXIBLE_DAYS",
        asked_kcal=asked_kcal,
        fits_kcal=fits_kcal,
        least_intake_kcal=least.kcal,
        rule=least.rule,
        why=least.why,
    )
    return capping(least.rule, message, fits_kcal, asked_kcal, "kcal a week")


@traced
def protein_in_deficit(subject: Subject, asked_g_per_kg: float | None) -> tuple[float, list[RailAction]]:
    """Protein to plan in a deficit [g/kg/d]: as asked, else the usual, and no less than its floor."""
    protein = usual_protein(subject, PROTEIN_DEFAULT_DEFICIT) if asked_g_per_kg is None else asked_g_per_kg
    actions = []
    if protein < PROTEIN_FLOOR_DEFICIT:
        message = say("CAPPED_PROTEIN", limit=PROTEIN_FLOOR_DEFICIT)
        actions.append(capping(PROTEIN, message, PROTEIN_FLOOR_DEFICIT, protein, "g/kg/d"))
        protein = PROTEIN_FLOOR_DEFICIT
    return protein, [*actions, *warn_kidneys(subject, protein)]


@traced
def cap_protein_to_room(given_g_per_kg: float, asked_g_per_kg: float) -> list[RailAction]:
    """The report of protein for which an intake has no room beside the least fat."""
    if given_g_per_kg >= asked_g_per_kg - 0.05:
        return []
    message = say("CAPPED_PROTEIN_ROOM", given=given_g_per_kg, asked=asked_g_per_kg)
    return [capping(DIETARY_FAT, message, given_g_per_kg, asked_g_per_kg, "g/kg/d")]


@traced
def gain_weeks_allowed(subject: Subject, asked_weeks: int) -> tuple[int, list[RailAction]]:
    """The weeks of gain that may follow a hold: none where screening was not answered."""
    if not asked_weeks or subject.screening is not None:
        return asked_weeks, []
    return 0, [capping(UNANSWERED, say("CAPPED_UNANSWERED"), 0, asked_weeks, "weeks of gain")]
