"""Alerts and dashboard: every metric and label that they name is served, and nothing that is served goes unwatched."""

import json
import re
from collections import defaultdict
from pathlib import Path
from typing import Any

import pytest
import yaml
from in_process import running
from lifting_form import EXAMPLE, sum_lifts
from msgspec import to_builtins
from prometheus_client.parser import text_string_to_metric_families
from steelyard.http.endpoints.batches import run_batch

DOCKER = Path(__file__).resolve().parents[1] / "docker"
ALERTS = yaml.safe_load((DOCKER / "alerts.yaml").read_text(encoding="utf-8"))["groups"][0]["rules"]
DASHBOARD = json.loads((DOCKER / "dashboard.json").read_text(encoding="utf-8"))
PANELS = [panel for panel in DASHBOARD["panels"] if panel["type"] != "row"]

OF_THE_SCRAPER = {"job", "instance"}  # labels that it adds itself, and `up`, which it makes
_WORDS = {"by", "or", "le", "sum", "max", "rate", "increase", "vector", "histogram_quantile"}
_SELECTED = re.compile(r"([a-z_]{2,})(?:\{([^}]*)\})?")
_LABEL = re.compile(r"(\w+)\s*=~?\s*\"")
_GROUPED = re.compile(r"\bby\s*\(([^)]*)\)")


def asked(expression: str) -> tuple[set[str], set[str]]:
    """The metrics and the labels that an expression names."""
    ungrouped = _GROUPED.sub(" ", expression)
    plain = re.sub(r"\[[^\]]*\]|\$\w+", "", ungrouped)
    metrics = {name for name, _ in _SELECTED.findall(re.sub(r"\{[^}]*\}", "", plain))} - _WORDS
    inner = [name for _, selected in _SELECTED.findall(plain) for name in _LABEL.findall(selected)]
    grouped = [name.strip() for names in _GROUPED.findall(expression) for name in names.split(",")]
    return metrics, {*inner, *grouped}


def expressions() -> dict[str, str]:
    """Each expression by where it stands."""
    found = {rule["alert"]: rule["expr"] for rule in ALERTS}
    for panel in PANELS:
        found |= {f"{panel['title']} {target['refId']}": target["expr"] for target in panel["targets"]}
    return found


@pytest.fixture(scope="module")
async def served(tmp_path_factory: pytest.TempPathFactory) -> dict[str, set[str]]:
    """The labels of each sample that is served after a good request, a wrong one, a strange key and a batch."""
    directory = tmp_path_factory.mktemp("watched")
    operations = (sum_lifts, run_batch)
    async with running(directory, operations, metrics=True, metrics_public=True) as service:
        await service.client.post(sum_lifts.path, json=to_builtins(EXAMPLE))
        await service.client.post(sum_lifts.path, json={})
        await service.client.post(sum_lifts.path, json={}, headers={"authorization": "Bearer none.such"})
        await service.client.post(run_batch.path, content=b"{}\n", headers={"content-type": run_batch.media_type})
        text = (await service.client.get("/metrics", headers={"authorization": ""})).text
    found: dict[str, set[str]] = defaultdict(set)
    for family in text_string_to_metric_families(text):
        for sample in family.samples:
            found[sample.name] |= set(sample.labels)
    return found


@pytest.mark.parametrize("place", expressions())
async def test_what_is_watched_is_served(served: dict[str, set[str]], place: str) -> None:
    metrics, labels = asked(expressions()[place])
    assert metrics
    metrics -= {"up"}
    assert metrics <= served.keys()
    known = set().union(*(served[metric] for metric in metrics)) | OF_THE_SCRAPER
    assert labels <= known


def test_a_slip_would_be_noticed() -> None:
    """The reading of expressions, by hand."""
    assert asked(
        'sum by (le, operation) (rate(steelyard_x_bucket{job="$job", status=~"5.."}[$__rate_interval])) > 1'
    ) == (
        {"steelyard_x_bucket"},
        {"le", "operation", "job", "status"},
    )
    assert asked('up{job="steelyard"} == 0') == ({"up"}, {"job"})


async def test_what_is_served_is_watched(served: dict[str, set[str]]) -> None:
    watched = set[str]().union(*(asked(expression)[0] for expression in expressions().values()))
    ours = {re.sub(r"_(bucket|sum|count|created)$", "", name) for name in served if name.startswith("steelyard_")}
    ours -= {f"{name}_total"[: -len("_total")] for name in ours if f"{name}_total" in ours}
    assert ours <= {re.sub(r"_(bucket|count)$", "", name) for name in watched}


def test_legends_name_labels_that_are_kept() -> None:
    for panel in PANELS:
        for target in panel["targets"]:
            _, labels = asked(target["expr"])
            shown = set(re.findall(r"\{\{(\w+)\}\}", target["legendFormat"]))
            assert shown <= labels | OF_THE_SCRAPER, panel["title"]


def test_panels_lie_beside_each_other() -> None:
    """A grid of 24 columns, in which nothing covers another, and each panel with an id of its own."""
    taken: dict[tuple[int, int], str] = {}
    for panel in DASHBOARD["panels"]:
        at: dict[str, Any] = panel["gridPos"]
        assert at["x"] + at["w"] <= 24
        for x in range(at["x"], at["x"] + at["w"]):
            for y in range(at["y"], at["y"] + at["h"]):
                assert taken.setdefault((x, y), panel["title"]) == panel["title"]
    ids = [panel["id"] for panel in DASHBOARD["panels"]]
    assert len(set(ids)) == len(ids)
    assert all(panel["description"] for panel in PANELS)
