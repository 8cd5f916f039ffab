"""What an answer tells to eat passes the gate: the types leave no other way, and what forgets a rail is stopped.

Nothing of the rails is asked here of what plans and forecasts: their own tests do (``test_plan_answer``).
"""

import typing
from collections.abc import Callable, Iterator
from datetime import date
from types import UnionType
from typing import Any

import msgspec
import pytest
from plan_people import CLEAR, MAN, START, forget_the_floor_of_holds
from review_people import AS_PLANNED, Member
from steelyard import answers
from steelyard.answers.answered import Answered
from steelyard.science.decision import Feeling, Goal
from steelyard.science.member import Told
from steelyard.science.phase.sizes import Because, UsualDeficit
from steelyard.science.rails import DeficitLimit, Refused
from steelyard.science.rails.gate import Cleared
from steelyard.science.season import Found, Outcome, Policy, ReadyMade

QUESTIONS = [
    answers.plan_phases, answers.forecast_intake, answers.decide_phase, answers.review_phase, answers.plan_season,
    answers.compare_strategies, answers.optimise_season,
]  # fmt: skip
TO_EAT = {"intake_kcal", "correction_kcal", "surplus_kcal", "protein_g", "carbohydrate_g"}
# What was eaten, as a log tells it, and the strategy that was asked for: not what is told to eat.
NOT_TOLD = {"EatenSoFar", "Reading", "Policy"}


def fields_of(kind: Any, place: str, seen: set[Any]) -> Iterator[str]:
    """Places of what is to be eaten in values of a type, those inside of ``Cleared`` left out."""
    origin = typing.get_origin(kind)
    if kind is Cleared or origin is Cleared:
        return
    if origin is not None:
        for part in typing.get_args(kind):
            yield from fields_of(part, place, seen)
        return
    if isinstance(kind, UnionType):
        for part in kind.__args__:
            yield from fields_of(part, place, seen)
        return
    is_struct = isinstance(kind, type) and issubclass(kind, msgspec.Struct)
    if not is_struct and not hasattr(kind, "_fields"):
        return
    if kind in seen or kind.__name__ in NOT_TOLD:
        return
    seen.add(kind)
    for name, hint in typing.get_type_hints(kind).items():
        if name in TO_EAT:
            yield f"{place}.{name}"
        yield from fields_of(hint, f"{place}.{name}", seen)


@pytest.mark.parametrize("question", QUESTIONS, ids=lambda question: question.__name__)
def test_what_is_told_to_eat_is_reached_through_the_gate_alone(question: Callable[..., Any]) -> None:
    value = typing.get_args(typing.get_type_hints(question)["return"])[0]
    assert list(fields_of(value, value.__name__, set())) == []


def test_an_intake_beside_the_gate_would_be_seen() -> None:
    class Loose(typing.NamedTuple):
        told: Cleared[answers.WeekForecast]
        weeks: list[answers.WeekForecast]

    assert list(fields_of(Loose, "Loose", set())) == ["Loose.weeks.intake_kcal"]
    assert list(fields_of(Answered[Loose], "answer", set())) == ["answer.weeks.intake_kcal"]


# --- a call that is forgotten ---------------------------------------------------------------------------------------

BOUNDLESS = DeficitLimit("deficit_share", 3000.0, "forgotten")


def _unlimited(monkeypatch: pytest.MonkeyPatch, module: str) -> None:
    monkeypatch.setattr(f"{module}.deficit_limits", lambda *_, **__: [BOUNDLESS])


def test_a_review_that_forgets_the_rails_ends_the_phase(monkeypatch: pytest.MonkeyPatch) -> None:
    member = Member(4)
    phase = member.plan(4)
    starving = msgspec.structs.replace(
        phase,
        weeks=tuple(msgspec.structs.replace(week, intake_kcal=1000.0, carbohydrate_g=None) for week in phase.weeks),
    )
    member.follow(phase, 15, AS_PLANNED)
    told = member.told().told._replace(log=member.log)
    asked = answers.ReviewAsked(told, starving, as_of=date.fromordinal(member.day))
    _unlimited(monkeypatch, "steelyard.science.rails")
    monkeypatch.setattr("steelyard.science.review.correction.first_broken", lambda *_, **__: None)
    reviewed = answers.review_phase(asked)
    assert reviewed.value.weeks == []
    assert reviewed.value.review.advice.correction_kcal == 0
    assert "REVIEW_STOPPED_BY_RAIL" in {reason.code for reason in reviewed.reasons}
    assert "refused" in {action.action for action in reviewed.actions}


def test_what_comes_after_a_phase_is_stopped_where_it_forgets_its_floor(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    member = Member(4)
    phase = member.plan(4)
    member.follow(phase, 15, AS_PLANNED)
    told = member.told().told._replace(log=member.log)
    asked = answers.ReviewAsked(told, phase, as_of=date.fromordinal(member.day), is_finished=True)
    assert answers.review_phase(asked).value.after is not None
    forget_the_floor_of_holds(monkeypatch)
    with pytest.raises(Refused) as refused:
        answers.review_phase(asked)
    assert refused.value.field == "phase"


def test_a_decision_that_forgets_its_floor_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    asked = answers.DecisionAsked(Told(MAN, CLEAR), START, Goal.MUSCLE, Feeling.CONTENT)
    assert answers.decide_phase(asked).value.recommended.fragment is not None
    forget_the_floor_of_holds(monkeypatch)
    with pytest.raises(Refused):
        answers.decide_phase(asked)


def test_a_decision_leaves_out_a_way_that_breaks_a_rail(monkeypatch: pytest.MonkeyPatch) -> None:
    asked = answers.DecisionAsked(Told(MAN, CLEAR), START, Goal.LEANNESS, Feeling.UNHAPPY, history=[])
    kinds = {way.kind for way in answers.decide_phase(asked).value.ways if way.fragment is not None}
    monkeypatch.setattr("steelyard.science.phase.deficit.DeficitPhase.cap", lambda *_, **__: None)
    careless = UsualDeficit(2100.0, 0.02, 0.7, Because.BODY)
    monkeypatch.setattr("steelyard.science.phase.deficit_solver.usual_deficit", lambda *_, **__: careless)
    left = {way.kind for way in answers.decide_phase(asked).value.ways if way.fragment is not None}
    assert {kind for kind in kinds if kind.is_deficit}
    assert not {kind for kind in left if kind.is_deficit}


TERMS = answers.SeasonTerms(START, 26)


@pytest.fixture
def forgetful(monkeypatch: pytest.MonkeyPatch) -> None:
    """A season whose cuts know no rail."""
    monkeypatch.setattr("steelyard.science.season.run.most_deficit_kcal", lambda *_, **__: 2500.0)


WILD = answers.StrategyInNumbers("wild", 100.0, 0.15, 0.12, 1500.0, 6, 1)
UNCUT = answers.StrategyInNumbers("uncut", 100.0, None, None, 500.0, 6, 1)


@pytest.mark.usefixtures("forgetful")
def test_a_season_that_forgets_the_rails_is_refused() -> None:
    with pytest.raises(Refused):
        answers.plan_season(answers.SeasonAsked(Told(MAN, CLEAR), TERMS, WILD))


@pytest.mark.usefixtures("forgetful")
def test_a_comparison_shuts_a_strategy_that_forgets_the_rails() -> None:
    compared = answers.compare_strategies(answers.ComparisonAsked(Told(MAN, CLEAR), TERMS, [WILD, UNCUT])).value
    assert [one.label for one in compared.followed] == ["uncut"]
    assert [one.label for one in compared.refused] == ["wild"]


def test_an_optimum_tells_no_season_that_forgets_the_rails(monkeypatch: pytest.MonkeyPatch) -> None:
    asked = answers.OptimumAsked(Told(MAN, CLEAR), TERMS, 200)
    found = answers.optimise_season(asked).value
    assert found.trade_off
    monkeypatch.setattr("steelyard.science.season.run.surplus_for_gain_rate", lambda *_, **__: 2500.0)
    monkeypatch.setattr("steelyard.science.season.optimum._Space.found", _gaining_too_fast)
    with pytest.raises(Refused):
        answers.optimise_season(asked)


def _gaining_too_fast(space: Any, i: int, lean_sd_kg: float | None = None) -> Any:
    """A gain of a thousand kilocalories over maintenance, whatever was searched."""
    outcome = Outcome(*[float(value) for value in space.outcome[i]])
    return Found(Policy(1000.0).without_cuts, outcome, lean_sd_kg)


def test_ready_made_strategies_pass() -> None:
    for name in ReadyMade:
        assert answers.plan_season(answers.SeasonAsked(Told(MAN, CLEAR), TERMS, name)).value.laid_out.phases
