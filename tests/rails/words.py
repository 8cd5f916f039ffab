"""What an answer says in words: codes, texts, and the fields that speak of leanness."""

import re
from collections.abc import Iterator
from typing import Any

Json = dict[str, Any]

REFERRAL = re.compile(r"physician|doctor|clinician|dietitian|midwife|specialist|service", re.IGNORECASE)
URGENT = re.compile(r"urgent|today|at once|immediately|emergency|same day|without delay", re.IGNORECASE)
# Each refusal's own referral: whom that person should see.
OWN_REFERRAL = {
    "REFUSED_UNDER_AGE": re.compile(r"physician|doctor|clinician|p(a)?ediatric", re.IGNORECASE),
    "REFUSED_PREGNANCY": re.compile(r"midwife|obstetric|antenatal|maternity", re.IGNORECASE),
    "REFUSED_BREASTFEEDING": re.compile(r"midwife|health visitor|lactation|clinician|physician|doctor", re.IGNORECASE),
    "REFUSED_EATING_DISORDER": re.compile(r"eating[- ]disorder (service|team|clinic)", re.IGNORECASE),
    "REFUSED_MEDICAL": REFERRAL,
    "REFUSED_OLDER_WITHOUT_CLEARANCE": REFERRAL,
    "REFUSED_BMI": REFERRAL,
    "REFUSED_BODY_FAT": REFERRAL,
}
STOP_SIGNS = {
    "low mood": re.compile(r"\bmood\b", re.IGNORECASE),
    "binge eating": re.compile(r"\bbing", re.IGNORECASE),
    "a missed period": re.compile(r"\bperiod\b|\bcycle\b|menstru", re.IGNORECASE),
    "falling strength": re.compile(r"strength", re.IGNORECASE),
}
POUNDS = re.compile(r"pounds|\blbs?\b", re.IGNORECASE)
ASKS = re.compile(r"\?|\bcheck\b|\bconfirm\b|\bsure\b", re.IGNORECASE)
MEASURE = re.compile(r"\bmeasure\b[^.]*\b(fat|first)\b", re.IGNORECASE)
# Not to be said where a plan ends, or more is to be eaten than it tells.
KEEP_ON = re.compile(r"keep to the plan|nothing changes|nothing is changed|no need to eat more", re.IGNORECASE)
# Nor of what is eaten in a phase, or of its end, where it ends now.
GOES_ON = re.compile(r"from now on|you need until|the plan ends around|kcal a day more, to be safe", re.IGNORECASE)
SCALE = re.compile(r"logging scale|logging ratio|as logged|own log", re.IGNORECASE)
_LEANNESS = re.compile(
    r"\d[\d.]*\s*% body fat|body fat[^.]{0,60}\d[\d.]*\s*%|\blean(er|ness)\b|\btoo fat\b"
    # Nor of having fat measured, of what turns into fat, of weighing food, and of eating less.
    r"|\bbody fat was (estimated|only computed)\b|\b(adds|stored as|will be|becomes)\b[^.]*\bfat\b|\bbody fat needs\b"
    r"|\bweigh (and log (everything|cooking)|all food)\b|\beat less\b|\bsmaller surplus\b",
    re.IGNORECASE,
)
# Fields that set or tell a body fat to go for.
_TARGETS = {
    "target_fat_fraction", "cut_to_fat_fraction", "cut_at_fat_fraction", "fat_ceiling_fraction", "leanness",
    "band_lower_fat_fraction", "band_upper_fat_fraction", "counts_from_fat_fraction", "cut_due_fat_fraction",
    "leanness_price_kg", "weeks_above_band", "healthy_range",
}  # fmt: skip


_HOLDERS = (dict, list)  # single values, nearly all there is, are not looked into


def notes(value: Any) -> Iterator[Json]:
    """Every note, guard rail, refused strategy and field problem: what has a code and a text."""
    if isinstance(value, dict):
        if "code" in value and ("text" in value or "pointer" in value):
            yield {**value, "text": value.get("text") or value.get("detail", "")}
        value = value.values()
    for item in value:
        if isinstance(item, _HOLDERS):
            yield from notes(item)


def says(answer: Json, pattern: re.Pattern[str], where: Any = None) -> bool:
    """Whether any text of an answer, or of a part of it, matches."""
    part = answer if where is None else where
    return any(pattern.search(note["text"]) for note in notes(part)) or bool(pattern.search(part.get("detail", "")))


def has_code(answer: Json, part: str) -> bool:
    """Whether any code contains ``part``."""
    return any(part in note["code"] for note in notes(answer))


def rails(answer: Json) -> set[str]:
    """Ids of the rails that an answer reports, wherever it does."""
    return {rail["id"] for rail in guard_rails(answer)}


def guard_rails(value: Any) -> Iterator[Json]:
    """Every reported rail."""
    if isinstance(value, dict):
        yield from value.get("guard_rails") or []
        value = [item for key, item in value.items() if isinstance(item, _HOLDERS) and key != "guard_rails"]
    for item in value:
        if isinstance(item, _HOLDERS):
            yield from guard_rails(item)


def leanness(value: Any, place: str = "$") -> Iterator[str]:
    """Places where a body-fat target or leanness is spoken of. A refusal may name the target that it refuses."""
    if isinstance(value, dict):
        if str(value.get("code", "")).startswith("REFUSED_"):
            return
        for key, item in value.items():
            if key in _TARGETS and item not in (None, [], 0, 0.0):
                yield f"{place}.{key}"
            elif key == "text" and isinstance(item, str) and _LEANNESS.search(item):
                yield f"{place}.text: {item}"
            else:
                yield from leanness(item, f"{place}.{key}")
    elif isinstance(value, list):
        for i, item in enumerate(value):
            yield from leanness(item, f"{place}[{i}]")
