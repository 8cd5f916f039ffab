"""Answers as pandas data frames. Needs the extra: ``pip install 'steelyard-client[dataframe]'``."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, Any

from .answers import Comparison, Forecast, Optimum, Plan, Season, Trend
from .generated.models import Interval, IntervalColumns

if TYPE_CHECKING:
    import pandas

# The body at the end of a week: its columns stand beside the week's own.
_AT_END = "at_end"


def to_dataframe(answer: Plan | Trend | Season | Optimum | Comparison | Forecast) -> pandas.DataFrame:
    """The rows of an answer: weeks of a plan, forecast, season or optimum, days of a trend, compared strategies.

    Columns have the names of the contract, units included. An interval is three columns: ``weight_kg`` (its mean),
    ``weight_kg_lower`` and ``weight_kg_upper``. Dates are ``datetime64``; what is itself a list is left out. A plan
    has the columns ``phase`` (from 1) and ``kind`` first, a comparison ``label``. An answer without rows, such as a
    plan that is not feasible, is an empty frame.

    ``attrs`` of the frame holds the answer's ``fingerprint`` and the texts of its ``cautions``: show them with it.

    Raises ``TypeError`` for other answers, ``ImportError`` where pandas is not installed.
    """
    rows = [_flat(row) for row in _rows(answer)]
    try:
        import pandas
    except ImportError as error:
        raise ImportError("to_dataframe needs pandas: pip install 'steelyard-client[dataframe]'") from error
    frame = pandas.DataFrame(rows)
    dates = {name for row in rows for name, value in row.items() if isinstance(value, datetime.date)}
    for name in dates:
        frame[name] = pandas.to_datetime(frame[name])
    frame.attrs = {"fingerprint": answer.fingerprint, "cautions": [caution.text for caution in answer.cautions]}
    return frame


def _rows(answer: Any) -> Iterable[dict[str, Any]]:
    match answer:
        case Plan():
            for number, phase in enumerate(answer.phases, 1):
                for week in phase.weeks:
                    yield {"phase": number, "kind": phase.kind, **_fields(week)}
        case Trend():
            columns = _columns(_fields(answer.days))
            for row in zip(*columns.values(), strict=True):
                yield dict(zip(columns, row, strict=True))
        case Season() | Optimum():
            yield from map(_fields, answer.plan.weeks)
        case Forecast():
            yield from map(_fields, answer.weeks)
        case Comparison():
            for one in answer.strategies:
                # What is expected and its interval come from two computations; the table shows both beside each other.
                ends = {name: value for name, value in _fields(one.intervals).items() if isinstance(value, Interval)}
                bounds = {f"{name}_{end}": getattr(ends[name], end) for name in ends for end in ("lower", "upper")}
                yield {"label": one.label, "feasible": one.feasible, **_fields(one.expected), **bounds}
        case _:
            kinds = "Plan, Trend, Season, Optimum, Comparison or Forecast"
            raise TypeError(f"to_dataframe takes a {kinds}, not {type(answer).__name__}")


def _fields(model: Any) -> dict[str, Any]:
    """The fields of a generated model; those that this version does not know are left out."""
    names = [field.name for field in type(model).__attrs_attrs__ if field.name != "additional_properties"]
    return {name: getattr(model, name) for name in names}


def _ends(name: str, value: Interval | IntervalColumns) -> dict[str, Any]:
    """An interval, or a column of them, under three names."""
    return {name: value.mean, f"{name}_lower": value.lower, f"{name}_upper": value.upper}


def _columns(days: Mapping[str, Any]) -> dict[str, list[Any]]:
    columns: dict[str, list[Any]] = {}
    for name, value in days.items():
        if isinstance(value, IntervalColumns):
            columns |= _ends(name, value)
        else:
            columns[name] = value
    return columns


def _flat(row: Mapping[str, Any]) -> dict[str, Any]:
    flat: dict[str, Any] = {}
    for name, value in row.items():
        if isinstance(value, Interval):
            flat |= _ends(name, value)
        elif name == _AT_END:
            body = _fields(value)
            flat |= _flat({"end_date": body.pop("date"), **body})
        elif not isinstance(value, list):
            flat[name] = value
    return flat
