"""What a type checker says to whoever writes a request wrongly: the place and the key."""

import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]

CODE = """\
from steelyard_client import Steelyard
from steelyard_client.request_types import Line, ProfileDict

client = Steelyard("http://service.test", "a.b")
good: ProfileDict = {
    "sex": "female", "age_years": 30, "height_cm": 166, "weight_kg": 63,
    "activity": {"kind": "level", "level": "light"},
    "training": {"status": "novice", "resistance_sessions_per_week": 3},
}
reveal_type(client.estimate_maintenance(profile=good).maintenance_kcal)
wrong: ProfileDict = {**good, "wieght_kg": 63}  # says: Extra key "wieght_kg"
client.estimate_maintenance(profil=good)  # says: "profil"
client.estimate_maintenance(profile={"sex": "female"})  # says: ProfileDict
client.estimate_maintenance(profile=good).maintenence_kcal  # says: "maintenence_kcal"
lines: list[Line] = [{"reference": "a", "operation": "estimate_maintenance", "body": {"profile": good}}]
answers = client.run_batch(lines)
body = {"profile": good}
client.run_batch([{"reference": "a", "operation": "estimate_maintenance", "body": body}])  # says: MaintenanceLine
client.run_batch([{"operation": "estimate_maintenance", "body": {"profile": good}}])  # says: MaintenanceLine
client.run_batch([{"reference": "a", "operation": "plan", "body": {"profile": good}}])  # says: PlanLine
"""


def test_a_type_checker_names_the_place_and_the_key(tmp_path: Path) -> None:
    path = tmp_path / "caller.py"
    path.write_text(CODE)
    ran = subprocess.run(  # strictly, as the tree is checked: what is known of the client by then is not found anew
        [sys.executable, "-m", "mypy", "--config-file", "pyproject.toml", str(path)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert not ran.stderr, ran.stderr
    said: dict[int, str] = {}
    for number, text in re.findall(r"^\S*caller\.py:(\d+): error: (.*)$", ran.stdout, re.MULTILINE):
        said[int(number)] = said.get(int(number), "") + text
    expected = {i: line.partition("# says: ")[2] for i, line in enumerate(CODE.splitlines(), 1) if "# says: " in line}
    assert said.keys() == expected.keys(), ran.stdout
    for number, words in expected.items():
        assert words in said[number]
    assert 'Revealed type is "steelyard_client.generated.models.interval.Interval"' in ran.stdout
