"""The committed page and picture are what ``make validate`` writes, and another file of trials gets the same tables."""

from pathlib import Path

import pytest
from validation import picture, trials, validate
from validation.comparison import Row, closes, compare
from validation.leave_one_out import held, leave_one_out


@pytest.fixture(scope="module")
def rows() -> list[Row]:
    return [row for case in trials.read() for row in compare(case)]


def test_the_page_is_current(rows: list[Row]) -> None:
    assert validate.REPORT.read_text(encoding="utf-8") == validate.report(trials.read(), rows), "run `make validate`"


def test_the_picture_is_the_same_every_time(rows: list[Row], tmp_path: Path) -> None:
    # Not compared with the committed one, whose glyphs depend on the version of matplotlib.
    first, second = tmp_path / "1.svg", tmp_path / "2.svg"
    picture.draw(rows, first)
    picture.draw(rows, second)
    assert first.read_bytes() == second.read_bytes()
    assert validate.PICTURE.name in validate.REPORT.read_text(encoding="utf-8")
    assert validate.PICTURE.stat().st_size > 10_000


_TRIAL = """
[[trial]]
id = "one"
title = "Invented"
source = "none"
participants = 12
person = { weight_kg = 80.0, fat_kg = 14.0, age_years = 30.0, height_cm = 180.0 }
maintenance = { kcal = 2800.0 }
eaten = [{ days = 28, change_kcal = -500.0, protein_g_per_kg = 1.6 }]
[trial.measured]
body_mass = { change_kg = -2.0, sd_kg = 1.0 }
fat_mass = { change_kg = -1.5 }
"""


def _file(folder: Path, text: str) -> Path:
    path = folder / "trials.toml"
    path.write_text(text, encoding="utf-8")
    return path


def test_a_file_of_others_gets_the_same_tables(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    validate.main(str(_file(tmp_path, _TRIAL)))
    shown = capsys.readouterr().out
    assert "| one | body mass |" in shown
    assert "| one | fat mass |" in shown
    assert "fat-free mass |" not in shown.split("### Outside")[0].split("| --- |")[1]
    assert "participants inside" in shown


def test_a_trial_whose_numbers_do_not_close_is_marked_and_not_judged(tmp_path: Path) -> None:
    # 4 kg of fat hold 37,800 kcal, and only 14,000 were left out.
    (case,) = trials.read(_file(tmp_path, _TRIAL.replace("change_kg = -1.5", "change_kg = -4.0")))
    assert closes(case) is False
    assert all(row.is_accepted is None for row in compare(case))


@pytest.mark.parametrize(
    ("old", "new", "named"),
    [
        ("participants = 12\n", "", "participants"),
        ("weight_kg = 80.0, ", "", "weight_kg"),
        ("fat_kg = 14.0", "fat_kg = 14.0, body_fat_percent = 17.0", "body_fat_percent"),
        ("fat_kg = 14.0", "fat_kg = 90.0", "fat_kg"),
        ("{ kcal = 2800.0 }", '{ level = "lazy" }', "lazy"),
        ("{ kcal = 2800.0 }", "{}", "level"),
        (", age_years = 30.0", "", "age_years"),
        ("change_kcal = -500.0, ", "", "change_kcal"),
        ("change_kcal = -500.0", "change_kcal = -5000.0", "under 0"),
        ("days = 28", "weeks = 4", "weeks"),
        ("[[trial]]", "[[trial", "TOML"),
    ],
)
def test_a_wrong_file_is_told_by_its_field(old: str, new: str, named: str, tmp_path: Path) -> None:
    assert old in _TRIAL
    with pytest.raises(trials.TrialError, match=named):
        trials.read(_file(tmp_path, _TRIAL.replace(old, new)))


def test_two_trials_of_one_id_are_refused(tmp_path: Path) -> None:
    with pytest.raises(trials.TrialError, match="more than one"):
        trials.read(_file(tmp_path, _TRIAL + _TRIAL))


def test_every_study_is_left_out_once() -> None:
    cases = trials.read()
    found = leave_one_out(cases)
    assert [out.study for out in found] == list(dict.fromkeys(case.study for case in cases))
    # Refitting without a study moves the constants: a copy of the same fit would be no prediction.
    assert len({out.constants for out in found}) == len(found)
    assert {of.arms for of in held(found)} == {len(cases)}
