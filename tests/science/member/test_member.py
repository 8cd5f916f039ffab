"""A member: what follows from what was told, each once."""

from typing import Any

import pytest
from lifters import lifter
from msgspec.structs import replace
from steelyard.science.log import IntakeDay, Log, Weighing
from steelyard.science.member import Member, Told
from steelyard.science.person import Sex, TrainingStatus

PERSON = lifter(Sex.FEMALE, age_years=34.0, height_cm=168.0, weight_kg=71.0, status=TrainingStatus.NOVICE, sessions=3.0)


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


def wandering(first_kg: float, a_day: float, days: int = 28) -> list[float]:
    """Weights that fall by so much a day, and wander by some hundred grams."""
    return [first_kg - a_day * day + 0.15 * ((7 * day) % 5 - 2) for day in range(days)]


def told(kilograms: list[float], kcal: list[float], **of_whom: float) -> Member:
    entries = Log(
        [Weighing(day, kg) for day, kg in enumerate(kilograms, start=1)],
        [IntakeDay(day, eaten) for day, eaten in enumerate(kcal, start=1)],
    )
    return Member(Told(replace(PERSON, **of_whom), log=entries))


@pytest.mark.parametrize("slip", [10.0, 1.0 / 0.45359237])
def test_a_weight_typed_wrongly_hides_no_fast_loss(slip: float) -> None:
    kilograms = wandering(75.0, 0.2)
    plain = told(kilograms, [1500.0] * 28).logged
    assert plain.loss_share > 0.015
    kilograms[-4] *= slip
    found = told(kilograms, [1500.0] * 28).logged
    assert found.loss_share == pytest.approx(plain.loss_share, abs=0.002)
    assert found.weight_kg == pytest.approx(plain.weight_kg, abs=0.2)


def test_weights_typed_wrongly_make_no_fast_loss() -> None:
    kilograms = wandering(71.0, 0.0)
    kilograms[1] *= 10.0
    kilograms[15] *= 10.0
    assert told(kilograms, [1900.0] * 28).logged.loss_share < 0.005


def test_intakes_set_aside_do_not_count_in_what_is_eaten() -> None:
    kcal = [1000.0] * 28
    kcal[-3] = kcal[-5] = 10_000.0
    assert told(wandering(71.0, 0.0), kcal).logged.eaten_kcal == 1000.0


def test_intakes_of_which_none_is_read_are_no_log_of_food() -> None:
    weights = wandering(71.0, 0.0)
    assert told(weights, [1900.0] * 28).learnt is not None
    for unread in ([1900.0 * 4.184] * 28, [0.0] * 28):
        member = told(weights, unread)
        assert member.learnt is None
        codes = {caution.code for caution in member.cautions}
        assert "ON_LOGGING_SCALE" not in codes
    partial = Log(
        [Weighing(day, kg) for day, kg in enumerate(weights)], [IntakeDay(day, 900.0, None, True) for day in range(28)]
    )
    assert Member(Told(PERSON, log=partial)).learnt is None


def test_who_is_not_to_eat_more_alone_is_not_told_to_eat_more() -> None:
    eat_more = {"WARNED_LOGGED_LOSS", "WARNED_EATEN_FLOOR", "WARNED_EATEN_AVAILABILITY"}
    falling = wandering(49.5, 0.15)
    thin = {caution.code for caution in told(falling, [700.0] * 28, weight_kg=46.5).cautions}
    assert "REFUSED_REFEEDING" in thin
    assert not thin & eat_more
    assert thin >= {code + "_URGENT" for code in eat_more}, "what the log shows is still said"
    others = {caution.code for caution in told(wandering(75.0, 0.2), [700.0] * 28).cautions}
    assert others >= eat_more
