"""What answers say: every code in every language with the same parameters, and members' messages for members."""

import ast
import itertools
import random
import re
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
import steelyard
from fluent.runtime import FluentBundle, FluentResource
from fluent.syntax import FluentParser
from fluent.syntax import ast as tree
from in_process import Running
from steelyard.http.languages import ENGLISH, INSTEAD, LANGUAGES, MessageReader, english, parameters, preferred, said
from steelyard.http.languages.fluent_library import arguments
from steelyard.http.languages.parsing import LanguageFile, parameters_in
from steelyard.science.log.events import EventKind
from steelyard.science.measures.fat_combination import BodyFatMethod
from steelyard.science.person.screening import Condition, Medicine
from steelyard.science.phase import LeverKind, PhaseKind
from steelyard.science.rails.why import Why
from steelyard.science.register import say
from steelyard.science.season.reasons import Shut

OTHERS = [tag for tag in LANGUAGES if tag != "en"]
FEWER_WORDS = 25
# The codes that a parameter can be.
CODES: dict[str, list[str]] = {
    "why": [*Why],
    "shut": [*Shut],
    "condition": [*Condition, *Medicine],
    "kind": [*PhaseKind],
    "best": [*PhaseKind],
    "other": [*PhaseKind],
    "advice": ["gain", "maintenance"],
    "direction": ["less", "more"],
    "side": ["over", "under"],
    "event": [*EventKind],
    "verdict": ["faster", "slower"],
    **{name: ["yes", "no"] for name in ("creatine", "salt", "training", "illness", "travel", "explains")},
    "lever": [*LeverKind],
    "first": [*BodyFatMethod],
    "second": [*BodyFatMethod],
}
WORDS = {"method": "skinfolds", "equation": "mifflin", "fields": "hip_cm", "given_by": "A doctor", "reason": "Reviewed"}
COUNTS = {"weeks", "days", "more_days", "bridge_weeks", "cut_weeks", "cycles", "cuts", "phases", "count", "others",
          "dieting_weeks", "slow_weeks", "weighings", "limit_days", "step_kcal", "week", "day"}  # fmt: skip


def filled(code: str, rng: random.Random) -> dict[str, Any]:
    """Parameters of a message: each a code it can be, a date, a count or a number."""
    found: dict[str, Any] = {}
    for name in sorted(parameters(code)):
        if name in CODES:
            found[name] = rng.choice(CODES[name])
        elif name in WORDS:
            found[name] = WORDS[name]
        elif name == "date" or name.endswith("_date"):
            found[name] = (date(2026, 1, 1) + timedelta(days=rng.randrange(900))).isoformat()
        elif name == "weekday":
            found[name] = rng.randint(1, 7)
        elif name in COUNTS:
            found[name] = rng.choice([0, 1, 2, 3, 7, 14])
        else:
            found[name] = rng.choice([0, 1, 1.0, 2, 0.25, 12.5, 1500, rng.uniform(0, 3), rng.uniform(-3000, 3000)])
    return found


def samples(code: str) -> Iterator[dict[str, Any]]:
    """Many fillings of a message, each code of a parameter among them."""
    rng = random.Random(code)
    for name in sorted(parameters(code) & CODES.keys()):
        for value in CODES[name]:
            yield {**filled(code, rng), name: value}
    yield from (filled(code, rng) for _ in range(6))


@pytest.fixture(scope="module")
def english_by_the_library() -> FluentBundle:
    bundle = FluentBundle([ENGLISH.locale], use_isolating=False)
    bundle.add_resource(FluentResource(ENGLISH.source))
    return bundle


@pytest.mark.parametrize("tag", LANGUAGES)
def test_a_file_is_whole(tag: str) -> None:
    """Every code with the parameters of the English text, in the same groups, and nothing that cannot be read."""
    language = LANGUAGES[tag]
    assert language.codes == ENGLISH.codes
    assert language.audiences == ENGLISH.audiences
    astray = [code for code in ENGLISH.codes if parameters_in(language, code) != parameters(code)]
    assert not astray
    body = FluentParser().parse(language.source).body
    assert not [entry for entry in body if isinstance(entry, tree.Junk)]
    assert {entry.id.name for entry in body if isinstance(entry, tree.Message)} == language.entries.keys()


def test_an_entry_that_is_there_twice_is_noticed() -> None:
    with pytest.raises(ValueError, match="A is there twice"):
        _ = LanguageFile("xx", "language-name = X\nlanguage-locale = en\n\n## member\n\nA = 1\nA = 2\n").entries


def test_codes_are_those_that_the_code_says() -> None:
    """A code without a text would fail when it is said, and a text without a code is never said."""
    found: set[str] = set()
    root = Path(steelyard.__file__).parent
    for path in itertools.chain((root / "science").rglob("*.py"), (root / "answers").rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                found.add(node.value)
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "say":
                first = node.args[0]
                if isinstance(first, ast.Constant):
                    assert first.value in ENGLISH.codes, path
    # What is told in the place of another is said by nobody: it is chosen for those who may not hear the other.
    found.add(INSTEAD.code)
    assert not [code for code in ENGLISH.codes if code not in found and code.removesuffix("_SPARED") not in found]


@pytest.mark.parametrize("code", ENGLISH.codes)
def test_english_is_what_the_library_makes_of_it(code: str, english_by_the_library: FluentBundle) -> None:
    for params in samples(code):
        pattern = english_by_the_library.get_message(code).value
        assert pattern is not None
        text, errors = english_by_the_library.format_pattern(pattern, arguments(params))
        assert not errors
        assert english(say(code, **params)) == text


@pytest.mark.parametrize("tag", OTHERS)
def test_another_language_is_no_english(tag: str) -> None:
    for code in ENGLISH.codes:
        for params in samples(code):
            assert said(say(code, **params), tag) != english(say(code, **params))


def variants(entry: str) -> set[str]:
    return set(re.findall(r"^ *\*?\[(\w+)\]", entry, re.MULTILINE))


@pytest.mark.parametrize("tag", LANGUAGES)
def test_every_code_of_a_parameter_has_words(tag: str) -> None:
    """The default of a choice is for what is yet to come, not for a code that is known."""
    entries = LANGUAGES[tag].entries
    assert variants(entries["why"]) == {*Why}
    assert variants(entries["shut"]) == {*Shut}
    assert variants(entries["condition"]) == {*Condition, *Medicine, "other"}
    for name in ("phase", "phase-name", "best-phase", "other-phase"):
        assert variants(entries[name]) == {*PhaseKind}
    for name in ("first-method", "second-method", "repeated-method"):
        assert variants(entries[name]) == {*BodyFatMethod}
    assert variants(entries["event"]) == {*EventKind}
    assert variants(entries["weekday"]) == set("1234567")


MEMBERS = [code for code in ENGLISH.codes if ENGLISH.audiences[code] is MessageReader.MEMBER]


@pytest.mark.parametrize("tag", LANGUAGES)
@pytest.mark.parametrize("code", ["REVIEW_EATEN_UNDER_RAIL", "REVIEW_RAISED_BY_RAIL", "CAPPED_DEFICIT"])
def test_who_is_told_to_eat_more_is_not_told_that_more_would_harm(tag: str, code: str) -> None:
    """The same reasons say why a deficit stays small and why more is to be eaten: "eat at least 1,310: more would be
    too big a share" warns of the food that it asks for."""
    reasons = {said(say(code, **params), tag).split(": ", 1)[1] for params in samples(code)}
    assert len(reasons) > 10
    assert not [reason for reason in reasons if reason.split()[0].lower() in {"more", "mehr", "más", "lo"}]


@pytest.mark.parametrize("tag", LANGUAGES)
def test_members_get_short_messages_without_names_of_fields(tag: str) -> None:
    """Readable aloud: fewer than 25 words, no name in code, no plural in brackets, no unit that is not a word."""
    assert len(MEMBERS) > 150
    for code in MEMBERS:
        for params in samples(code):
            text = said(say(code, **params), tag)
            assert len(text.split()) < FEWER_WORDS, (code, len(text.split()), text)
            assert not re.search(r"`|_|\w\(\w{1,2}\)|/|\b[a-z]+_[a-z]+\b|m²|[{}]", text), text
            assert re.match(r"[A-ZÄÖÜÁÉÍÓÚÑ¿¡0-9−-]", text), text
            assert text.endswith((".", "?", "!")) is not code.endswith("_TITLE"), text


@pytest.mark.parametrize("tag", LANGUAGES)
def test_one_of_a_thing_is_not_several(tag: str) -> None:
    """`1 more days` is what this is against: whatever is counted has a form of its own for one."""
    several = {"en": r"\b1 (more )?(weeks|days|phases|cuts)\b", "de": r"\b1 (weitere )?(Wochen|Tage|Phasen)\b",
               "es": r"\b1 (semanas|días|fases)\b"}[tag]  # fmt: skip
    for code in ENGLISH.codes:
        params = filled(code, random.Random(code))
        ones = {name: 1 if name in COUNTS else value for name, value in params.items()}
        assert not re.search(several, said(say(code, **ones), tag)), code


def test_numbers_dates_and_plurals_by_locale() -> None:
    assert said(say("DEFICIT_ASKED", deficit_kcal=1234.6), "de").startswith("Du isst 1.235\u00a0kcal")
    assert english(say("DEFICIT_ASKED", deficit_kcal=1234.6)).startswith("You eat 1,235 kcal")
    assert "0,7\u00a0kg" in said(say("REBOUND", carried_kg=0.71), "de")
    assert "3 May 2026" in english(say("CHANGE_TIME", date="2026-05-03"))
    assert "3. Mai 2026" in said(say("CHANGE_TIME", date="2026-05-03"), "de")
    assert "1 more day." in english(say("TREND_TOO_EARLY", more_days=1))
    assert "1 weiteren Tag" in said(say("TREND_TOO_EARLY", more_days=1), "de")


def test_a_phase_that_people_would_need_longer_for_is_not_said_to_be_longer() -> None:
    """The same plan says to stop after its weeks at the latest."""
    compared = {"en": "the same loss would take 8 weeks", "de": "würde 8 Wochen dauern", "es": "llevaría 8 semanas"}
    message = say("PLANNED_AS_EATEN", percent=85.0, weeks=6, usual_weeks=8)
    for tag, words in compared.items():
        assert words in said(message, tag).replace("\u00a0", " "), tag


def test_a_range_is_not_said_to_be_chosen_that_is_the_usual_one() -> None:
    """It is said of the band that stands for whoever chose none, as well."""
    chosen = {"en": "chose", "de": "gewählt", "es": "elegiste"}
    assert not [tag for tag, word in chosen.items() if word in said(say("DECISION_NO_DUE"), tag)]


@pytest.mark.parametrize("code", ["WARNED_RECENT_CUT", "DECISION_CUT_TOO_RECENT", "DECISION_EVENT_TOO_NEAR"])
def test_nothing_is_0_weeks_away(code: str) -> None:
    params = filled(code, random.Random(code)) | {"weeks": 0, "limit_weeks": 8.0}
    for tag in LANGUAGES:
        assert not re.search(r"\b0\s", said(say(code, **params), tag)), tag


def test_what_protects_people_is_said_in_each_language() -> None:
    """Every refusal for a person's own state sends them to someone, and the caution says what it is not."""
    helpers = {
        "en": "physician|doctor|clinician|midwife|dietitian",
        "de": "Ärztin|Arzt|arztpraxis|ärztlich|Hebamme|Ernährungsfachkraft|Beratungsstelle",
        "es": "médic|matrona|dietista|profesional|consulta",
    }
    referring = [
        "REFUSED_UNDER_AGE", "REFUSED_OLDER_WITHOUT_CLEARANCE", "REFUSED_PREGNANCY", "REFUSED_BREASTFEEDING",
        "REFUSED_EATING_DISORDER", "REFUSED_DOUBT", "REFUSED_MEDICAL", "REFUSED_BMI", "REFUSED_REFEEDING",
        "REFUSED_FAT_TARGET", "REFUSED_LOGGED_LOSS", "SEE_MIDWIFE", "SEE_AFTER_BIRTH", "SEE_EATING_DISORDER_SERVICE",
        "SEE_FOR_MINORS", "WARNED_EATEN_FLOOR", "WARNED_EATEN_AVAILABILITY", "WARNED_LOGGED_LOSS",
        "WARNED_EATEN_FLOOR_URGENT", "WARNED_EATEN_AVAILABILITY_URGENT", "WARNED_LOGGED_LOSS_URGENT",
        "REVIEW_UNEXPLAINED_LOSS", "REVIEW_LOSS_BREASTFEEDING", "BODY_FAT_AT_MINIMUM", "NOT_MEDICAL_ADVICE",
        "DECISION_NO_DEFICIT",
        "DECISION_UNDER_AGE", "UNDER_AGE_NO_TARGET", "CHECK_IN_MISSED_PERIOD", "CHECK_IN_LATE_PERIOD",
        "CHECK_IN_LOW_MOOD",
    ]  # fmt: skip
    for tag, code in itertools.product(LANGUAGES, referring):
        assert re.search(helpers[tag], said(say(code, **filled(code, random.Random(1))), tag)), (tag, code)


@pytest.mark.parametrize(
    ("header", "tag"),
    [
        ("", "en"), ("*", "en"), ("de", "de"), ("de-AT,de;q=0.9,en;q=0.8", "de"), ("fr, en;q=0.1, de;q=0.5", "de"),
        ("en-US,en;q=0.9,de;q=0.8", "en"), ("de;q=0", "en"), ("xx", "en"), ("de;q=x, en", "en"), ("DE", "de"),
    ],
)  # fmt: skip
def test_a_preference_is_read(header: str, tag: str) -> None:
    assert preferred(header) == tag


async def test_it_is_served_whole(service: Running) -> None:
    """The texts are the service's own files, so that any client with a Fluent library says what the service says."""
    answer = (await service.client.get("/v1/messages")).json()
    assert [language["tag"] for language in answer["languages"]] == list(LANGUAGES)
    assert [language["fluent"] for language in answer["languages"]] == [one.source for one in LANGUAGES.values()]
    assert [message["code"] for message in answer["messages"]] == ENGLISH.codes
    assert {message["audience"] for message in answer["messages"]} == {*MessageReader}
    for message in answer["messages"]:
        assert message["params"] == sorted(parameters(message["code"]))


@pytest.mark.parametrize("tag", LANGUAGES)
def test_a_reason_reads_the_same_way_after_what_it_gives_a_reason_for(tag: str) -> None:
    """It follows `eat more` as well as `the deficit stays`: it speaks of food, never of `more` deficit."""
    for why in Why:
        raised = said(say("REVIEW_RAISED_BY_RAIL", correction_kcal=90, rule="fat_supply", why=why.value), tag)
        _, _, reason = raised.partition(": ")
        assert not re.search(r"\b(more|mehr|más)\b(?! adelante)", reason) or why is Why.BODY_OF_THAT_DAY, raised


@pytest.mark.parametrize("tag", LANGUAGES)
def test_a_unit_never_begins_a_line(tag: str) -> None:
    """Of English only what pictures and documents have: its messages stand in every answer with a plain space."""
    entries = LANGUAGES[tag].entries
    set_in_lines = [text for name, text in entries.items() if tag != "en" or not name.isupper()]
    assert not [text for text in set_in_lines if re.search(r"[}\d] (%|(kg|kcal|g|min)\b)", text)]


def test_a_percent_sign_stands_at_its_number_in_english() -> None:
    assert not [text for text in ENGLISH.entries.values() if re.search(r"[}\d]\s%", text)]


@pytest.mark.parametrize("tag", LANGUAGES)
def test_what_rounds_to_nothing_has_no_sign(tag: str) -> None:
    text = said(say("BRIEFING_SO_FAR", fat_kg=-0.05, lean_kg=-0.04, carried_kg=-0.0, balance_kcal=-0.5), tag)
    assert "-" not in text  # a half goes to the even digit
    assert "-1" in said(say("BRIEFING_SO_FAR", fat_kg=-0.01, lean_kg=0.0, carried_kg=0.0, balance_kcal=-0.6), tag)
