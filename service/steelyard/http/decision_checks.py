"""What a request for a decision may not say: each contradiction is a 422 that points at its field."""

from datetime import date, timedelta

from .logs import check_dates
from .problems import CONTRADICTION, Unprocessable, fault
from .schemas.decisions import DecisionRequest

# A narrower band than two points has no room for the lines inside it.
_LEAST_BAND = 0.02


def check(body: DecisionRequest) -> None:
    """Raise ``Unprocessable`` or ``OutOfDomain`` for fields that cannot stand together."""
    check_dates(as_of_date=body.as_of_date, event_date=body.event_date)
    band = body.band
    if band is not None and band.upper_fat_fraction < band.lower_fat_fraction + _LEAST_BAND - 1e-9:
        detail = "The band is inverted or under two points wide: set its upper end above its lower end."
        raise _contradiction("/band/upper_fat_fraction", "BAND_INVERTED", detail)
    if body.event_date is not None and body.event_date <= body.as_of_date:
        detail = f"The event is not after the day of the decision, {body.as_of_date}."
        raise _contradiction("/event_date", "EVENT_NOT_AHEAD", detail)
    if body.event_date is None:
        if body.goal == "event":
            raise _contradiction("/event_date", "EVENT_DATE_MISSING", "The goal is an event: say when it is.")
        if body.event_fat_fraction is not None:
            raise _contradiction("/event_fat_fraction", "EVENT_DATE_MISSING", "Set `event_date` as well.")
    _check_history(body)


def _check_history(body: DecisionRequest) -> None:
    before: date | None = None
    start: date | None = None
    for i, phase in enumerate(body.phase_history or []):
        check_dates(**{f"phase_history/{i}/start_date": phase.start_date})
        pointer = f"/phase_history/{i}/start_date"
        end = phase.start_date + timedelta(days=7 * phase.weeks)
        if end > body.as_of_date:
            detail = f"The phase ends on {end}, after the day of the decision: send it as `present_phase`."
            raise _contradiction(pointer, "HISTORY_IN_FUTURE", detail)
        if start is not None and phase.start_date < start:
            raise _contradiction(pointer, "HISTORY_OUT_OF_ORDER", "List the phases oldest first.")
        if before is not None and phase.start_date < before:
            raise _contradiction(pointer, "HISTORY_OVERLAPS", f"The phase before it runs until {before}.")
        start, before = phase.start_date, end
    present = body.present_phase
    if present is not None and before is not None:
        began = body.as_of_date - timedelta(days=7 * present.weeks_done)
        if began < before:
            detail = f"With these weeks it began on {began}, before the last past phase ended on {before}."
            raise _contradiction("/present_phase/weeks_done", "HISTORY_OVERLAPS", detail)


def _contradiction(pointer: str, code: str, detail: str) -> Unprocessable:
    return Unprocessable(CONTRADICTION, detail, [fault(f"#{pointer}", code, detail)])
