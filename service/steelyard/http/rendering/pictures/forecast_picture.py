"""The picture of a forecast, and the panels of a body week by week that pictures of plans and seasons share with it."""

from collections.abc import Sequence
from datetime import date
from typing import Any, NamedTuple

from ...schemas.forecasts import ForecastRequest, ForecastResponse, PathQuestion
from ...schemas.phases import ForecastPoint
from ...schemas.plans import PhaseTotals
from ...schemas.shared_fields import Interval
from ..wording import Words, round_as_written, tells_weight, told_once
from . import time_panels as over_time
from .interval_rows import Group, Row
from .labels import Layer, Sample
from .palette import DASHED, DOTTED, SHAPES, Look
from .sheet import Drawing, Headline, sheet
from .time_panels import Span, after


def draw(request: ForecastRequest, forecast: ForecastResponse, look: Look) -> Drawing:
    """Weight against tissue, body fat, and intake against maintenance."""
    words = look.words
    start = PathStart(request.start_date, _weight_kg(request), None)
    points = [week.at_end for week in forecast.weeks]
    panels: list[Layer] = []
    if points:
        span = Span(start.date, after(points[-1].date), width=look.width)
        eaten = [Eaten(week.start_date, after(week.at_end.date), week.intake_kcal) for week in forecast.weeks]
        if tells_weight(forecast.cautions):
            panels.append(weight_panel(look, span, start, points))
        if not words.spares:
            panels.append(fat_panel(look, span, None, points))
        panels.append(intake_panel(look, span, eaten, forecast.maintenance_kcal, points))
    cautions = [*words.texts(forecast.cautions), *words.texts(told_once(forecast.guard_rails))]
    return sheet(look, _message(words, request, forecast), panels, cautions)


def _message(words: Words, request: ForecastRequest, forecast: ForecastResponse) -> Headline:
    title = _title(words, request, forecast)
    lines = [] if forecast.feasible else _nearest(words, forecast)
    if forecast.weeks and tells_weight(forecast.cautions):
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
        if not tells_weight(forecast.cautions):
            return words.say("picture-forecast-intake", weeks=weeks)
        return words.say(
            "picture-forecast", weeks=weeks, date=str(end.date), weight_kg=round_as_written(end.weight_kg.mean, 1)
        )
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
    return request.profile.weight_kg if request.state is None else round_as_written(request.state.weight_kg.mean, 1)


# --- panels: weight against tissue, body fat, and what is eaten ---------------------------------------------------


class PathStart(NamedTuple):
    """The body on the morning of the first day. An answer need not say how much of it is carried mass."""

    date: date
    weight_kg: float
    carried_kg: float | None


class Eaten(NamedTuple):
    """The intake from ``start`` to the beginning of ``end``."""

    start: date
    end: date
    intake_kcal: float


def start_of(first: date, end: ForecastPoint, change: PhaseTotals) -> PathStart:
    """The body before ``change``, which led to ``end``."""
    return PathStart(first, end.weight_kg.mean - change.weight_kg.mean, end.carried_kg.mean - change.carried_kg.mean)


def weight_panel(look: Look, span: Span, start: PathStart, points: Sequence[ForecastPoint]) -> Layer:
    """Scale weight with its interval, and tissue, which is what is left of it without carried mass.

    What lies between them is water, and shaded; each line has its name where it ends.
    """
    at = str(start.date)
    first = round(start.weight_kg, 3)
    weight: list[dict[str, Any]] = [{"date": at, "value": first, "lower": first, "upper": first}]
    weight += [_interval_row(point, "weight_kg") for point in points]
    tissue = []
    if start.carried_kg is not None:
        tissue.append({"date": at, "value": round(start.weight_kg - start.carried_kg, 3)})
    tissue += [
        {"date": str(after(point.date)), "value": round(point.weight_kg.mean - point.carried_kg.mean, 3)}
        for point in points
    ]
    say = look.words.say
    water = [
        {"date": scale["date"], "lower": without["value"], "upper": scale["value"]}
        for scale, without in zip(weight[-len(tissue) :], tissue, strict=True)
    ]
    is_over = weight[-1]["value"] >= tissue[-1]["value"]
    return over_time.panel(
        look,
        span,
        title=say("picture-weight"),
        samples=[
            Sample(say("picture-interval"), look.ink, is_band=True),
            Sample(say("picture-water"), look.carried, is_band=True, is_dense=True),
        ],
        layers=[
            over_time.band(look, weight, look.ink),
            over_time.band(look, water, look.carried, is_dense=True),
            over_time.line(tissue, look.tissue, DASHED),
            over_time.line(weight, look.ink),
            over_time.end_label(span, (weight, tissue), say("picture-scale"), look.ink, is_above=is_over),
            over_time.end_label(span, (tissue, weight), say("picture-tissue"), look.tissue, is_above=not is_over),
        ],
        ends=over_time.ends_of(end for row in weight for end in (row["lower"], row["upper"])),
        height=210,
        is_labelled=True,
    )


def fat_panel(
    look: Look,
    span: Span,
    fat_now: Interval | None,
    points: Sequence[ForecastPoint],
    band: tuple[float, float] | None = None,
) -> Layer:
    """Body fat with its interval, and the band that it is to stay in."""
    say = look.words.say
    rows = [] if fat_now is None else [_row(span.first, fat_now, 100.0)]
    rows += [_interval_row(point, "fat_fraction", 100.0) for point in points]
    lines = [round(100 * end, 2) for end in band or ()]
    samples = [Sample(say("picture-body-fat"), look.fat), Sample(say("picture-interval"), look.fat, is_band=True)]
    samples += [Sample(say("picture-band"), look.ink, DOTTED)] if lines else []
    return over_time.panel(
        look,
        span,
        title=say("picture-body-fat-title"),
        samples=samples,
        layers=[
            over_time.band(look, rows, look.fat),
            *(over_time.level(line, look.ink, DOTTED) for line in lines),
            over_time.line(rows, look.fat),
        ],
        ends=over_time.ends_of([*(end for row in rows for end in (row["lower"], row["upper"])), *lines]),
        height=130,
    )


def intake_panel(
    look: Look, span: Span, eaten: Sequence[Eaten], maintenance_now: Interval, points: Sequence[ForecastPoint]
) -> Layer:
    """Intake in its steps, against the maintenance of the body of the day."""
    say = look.words.say
    steps: list[dict[str, Any]] = [{"date": str(step.start), "value": step.intake_kcal} for step in eaten]
    steps.append({"date": str(eaten[-1].end), "value": eaten[-1].intake_kcal})
    maintenance = [_row(span.first, maintenance_now), *(_interval_row(point, "maintenance_kcal") for point in points)]
    found = [*(row["value"] for row in steps), *(row[end] for row in maintenance for end in ("lower", "upper"))]
    return over_time.panel(
        look,
        span,
        title=say("picture-energy"),
        samples=[
            Sample(say("picture-intake"), look.ink),
            Sample(say("picture-maintenance"), look.carried, DASHED),
            Sample(say("picture-interval"), look.carried, is_band=True),
        ],
        layers=[
            over_time.band(look, maintenance, look.carried),
            over_time.line(maintenance, look.carried, DASHED),
            over_time.line(steps, look.ink, interpolate="step-after"),
        ],
        ends=over_time.ends_of(found),
        height=120,
        unit_format=",d",
    )


def changes_group(look: Look, heading: str, change: PhaseTotals) -> Group:
    """What a phase changes: fat and lean tissue, which stay, and carried mass, which comes back.

    Those who are spared leanness get weight, for its parts.
    """
    say = look.words.say
    if look.words.spares:
        stays = [Row(say("picture-row-weight"), change.weight_kg, look.ink, SHAPES["weight"])]
    else:
        stays = [
            Row(say("picture-fat"), change.fat_kg, look.fat, SHAPES["fat"]),
            Row(say("picture-lean"), change.lean_kg, look.lean, SHAPES["lean"]),
        ]
    carried = Row(say("picture-carried"), change.carried_kg, look.carried, SHAPES["carried"], is_filled=False)
    return Group(heading, [*stays, carried])


def _interval_row(point: ForecastPoint, field: str, scale: float = 1.0) -> dict[str, Any]:
    return _row(after(point.date), getattr(point, field), scale)


def _row(at: date, value: Interval, scale: float = 1.0) -> dict[str, Any]:
    ends = {"value": value.mean, "lower": value.lower, "upper": value.upper}
    return {"date": str(at), **{name: round(scale * end, 3) for name, end in ends.items()}}
