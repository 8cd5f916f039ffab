"""The picture of a forecast."""

from ...schemas.forecasts import ForecastRequest, ForecastResponse, PathQuestion
from ..formats import plan_words as words
from . import wording
from .body_panels import Eaten, PathStart, fat_panel, intake_panel, weight_panel
from .palette import Look
from .sheet import Drawing, Headline, sheet
from .time_panels import Span, after


def draw(request: ForecastRequest, forecast: ForecastResponse, look: Look) -> Drawing:
    """Weight against tissue, body fat, and intake against maintenance."""
    start = PathStart(request.start_date, _weight_kg(request), None)
    points = [week.at_end for week in forecast.weeks]
    panels = []
    if points:
        span = Span(start.date, after(points[-1].date), width=look.width)
        eaten = [Eaten(week.start_date, after(week.at_end.date), week.intake_kcal) for week in forecast.weeks]
        panels = [
            weight_panel(look, span, start, points),
            fat_panel(look, span, None, points),
            intake_panel(look, span, eaten, forecast.maintenance_kcal, points),
        ]
    cautions = [*words.texts(forecast.cautions), *(words.one_line(rail.text) for rail in forecast.guard_rails)]
    return sheet(look, _message(request, forecast), panels, cautions)


def _message(request: ForecastRequest, forecast: ForecastResponse) -> Headline:
    title = f"Forecast of {words.weeks_text(len(forecast.weeks))}"
    lines = []
    if not isinstance(request.question, PathQuestion):
        lines.append(_target_text(forecast))
    if forecast.weeks:
        last = forecast.weeks[-1].at_end
        lines.append(
            f"Scale weight from {wording.number(_weight_kg(request))} kg on {wording.day(request.start_date)} to "
            f"{wording.values(last.weight_kg, unit='kg')} at the end of {wording.day(last.date)}, with "
            f"{wording.values(last.fat_kg, unit='kg')} of fat and body fat of {wording.percent(last.fat_fraction)}."
        )
    lines.append(
        f"Maintenance at the start: {wording.values(forecast.maintenance_kcal, 0, unit='kcal')} a\u00a0day. "
        f"In parentheses: {wording.coverage(forecast.maintenance_kcal)} intervals."
    )
    return Headline(title, lines, " ".join([f"{title}.", *lines]))


def _target_text(forecast: ForecastResponse) -> str:
    if forecast.feasible:
        when = "" if forecast.reached_on is None else f" on {wording.day(forecast.reached_on)}"
        return f"{forecast.intake_kcal or 0:,.0f} kcal a\u00a0day reach the target{when}."
    near = []
    if forecast.nearest is not None:
        if forecast.nearest.intake_kcal is not None:
            near.append(f"{forecast.nearest.intake_kcal:,.0f} kcal a\u00a0day")
        if forecast.nearest.by_date is not None:
            near.append(f"the target on {wording.day(forecast.nearest.by_date)}")
    return "No safe intake reaches the target in time." + (f" Nearest: {'; '.join(near)}." if near else "")


def _weight_kg(request: ForecastRequest) -> float:
    """What the forecast starts from."""
    return request.profile.weight_kg if request.state is None else round(request.state.weight_kg.mean, 1)
