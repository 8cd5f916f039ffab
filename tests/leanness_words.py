"""What speaks of leanness, in each language: body fat as a figure, being lean, having fat measured, weighing food,
eating less, weighing oneself daily. Dietary fat does not, nor lean tissue as such. For texts as a language's file has
them, and filled in: sentences, and what pictures and documents have beside them.
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
# Labels and figures: body fat, the band it is to stay in, and "fat" alone or with a number that is no dietary fat. The
# names of guard rails have no figure, nor has the reason that it was measured.
LABELS = {
    "en": re.compile(
        r"(?<!low )(?<!asked of )\bbody fat\b(?! was)|\bfat gained\b|\b(\d|kg|loss) of fat\b"
        r"|\bfat [−+-]?\d[\d.,]*\b(?! ?g\b)|^ *(\*?\[\w+\] )?fat( kg)? *$|\b(above the|chosen) band\b",
        re.IGNORECASE | re.MULTILINE,
    ),
    "de": re.compile(
        r"(?<!wenig )(?<!ans )\bKörperfett\b(?! (ist nicht )?gemessen)|\bFett dazu\b|\b(\d|kg) Fett\b"
        r"|\bFett [−+-]?\d[\d.,]*\b(?! ?g\b)|^ *(\*?\[\w+\] )?Fett( kg)? *$"
        r"|\b(über dem Bereich|gewählten Bereichs)\b",
        re.IGNORECASE | re.MULTILINE,
    ),
    "es": re.compile(
        r"(?<!poca )\bgrasa corporal\b|\bgrasa ganada\b|\b(\d|kg|clara) de grasa\b"
        r"|\bgrasa [−+-]?\d[\d.,]*\b(?! ?g\b)|^ *(\*?\[\w+\] )?grasa( kg)? *$"
        r"|\b(por encima del intervalo|intervalo elegido)\b",
        re.IGNORECASE | re.MULTILINE,
    ),
}  # fmt: skip
OF_FORMS = ("picture-", "document-")
# Reasons of rails are left out: those of body fat are exchanged for others (``spared``).
_SHARED = re.compile(r"\{ *((?!why\b)[a-z][a-z-]*) *\}")
_SPEAKING = re.compile(r"\[yes\][^\n]*\n")
_CHOICE = re.compile(r"\{ *\$\w+ *->")  # whose variants are texts as well
_PLACEABLE = re.compile(r"\{ *(?:NUMBER\()?\$\w+[^{}]*\}")


def speaks(tag: str, text: str) -> str | None:
    """What in a text, filled in, speaks of leanness."""
    found = WORDS[tag].search(text)
    return found[0] if found else None


def labelled(tag: str, text: str) -> str | None:
    """What in a picture's or a document's text, filled in, tells of body fat."""
    found = LABELS[tag].search(text.replace("\u00a0", " "))
    return found[0] if found else speaks(tag, text)


def is_told(name: str) -> bool:
    """Whether an entry of a language's file is a message, or a text of pictures and documents."""
    return name.isupper() or name.startswith(OF_FORMS)


def template_speaks(tag: str, entries: Mapping[str, str], code: str) -> str | None:
    """The same of an entry of a language's file, in the variant that is told to those who may hear nothing of it."""
    text = _SHARED.sub(lambda found: entries[found[1]].partition("=")[2], entries[code].partition("=")[2])
    spared = _CHOICE.sub("", _SPEAKING.sub("", text))
    figure = FIGURES.search(spared)
    found = labelled if code.startswith(OF_FORMS) else speaks
    return figure[0] if figure else found(tag, _PLACEABLE.sub("7", spared))
