"""What speaks of leanness, in each language: body fat as a figure, being lean, having fat measured, weighing food,
eating less, weighing oneself daily. Dietary fat does not, nor lean tissue as such. For texts as a language's file has
them, and filled in.
"""

import re
from collections.abc import Mapping

# Parameters that hold body fat, tissue of which the rest is fat, or a body fat to go for.
FIGURES = re.compile(
    r"\$(fat_(kg|percent|lower_kg|upper_kg)|lean_(kg|share|lower_kg|upper_kg)|due_percent|target_percent|ceiling_percent"
    r"|end_percent|healthy_percent|ahead_kg)\b"
)
WORDS = {
    "en": re.compile(
        r"\d\s?% body fat|body fat[^.]{0,60}\d\s?%|\byour body fat\b"
        r"|\bbody[- ]fat (needs|measurement|was (estimated|only))"
        r"|\bmeasure (it \(|body fat)|\bkg (more |less )?(of )?fat\b|\b(more|extra|less|same|worth the) fat\b(?! you)"
        r"|\bhow lean\b"
        r"|\blean(er|ness)\b|\blean enough\b|\bas lean as\b|\btoo (fat|much body fat)\b|\bmuscle from fat\b"
        r"|\b(adds|stored as|will be|becomes)\b[^.]*\bfat\b|\bfat-loss phase\b|\bdietary energy less\b"
        r"|\bweigh (and log|all food|everything)\b(?! for)|\beat less\b(?! than)"
        r"|\bsmaller surplus\b|\bhalve the surplus\b|\bweigh (yourself )?(daily|every day)\b",
        re.IGNORECASE,
    ),
    "de": re.compile(
        r"\d\s?% Körperfett|Körperfett[^.]{0,60}\d\s?%"
        r"|\b(dein|deinem|deines) Körperfett\b(?! nicht)|\bKörperfett(messung| messen)"
        r"|\bkg (mehr |weniger )?Fett\b|\b(weniger|mehr|zusätzliches|dasselbe|gleich viel|dem) Fett\b|\bschlank"
        r"|\b(definierter|definiert genug|magerer|mager genug|zu dick|zu fett)\b|\bMuskeln nicht von Fett\b"
        r"|\b(setzt|als|wird)\b[^.]*\bFett an\b|\b[Ww]iege? (und protokolliere|alles|jede)"
        r"|\biss weniger\b|\bkleiner\w* Überschuss\b|\bhalbiere den Überschuss\b|\bwiege dich[^.]* täglich\b",
        re.IGNORECASE,
    ),
    "es": re.compile(
        r"\d\s?% de grasa|grasa(?! es solo el)[^.]{0,60}\d\s?%|(?<!proteína y )\btu grasa\b"
        r"|\b(mide|mídela|medir|medición)[^.]{0,20}\bgrasa\b"
        r"|\bkg (más |menos )?(de )?grasa\b|\b(más|menos|misma) grasa\b|\bdelgad|\bmás (definid|magr)[oa]\b"
        r"|\bmúsculo de la grasa\b|\bpesa (y apunta|toda|todo|también)|\bapunta[^.]{0,30}\bpesa\b"
        r"|\bcome menos\b|\bsuperávit más pequeño\b|\brecorta medio superávit\b|\bla mitad del superávit\b"
        r"|\bpésate (a diario|cada día|diariamente)\b",
        re.IGNORECASE,
    ),
}  # fmt: skip
# Reasons of rails are left out: those of body fat are exchanged for others (``spared``).
_SHARED = re.compile(r"\{ *((?!why\b)[a-z][a-z-]*) *\}")
_SPEAKING = re.compile(r"\[yes\][^\n]*\n")
_PLACEABLE = re.compile(r"\{ *(?:NUMBER\()?\$\w+[^{}]*\}")


def speaks(tag: str, text: str) -> str | None:
    """What in a text, filled in, speaks of leanness."""
    found = WORDS[tag].search(text)
    return found[0] if found else None


def template_speaks(tag: str, entries: Mapping[str, str], code: str) -> str | None:
    """The same of a message of a language's file, in the variant that is told to those who may hear nothing of it."""
    text = _SHARED.sub(lambda found: entries[found[1]].partition("=")[2], entries[code].partition("=")[2])
    spared = _SPEAKING.sub("", text)
    figure = FIGURES.search(spared)
    return figure[0] if figure else speaks(tag, _PLACEABLE.sub("7", spared))
