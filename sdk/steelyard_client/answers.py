"""The main answers: the generated models, with a short ``repr`` and what came with them."""

from typing import TypeVar

from .generated.models import (
    BodyCompositionResponse,
    ComparisonResponse,
    DecisionResponse,
    ForecastResponse,
    Interval,
    MaintenanceResponse,
    MethodCatalogue,
    MethodEntry,
    OptimumResponse,
    PlanResponse,
    ReviewResponse,
    RosterResponse,
    SeasonPlan,
    SeasonResponse,
    TrendResponse,
)
from .received import Answered

Model = TypeVar("Model")


def shown(model: type[Model]) -> type[Model]:
    """The answer of this module for a generated model; the model itself where there is none."""
    return next((kind for kind in model.__subclasses__() if kind.__module__ == __name__), model)


class Maintenance(Answered, MaintenanceResponse):
    """What ``estimate_maintenance`` answers."""

    def __repr__(self) -> str:
        share = f"{self.contribution.log_share:.0%} from the log"
        return f"<Maintenance {_interval(self.maintenance_kcal, '.0f')} kcal/d, {share}>"


class Plan(Answered, PlanResponse):
    """What ``plan_phases`` answers. Where ``feasible`` is false, ``nearest`` says what would be."""

    def __repr__(self) -> str:
        if not self.feasible:
            return f"<Plan not feasible, {len(self.cautions)} cautions>"
        phases = ", ".join(f"{phase.kind} {len(phase.weeks)} wk" for phase in self.phases)
        return f"<Plan {phases}; maintenance {_interval(self.maintenance_kcal, '.0f')} kcal/d>"


class Trend(Answered, TrendResponse):
    """What ``read_trend`` answers. ``is_conclusive`` is false while the log is too short to tell a direction."""

    def __repr__(self) -> str:
        rate = f"{_interval(self.weekly_rate_kg, '+.2f')} kg/wk"
        return f"<Trend as of {self.as_of_date}: {rate}{'' if self.is_conclusive else ', not conclusive yet'}>"


class Roster(Answered, RosterResponse):
    """What ``rank_roster`` answers: ``members`` in the order in which to look at them."""

    def __repr__(self) -> str:
        none, look, soon, today = self.by_level
        return f"<Roster as of {self.as_of_date}: {today} today, {soon} soon, {look} to look at, {none} as planned>"


class Forecast(Answered, ForecastResponse):
    """What ``forecast_intake`` answers. Where ``feasible`` is false, ``nearest`` says what would be."""

    def __repr__(self) -> str:
        if not self.feasible:
            return f"<Forecast not feasible, {len(self.cautions)} cautions>"
        maintenance = f"maintenance {_interval(self.maintenance_kcal, '.0f')} kcal/d"
        return f"<Forecast {len(self.weeks)} wk; {maintenance}>"


class Decision(Answered, DecisionResponse):
    """What ``decide_phase`` answers. ``recommended.plan`` is part of a request for ``plan_phases``."""

    def __repr__(self) -> str:
        return f"<Decision {self.situation}: {self.recommended.kind} {self.recommended.weeks} wk>"


class Review(Answered, ReviewResponse):
    """What ``review_phase`` answers. ``correction_kcal`` is 0 while there is nothing to change."""

    def __repr__(self) -> str:
        return f"<Review {self.verdict}: {self.decision}, {self.correction_kcal:+d} kcal/d>"


class BodyComposition(Answered, BodyCompositionResponse):
    """What ``estimate_body_composition`` answers."""

    def __repr__(self) -> str:
        return f"<BodyComposition fat {_interval(self.fat_fraction, '.1%')} of body mass>"


class Season(Answered, SeasonResponse):
    """What ``plan_season`` answers. Where ``feasible`` is false, ``broken_limits`` says which limits it breaks."""

    def __repr__(self) -> str:
        return f"<Season {_season(self.plan)}{'' if self.feasible else ', not feasible'}>"


class Comparison(Answered, ComparisonResponse):
    """What ``compare_strategies`` answers."""

    def __repr__(self) -> str:
        each = ", ".join(f"{one.label} {one.expected.lean_gained_kg:+.1f} kg lean" for one in self.strategies)
        return f"<Comparison {each or 'of nothing'}; {len(self.refused)} refused>"


class Optimum(Answered, OptimumResponse):
    """What ``optimise_season`` answers."""

    def __repr__(self) -> str:
        searched = f"of {self.searched.strategies} strategies"
        return f"<Optimum {searched}: {_season(self.plan)}{'' if self.feasible else ', not feasible'}>"


class Methods(Answered, MethodCatalogue):
    """What ``list_methods`` answers."""

    def __repr__(self) -> str:
        return f"<Methods {len(self.entries)} entries, {len(self.sources)} sources>"

    def entry(self, method_id: str) -> MethodEntry:
        """The entry with this id, as ``methods``, guard rails and refusals cite it. Raises ``KeyError``."""
        for entry in self.entries:
            if entry.id == method_id:
                return entry
        raise KeyError(method_id)


def _interval(interval: Interval, form: str) -> str:
    return f"{interval.mean:{form}} ({interval.lower:{form}} to {interval.upper:{form}})"


def _season(plan: SeasonPlan) -> str:
    return f"{len(plan.weeks)} wk, {plan.totals.cuts} cuts, {_interval(plan.totals.lean_gained_kg, '+.1f')} kg lean"
