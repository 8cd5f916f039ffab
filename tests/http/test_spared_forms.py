"""What is made for minors, in pregnancy and with an eating disorder to look at or read: no body fat in any form.

The forms are those that the operations offer, each with each of its options and in each language: a new one is found
here. Data for programs, CSV as JSON, is the same for everybody.
"""

import csv
import io
import itertools
import re
from collections.abc import Iterator, Mapping
from datetime import date, timedelta
from functools import cache
from typing import Any

import msgspec
import pytest
from leanness_words import labelled
from pictured import Json
from request_people import CLEAR, LIFTER
from steelyard.http.app import OPERATIONS
from steelyard.http.languages import LANGUAGES
from steelyard.http.operation.operation import Operation
from steelyard.http.rendering.pictures.palette import PictureWidth, Theme, look_of
from steelyard.http.rendering.pictures.sheet import Drawing
from steelyard.http.rendering.wording import Words
from steelyard.http.wire.sparing import is_spared
from steelyard.science.season import ReadyMade

DATA = {"text/csv"}
START = date(2026, 3, 2)
MINOR: Json = {"profile": LIFTER | {"age_years": 16, "weight_kg": 70.0}, "screening": CLEAR}
PREGNANT: Json = {
    "profile": LIFTER
    | {"sex": "female", "weight_kg": 68.0, "height_cm": 168, "body_fat": {"fat_fraction": 0.27, "method": "dxa"}},
    "screening": CLEAR | {"is_pregnant": True},
}
BEFORE: Json = {"profile": LIFTER, "screening": CLEAR | {"eating_disorder": "past"}}
NOW: Json = {"profile": LIFTER, "screening": CLEAR | {"eating_disorder": "current"}}


def _logged(weight_kg: float) -> Json:
    """Four weeks of weights and food, and two readings of body fat, of which the change is split."""
    days = [START - timedelta(days=ago) for ago in range(28, 0, -1)]
    return {
        "log": {
            "weights": [{"date": str(day), "weight_kg": weight_kg + 0.02 * i} for i, day in enumerate(days)],
            "intakes": [{"date": str(day), "intake_kcal": 2700} for day in days],
        },
        "measurements": [
            {"date": str(day), "measurement": {"kind": "reading", "method": "dxa", "fat_fraction": fat}}
            for day, fat in ((days[0], 0.18), (days[-1], 0.185))
        ],
    }


def _path(weeks: int, intake_kcal: int) -> Json:
    return {
        "start_date": str(START),
        "question": {"kind": "path", "schedule": [{"weeks": weeks, "intake_kcal": intake_kcal}]},
    }


def _season(**more: Any) -> Json:
    return {"start_date": str(START), "horizon_weeks": 16} | more


_OWN: Json = {"kind": "own", "label": "mine", "surplus_kcal": 200, "cut_at_fat_fraction": 0.35}
_READY: list[Json] = [{"kind": "ready_made", "name": name} for name in ReadyMade]
# Neither of which is kept by a woman who gains.
_LIMITS: Json = {
    "most_weeks_above_band": 0,
    "band": {"lower_fat_fraction": 0.2, "upper_fat_fraction": 0.26},
    "events": [{"date": "2026-05-01", "most_fat_fraction": 0.22}],
}
_GAIN: Json = {"start_date": str(START), "phase": {"kind": "gain", "weeks": 12}}
_HOLD: Json = {"start_date": str(START), "phase": {"kind": "maintenance", "weeks": 6}}

# Requests of such people, by the operation whose answers are rendered.
ASKED: Mapping[str, list[Json]] = {
    "plan_phases": [
        MINOR | _GAIN,
        PREGNANT | _HOLD,
        PREGNANT | _GAIN,
        BEFORE | _GAIN,
        NOW | _GAIN,
        BEFORE | {"start_date": str(START), "phase": {"kind": "gain", "target_weight_kg": 84.0}},
    ],
    "forecast_intake": [MINOR | _path(8, 3300), PREGNANT | _path(8, 2800), BEFORE | _path(4, 3600)],
    "read_trend": [
        MINOR | _logged(70.0),
        PREGNANT | _logged(68.0),
        BEFORE | _logged(82.0),
        {"profile": MINOR["profile"], "log": {"weights": [{"date": str(START), "weight_kg": 70.0}]}},
    ],
    # Of the others no season is planned, since each has a band of body fat.
    "plan_season": [
        PREGNANT | _season(strategy=_OWN),
        PREGNANT | _season(strategy=_OWN | {"surplus_kcal": 0}),
        PREGNANT | _season(strategy=_OWN, limits=_LIMITS),
    ],
    "compare_strategies": [
        PREGNANT | _season(strategies=[*_READY, _OWN]),
        PREGNANT | _season(strategies=_READY, limits=_LIMITS),
    ],
    "optimise_season": [
        PREGNANT | _season(strategies_searched=500),
        PREGNANT | _season(strategies_searched=500, limits=_LIMITS),
    ],
}
RENDERED = [operation for operation in OPERATIONS if operation.formats]
FORMS = [
    pytest.param(operation, media_type, id=f"{operation.operation_id}-{media_type}")
    for operation in RENDERED
    for media_type in operation.formats
    if media_type not in DATA
]


@cache
def answered(operation_id: str, media_type: str) -> list[tuple[Any, Any]]:
    """What is asked for a form, and what is answered."""
    operation = next(one for one in RENDERED if one.operation_id == operation_id)
    found = []
    for asked in ASKED[operation.renders]:
        body = operation.formats[media_type].asked(msgspec.convert(asked, operation.body_type, strict=False))
        assert is_spared(body)
        found.append((body, operation.compute(body)))
    return found


def made(operation: Operation, media_type: str, language: str) -> Iterator[Any]:
    """Everything that a form can be, before a picture is drawn of it."""
    format_ = operation.formats[media_type]
    names = [option.name for option in format_.options]
    for values in itertools.product(*(option.values for option in format_.options)):
        for body, answer in answered(operation.operation_id, media_type):
            yield format_.make(body, answer, dict(zip(names, values, strict=True)), language)


def texts(form: Any) -> Iterator[str]:
    """Every text of a form: each cell of a table, each label of a picture, and what it says to those who do not see."""
    if isinstance(form, Drawing):
        yield from (form.title, form.description)
        yield from _strings(form.specification)
        return
    unfolded = form.decode().replace("\r\n ", "").replace("\\n", "\n").replace("\\,", ",")
    yield from (cell for line in unfolded.splitlines() for cell in line.split("|"))


def _strings(part: Any) -> Iterator[str]:
    if isinstance(part, str):
        yield part
    for inner in part.values() if isinstance(part, dict) else part if isinstance(part, list) else ():
        yield from _strings(inner)


def fat_in(form: Any, language: str) -> set[str]:
    """Where a form shows body fat: in words and figures, or drawn in the colour of it."""
    said = list(texts(form))
    assert len(said) > 3
    drawn = {look_of(theme, PictureWidth.PAGE, Words("en", spares=False)).fat for theme in Theme}
    return {found for text in said if (found := labelled(language, text)) is not None} | drawn.intersection(said)


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize(("operation", "media_type"), FORMS)
def test_no_form_tells_a_weight_that_leaves_out_what_grows(
    operation: Operation, media_type: str, language: str
) -> None:
    """Where an answer says that its forecast does, its texts and pictures name no weight that a scale should show."""
    format_ = operation.formats[media_type]
    chosen = {option.name: option.default for option in format_.options}
    told = [
        format_.make(body, answer, chosen, language)
        for body, answer in answered(operation.operation_id, media_type)
        if any(caution.code == "WEIGHT_RISES_IN_PREGNANCY" for caution in answer.cautions)
    ]
    assert bool(told) is (operation.renders in _FORECASTS)
    for form in told:
        assert not [text for text in texts(form) if re.search(r"\d\s?kg\b", text)]


# Whose answers say how the body goes on; a trend and a comparison tell no weight to come.
_FORECASTS = {"plan_phases", "forecast_intake", "plan_season", "optimise_season"}


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize(("operation", "media_type"), FORMS)
def test_no_form_shows_them_body_fat(operation: Operation, media_type: str, language: str) -> None:
    assert set().union(*(fat_in(form, language) for form in made(operation, media_type, language))) == set()


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize(("operation", "media_type"), FORMS)
def test_others_would_be_shown_it(
    operation: Operation, media_type: str, language: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The check above can fail: what is left out of each form is there for others, with the same answer."""
    monkeypatch.setattr("steelyard.http.wire.negotiation.is_spared", lambda body: False)
    assert any(fat_in(form, language) for form in made(operation, media_type, language))


@pytest.mark.parametrize("operation", RENDERED, ids=lambda operation: operation.operation_id)
def test_data_is_the_same_for_everybody(operation: Operation, monkeypatch: pytest.MonkeyPatch) -> None:
    """But for its two columns of words."""
    for media_type in DATA & operation.formats.keys():
        tables = [_figures(table) for table in made(operation, media_type, "en")]
        assert all("fat_mean_kg" in header for header, *_ in tables)
        with monkeypatch.context() as patched:
            patched.setattr("steelyard.http.wire.negotiation.is_spared", lambda body: False)
            assert [_figures(table) for table in made(operation, media_type, "en")] == tables


def _figures(table: bytes) -> list[list[str]]:
    return [row[:-2] for row in csv.reader(io.StringIO(table.decode(), newline=""), strict=True)]
