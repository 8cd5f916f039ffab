"""What must hold of any deployed service, each as one check: a function that raises ``Broken`` where it does not."""

import json
import random
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Any

import httpx

from ..generated.contract import LINE_RESULTS
from .deployment import Broken, Deployment, Operation, broken

PROBLEM = "application/problem+json"
_PROBLEM_MEMBERS = {"type": str, "title": str, "status": int, "detail": str, "instance": str, "code": str}
_SCREENING = {
    "is_pregnant": False,
    "is_breastfeeding": False,
    "eating_disorder": "none",
    "conditions": [],
    "medicines": [],
}
_MINI_CUT = {"kind": "mini_cut", "weeks": 4}
_START = "2026-03-02"
_LINES = 20


@dataclass
class Run:
    """What the checks share: the service, its contract, how many people to draw, and answers already fetched."""

    deployment: Deployment
    operations: list[Operation]
    examples: int
    seed: int
    _answers: dict[tuple[str, str], httpx.Response] = field(default_factory=dict)

    def people(self) -> Iterator[dict[str, Any]]:
        """Invented adults, the same for the same seed."""
        draw = random.Random(self.seed)  # noqa: S311 - people, not secrets
        for _ in range(self.examples):
            height = draw.uniform(155, 195)
            yield {
                "sex": draw.choice(["female", "male"]),
                "age_years": draw.randint(20, 60),
                "height_cm": round(height, 1),
                "weight_kg": round(draw.uniform(22.5, 29.0) * (height / 100) ** 2, 1),
                "activity": {"kind": "level", "level": draw.choice(["light", "moderate"])},
                "training": {
                    "status": draw.choice(["novice", "intermediate"]),
                    "resistance_sessions_per_week": draw.randint(2, 5),
                },
            }

    def operation(self, id_: str) -> Operation:
        """The operation of that id. Raises ``Broken`` where the contract has none."""
        for operation in self.operations:
            if operation.id == id_:
                return operation
        raise Broken(f"the contract has no operation {id_}")

    def answered_examples(self) -> Iterator[tuple[Operation, Any, httpx.Response]]:
        """Each example of the contract, its operation and its answer, fetched once over all checks."""
        for operation in self.operations:
            for name, body in operation.examples.items():
                known = (operation.id, name)
                if known not in self._answers:
                    self._answers[known] = self.deployment.answer(operation, body)
                yield operation, body, self._answers[known]


def examples_are_answered(run: Run) -> None:
    """Every example of the contract is answered with JSON."""
    count = 0
    for _, _, answer in run.answered_examples():
        count += 1
        if not answer.headers.get("Content-Type", "").startswith("application/json"):
            broken(answer, f"expected JSON, got {answer.headers.get('Content-Type')}")
        _json(answer)
    if not count:
        raise Broken("the contract has no example to send")


def repeats_are_the_same_bytes(run: Run) -> None:
    """The same request gives the same bytes, and its fingerprint stands in body and header."""
    for operation, body, answer in run.answered_examples():
        again = run.deployment.answer(operation, body)
        if again.content != answer.content:
            broken(again, "the same request was answered with other bytes")
        fingerprint = _json(answer).get("fingerprint")
        if fingerprint is None or fingerprint != answer.headers.get("Steelyard-Fingerprint"):
            broken(answer, "no fingerprint, or another in the header than in the body")


def methods_are_in_the_catalogue(run: Run) -> None:
    """Every computed answer names methods, and each, and each guard rail, is in the catalogue with a known source."""
    catalogue = _json(run.deployment.answer(run.operation("list_methods"), None))
    known = {entry["id"] for entry in catalogue["entries"]}
    sources = {source["id"] for source in catalogue["sources"]}
    for entry in catalogue["entries"]:
        if not set(entry["source_ids"]) <= sources:
            raise Broken(f"the method {entry['id']} cites a source that the catalogue does not have")
    for _, _, answer in run.answered_examples():
        document = _json(answer)
        named = document.get("methods") or []
        if not named:
            broken(answer, "names no methods")
        cited = {*named, *(rail["id"] for rail in _found(document, "guard_rails"))}
        if unknown := cited - known:
            broken(answer, f"names methods that the catalogue does not have: {', '.join(sorted(unknown))}")


def cautions_are_present(run: Run) -> None:
    """Every computed answer says that it is no medical advice."""
    for _, _, answer in run.answered_examples():
        codes = {caution.get("code") for caution in _json(answer).get("cautions") or []}
        if "NOT_MEDICAL_ADVICE" not in codes:
            broken(answer, "lacks the caution NOT_MEDICAL_ADVICE")


def intervals_are_in_order(run: Run) -> None:
    """In every interval the central value lies between the ends."""
    count = 0
    for _, _, answer in run.answered_examples():
        for interval in _intervals(_json(answer)):
            count += 1
            if not interval["lower"] <= interval["mean"] <= interval["upper"]:
                broken(answer, f"an interval is out of order: {interval}")
    if not count:
        raise Broken("no answer has an interval")


def codes_are_in_the_messages(run: Run) -> None:
    """Every reason, caution and guard rail has a code of the message catalogue, with a text in every language."""
    catalogue = _json(run.deployment.answer(run.operation("list_messages"), None))
    texts = [language["fluent"] for language in catalogue["languages"]]
    listed = (message["code"] for message in catalogue["messages"])
    known = {code for code in listed if all(re.search(f"^{code} *=", text, re.MULTILINE) for text in texts)}
    for _, _, answer in run.answered_examples():
        for code in _codes(_json(answer)):
            if code not in known:
                broken(answer, f"the code {code} is not in the catalogue in every language")


def more_intake_never_gives_less_mass(run: Run) -> None:
    """Of two constant intakes the larger never leads to less expected weight, in any week."""
    forecast, maintenance = run.operation("forecast_intake"), run.operation("estimate_maintenance")
    compared = 0
    for person in run.people():
        held = _json(run.deployment.answer(maintenance, {"profile": person}))["maintenance_kcal"]["mean"]
        paths: list[tuple[float, list[float]]] = []
        for share in (0.88, 0.97, 1.0, 1.04):
            intake = round(held * share)
            schedule = [{"weeks": 6, "intake_kcal": intake}]
            body = {"profile": person, "start_date": _START, "screening": _SCREENING}
            body["question"] = {"kind": "path", "schedule": schedule}
            answer = run.deployment.send(forecast.method, forecast.path, body)
            if answer.status_code == 422:
                continue  # a guard rail may refuse this intake to this person
            if answer.status_code != 200:
                broken(answer, f"expected 200 or 422 for {json.dumps(body)}")
            paths.append((intake, [week["at_end"]["weight_kg"]["mean"] for week in _json(answer)["weeks"]]))
        for (less, lighter), (more, heavier) in pairwise(paths):
            compared += 1
            if len(lighter) != len(heavier) or any(low > high for low, high in zip(lighter, heavier, strict=False)):
                raise Broken(f"{more} kcal/d leads to less weight than {less} kcal/d, for {json.dumps(person)}")
    if not compared:
        raise Broken("every intake was refused to every person, so that nothing was compared")


def no_deficit_without_screening(run: Run) -> None:
    """A fat-loss phase is refused by a guard rail without screening answers, in pregnancy, and under 18."""
    plan = run.operation("plan_phases")
    for person in run.people():
        minor = {**person, "age_years": 16}
        for profile, screening in (
            (person, None),
            (person, {**_SCREENING, "is_pregnant": True}),
            (person, {**_SCREENING, "eating_disorder": "current"}),
            (minor, _SCREENING),
        ):
            body = {"profile": profile, "start_date": _START, "phase": _MINI_CUT, "screening": screening}
            answer = run.deployment.send(plan.method, plan.path, body)
            if answer.status_code != 422:
                broken(answer, f"a deficit was not refused, for {json.dumps(body)}")
            problem = _problem(answer)
            if "/problems/guard-rail/" not in problem["type"]:
                broken(answer, "the refusal names no guard rail")


def errors_are_problem_documents(run: Run) -> None:
    """Whatever is wrong with a request is told in a problem document of the right status (RFC 9457)."""
    send = run.deployment.send
    operation = run.operation("estimate_maintenance")
    method, path = operation.method, operation.path
    person = next(run.people())
    answers = [
        (400, send(method, path, b"{")),
        (400, send(method, path, {})),
        (400, send(method, path, {"profile": person, "no_such_field": 1})),
        (400, send(method, path, {"profile": {**person, "height_cm": 1.8}})),
        (404, send("GET", "/v1/no-such-path")),
        (405, send("PUT", path, {"profile": person})),
        (406, send(method, path, {"profile": person}, headers={"Accept": "image/gif"})),
        (415, send(method, path, b"a: 1", headers={"Content-Type": "application/yaml"})),
    ]
    for status, answer in answers:
        if answer.status_code != status:
            broken(answer, f"expected {status}")
        _problem(answer)


def keys_are_asked_for(run: Run) -> None:
    """No operation answers without a key, or with a wrong one; what it says is a problem document."""
    for operation in run.operations:
        for key in (None, "wrong.key-of-nobody"):
            answer = run.deployment.send(operation.method, operation.path, {} if operation.examples else None, key=key)
            if answer.status_code != 401:
                broken(answer, "expected 401 without an accepted key")
            _problem(answer)


def head_and_options_are_answered(run: Run) -> None:
    """HEAD is GET without the body; OPTIONS names the methods of a path."""
    for operation in run.operations:
        answer = run.deployment.send("OPTIONS", operation.path)
        allowed = {name.strip() for name in answer.headers.get("Allow", "").split(",")}
        if not answer.is_success or operation.method not in allowed:
            broken(answer, f"OPTIONS does not name {operation.method} in Allow")
        if operation.method == "GET":
            whole = run.deployment.answer(operation, None)
            head = run.deployment.send("HEAD", operation.path)
            if head.status_code != 200 or head.content or head.headers.get("ETag") != whole.headers.get("ETag"):
                broken(head, "HEAD differs from GET")


def lines_are_answered_like_single_calls(run: Run) -> None:
    """A batch answers each line as the call by itself, in the same order, and ends with a summary."""
    batch = run.operation("run_batch")
    lines: list[dict[str, Any]] = []
    singles: list[dict[str, Any]] = []
    for operation, body, answer in run.answered_examples():
        if len(lines) < _LINES and operation.id in LINE_RESULTS:
            lines.append({"reference": str(len(lines)), "operation": operation.id, "body": body})
            singles.append(_json(answer))
    *answered, last = run.deployment.lines(batch, lines)
    if not last.get("summary", {}).get("is_complete"):
        raise Broken(f"a batch did not end with a complete summary: {last}")
    if [line.get("reference") for line in answered] != [line["reference"] for line in lines]:
        raise Broken("a batch answered in another order, or not every line")
    for line, single in zip(answered, singles, strict=True):
        if line.get("result") != single:
            raise Broken(f"line {line.get('line')} of a batch differs from the single call")


CHECKS: tuple[Callable[[Run], None], ...] = (
    no_deficit_without_screening,
    keys_are_asked_for,
    errors_are_problem_documents,
    head_and_options_are_answered,
    examples_are_answered,
    repeats_are_the_same_bytes,
    methods_are_in_the_catalogue,
    codes_are_in_the_messages,
    cautions_are_present,
    intervals_are_in_order,
    lines_are_answered_like_single_calls,
    more_intake_never_gives_less_mass,
)


def _json(answer: httpx.Response) -> dict[str, Any]:
    try:
        document = json.loads(answer.content)
    except ValueError:
        broken(answer, "expected JSON")
    if not isinstance(document, dict):
        broken(answer, "expected a JSON object")
    return document


def _problem(answer: httpx.Response) -> dict[str, Any]:
    if answer.headers.get("Content-Type", "").partition(";")[0] != PROBLEM:
        broken(answer, f"expected {PROBLEM}, got {answer.headers.get('Content-Type')}")
    problem = _json(answer)
    for name, kind in _PROBLEM_MEMBERS.items():
        if not isinstance(problem.get(name), kind):
            broken(answer, f"the problem document lacks `{name}`")
    if problem["status"] != answer.status_code:
        broken(answer, "the problem document has another status than the answer")
    return problem


def _objects(value: Any) -> Iterator[dict[str, Any]]:
    if isinstance(value, dict):
        yield value
        for item in value.values():
            yield from _objects(item)
    elif isinstance(value, list):
        for item in value:
            yield from _objects(item)


def _found(document: Any, name: str) -> Iterator[dict[str, Any]]:
    for one in _objects(document):
        yield from one.get(name) or ()


def _intervals(document: Any) -> Iterator[dict[str, float]]:
    return (one for one in _objects(document) if {"lower", "mean", "upper"} <= one.keys())


def _codes(document: Any) -> set[str]:
    return {one["code"] for one in _objects(document) if {"code", "params", "text"} <= one.keys()}
