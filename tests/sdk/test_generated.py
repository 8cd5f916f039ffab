"""The generated package is what the code's own contract gives."""

import json
import subprocess
import sys
from pathlib import Path

from examples.local_service import ROOT
from steelyard.cli.contract import contract_files

REGENERATE = ROOT / "sdk" / "regenerate.py"


def regenerate(contract: str, directory: Path) -> subprocess.CompletedProcess[str]:
    """Compare the committed package with what ``contract`` gives; nothing is written."""
    path = directory / "contract.json"
    path.write_text(contract, encoding="utf-8")
    command = [sys.executable, str(REGENERATE), "--check", "--contract", str(path)]
    return subprocess.run(command, capture_output=True, text=True, check=False)


def test_committed_package_is_up_to_date(tmp_path: Path) -> None:
    """From the code, not from the committed contract: a changed field is red here even before `make contract`."""
    done = regenerate(contract_files()["openapi-v1.json"], tmp_path)
    assert done.returncode == 0, done.stdout + done.stderr


def test_a_changed_name_and_a_changed_limit_are_noticed(tmp_path: Path) -> None:
    """The check above can fail."""
    document = json.loads(contract_files()["openapi-v1.json"])
    schemas = document["components"]["schemas"]
    week = schemas["PlanWeek"]
    week["properties"]["energy_kcal"] = week["properties"].pop("intake_kcal")
    week["required"] = ["energy_kcal" if name == "intake_kcal" else name for name in week["required"]]
    schemas["Profile"]["properties"]["height_cm"]["maximum"] = 231
    done = regenerate(json.dumps(document), tmp_path)
    assert done.returncode == 1
    stale = {line.split()[3].rstrip(";") for line in done.stderr.splitlines()}
    assert stale == {"request_schemas.py", "models/plan_week.py", "request_types.py"}


def test_a_rule_that_the_checks_do_not_know_is_refused(tmp_path: Path) -> None:
    document = json.loads(contract_files()["openapi-v1.json"])
    document["components"]["schemas"]["Profile"]["properties"]["height_cm"]["multipleOf"] = 0.5
    done = regenerate(json.dumps(document), tmp_path)
    assert done.returncode == 1
    assert "multipleOf" in done.stderr


def test_the_generated_package_names_no_machine() -> None:
    texts = [path.read_text(encoding="utf-8") for path in (ROOT / "sdk" / "steelyard_client").rglob("*.py")]
    assert len(texts) > 50
    assert not [text for text in texts if str(ROOT) in text]
