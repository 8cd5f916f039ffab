"""Briefings as pure values: which messages are told of which phase."""

from datetime import date, timedelta

import pytest
from steelyard.answers import BriefingReader, PhaseToTell, Range, WeekToTell, brief
from steelyard.science.phase import PhaseKind
from steelyard.science.register import say

START = date(2026, 3, 2)
MEMBER = BriefingReader.MEMBER


def phase(kind: PhaseKind, fat_kg: float, carried_kg: float, weeks: int = 4, lean_kg: float = 0.0) -> PhaseToTell:
    """A phase whose water moves in its first week, and whose tissue moves evenly."""
    told = [
        WeekToTell(
            number=i + 1,
            start=START + timedelta(weeks=i),
            last_day=START + timedelta(weeks=i, days=6),
            intake_kcal=2200,
            protein_g=160,
            carbohydrate_g=220,
            fat_g=70,
            higher=None,
            energy_balance_kcal=-400.0,
            weight_kg=Range(80.0 - i, 79.0 - i, 81.0 - i),
            fat_kg=14.0 + fat_kg * (i + 1) / weeks,
            lean_kg=60.0 + lean_kg * (i + 1) / weeks,
            carried_kg=carried_kg,
        )
        for i in range(weeks)
    ]
    changes = (fat_kg + carried_kg + lean_kg, fat_kg, lean_kg, carried_kg)
    return PhaseToTell(kind, told, *(Range(x, x - 0.5, x + 0.5) for x in changes), [], [], [], [])


def codes(told: PhaseToTell, reader: BriefingReader = MEMBER) -> list[list[str]]:
    """Codes by section, cautions left out."""
    return [[message.code for message in section.said] for section in brief([told], [], reader)[:-1]]


def test_water_is_told_in_a_fat_loss_where_there_is_some() -> None:
    wet = codes(phase(PhaseKind.MINI_CUT, -1.6, -0.7))
    assert wet[0] == ["BRIEFING_EAT", "BRIEFING_SCALE_WATER", "BRIEFING_JUDGE_FROM", "BRIEFING_FAT"]
    assert wet[1] == ["BRIEFING_EAT", "BRIEFING_SCALE", "BRIEFING_FAT_AND_WATER"]
    assert wet[-1] == ["BRIEFING_END_SCALE_WATER"]
    dry = codes(phase(PhaseKind.MINI_CUT, -1.6, -0.1))
    assert dry[0][1] == "BRIEFING_SCALE"
    assert dry[1][2] == "BRIEFING_FAT_GONE"
    assert dry[-1] == ["BRIEFING_END_SCALE"]


def test_the_water_is_what_left_by_then() -> None:
    start, *_ = brief([phase(PhaseKind.CUT, -1.6, -0.7)], [], MEMBER)
    (scale,) = (message for message in start.said if message.code == "BRIEFING_SCALE_WATER")
    assert scale.params["water_kg"] == pytest.approx(0.7)
    assert scale.params["weekday"] == 7  # 8 March 2026 is a Sunday


def test_water_of_a_surplus_before_does_not_come_back_at_maintenance() -> None:
    """After a gain 0.9 kg was to come back, and 0.5 kg three lines further down."""
    told = phase(PhaseKind.MINI_CUT, -1.6, -0.9)
    told = told._replace(weeks=[week._replace(carried_kg=-0.5) for week in told.weeks])
    start, week, *_, end, _ = brief([told], [], MEMBER)
    water = [
        one.params["water_kg"] for section in (start, week, end) for one in section.said if "water_kg" in one.params
    ]
    assert water == pytest.approx([0.9, 0.5, 0.5])


def test_the_end_tells_the_weight_of_the_last_week_and_its_interval() -> None:
    told = phase(PhaseKind.CUT, -1.6, -0.1, weeks=4)
    *_, end, _ = brief([told], [], MEMBER)
    (scale,) = (message for message in end.said if message.code == "BRIEFING_END_SCALE")
    assert scale.params == {"weight_kg": 77.0, "weight_lower_kg": 76.0, "weight_upper_kg": 78.0}
    assert end.title.params["date"] == "2026-03-29"  # the Sunday four weeks on


def test_an_interval_that_reaches_nothing_is_said() -> None:
    assert "BRIEFING_FAT_UP_TO" in codes(phase(PhaseKind.MINI_CUT, -0.4, -0.7))[0]
    assert codes(phase(PhaseKind.MINI_CUT, -0.04, -0.7))[1][2] == "BRIEFING_MOSTLY_WATER"


def test_a_gain_is_told_of_lean_and_fat_and_its_checks() -> None:
    told = codes(phase(PhaseKind.GAIN, 1.0, 0.3, weeks=8, lean_kg=0.6))
    assert told[0] == ["BRIEFING_EAT", "BRIEFING_SCALE", "BRIEFING_CHECKS"]
    assert len(told) == 1 + 3  # the first week, the fourth and the last: what is eaten stays the same
    assert all(section[2] == "BRIEFING_GAINED" for section in told[1:])
    assert codes(phase(PhaseKind.MAINTENANCE, 0.0, 0.3, weeks=4))[1][2] == "BRIEFING_STEADY"


def test_a_short_one_leaves_out_weeks_and_never_a_caution() -> None:
    told = phase(PhaseKind.MINI_CUT, -1.6, -0.7)._replace(
        cautions=[say("WARNED_LOSS", percent=0.9), say("REBOUND", carried_kg=0.7)]
    )
    for reader in BriefingReader:
        sections = brief([told], [say("NOT_MEDICAL_ADVICE")], reader)
        said = [message.code for section in sections for message in section.said]
        for code in ("NOT_MEDICAL_ADVICE", "WARNED_LOSS", "REBOUND"):
            assert said.count(code) == 1
        assert len(sections) == (3 if reader.is_short else 7)


@pytest.mark.parametrize(
    "why", ["HELD_AT_CEILING", "HELD_AFTER_CUT", "GAIN_NOT_NOW", "SEASON_HOLD", "SEASON_HELD_AT_NEED"]
)
def test_a_short_one_says_why_it_is_no_gain(why: str) -> None:
    held = phase(PhaseKind.MAINTENANCE, 0.0, 0.0)._replace(reasons=[say(why), say("HOLD_WHY")])
    for reader in BriefingReader:
        assert why in codes(held, reader)[0]
        assert ("HOLD_WHY" in codes(held, reader)[0]) is not reader.is_short
