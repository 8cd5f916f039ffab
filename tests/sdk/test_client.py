"""Both clients against a live server, by one suite."""

import copy
import inspect
import json
import os
import re
import subprocess
import sys
from datetime import timedelta
from importlib import metadata
from pathlib import Path
from typing import Any

import httpx
import pytest
from examples.local_service import ROOT, LocalService, local_service
from sdk_caller import KEY, PROFILE, SCREENING, START, Caller, catalogue_answer
from steelyard_client import (
    AsyncSteelyard,
    BadRequest,
    BodyTooLarge,
    ConnectionFailed,
    Contradiction,
    GuardRailRefusal,
    InvalidRequest,
    Maintenance,
    Methods,
    NotConfigured,
    NotFound,
    Plan,
    RetryPolicy,
    Steelyard,
    Trend,
    Unauthorized,
    models,
)
from steelyard_client.generated.api.plans import plan_phases as generated_plan_phases
from steelyard_client.generated.client import AuthenticatedClient

CONTRACT = json.loads((ROOT / "contracts" / "openapi-v1.json").read_text(encoding="utf-8"))
OTHER_FORMS = {
    operation["operationId"]
    for path, methods in CONTRACT["paths"].items()
    for operation in methods.values()
    if path.endswith(("/picture", "/document"))
}
OPERATION_IDS = [
    operation["operationId"]
    for methods in CONTRACT["paths"].values()
    for operation in methods.values()
    if operation["operationId"] not in OTHER_FORMS
]
EXAMPLES = {
    f"{operation['operationId']}-{name}": (operation["operationId"], path, example["value"])
    for path, methods in CONTRACT["paths"].items()
    for operation in methods.values()
    if operation["operationId"] not in OTHER_FORMS
    for name, example in operation.get("requestBody", {"content": {}})["content"]
    .get("application/json", {})
    .get("examples", {})
    .items()
}
WEEKS: dict[str, Any] = {"kind": "mini_cut", "weeks": 4}


def log(days: int = 21) -> dict[str, Any]:
    first = START - timedelta(days=days)
    return {
        "weights": [{"date": first + timedelta(days=i), "weight_kg": 70.4 - 0.02 * i} for i in range(days)],
        "intakes": [{"date": first + timedelta(days=i), "intake_kcal": 2200} for i in range(days)],
    }


async def test_maintenance(caller: Caller) -> None:
    answer = await caller("estimate_maintenance", profile=PROFILE, log=log())
    assert isinstance(answer, Maintenance)
    assert answer.maintenance_kcal.lower < answer.maintenance_kcal.mean < answer.maintenance_kcal.upper
    assert 0 < answer.contribution.log_share < 1
    assert any(row.is_used for row in answer.equations)
    assert answer.cautions


async def test_plan(caller: Caller) -> None:
    lean = {**PROFILE, "body_fat": {"fat_fraction": 0.23, "method": "skinfolds"}}  # enough to gain after the cut
    answer = await caller("plan_phases", profile=lean, screening=SCREENING, start_date=START, phase=WEEKS)
    assert isinstance(answer, Plan)
    assert answer.feasible
    assert [phase.kind for phase in answer.phases] == ["mini_cut", "maintenance", "gain"]
    first = answer.phases[0]
    assert first.start_date == START
    assert first.end_date == START + timedelta(weeks=4) - timedelta(days=1)
    assert first.change.fat_kg.mean < 0
    assert answer.cautions


@pytest.mark.parametrize(
    ("format", "begins"), [("calendar", "BEGIN:VCALENDAR\r\n"), ("csv", "phase,week,"), ("markdown", "# Plan from ")]
)
async def test_plan_as_text(caller: Caller, format: str, begins: str) -> None:
    asked = {"profile": PROFILE, "screening": SCREENING, "start_date": START, "phase": WEEKS}
    text = await caller("plan_document", format=format, **asked)
    assert text.startswith(begins)
    assert "not medical advice" in text.replace("\r\n ", "")


async def test_plan_as_a_briefing(caller: Caller) -> None:
    asked = {"profile": PROFILE, "screening": SCREENING, "start_date": START, "phase": WEEKS}
    assert (await caller("plan_briefing", **asked)).startswith("Mini-cut from ")
    german = await caller("plan_briefing", reader="coach_short", language="de-AT", **asked)
    assert german.startswith("Mini-Cut ab ")
    with pytest.raises(ValueError, match="member, member_short, coach, coach_short"):
        await caller("plan_briefing", reader="dog", **asked)


async def test_seasons_as_text(caller: Caller) -> None:
    path = {"kind": "path", "schedule": [{"weeks": 2, "intake_kcal": 2600}]}
    forecast = {"profile": PROFILE, "screening": SCREENING, "start_date": START, "question": path}
    assert b"In 2 weeks, on " in await caller("forecast_picture", **forecast)
    season = {"profile": PROFILE, "screening": SCREENING, "start_date": START, "horizon_weeks": 12}
    slow = {"kind": "ready_made", "name": "slow_gain_no_cut"}
    assert "SUMMARY;LANGUAGE=en:Gain" in await caller("season_document", format="calendar", strategy=slow, **season)
    assert "Aufbau ab " in await caller("season_briefing", language="de", strategy=slow, **season)
    best = await caller("optimum_document", format="markdown", strategies_searched=500, **season)
    assert "## What more body fat at the end buys" in best  # from far above the band


async def test_a_format_that_is_none_and_a_refusal_as_text(caller: Caller) -> None:
    asked = {"profile": PROFILE, "start_date": START, "phase": WEEKS}
    with pytest.raises(ValueError, match="calendar, csv, markdown"):
        await caller("plan_document", format="pdf", **asked)
    with pytest.raises(GuardRailRefusal):
        await caller("plan_document", format="markdown", **asked)


@pytest.mark.parametrize(
    ("format", "begins"), [("svg", b"<svg "), ("png", b"\x89PNG\r\n"), ("vega_lite", b'{"$schema":')]
)
async def test_plan_as_a_picture(caller: Caller, format: str, begins: bytes) -> None:
    asked = {"profile": PROFILE, "screening": SCREENING, "start_date": START, "phase": WEEKS}
    light, dark = [await caller("plan_picture", format=format, theme=theme, **asked) for theme in ("light", "dark")]
    assert light.startswith(begins)
    assert dark.startswith(begins)
    assert light != dark


async def test_a_picture_for_a_phone_in_another_language(caller: Caller) -> None:
    asked = {"profile": PROFILE, "screening": SCREENING, "start_date": START, "phase": WEEKS}
    drawn = await caller("plan_picture", width="phone", language="de", **asked)
    assert "Wochen; die Waage zeigt" in drawn.decode().replace("\u00a0", " ")
    assert len(drawn) != len(await caller("plan_picture", language="de", **asked))


async def test_other_answers_as_pictures_and_what_is_none(caller: Caller) -> None:
    assert b"Weight log from" in await caller("trend_picture", profile=PROFILE, log=log())
    season = {"profile": PROFILE, "screening": SCREENING, "start_date": START, "horizon_weeks": 12}
    slow, own = {"kind": "ready_made", "name": "slow_gain_no_cut"}, {"kind": "own", "surplus_kcal": 90}
    assert b"in 12 weeks " in await caller("season_picture", strategy=slow, **season)
    assert b"Most lean tissue in 12 weeks: " in await caller("comparison_picture", strategies=[slow, own], **season)
    for wrong in ({"format": "gif"}, {"theme": "sepia"}, {"width": "wall"}):
        with pytest.raises(ValueError, match="must be"):
            await caller("trend_picture", profile=PROFILE, log=log(), **wrong)
    with pytest.raises(GuardRailRefusal):
        await caller("plan_picture", profile=PROFILE, start_date=START, phase=WEEKS)


async def test_trend(caller: Caller) -> None:
    answer = await caller("read_trend", profile=PROFILE, log=log())
    assert isinstance(answer, Trend)
    assert len(answer.days.date) == len(answer.days.weight_kg.mean) == 21
    assert answer.days.date[-1] == answer.as_of_date == START - timedelta(days=1)


async def test_methods(caller: Caller) -> None:
    methods = await caller("list_methods")
    assert isinstance(methods, Methods)
    plan = await caller("plan_phases", profile=PROFILE, screening=SCREENING, start_date=START, phase=WEEKS)
    assert {methods.entry(method_id).id for method_id in plan.methods} == set(plan.methods)
    with pytest.raises(KeyError):
        methods.entry("no_such_method")


@pytest.mark.parametrize(("method", "path", "request_"), EXAMPLES.values(), ids=EXAMPLES.keys())
async def test_nothing_of_an_answer_is_lost(
    caller: Caller, live: LocalService, method: str, path: str, request_: dict[str, Any]
) -> None:
    """The contract's examples: the client's answer, turned back to JSON, is what the service sent."""
    answer = await caller(method, **request_)
    with httpx.Client(transport=httpx.HTTPTransport()) as http:
        sent = http.post(f"{live.url}{path}", json=request_, headers={"Authorization": f"Bearer {live.key}"})
    assert answer.to_dict() == sent.json()
    assert answer.cautions
    assert len(repr(answer)) < 200


async def test_models_dictionaries_and_texts_say_the_same(caller: Caller) -> None:
    as_models = await caller(
        "plan_phases",
        profile=models.Profile.from_dict(copy.deepcopy(dict(PROFILE))),
        screening=models.Screening.from_dict(copy.deepcopy(dict(SCREENING))),
        start_date=START,
        phase=models.MiniCut(kind="mini_cut", weeks=4),
    )
    mixed = await caller(
        "plan_phases",
        profile={**PROFILE, "sex": models.Sex.FEMALE, "training": models.Training.from_dict(PROFILE["training"])},
        screening=SCREENING,
        start_date=START.isoformat(),
        phase=WEEKS,
    )
    assert as_models == mixed


async def test_the_generated_function_answers_the_same(caller: Caller, live: LocalService) -> None:
    ours = await caller("plan_phases", profile=PROFILE, screening=SCREENING, start_date=START, phase=WEEKS)
    body = models.PlanRequest.from_dict(
        {"profile": PROFILE, "screening": SCREENING, "start_date": START.isoformat(), "phase": WEEKS}
    )
    with AuthenticatedClient(live.url, live.key, httpx_args={"transport": httpx.HTTPTransport()}) as client:
        theirs = generated_plan_phases.sync(client=client, body=body)
    assert theirs is not None
    assert ours.to_dict() == theirs.to_dict()


# Refusals of the real service


async def test_a_wrong_key(live: LocalService, caller: Caller) -> None:
    kind = type(caller.client)
    mock = httpx.HTTPTransport() if kind is Steelyard else httpx.AsyncHTTPTransport()
    with pytest.raises(Unauthorized) as caught:
        await Caller(kind(live.url, "nobody.secret", transport=mock))("list_methods")  # type: ignore[arg-type]
    assert caught.value.problem.type_ == "/problems/key-rejected"
    assert caught.value.request_id == caught.value.problem.instance.removeprefix("urn:uuid:")
    assert "secret" not in str(caught.value)


async def test_a_wrong_path(live: LocalService, caller: Caller) -> None:
    kind = type(caller.client)
    mock = httpx.HTTPTransport() if kind is Steelyard else httpx.AsyncHTTPTransport()
    with pytest.raises(NotFound):
        await Caller(kind(f"{live.url}/elsewhere/", live.key, transport=mock))("list_methods")  # type: ignore[arg-type]


async def test_unanswered_screening(caller: Caller) -> None:
    with pytest.raises(GuardRailRefusal) as caught:
        await caller("plan_phases", profile=PROFILE, start_date=START, phase=WEEKS)
    assert caught.value.rule_id == "screening_unanswered"
    methods = await caller("list_methods")
    assert methods.entry(caught.value.rule_id).kind == "rule"


async def test_fields_that_contradict_each_other(caller: Caller) -> None:
    overdetermined = {"kind": "mini_cut", "weeks": 4, "fat_loss_kg": 1.2, "deficit_kcal": 400}
    with pytest.raises(Contradiction) as caught:
        await caller("plan_phases", profile=PROFILE, screening=SCREENING, start_date=START, phase=overdetermined)
    assert caught.value.status == 422
    assert caught.value.rule_id is None
    assert caught.value.pointers == ("#/phase/deficit_kcal",)


async def test_two_intakes_for_one_date(caller: Caller) -> None:
    twice = log()
    twice["intakes"].append({**twice["intakes"][-1], "intake_kcal": 700.0})
    answer = await caller("read_trend", profile=PROFILE, log=twice)
    assert "LOG_INTAKE_TWICE" in [note.code for note in answer.notes]


async def test_a_body_over_the_limit(caller: Caller) -> None:
    clearance = {"given_by": "physician", "reason": "long " * 300_000}
    with pytest.raises(BodyTooLarge):
        await caller.with_options(check_requests=False)(
            "plan_phases",
            profile=PROFILE,
            start_date=START,
            phase=WEEKS,
            screening={**SCREENING, "clinical_clearance": clearance},
        )


FAULTY: dict[str, dict[str, Any]] = {
    "out of range": {"profile": {**PROFILE, "height_cm": 1.71}},
    "missing": {"profile": {name: value for name, value in PROFILE.items() if name != "sex"}},
    "unknown": {"profile": {**PROFILE, "weigth_kg": 70}},
    "unknown at the top": {"profile": PROFILE, "profil": 1},
    "no choice": {"profile": {**PROFILE, "sex": "man"}},
    "wrong tag": {"profile": {**PROFILE, "activity": {"kind": "levle", "level": "moderate"}}},
    "wrong type": {"profile": {**PROFILE, "age_years": "38"}},
    "a truth for a number": {"profile": {**PROFILE, "age_years": True}},
    "wrong form": {"profile": PROFILE, "as_of_date": "4 May 2026"},
    "null": {"profile": {**PROFILE, "training": None}},
    "in a list": {"profile": PROFILE, "log": {"weights": [{"date": "2026-05-01", "weight_kg": -7.4}]}},
    "too many": {
        "profile": {
            **PROFILE,
            "activity": {
                "kind": "week",
                "steps_per_day": 5000,
                "sessions": [{"met": 5, "minutes": 10, "times_per_week": 1}] * 31,
            },
        }
    },
}


@pytest.mark.parametrize("request_", FAULTY.values(), ids=FAULTY.keys())
async def test_the_check_before_sending_tells_what_the_service_would(caller: Caller, request_: dict[str, Any]) -> None:
    with pytest.raises(InvalidRequest) as ours:
        await caller("estimate_maintenance", **request_)
    with pytest.raises(BadRequest) as theirs:
        await caller.with_options(check_requests=False)("estimate_maintenance", **request_)
    told = [(error.pointer, error.code) for error in theirs.value.errors]
    assert told
    assert [(error.pointer, error.code) for error in ours.value.errors] == told


# The client itself


def test_every_operation_has_a_method_on_both_clients() -> None:
    for client in (Steelyard, AsyncSteelyard):
        public = {name for name, _ in inspect.getmembers(client, inspect.isfunction) if not name.startswith("_")}
        forms = {name for name in public if name.endswith(("_picture", "_document"))}
        briefings = {name for name in public if name.endswith("_briefing")}  # among the forms of a document
        assert set(OPERATION_IDS) == public - {"close", "aclose", "with_options"} - forms - briefings
        assert len(forms) == len(OTHER_FORMS)


def test_answers_hold_no_closed_choice() -> None:
    """Answers may gain values, so the generated models must not refuse one: no enum is reachable from an answer.

    But through a state: it goes round. What answers hand on is asked with as it is, so it is the request's own object,
    closed as requests are; its ``version`` says which values it may hold, and another version is another object.
    """
    state = CONTRACT["components"]["schemas"]["State"]
    assert state["properties"]["version"]["maximum"] == 1
    assert state["additionalProperties"] is False
    handed_on = "#/components/schemas/State"
    requests = [schema for name, schema in CONTRACT["components"]["schemas"].items() if name.endswith("Request")]
    assert handed_on in json.dumps(requests)
    waiting = [operation["responses"] for path in CONTRACT["paths"].values() for operation in path.values()]
    seen: set[str] = set()
    while waiting:
        node = waiting.pop()
        if isinstance(node, dict):
            assert not {"enum", "const"} & {key for key in node if isinstance(node[key], list | str)} - {"const"} or (
                "properties" in node
            ), node
            reference = node.get("$ref")
            if isinstance(reference, str) and reference not in {*seen, handed_on}:
                seen.add(reference)
                kind, name = reference.split("/")[-2:]
                waiting.append(CONTRACT["components"][kind][name])
            waiting.extend(node.values())
        elif isinstance(node, list):
            waiting.extend(node)
    assert len(seen) > 10


async def test_unknown_fields_and_values_pass_through(live: LocalService) -> None:
    """A newer service answers with a phase kind and fields that this version has never heard of."""
    with Steelyard(*live, transport=httpx.HTTPTransport()) as client:
        known = client.plan_phases(profile=PROFILE, screening=SCREENING, start_date=START, phase=WEEKS)
    newer = known.to_dict()
    newer["season"] = {"name": "spring"}
    newer["phases"][0] |= {"kind": "deload", "colour": "teal"}
    newer["guard_rails"] = [
        {
            "id": "sleep",
            "action": "postponed",
            "limit": 6,
            "observed": 4,
            "unit": "h",
            "since": 3,
            "code": "SHORT_OF_SLEEP",
            "text": "",
            "params": {},
        }
    ]
    transport = httpx.MockTransport(lambda request: httpx.Response(200, json=newer))
    with Steelyard("http://service.test", KEY, transport=transport) as client:
        answer = client.plan_phases(profile=PROFILE, screening=SCREENING, start_date=START, phase=WEEKS)
    assert answer.additional_properties == {"season": {"name": "spring"}}
    assert answer.phases[0].kind == "deload"
    assert answer.phases[0]["colour"] == "teal"
    assert answer.guard_rails[0].action == "postponed"
    assert answer.to_dict() == newer
    assert "deload 4 wk" in repr(answer)


async def test_what_is_sent(answered_by: Any) -> None:
    sent: list[httpx.Request] = []

    def handler(request: httpx.Request) -> httpx.Response:
        sent.append(request)
        return catalogue_answer()

    call = answered_by(handler)
    await call("list_methods")
    await call("list_methods")
    headers = sent[0].headers
    assert sent[0].url == "http://service.test/v1/methods"
    assert headers["authorization"] == f"Bearer {KEY}"
    assert headers["user-agent"].startswith("steelyard-client/0.")
    assert headers["x-request-id"] != sent[1].headers["x-request-id"]
    assert "content-type" not in headers


def test_representations_are_short_and_keep_the_key(live: LocalService) -> None:
    with Steelyard(*live, transport=httpx.HTTPTransport()) as client:
        plan = client.plan_phases(profile=PROFILE, screening=SCREENING, start_date=START, phase=WEEKS)
        shown = [
            repr(client),
            repr(client._options),
            repr(plan),
            repr(client.estimate_maintenance(profile=PROFILE)),
            repr(client.read_trend(profile=PROFILE, log=log())),
            repr(client.list_methods()),
        ]
    assert all(len(text) < 200 or text == shown[1] for text in shown)
    assert not [text for text in shown if live.key in text]
    assert f"{plan.maintenance_kcal.mean:.0f}" in shown[2]


async def test_configuration_from_the_environment(monkeypatch: pytest.MonkeyPatch) -> None:
    transport = httpx.MockTransport(lambda request: catalogue_answer())
    monkeypatch.setenv("STEELYARD_URL", " http://gym.test/api/ ")
    monkeypatch.setenv("STEELYARD_KEY", f"{KEY}\n")
    with Steelyard(transport=transport) as client:
        assert client._options.url == "http://gym.test/api"
        assert client._options.key == KEY
    with Steelyard("https://other.test", "other.key", transport=transport) as client:
        assert client._options.url == "https://other.test"
        assert client._options.key == "other.key"


@pytest.mark.parametrize(
    ("url", "key", "told"),
    [
        (None, KEY, "STEELYARD_URL"),
        ("", KEY, "STEELYARD_URL"),
        ("service.test:8000", KEY, "not an http"),
        ("ftp://service.test", KEY, "not an http"),
        ("http://service.test/?a=1", KEY, "query"),
        ("http://service.test", None, "STEELYARD_KEY"),
        ("http://service.test", "new\nline.hidden", "characters"),
        ("http://service.test", "schlüssel.hidden", "characters"),
    ],
)
@pytest.mark.parametrize("kind", [Steelyard, AsyncSteelyard])
def test_missing_or_malformed_configuration(
    kind: type[Steelyard], url: str | None, key: str | None, told: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("STEELYARD_URL", raising=False)
    monkeypatch.delenv("STEELYARD_KEY", raising=False)
    with pytest.raises(NotConfigured, match=told) as caught:
        kind(url, key)
    assert "hidden" not in str(caught.value)


@pytest.mark.parametrize("options", [{"timeout_seconds": 0}, {"connect_timeout_seconds": -1}])
def test_impossible_timeouts(options: dict[str, float]) -> None:
    with pytest.raises(ValueError, match="timeouts"):
        Steelyard("http://service.test", KEY, **options)  # type: ignore[arg-type]


def test_with_options_leaves_the_client_as_it_is() -> None:
    with Steelyard("http://service.test", KEY) as client:
        other = client.with_options(timeout_seconds=30, retry=RetryPolicy(max_retries=0))
        assert (other._options.timeout_seconds, other._options.retry.max_retries) == (30, 0)
        assert (client._options.timeout_seconds, client._options.retry.max_retries) == (10, 2)
        assert other._http is client._http


async def test_a_closed_client_says_so() -> None:
    with Steelyard("http://service.test", KEY) as client:
        pass
    with pytest.raises(RuntimeError, match="closed"):
        client.list_methods()
    async with AsyncSteelyard("http://service.test", KEY) as async_client:
        pass
    with pytest.raises(RuntimeError, match="closed"):
        await async_client.list_methods()


def test_the_service_is_stopped_when_its_user_fails() -> None:
    with pytest.raises(ZeroDivisionError), local_service() as service:
        1 / 0  # noqa: B018
    retry = RetryPolicy(max_retries=0)
    with Steelyard(*service, retry=retry, transport=httpx.HTTPTransport()) as client, pytest.raises(ConnectionFailed):
        client.list_methods()


def hide_what_the_demonstration_does_not_install(directory: Path) -> None:
    """Python finds there that the packages of tests are not installed; those of `make demo` are."""
    requirements = ROOT / "service" / "requirements"
    pinned = "".join((requirements / name).read_text() for name in ("run.txt", "sdk.txt"))
    installed = {"steelyard", "steelyard-client", *re.findall(r"^([\w.-]+)==", pinned, re.MULTILINE)}
    known = metadata.packages_distributions().items()
    hidden = [name for name, owners in known if not installed & {re.sub(r"[-_.]+", "-", o).lower() for o in owners}]
    assert {"pytest", "pandas", "pydantic"} <= set(hidden)
    names = sorted(set(hidden) - {*sys.stdlib_module_names, "steelyard", "steelyard_client"})
    (directory / "sitecustomize.py").write_text(f"""import sys
class Hidden:
    def find_spec(self, name, path=None, target=None):
        if name.partition(".")[0] in {names}:
            raise ModuleNotFoundError(f"No module named {{name!r}} in what the demonstration installs", name=name)
sys.meta_path.insert(0, Hidden())
""")


def test_the_demonstration_runs_and_cleans_up(tmp_path: Path) -> None:
    """With what the service runs on, the SDK and nothing else."""
    demo = ROOT / "sdk" / "examples" / "demo.py"
    hide_what_the_demonstration_does_not_install(tmp_path)
    search = os.pathsep.join(map(str, (tmp_path, ROOT / "sdk", ROOT / "service")))
    ran = subprocess.run(
        [sys.executable, str(demo)],
        capture_output=True,
        encoding="utf-8",
        env={**os.environ, "PYTHONPATH": search, "PYTHONIOENCODING": "utf-8"},
        check=False,
        cwd=Path(demo.anchor),
    )
    assert ran.returncode == 0, ran.stdout + ran.stderr
    for part in ("Maintenance", "mini-cut", "gain", "Trend", "tissue", "Cautions", "not medical advice", "stopped"):
        assert part in ran.stdout
    assert max(map(len, ran.stdout.splitlines())) <= 100
    url = next(word for word in ran.stdout.split() if word.startswith("http://"))
    with pytest.raises(httpx.ConnectError), httpx.Client(transport=httpx.HTTPTransport()) as http:
        http.get(url)
