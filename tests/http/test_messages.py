"""The catalogue of messages: every code in every language, with the same parameters."""

import itertools
import re
from typing import Any

import msgspec
import pytest
from in_process import Running
from steelyard.http.endpoints.messages import ENGLISH_TEXTS, catalogue_of, list_messages, parameters, translations
from steelyard.science.measures.fat_combination import BodyFatMethod
from steelyard.science.person.person import Sex, TrainingStatus
from steelyard.science.person.screening import Condition, Medicine
from steelyard.science.phase.followed import PhaseKind
from steelyard.science.rails.guard_rails import deficit_limits, path_limit
from steelyard.science.rails.subject import Subject
from steelyard.science.rails.table import BODY_FAT, FAT_SUPPLY, LOSS

LANGUAGES = translations()


async def test_it_is_served_whole(service: Running) -> None:
    answer = (await service.client.get("/v1/messages")).json()
    assert [language["tag"] for language in answer["languages"]] == ["en", *LANGUAGES]
    assert [message["code"] for message in answer["messages"]] == sorted(ENGLISH_TEXTS)
    for message in answer["messages"]:
        assert message["texts"].keys() == {"en", "de"}
        assert message["texts"]["en"] == ENGLISH_TEXTS[message["code"]]
        for text in message["texts"].values():
            assert sorted(parameters(text)) == message["params"]


def test_a_translation_is_not_the_english_text() -> None:
    for translation in LANGUAGES.values():
        assert not [code for code, text in ENGLISH_TEXTS.items() if translation.texts[code] == text]


def test_what_protects_people_is_said_in_each_language() -> None:
    """Every refusal for a person's own state sends them to someone, and the caution says what it is not."""
    referring = {code for code, text in ENGLISH_TEXTS.items() if "physician or a registered dietitian" in text}
    assert len(referring) >= 5
    own = {"REFUSED_PREGNANCY": "Hebamme", "REFUSED_BREASTFEEDING": "Hebamme", "REFUSED_EATING_DISORDER": "Essstörung"}
    assert all(who in LANGUAGES["de"].texts[code] for code, who in own.items())
    for code in referring:
        text = LANGUAGES["de"].texts[code]
        assert "Ärztin" in text
        assert "Ernährungsfachkraft" in text
    assert "kein ärztlicher Rat" in LANGUAGES["de"].texts["NOT_MEDICAL_ADVICE"]


GERMAN = LANGUAGES["de"]
CODE, TEXT = next((code, text) for code, text in GERMAN.texts.items() if parameters(text))


@pytest.mark.parametrize(
    "texts",
    [
        {code: text for code, text in GERMAN.texts.items() if code != CODE},
        {**GERMAN.texts, "NO_SUCH_CODE": "Nichts."},
        {**GERMAN.texts, CODE: "Ohne Werte."},
        {**GERMAN.texts, CODE: TEXT + " {more}"},
    ],
    ids=["missing", "unknown", "without parameters", "with another parameter"],
)
def test_a_file_that_went_astray_is_noticed(texts: dict[str, str]) -> None:
    with pytest.raises(ValueError, match=r"^de: "):
        catalogue_of(ENGLISH_TEXTS, {"de": msgspec.structs.replace(GERMAN, texts=texts)})


def known(text: str) -> bool:
    """Whether the words of the language have this text, numbers aside."""
    patterns = [re.escape(word).replace(re.escape("{number}"), r"\d+(?:\.\d+)?") for word in GERMAN.words]
    return any(re.fullmatch(pattern, text) for pattern in patterns)


def test_words_that_are_parameters_are_translated() -> None:
    listed: list[Any] = [*Condition, *Medicine, *BodyFatMethod]
    assert not [value for value in listed if not known(value.replace("_", " "))]
    assert not [kind for kind in PhaseKind if not known(kind.value)]


def test_why_a_deficit_is_limited_is_translated() -> None:
    for sex, weeks in itertools.product(Sex, (4, 12)):
        subject = Subject(
            sex=sex,
            age_years=30.0,
            height_cm=175.0,
            weight_kg=80.0,
            fat_kg=18.0,
            training_status=TrainingStatus.NOVICE,
            maintenance_kcal=2600.0,
            resting_kcal=1700.0,
            exercise_kcal=200.0,
            screening=None,
        )
        limits = deficit_limits(subject, weeks)
        assert len(limits) > 3
        limits += [path_limit(rule, 300.0) for rule in (BODY_FAT, LOSS, FAT_SUPPLY)]
        assert not [limit.why for limit in limits if not known(limit.why)]


def test_the_english_templates_take_their_parameters() -> None:
    """Each form fits a number or a word, so that no answer can fail while it is said."""
    for text in ENGLISH_TEXTS.values():
        filled = {name: 1 if form in {"d", "+d"} else 1.5 if form else "x" for name, form in parameters(text).items()}
        assert text.format(**filled)
    assert len(list_messages.compute().messages) == len(ENGLISH_TEXTS)
