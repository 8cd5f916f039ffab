"""The picture of a log that was read."""

from datetime import date
from typing import Any

from ...schemas.quantities import Interval, IntervalColumns
from ...schemas.trends import ChangeSplit, TrendRequest, TrendResponse
from ..formats import plan_words as words
from . import interval_rows, wording
from . import time_panels as over_time
from .interval_rows import Group, Row
from .marks import Layer, Sample, symbol
from .palette import DASHED, SHAPES, Look
from .sheet import Drawing, Headline, sheet
from .time_panels import Span, after

_RECENT_DAYS = 14
_FEW = 120  # up to here, symbols are large and solid
_MANY = {"size": 7, "strokeWidth": 1, "opacity": 0.45}  # how they are where they would hide each other and the lines


def draw(request: TrendRequest, trend: TrendResponse, look: Look) -> Drawing:
    """Weighings and what is left of them without noise, maintenance, and what the changes are made of."""
    panels = []
    dates = trend.days.date
    if len(dates) > 1:
        span = Span(dates[0], after(dates[-1]), width=look.width)
        panels = [_weight_panel(look, span, trend), _energy_panel(look, span, request, trend)]
    groups = _groups(look, trend)
    if groups:
        panels.append(interval_rows.panel(look, groups, title="Change, kg, with 80 % intervals", samples=[]))
    return sheet(look, _message(trend), panels, words.texts(trend.cautions) + _notes(trend))


def _weight_panel(look: Look, span: Span, trend: TrendResponse) -> Layer:
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
    samples = [Sample("weighings", look.muted, shape="circle", is_filled=False)]
    samples += [Sample("outlier", look.muted, shape="cross", is_filled=False)] if odd else []
    samples += [
        Sample("smoothed", look.ink),
        Sample("80 % interval", look.ink, is_band=True),
        Sample("tissue, without carried mass", look.tissue, DASHED),
    ]
    values = [row[end] for row in smoothed for end in ("lower", "upper")]
    values += [row["value"] for row in (*tissue, *weighed)]
    return over_time.panel(
        look,
        span,
        title="Scale weight, kg",
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
    maintenance = _rows(trend.days.date, trend.days.maintenance_kcal)
    eaten: list[dict[str, Any]] = [
        {"date": str(entry.date), "value": entry.intake_kcal}
        for log in (request.log, None if request.state is None else request.state.log)
        if log is not None
        for entry in log.intakes
        if span.first <= entry.date < span.last
    ]
    samples = [Sample("logged intake", look.muted, shape="square", is_filled=False)] if eaten else []
    samples += [
        Sample("maintenance on the log's scale", look.carried, DASHED),
        Sample("80 % interval", look.carried, is_band=True),
    ]
    values = [row[end] for row in maintenance for end in ("lower", "upper")] + [row["value"] for row in eaten]
    return over_time.panel(
        look,
        span,
        title="Energy, kcal a day",
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
    groups: list[Group] = []
    whole = trend.changes[-1] if trend.changes else None
    recent = next((change for change in trend.changes if change.days == _RECENT_DAYS), None)
    for change in (recent, whole):
        if change is None or (change is whole and change is recent and groups):
            continue
        rows = [Row("Weight", change.weight_kg, look.ink, SHAPES["weight"])]
        if change is whole and trend.composition is not None:
            rows.append(Row("Fat", trend.composition.fat_change_kg, look.fat, SHAPES["fat"]))
            rows.append(Row("Lean tissue", trend.composition.lean_change_kg, look.lean, SHAPES["lean"]))
        else:
            rows.append(Row("Tissue: fat and lean", change.tissue_kg, look.tissue, SHAPES["tissue"]))
        rows.append(Row("Carried mass", change.carried_kg, look.carried, SHAPES["carried"], is_filled=False))
        groups.append(Group(_window(change, change is whole), rows))
    return groups


def _window(change: ChangeSplit, is_whole: bool) -> str:
    return f"Over the log, {change.days:,} days" if is_whole else f"Last {change.days} days"


def _notes(trend: TrendResponse) -> list[str]:
    """What is said of the data, once for each kind: a note for every outlier of years would fill the picture."""
    kinds: dict[str, list[str]] = {}
    for note, text in zip(trend.notes, words.texts(trend.notes), strict=True):
        kinds.setdefault(note.code, []).append(text)
    return [
        texts[0] if len(texts) == 1 else f"{texts[0]} ({len(texts) - 1} more of this kind.)" for texts in kinds.values()
    ]


def _message(trend: TrendResponse) -> Headline:
    days = trend.days
    title = f"Weight log from {wording.day(days.date[0])} to {wording.day(days.date[-1])}"
    if len(days.date) == 1:
        title = f"Weight log of {wording.day(days.date[0])}"
    lines = []
    if not trend.is_conclusive:
        more = f": about {trend.more_days_needed} more days are needed" if trend.more_days_needed else ""
        lines.append(f"Too little data to tell a direction{more}.")
    lines.append(
        f"Smoothed weight from {wording.values(_interval(days.smoothed_weight_kg, 0), unit='kg')} to "
        f"{wording.values(_interval(days.smoothed_weight_kg, -1), unit='kg')}. Tissue now changes by "
        f"{wording.values(trend.weekly_rate_kg, 2, is_change=True, unit='kg')} a\u00a0week."
    )
    lines.append(f"Maintenance on the log's own scale: {wording.values(trend.maintenance_kcal, 0, unit='kcal')} a day.")
    lines.append(f"In parentheses: {wording.coverage(trend.weekly_rate_kg)} intervals.")
    said = []
    if trend.changes:
        change = trend.changes[-1]
        said.append(
            f"Over {change.days} days: weight {wording.changes(change.weight_kg)}, tissue "
            f"{wording.changes(change.tissue_kg)}, carried mass {wording.changes(change.carried_kg)}."
        )
    if trend.composition is not None:
        said.append(
            f"Of the tissue: fat {wording.changes(trend.composition.fat_change_kg)}, lean "
            f"{wording.changes(trend.composition.lean_change_kg)}."
        )
    return Headline(title, lines, " ".join([f"{title}.", *lines, *said]))


def _rows(dates: list[date], columns: IntervalColumns) -> list[dict[str, Any]]:
    return [
        {"date": str(day), "value": mean, "lower": lower, "upper": upper}
        for day, lower, mean, upper in zip(dates, columns.lower, columns.mean, columns.upper, strict=True)
    ]


def _interval(columns: IntervalColumns, row: int) -> Interval:
    return Interval(columns.lower[row], columns.mean[row], columns.upper[row], columns.coverage)
