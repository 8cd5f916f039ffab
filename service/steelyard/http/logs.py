"""What the endpoints share in reading a log."""

from collections.abc import Sequence
from datetime import date

from steelyard.core import log_reader
from steelyard.core.assessment import Assessment
from steelyard.core.errors import OutOfDomain
from steelyard.core.estimate import Estimate
from steelyard.core.log import Log
from steelyard.core.person import Person

from . import mapping
from .schemas import log as log_schema
from .schemas.plans import KnownMaintenance

FIRST_DATE, LAST_DATE = date(2000, 1, 1), date(2100, 12, 31)


def check_dates(**dates: date | None) -> None:
    """Keep dates where days can be counted on from them. Raises ``OutOfDomain`` naming the field."""
    for field, value in dates.items():
        if value is not None and not FIRST_DATE <= value <= LAST_DATE:
            detail = f"Send a date from {FIRST_DATE} to {LAST_DATE}; this is {value}."
            raise OutOfDomain("DATE_OUT_OF_RANGE", f"/{field}", detail)


def as_of_day(entries: log_schema.Log, as_of_date: date | None, mapped: Log) -> int:
    """The day to read a log at: as asked, or its last. ``mapped`` is the same log as the core has it."""
    dated: list[tuple[str, Sequence[log_schema.WeightEntry | log_schema.IntakeEntry]]] = [
        ("weights", entries.weights),
        ("intakes", entries.intakes),
    ]
    for name, rows in dated:
        for i, row in enumerate(rows):
            if not FIRST_DATE <= row.date <= LAST_DATE:
                detail = f"Send a date from {FIRST_DATE} to {LAST_DATE}; this is {row.date}."
                raise OutOfDomain("DATE_OUT_OF_RANGE", f"/log/{name}/{i}/date", detail)
    for i, day in enumerate(entries.cycle):
        if not FIRST_DATE <= day <= LAST_DATE:
            detail = f"Send a date from {FIRST_DATE} to {LAST_DATE}; this is {day}."
            raise OutOfDomain("DATE_OUT_OF_RANGE", f"/log/cycle/{i}", detail)
    if as_of_date is not None:
        check_dates(as_of_date=as_of_date)
        return as_of_date.toordinal()
    return log_reader.last_day(mapped)


def maintenance_for(
    known: KnownMaintenance | None, entries: log_schema.Log | None, person: Person, assessed: Assessment
) -> Estimate:
    """Maintenance to plan from: as given, else from the log, else from the equations."""
    if known is not None:
        return Estimate(known.kcal_per_day, known.standard_deviation_kcal)
    if entries is not None:
        log = mapping.log(entries)
        return log_reader.log_maintenance(person, assessed, log, as_of_day(entries, None, log)).maintenance
    return Estimate(assessed.total.mean, assessed.total.sd)
