"""What the endpoints share in reading a log."""

from datetime import date

from steelyard.science.log import Log, log_maintenance
from steelyard.science.measures import Assessment
from steelyard.science.numbers import Estimate
from steelyard.science.person import Person
from steelyard.science.register import OutOfDomain

from . import mapping
from .schemas import log as log_schema
from .schemas.plans import KnownMaintenance

FIRST_DATE, LAST_DATE = date(2000, 1, 1), date(2100, 12, 31)
_FIRST_DAY, _LAST_DAY = FIRST_DATE.toordinal(), LAST_DATE.toordinal()


def check_dates(**dates: date | None) -> None:
    """Keep dates where days can be counted on from them. Raises ``OutOfDomain`` naming the field."""
    for field, value in dates.items():
        if value is not None and not FIRST_DATE <= value <= LAST_DATE:
            detail = f"Send a date from {FIRST_DATE} to {LAST_DATE}; this is {value}."
            raise OutOfDomain("DATE_OUT_OF_RANGE", f"/{field}", detail)


def as_of_day(entries: log_schema.Log, as_of_date: date | None, mapped: Log) -> int:
    """The day to read a log at: as asked, or its last. ``mapped`` is the same log as the core has it."""
    starts = mapped.cycle_starts
    if min([mapped.first_day, *starts]) < _FIRST_DAY or max([mapped.last_day, *starts]) > _LAST_DAY:
        raise _out_of_range(entries)
    if as_of_date is not None:
        check_dates(as_of_date=as_of_date)
        return as_of_date.toordinal()
    return mapped.last_day


def _out_of_range(entries: log_schema.Log) -> OutOfDomain:
    """What is said of the first entry whose date cannot be counted on from."""
    dated = [
        *((f"weights/{i}/date", row.date) for i, row in enumerate(entries.weights)),
        *((f"intakes/{i}/date", row.date) for i, row in enumerate(entries.intakes)),
        *((f"cycle/{i}", day) for i, day in enumerate(entries.cycle)),
    ]
    field, value = next((field, value) for field, value in dated if not FIRST_DATE <= value <= LAST_DATE)
    detail = f"Send a date from {FIRST_DATE} to {LAST_DATE}; this is {value}."
    return OutOfDomain("DATE_OUT_OF_RANGE", f"/log/{field}", detail)


def maintenance_for(
    known: KnownMaintenance | None, entries: log_schema.Log | None, person: Person, assessed: Assessment
) -> Estimate:
    """Maintenance to plan from: as given, else from the log, else from the equations."""
    if known is not None:
        return Estimate(known.kcal_per_day, known.standard_deviation_kcal)
    if entries is not None:
        log = mapping.log(entries)
        return log_maintenance(person, assessed, log, as_of_day(entries, None, log)).maintenance
    return Estimate(assessed.total.mean, assessed.total.sd)
