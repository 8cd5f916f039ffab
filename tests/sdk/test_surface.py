"""What a person at a prompt meets: how much the package loads, what ``help`` says, what is printed."""

import inspect
import subprocess
import sys
from pathlib import Path

import pytest
import steelyard_client
from steelyard_client import AsyncSteelyard, Steelyard, models
from steelyard_client.generated.contract import REQUEST_FIELDS

SDK = Path(__file__).resolve().parents[2] / "sdk"
LOADED = """
import sys
import steelyard_client
steelyard_client.Steelyard("http://service.test", "a.b").close()
late = ("attr", "pandas", "steelyard_client.answers", "steelyard_client.request_check", "steelyard_client.generated.m")
print(*(name for name in sys.modules if name.startswith(late)))
"""


def test_models_are_loaded_when_they_are_needed() -> None:
    """They take longer than all the rest, httpx included."""
    told = subprocess.run(
        [sys.executable, "-c", LOADED], env={"PYTHONPATH": str(SDK)}, capture_output=True, text=True, check=True
    )
    assert told.stdout.split() == []


def test_every_name_is_there_and_listed() -> None:
    assert set(steelyard_client.__all__) <= set(dir(steelyard_client))
    for name in steelyard_client.__all__:
        assert getattr(steelyard_client, name) is not None
    for name in models.__all__:
        assert inspect.isclass(getattr(models, name))
    for module in (steelyard_client, models):
        with pytest.raises(AttributeError, match="no_such_name"):
            module.no_such_name  # noqa: B018


@pytest.mark.parametrize("client", [Steelyard, AsyncSteelyard])
def test_signatures_show_the_fields_of_requests(client: type) -> None:
    parameters = inspect.signature(client.plan_picture).parameters  # type: ignore[attr-defined]
    assert {*REQUEST_FIELDS["PlanRequest"], "format", "theme"} <= set(parameters)
    assert parameters["profile"].default is inspect.Parameter.empty
    assert repr(parameters["screening"].default) == "<absent>"
    methods = dict(inspect.getmembers(client, inspect.isfunction))
    bare = {name for name, method in methods.items() if "request" in inspect.signature(method).parameters}
    assert {name for name in bare if not name.startswith("_")} == set()


def test_what_is_not_known_does_not_clutter_what_is_printed() -> None:
    interval = models.Interval.from_dict({"mean": 1.0, "lower": 0.5, "upper": 1.5, "coverage": 0.8, "new": 3})
    assert "additional_properties" not in repr(interval)
    assert interval.additional_properties == {"new": 3}
    assert interval.to_dict()["new"] == 3
