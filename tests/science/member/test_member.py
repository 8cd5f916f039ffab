"""A member: what follows from what was told, each once."""

from typing import Any

import pytest
from steelyard.science.log import IntakeDay, Log, Weighing
from steelyard.science.member import Member, Told
from steelyard.science.person import ActivityLevel, Person, Sex, Training, TrainingStatus

PERSON = Person(
    sex=Sex.FEMALE,
    age_years=34.0,
    height_cm=168.0,
    weight_kg=71.0,
    activity=ActivityLevel.LIGHT,
    training=Training(status=TrainingStatus.NOVICE, resistance_sessions_per_week=3.0),
)


def log(eaten: float, days: int = 28) -> Log:
    return Log(
        [Weighing(day, 71.0 - 0.12 * day) for day in range(days)], [IntakeDay(day, eaten) for day in range(days)]
    )


def test_a_log_is_looked_at_once_for_a_day(monkeypatch: pytest.MonkeyPatch) -> None:
    from steelyard.science.member import member as module

    looked: list[Any] = []
    counted = module.logged_of

    def counting(*asked: Any) -> Any:
        looked.append(asked)
        return counted(*asked)

    monkeypatch.setattr(module, "logged_of", counting)
    one, other = log(1500.0), log(1900.0)
    member = Member(Told(PERSON, log=one))
    first = member.logged
    later = member.told_otherwise(member.told._replace(log=None))
    assert later.logged_in(one) is first
    assert len(looked) == 1
    assert later.logged_in(other).eaten_kcal == 1900.0, "another log is another matter"
    assert len(looked) == 2
    assert first.eaten_kcal == 1500.0
    # On another day the same log says something else.
    before = member.told_otherwise(member.told._replace(as_of_day=5))
    assert before.logged.eaten_kcal is None
    assert len(looked) == 3


def test_a_day_sent_twice_is_one_day_of_those_that_warnings_ask_for() -> None:
    plain = log(1900.0)
    few = Log(plain.weighings, [*plain.intakes[22:], *plain.intakes[22:]])
    assert Member(Told(PERSON, log=few)).logged.eaten_kcal is None
    assert Member(Told(PERSON, log=plain)).logged.eaten_kcal == 1900.0


def test_silence_is_counted_from_the_last_entry_that_somebody_made() -> None:
    plain = log(1900.0, 20)
    later = Log(plain.weighings, [*plain.intakes, *(IntakeDay(day, 0.0) for day in range(20, 40))])
    assert (later.last_day, later.last_told_day) == (39, 19)
    assert plain.last_told_day == plain.last_day == 19
