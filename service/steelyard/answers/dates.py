"""Which dates are answered for: those from which days can be counted on."""

from collections.abc import Iterator, Mapping
from datetime import date

from steelyard.science.log import Log, in_future
from steelyard.science.member import Told
from steelyard.science.register import OutOfDomain

FIRST_DATE, LAST_DATE = date(2000, 1, 1), date(2100, 12, 31)
_FIRST_DAY, _LAST_DAY = FIRST_DATE.toordinal(), LAST_DATE.toordinal()


def check_dates(dates: Mapping[str, date | None]) -> None:
    """Raises ``OutOfDomain`` naming the first date, by name, that is too early or too late."""
    for name, value in dates.items():
        if value is not None and not FIRST_DATE <= value <= LAST_DATE:
            detail = f"Send a date from {FIRST_DATE} to {LAST_DATE}; this is {value}."
            raise OutOfDomain("DATE_OUT_OF_RANGE", name, detail)


def check_as_of(told: Told, as_of: date | None) -> None:
    """Raises ``OutOfDomain`` naming the as-of day, if it is odd or before the state that was sent, or a later entry.

    Beside a state, entries are named as they were sent: a reader would count them among those of the state.
    """
    check_dates({"as_of_date": as_of})
    if as_of is None:
        return
    for i, day in enumerate(() if told.log is None else told.log.cycle_starts):
        if day > as_of.toordinal():  # which a log that is read on a day that nobody asked for leaves aside
            raise in_future(f"log.cycle[{i}]")
    if told.known is None:
        return
    check_not_before_state(told, as_of, "as_of_date")
    if told.log is not None:
        for name, on in _dated(told.log):
            if on > as_of:
                raise in_future(name)


def check_not_before_state(told: Told, on: date, name: str) -> None:
    """Raises ``OutOfDomain`` naming a day that lies before the state that was sent: what came after it is known.

    Of one without a log nothing is: its day is the start of what was planned, which may lie ahead.
    """
    if told.known is not None and told.known.log is not None and told.known.day > on.toordinal():
        code = "AS_OF_BEFORE_STATE" if name == "as_of_date" else "START_BEFORE_STATE"
        detail = f"The state is of {date.fromordinal(told.known.day)}: send that day, a later one or an older state."
        raise OutOfDomain(code, name, detail)


def last_day_of(log: Log, as_of: date | None) -> int:
    """The day to read a log at: as asked, or its last. Raises ``OutOfDomain`` naming an entry with an odd date."""
    others = [*log.cycle_starts, *(entry.day for entry in log.steps), *(entry.day for entry in log.check_ins)]
    if min([log.first_day, *others]) < _FIRST_DAY or max([log.last_day, *others]) > _LAST_DAY:
        check_dates(dict(_dated(log)))
    if as_of is not None:
        check_dates({"as_of_date": as_of})
        return as_of.toordinal()
    return log.last_day


def _dated(log: Log) -> Iterator[tuple[str, date]]:
    """The entries of a log by name."""
    for i, weighing in enumerate(log.weighings):
        yield f"log.weights[{i}].date", date.fromordinal(weighing.day)
    for i, intake in enumerate(log.intakes):
        yield f"log.intakes[{i}].date", date.fromordinal(intake.day)
    for i, day in enumerate(log.cycle_starts):
        yield f"log.cycle[{i}]", date.fromordinal(day)
    for i, steps in enumerate(log.steps):
        yield f"log.steps[{i}].date", date.fromordinal(steps.day)
    for i, check_in in enumerate(log.check_ins):
        yield f"log.check_ins[{i}].date", date.fromordinal(check_in.day)
