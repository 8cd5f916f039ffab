"""The picture of a log that was read: the answer is its headline."""

from datetime import date
from typing import Any

from ...schemas.explanation import Note
from ...schemas.shared_fields import Interval, IntervalColumns
from ...schemas.trends import TrendRequest, TrendResponse
from ..wording import Words
from . import interval_rows
from . import time_panels as over_time
from .interval_rows import Group, Row
from .labels import Layer, Sample, symbol
from .palette import DASHED, SHAPES, Look
from .sheet import Drawing, Headline, sheet
from .time_panels import Span, after

_RECENT_DAYS = 14
_URGENT = "REFUSED_REFEEDING"
_FEW = 120  # up to here, symbols are large and solid
_MANY = {"size": 7, "strokeWidth": 1, "opacity": 0.45}  # how they are where they would hide each other and the lines


def draw(request: TrendRequest, trend: TrendResponse, look: Look) -> Drawing:
    """Weighings and what is left of them without noise, maintenance, and what the changes are made of."""
    words = look.words
    panels = []
    dates = trend.days.date
    if len(dates) > 1:
        span = Span(dates[0], after(dates[-1]), width=look.width)
        panels = [_weight_panel(look, span, trend), _energy_panel(look, span, request, trend)]
    groups = _groups(look, trend)
    if groups:
        panels.append(interval_rows.panel(look, groups, title=words.say("picture-change"), samples=[]))
    return sheet(look, _message(words, trend), panels, words.texts(trend.cautions) + _notes(words, trend))


def _weight_panel(look: Look, span: Span, trend: TrendResponse) -> Layer:
    say = look.words.say
    days = trend.days
    smoothed = _rows(days.date, days.smoothed_weight_kg)
    tissue = [{"date": str(day), "value": value} for day, value in zip(days.date, days.tissue_kg.mean, strict=True)]
    weighed: list[dict[str, Any]] = [
        {"date": str(day), "value": weight, "outlier": is_outlier}
        for day, weight, is_outlier in zip(days.date, days.observed_weight_kg, days.is_outlier, strict=True)
        if weight is not None
    ]
    usual = [row for row in weighed if not row["outlier"]]
    odd = [row for row in weighed if row["outlier"]]
    samples = [Sample(say("picture-weighings"), look.muted, shape="circle", is_filled=False)]
    samples += [Sample(say("picture-outlier"), look.muted, shape="cross", is_filled=False)] if odd else []
    samples += [
        Sample(say("picture-smoothed"), look.ink),
        Sample(say("picture-interval"), look.ink, is_band=True),
        Sample(say("picture-tissue"), look.tissue, DASHED),
    ]
    values = [row[end] for row in smoothed for end in ("lower", "upper")]
    values += [row["value"] for row in (*tissue, *weighed)]
    return over_time.panel(
        look,
        span,
        title=say("picture-weight"),
        samples=samples,
        layers=[
            over_time.band(look, smoothed, look.ink),
            over_time.points(
                usual,
                symbol("circle", look.muted, is_filled=False, **({"size": 26} if len(weighed) <= _FEW else _MANY)),
            ),
            over_time.points(odd, symbol("cross", look.muted, is_filled=False, size=50)),
            over_time.line(tissue, look.tissue, DASHED),
            over_time.line(smoothed, look.ink),
        ],
        ends=over_time.ends_of(values),
        height=230,
    )


def _energy_panel(look: Look, span: Span, request: TrendRequest, trend: TrendResponse) -> Layer:
    say = look.words.say
    maintenance = _rows(trend.days.date, trend.days.maintenance_kcal)
    eaten: list[dict[str, Any]] = [
        {"date": str(entry.date), "value": entry.intake_kcal}
        for log in (request.log, None if request.state is None else request.state.log)
        if log is not None
        for entry in log.intakes
        if span.first <= entry.date < span.last
    ]
    samples = [Sample(say("picture-logged"), look.muted, shape="square", is_filled=False)] if eaten else []
    samples += [
        Sample(say("picture-maintenance-logged"), look.carried, DASHED),
        Sample(say("picture-interval"), look.carried, is_band=True),
    ]
    values = [row[end] for row in maintenance for end in ("lower", "upper")] + [row["value"] for row in eaten]
    return over_time.panel(
        look,
        span,
        title=say("picture-energy"),
        samples=samples,
        layers=[
            over_time.band(look, maintenance, look.carried),
            over_time.points(
                eaten, symbol("square", look.muted, is_filled=False, **({"size": 22} if len(eaten) <= _FEW else _MANY))
            ),
            over_time.line(maintenance, look.carried, DASHED),
        ],
        ends=over_time.ends_of(values),
        height=130,
        unit_format=",d",
    )


def _groups(look: Look, trend: TrendResponse) -> list[Group]:
    say = look.words.say
    groups: list[Group] = []
    whole = trend.changes[-1] if trend.changes else None
    recent = next((change for change in trend.changes if change.days == _RECENT_DAYS), None)
    for change in (recent, whole):
        if change is None or (change is whole and change is recent and groups):
            continue
        rows = [Row(say("picture-row-weight"), change.weight_kg, look.ink, SHAPES["weight"])]
        split = None if look.words.spares else trend.composition
        if change is whole and split is not None:
            rows.append(Row(say("picture-fat"), split.fat_change_kg, look.fat, SHAPES["fat"]))
            rows.append(Row(say("picture-lean"), split.lean_change_kg, look.lean, SHAPES["lean"]))
        else:
            rows.append(Row(say("picture-row-tissue"), change.tissue_kg, look.tissue, SHAPES["tissue"]))
        rows.append(Row(say("picture-carried"), change.carried_kg, look.carried, SHAPES["carried"], is_filled=False))
        groups.append(
            Group(say("picture-window-whole" if change is whole else "picture-window", days=change.days), rows)
        )
    return groups


def _notes(words: Words, trend: TrendResponse) -> list[str]:
    """What is said of the data, once for each kind: a note for every outlier of years would fill the picture."""
    kinds: dict[str, list[Note]] = {}
    for note in trend.notes:
        kinds.setdefault(note.code, []).append(note)
    return [
        texts[0] if len(texts) == 1 else words.say("picture-more-of-kind", text=texts[0], count=len(texts) - 1)
        for notes in kinds.values()
        if (texts := words.texts(notes))
    ]


def _message(words: Words, trend: TrendResponse) -> Headline:
    days = trend.days
    first, last = str(days.date[0]), str(days.date[-1])
    title = _title(words, trend)
    lines = [
        words.say("picture-trend-day", date=first)
        if first == last
        else words.say("picture-trend-log", start_date=first, end_date=last),
        words.say(
            "picture-trend-smoothed",
            start_weight=words.values(_interval(days.smoothed_weight_kg, 0), unit="kg"),
            weight=words.values(_interval(days.smoothed_weight_kg, -1), unit="kg"),
            rate=words.values(trend.weekly_rate_kg, 2, is_change=True, unit="kg"),
        ),
        words.say("picture-trend-maintenance", maintenance=words.values(trend.maintenance_kcal, 0, unit="kcal")),
        words.ranges(trend.weekly_rate_kg),
    ]
    said = []
    if trend.changes:
        change = trend.changes[-1]
        said.append(
            words.say(
                "picture-trend-change",
                days=change.days,
                weight=words.changes(change.weight_kg),
                tissue=words.changes(change.tissue_kg),
                carried=words.changes(change.carried_kg),
            )
        )
    if trend.composition is not None and not words.spares:
        fat, lean = (words.changes(of) for of in (trend.composition.fat_change_kg, trend.composition.lean_change_kg))
        said.append(words.say("picture-trend-composition", fat=fat, lean=lean))
    return Headline(title, lines, " ".join([f"{title}.", *lines, *said]))


def _title(words: Words, trend: TrendResponse) -> str:
    """Where the body goes, where the log can tell; a range on both sides of nothing is no direction."""
    if not trend.is_conclusive:
        if trend.more_days_needed:
            return words.say("picture-trend-early-days", more_days=trend.more_days_needed)
        return words.say("picture-trend-early")
    rate = trend.weekly_rate_kg
    way = "down" if rate.upper < 0 else "up" if rate.lower > 0 else "level"
    if any(caution.code == _URGENT for caution in trend.cautions):
        return words.say("picture-trend-urgent", way=way, rate_kg=abs(rate.mean))  # no intake is told
    maintenance_kcal = round(trend.maintenance_kcal.mean, -1)
    return words.say("picture-trend", way=way, rate_kg=abs(rate.mean), maintenance_kcal=maintenance_kcal)


def _rows(dates: list[date], columns: IntervalColumns) -> list[dict[str, Any]]:
    return [
        {"date": str(day), "value": mean, "lower": lower, "upper": upper}
        for day, lower, mean, upper in zip(dates, columns.lower, columns.mean, columns.upper, strict=True)
    ]


def _interval(columns: IntervalColumns, row: int) -> Interval:
    return Interval(columns.lower[row], columns.mean[row], columns.upper[row], columns.coverage)
