"""Who may diet, who may hear of leanness, and who must see a doctor first: every refusal at once."""

from collections.abc import Iterator

from ..person import Condition, EatingDisorder, Medicine, Screening, Sex
from ..register import Message, say, traced
from .subject import RailAction, Refused, Subject, as_under, refusing, stricter, warning
from .table import (
    ADULT_YEARS,
    AGE,
    BMI,
    BMI_FLOOR,
    BMI_WARN,
    BODY_FAT,
    DEFICIT,
    EATING_DISORDER,
    FAT_FRACTION_FLOOR,
    LOGGED_LOSS_LIMIT,
    LOSS,
    MEDICAL,
    OLDER_YEARS,
    PREGNANCY,
    REFEEDING,
    REFEEDING_BMI,
    REFEEDING_LOSS,
    REFEEDING_SHARE,
    UNANSWERED,
    YOUNG_ADULT_YEARS,
)

# Body fat is told to a hundredth of a percent: what reads as the least is the least.
_TOLD_FRACTION = 5e-5
# The last period is at 51 in the median, and past 60 in hardly anybody (from memory). It chooses words alone.
_PAST_MENOPAUSE_YEARS = 60.0


def check_answered(subject: Subject) -> None:
    """Raises ``Refused`` where screening was not answered: then nothing but maintenance is planned, not even a gain."""
    if subject.screening is None:
        raise Refused(*refusing(UNANSWERED, "screening", say("REFUSED_UNANSWERED")))


@traced
def check_person(subject: Subject, *before: Subject) -> list[RailAction]:
    """May this person run a deficit at all? Warnings; raises ``Refused`` with every rule that says no.

    ``before``: the same person as they were told earlier; what would have refused them then still does.
    """
    each = {action.message.code: (action, field) for now in (*before, subject) for action, field in _refusals(now)}
    found = list(each.values())
    if found:
        raise Refused(*found[0], *found[1:])
    return list(_warnings(subject))


def check_lower_days(subject: Subject, field: str) -> None:
    """Raises ``Refused`` where this person may run no deficit: a day that is lower than the others is one."""
    try:
        check_person(subject)
    except Refused as refused:
        lower = RailAction(DEFICIT, "refused", None, None, "", say("REFUSED_LOWER_DAYS"))
        raise Refused(*refused.all[0], *refused.all[1:], (lower, field)) from None


def with_person(refused: Refused, subject: Subject) -> Refused:
    """A refusal of what was asked, and beside it every rule that refuses this person any deficit."""
    try:
        check_person(subject)
    except Refused as person:
        codes = {action.message.code for action in refused.actions}
        more = [one for one in person.all if one[0].message.code not in codes]
        return Refused(*refused.all[0], *refused.all[1:], *more, doubts=refused.doubts)
    return refused


def _known_bmi(subject: Subject) -> float:
    """Body mass index [kg/m2] of the person, or of their log where that is clearly lighter."""
    lighter_kg = subject.logged.lighter_kg(subject.weight_kg)
    return subject.bmi if lighter_kg is None else min(subject.bmi, lighter_kg / subject.height_squared)


def _weight_field(subject: Subject) -> str:
    """What told the weight of that index."""
    return subject.weight_field if subject.logged.lighter_kg(subject.weight_kg) is None else "log"


def _refusals(subject: Subject) -> Iterator[tuple[RailAction, str]]:
    screening, age = subject.screening, subject.age_years
    if age < ADULT_YEARS:
        yield refusing(AGE, "age_years", say("REFUSED_UNDER_AGE", limit_years=ADULT_YEARS), ADULT_YEARS, age, "y")
    if screening is None:
        yield refusing(UNANSWERED, "screening", say("REFUSED_UNANSWERED"))
    else:
        if screening.is_pregnant:
            yield refusing(PREGNANCY, "screening.is_pregnant", say("REFUSED_PREGNANCY"))
        if screening.is_breastfeeding:
            yield refusing(PREGNANCY, "screening.is_breastfeeding", say("REFUSED_BREASTFEEDING"))
        if has_eating_disorder(subject):
            yield refusing(EATING_DISORDER, "screening.eating_disorder", say("REFUSED_EATING_DISORDER"))
        yield from _uncleared(subject)
    bmi = _known_bmi(subject)
    if bmi < BMI_FLOOR:
        message = say("REFUSED_BMI", bmi=as_under(bmi), limit=BMI_FLOOR)
        yield refusing(BMI, _weight_field(subject), message, BMI_FLOOR, bmi, "kg/m2")
    floor = stricter(FAT_FRACTION_FLOOR, subject.sex)
    if subject.fat_fraction <= floor + _TOLD_FRACTION:
        yield _too_lean(subject, floor)
    lost = subject.logged.loss_share
    if lost > LOGGED_LOSS_LIMIT:
        message = say("REFUSED_LOGGED_LOSS", percent=100 * lost, limit_percent=100 * LOGGED_LOSS_LIMIT)
        yield refusing(LOSS, "log", message, LOGGED_LOSS_LIMIT, lost, "of body mass a week")


def _too_lean(subject: Subject, floor: float) -> tuple[RailAction, str]:
    """What body fat refuses: without a figure to those to whom no leanness is spoken of."""
    if forbids_fat_target(subject) is not None:
        return refusing(BODY_FAT, "body_fat", say("REFUSED_BODY_FAT", speaks="no"))
    figures = {"fat_percent": 100 * subject.fat_fraction, "limit_percent": 100 * floor}
    message = say("REFUSED_BODY_FAT", speaks="yes", **figures)
    return refusing(BODY_FAT, "body_fat", message, floor, subject.fat_fraction, "1")


def _uncleared(subject: Subject) -> Iterator[tuple[RailAction, str]]:
    screening, age = subject.screening, subject.age_years
    if screening is None or is_cleared(subject):
        return
    listed: list[Condition | Medicine] = [*screening.conditions, *screening.medicines]
    if listed:
        field = "screening.conditions" if screening.conditions else "screening.medicines"
        message = say("REFUSED_MEDICAL", condition=listed[0].value, others=len(listed) - 1)
        yield refusing(MEDICAL, field, message)
    if age >= OLDER_YEARS:
        message = say("REFUSED_OLDER_WITHOUT_CLEARANCE", limit_years=OLDER_YEARS)
        yield refusing(AGE, "age_years", message, OLDER_YEARS, age, "y")
    if screening.clearance is not None and (listed or age >= OLDER_YEARS):
        message = say("REFUSED_CLEARANCE_WITHOUT_WORDS")
        yield refusing(MEDICAL, "screening.clinical_clearance", message)


def _warnings(subject: Subject) -> Iterator[RailAction]:
    screening, age, bmi = subject.screening, subject.age_years, _known_bmi(subject)
    assert screening is not None
    if screening.eating_disorder is EatingDisorder.UNSURE:
        yield warning(EATING_DISORDER, say("WARNED_EATING_DISORDER_DOUBT"))
    listed = bool(screening.conditions or screening.medicines)
    clearance = screening.clearance
    if clearance is not None and (listed or age >= OLDER_YEARS):
        cleared = say("WARNED_CLEARED", given_by=clearance.given_by, reason=clearance.reason)
        yield warning(MEDICAL if listed else AGE, cleared)
    if age < YOUNG_ADULT_YEARS:
        yield warning(AGE, say("WARNED_YOUNG_ADULT"), YOUNG_ADULT_YEARS, age, "y")
    if bmi < BMI_WARN:
        yield warning(BMI, say("WARNED_BMI", bmi=bmi), BMI_WARN, bmi, "kg/m2")


def is_cleared(subject: Subject) -> bool:
    """Whether a supervising professional cleared a deficit, in words."""
    screening = subject.screening
    return screening is not None and screening.clearance is not None and screening.clearance.is_in_words


def has_eating_disorder(subject: Subject) -> bool:
    """Now or before."""
    return subject.screening is not None and _has_eating_disorder(subject.screening)


def _has_eating_disorder(screening: Screening) -> bool:
    return screening.eating_disorder in (EatingDisorder.CURRENT, EatingDisorder.PAST)


def is_in_doubt(subject: Subject) -> bool:
    """Whether somebody was unsure about an eating disorder: until that is settled no deficit is recommended."""
    return subject.screening is not None and subject.screening.eating_disorder is EatingDisorder.UNSURE


def check_doubt(subject: Subject) -> None:
    """Raises ``Refused`` where a doubt about an eating disorder was not answered: no deficit is then recommended."""
    if is_in_doubt(subject):
        raise Refused(*refusing(EATING_DISORDER, "screening.eating_disorder", say("REFUSED_DOUBT")))


def may_not_diet(subject: Subject) -> bool:
    """Whether intake may not go under need: minors, in pregnancy, breastfeeding, eating disorder, unscreened."""
    screening = subject.screening
    return (
        screening is None
        or subject.age_years < ADULT_YEARS
        or screening.is_pregnant
        or screening.is_breastfeeding
        or has_eating_disorder(subject)
    )


def whom_to_see(subject: Subject) -> list[Message]:
    """What those whose intake may not be lowered are told of whom to see, as age and screening say who they are."""
    return [
        say(code)
        for code, applies in (
            ("SEE_FOR_MINORS", subject.age_years < ADULT_YEARS),
            ("SEE_MIDWIFE", subject.is_pregnant),
            ("SEE_AFTER_BIRTH", subject.is_breastfeeding),
            ("SEE_EATING_DISORDER_SERVICE", has_eating_disorder(subject)),
        )
        if applies
    ]


def needs_doctor(subject: Subject) -> bool:
    """Whether no intake may be told at all: starved, or underweight and eating next to nothing or losing fast."""
    bmi, logged = _known_bmi(subject), subject.logged
    if bmi < REFEEDING_BMI:
        return True
    eats_little = logged.eaten_kcal is not None and logged.eaten_kcal < REFEEDING_SHARE * subject.resting_kcal
    return bmi < BMI_FLOOR and (eats_little or logged.loss_share > REFEEDING_LOSS)


@traced
def urgent_referral(subject: Subject) -> list[Message]:
    """What somebody who needs a doctor now is told, beside an estimate."""
    return [say("REFUSED_REFEEDING", bmi=_known_bmi(subject))] if needs_doctor(subject) else []


def is_underweight(subject: Subject) -> bool:
    """Whether this is an underweight adult; minors have percentiles of their own, by which nobody here judges."""
    return _is_underweight(_known_bmi(subject), subject.age_years)


def _is_underweight(bmi: float, age_years: float) -> bool:
    return bmi < BMI_FLOOR and age_years >= ADULT_YEARS


@traced
def way_from_underweight(subject: Subject, then: Subject | None = None) -> list[Message]:
    """What an underweight adult is told of the way from there, whatever was asked; or who is one by ``then``."""
    if is_underweight(subject):
        return [say("UNDERWEIGHT")]
    return [say("UNDERWEIGHT_AHEAD")] if then is not None and is_underweight(then) else []


@traced
def told_of_low_weight(bmi: float, age_years: float) -> list[Message]:
    """What is told beside a body of which no more than height and weight is known: who needs a doctor, who to gain."""
    urgent = [say("REFUSED_REFEEDING", bmi=bmi)] if bmi < REFEEDING_BMI else []
    return [*urgent, *([say("UNDERWEIGHT")] if _is_underweight(bmi, age_years) else [])]


def check_urgent(subject: Subject) -> None:
    """Raises ``Refused`` where a doctor must see the person before any intake is told."""
    for message in urgent_referral(subject):
        raise Refused(
            *refusing(REFEEDING, _weight_field(subject), message, REFEEDING_BMI, _known_bmi(subject), "kg/m2")
        )


def forbids_fat_target(subject: Subject) -> str | None:
    """The rule that forbids a body-fat target, for a deficit or a gain; None where none does."""
    if subject.age_years < ADULT_YEARS:
        return AGE
    return EATING_DISORDER if has_eating_disorder(subject) else None


def may_hear_of_leanness(age_years: float, screening: Screening | None) -> bool:
    """Whether leanness may be spoken of, and food be weighed: not to minors, in pregnancy, with an eating disorder."""
    if age_years < ADULT_YEARS:
        return False
    return screening is None or not (screening.is_pregnant or _has_eating_disorder(screening))


def periods_of(subject: Subject) -> str:
    """Whether somebody may have periods, as texts ask it: `yes`, or `no` of men and past menopause."""
    return "no" if subject.sex is Sex.MALE or subject.age_years >= _PAST_MENOPAUSE_YEARS else "yes"


@traced
def refuse_fat_target(subject: Subject, field: str) -> None:
    """Raise ``Refused`` where a body-fat target is asked for and a rule forbids any."""
    rule = forbids_fat_target(subject)
    if rule is not None:
        raise Refused(*refusing(rule, field, say("REFUSED_FAT_TARGET")))
