"""The picture of a forecast: the answer is its headline."""

from ...schemas.forecasts import ForecastRequest, ForecastResponse, PathQuestion
from ..wording import Words, told_once
from .forecast_panels import Eaten, PathStart, fat_panel, intake_panel, weight_panel
from .palette import Look
from .sheet import Drawing, Headline, sheet
from .time_panels import Span, after


def draw(request: ForecastRequest, forecast: ForecastResponse, look: Look) -> Drawing:
    """Weight against tissue, body fat, and intake against maintenance."""
    words = look.words
    start = PathStart(request.start_date, _weight_kg(request), None)
    points = [week.at_end for week in forecast.weeks]
    panels = []
    if points:
        span = Span(start.date, after(points[-1].date), width=look.width)
        eaten = [Eaten(week.start_date, after(week.at_end.date), week.intake_kcal) for week in forecast.weeks]
        panels = [
            weight_panel(look, span, start, points),
            *([] if words.spares else [fat_panel(look, span, None, points)]),
            intake_panel(look, span, eaten, forecast.maintenance_kcal, points),
        ]
    cautions = [*words.texts(forecast.cautions), *words.texts(told_once(forecast.guard_rails))]
    return sheet(look, _message(words, request, forecast), panels, cautions)


def _message(words: Words, request: ForecastRequest, forecast: ForecastResponse) -> Headline:
    title = _title(words, request, forecast)
    lines = [] if forecast.feasible else _nearest(words, forecast)
    if forecast.weeks:
        last = forecast.weeks[-1].at_end
        lines.append(
            words.say(
                "picture-forecast-path",
                start_weight=words.number(_weight_kg(request), unit="kg"),
                start_date=str(request.start_date),
                weight=words.values(last.weight_kg, unit="kg"),
                end_date=str(last.date),
                fat=words.values(last.fat_kg, unit="kg"),
                percent=words.percent(last.fat_fraction),
            )
        )
    maintenance = words.values(forecast.maintenance_kcal, 0, unit="kcal")
    lines.append(words.say("picture-forecast-maintenance", maintenance=maintenance))
    lines.append(words.ranges(forecast.maintenance_kcal))
    return Headline(title, lines, " ".join([f"{title}.", *lines]))


def _title(words: Words, request: ForecastRequest, forecast: ForecastResponse) -> str:
    if not forecast.feasible:
        return words.say("picture-target-missed")
    if isinstance(request.question, PathQuestion):
        end = forecast.weeks[-1].at_end
        weeks = len(forecast.weeks)
        return words.say("picture-forecast", weeks=weeks, date=str(end.date), weight_kg=round(end.weight_kg.mean, 1))
    intake_kcal = forecast.intake_kcal or 0
    if forecast.reached_on is None:
        return words.say("picture-target-met", intake_kcal=intake_kcal)
    return words.say("picture-target-reached", intake_kcal=intake_kcal, date=str(forecast.reached_on))


def _nearest(words: Words, forecast: ForecastResponse) -> list[str]:
    nearest = forecast.nearest
    if nearest is None or (nearest.intake_kcal is None and nearest.by_date is None):
        return []
    if nearest.by_date is None:
        return [words.say("picture-nearest-intake", intake_kcal=nearest.intake_kcal)]
    if nearest.intake_kcal is None:
        return [words.say("picture-nearest-date", date=str(nearest.by_date))]
    return [words.say("picture-nearest-intake-date", intake_kcal=nearest.intake_kcal, date=str(nearest.by_date))]


def _weight_kg(request: ForecastRequest) -> float:
    """What the forecast starts from."""
    return request.profile.weight_kg if request.state is None else round(request.state.weight_kg.mean, 1)
