"""A made-up operation whose body has every kind of field, for tests of the machinery alone."""

from datetime import date
from enum import StrEnum
from typing import Annotated

import msgspec
from msgspec import Meta
from steelyard.http.operation.operation import computation
from steelyard.science.register.errors import OutOfDomain


class Lift(StrEnum):
    SQUAT = "squat"
    BENCH_PRESS = "bench_press"


class Barbell(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, tag_field="kind", tag="barbell"):
    bar_kg: Annotated[float, Meta(ge=5, le=25)] = 20.0


class Machine(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, tag_field="kind", tag="machine"):
    stack_kg: Annotated[float, Meta(gt=0, lt=200)]


class LiftedSet(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    load_kg: Annotated[float, Meta(ge=0, le=500)]
    repetitions: Annotated[int, Meta(ge=1, le=100)]


class LiftingForm(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    lift: Lift
    height_cm: Annotated[float, Meta(ge=120, le=230)]
    sets: Annotated[list[LiftedSet], Meta(min_length=1, max_length=3)]
    session_date: date | None = None
    is_paused: bool = False
    note: Annotated[str, Meta(max_length=10, pattern=r"^[a-z ]*(?![\s\S])")] = ""
    equipment: Barbell | Machine | None = None
    tempo_by_phase: dict[str, float] = {}
    rest_minutes: Annotated[float, Meta(ge=0)] | None = None


class LiftedTotal(msgspec.Struct, frozen=True, kw_only=True):
    total_kg: float
    comment: str | None = None


EXAMPLE = LiftingForm(lift=Lift.SQUAT, height_cm=178.0, sets=[LiftedSet(load_kg=100.0, repetitions=5)])


@computation(
    "/v1/lifted-totals",
    operation_id="sum_lifts",
    tag="tests",
    summary="Sum what was lifted",
    request_examples={"one_set": EXAMPLE},
)
def sum_lifts(body: LiftingForm) -> LiftedTotal:
    """The sum of load times repetitions."""
    total = sum(s.load_kg * s.repetitions for s in body.sets)
    if body.note == "domain":
        raise OutOfDomain("LOAD_IMPOSSIBLE", "stack_kg", "Lower the stack.")
    if body.note == "nan":
        total = float("nan")
    if body.note == "boom":
        raise RuntimeError(f"a secret of the person: {body.height_cm}")
    return LiftedTotal(total_kg=total)


@computation(
    "/v1/lifted-totals-in-thread",
    operation_id="sum_lifts_in_thread",
    tag="tests",
    summary="Sum what was lifted, off the event loop",
    request_examples={"one_set": EXAMPLE},
    in_thread=True,
)
def sum_lifts_in_thread(body: LiftingForm) -> LiftedTotal:
    """The same sum."""
    return sum_lifts.compute(body)  # type: ignore[no-any-return]
