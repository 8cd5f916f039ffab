from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.check_in import CheckIn
    from ..models.dated_event import DatedEvent
    from ..models.dated_measurement import DatedMeasurement
    from ..models.intake_entry import IntakeEntry
    from ..models.steps_entry import StepsEntry
    from ..models.weight_entry import WeightEntry


T = TypeVar("T", bound="Log")


@_attrs_define
class Log:
    """Weights, intakes and steps in any order; gaps are fine.

    Attributes:
        weights (list[WeightEntry]): Weighings.
        check_ins (list[CheckIn] | Unset): How the person is: what may end, shorten or raise a deficit. `[]` if absent.
        cycle (list[datetime.date] | Unset): First days of menstruation, also the last before the log: the rise of
            weight around them then does not read as a change of tissue. One over a week after all else that was logged is
            kept for a later day where no `as_of_date` is asked for. `[]` if absent.
        events (list[DatedEvent] | Unset): What explains weight without tissue: creatine, illness, travel, salt. `[]` if
            absent.
        intakes (list[IntakeEntry] | Unset): Daily intakes. `[]` if absent.
        measurements (list[DatedMeasurement] | Unset): Body-fat readings, girths or skinfolds, dated. `[]` if absent.
        steps (list[StepsEntry] | Unset): Steps a day, one entry each, always by the same counter; also those of the
            weeks before the log. What they change of expenditure is then known, not guessed. `[]` if absent.
    """

    weights: list[WeightEntry]
    check_ins: list[CheckIn] | Unset = UNSET
    cycle: list[datetime.date] | Unset = UNSET
    events: list[DatedEvent] | Unset = UNSET
    intakes: list[IntakeEntry] | Unset = UNSET
    measurements: list[DatedMeasurement] | Unset = UNSET
    steps: list[StepsEntry] | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        weights = []
        for weights_item_data in self.weights:
            weights_item = weights_item_data.to_dict()
            weights.append(weights_item)

        check_ins: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.check_ins, Unset):
            check_ins = []
            for check_ins_item_data in self.check_ins:
                check_ins_item = check_ins_item_data.to_dict()
                check_ins.append(check_ins_item)

        cycle: list[str] | Unset = UNSET
        if not isinstance(self.cycle, Unset):
            cycle = []
            for cycle_item_data in self.cycle:
                cycle_item = cycle_item_data.isoformat()
                cycle.append(cycle_item)

        events: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.events, Unset):
            events = []
            for events_item_data in self.events:
                events_item = events_item_data.to_dict()
                events.append(events_item)

        intakes: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.intakes, Unset):
            intakes = []
            for intakes_item_data in self.intakes:
                intakes_item = intakes_item_data.to_dict()
                intakes.append(intakes_item)

        measurements: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.measurements, Unset):
            measurements = []
            for measurements_item_data in self.measurements:
                measurements_item = measurements_item_data.to_dict()
                measurements.append(measurements_item)

        steps: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.steps, Unset):
            steps = []
            for steps_item_data in self.steps:
                steps_item = steps_item_data.to_dict()
                steps.append(steps_item)

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "weights": weights,
            }
        )
        if check_ins is not UNSET:
            field_dict["check_ins"] = check_ins
        if cycle is not UNSET:
            field_dict["cycle"] = cycle
        if events is not UNSET:
            field_dict["events"] = events
        if intakes is not UNSET:
            field_dict["intakes"] = intakes
        if measurements is not UNSET:
            field_dict["measurements"] = measurements
        if steps is not UNSET:
            field_dict["steps"] = steps

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.check_in import CheckIn  # noqa: PLC0415
        from ..models.dated_event import DatedEvent  # noqa: PLC0415
        from ..models.dated_measurement import DatedMeasurement  # noqa: PLC0415
        from ..models.intake_entry import IntakeEntry  # noqa: PLC0415
        from ..models.steps_entry import StepsEntry  # noqa: PLC0415
        from ..models.weight_entry import WeightEntry  # noqa: PLC0415

        d = dict(src_dict)
        weights = []
        _weights = d.pop("weights")
        for weights_item_data in _weights:
            weights_item = WeightEntry.from_dict(weights_item_data)

            weights.append(weights_item)

        _check_ins = d.pop("check_ins", UNSET)
        check_ins: list[CheckIn] | Unset = UNSET
        if _check_ins is not UNSET:
            check_ins = []
            for check_ins_item_data in _check_ins:
                check_ins_item = CheckIn.from_dict(check_ins_item_data)

                check_ins.append(check_ins_item)

        _cycle = d.pop("cycle", UNSET)
        cycle: list[datetime.date] | Unset = UNSET
        if _cycle is not UNSET:
            cycle = []
            for cycle_item_data in _cycle:
                cycle_item = datetime.date.fromisoformat(cycle_item_data)

                cycle.append(cycle_item)

        _events = d.pop("events", UNSET)
        events: list[DatedEvent] | Unset = UNSET
        if _events is not UNSET:
            events = []
            for events_item_data in _events:
                events_item = DatedEvent.from_dict(events_item_data)

                events.append(events_item)

        _intakes = d.pop("intakes", UNSET)
        intakes: list[IntakeEntry] | Unset = UNSET
        if _intakes is not UNSET:
            intakes = []
            for intakes_item_data in _intakes:
                intakes_item = IntakeEntry.from_dict(intakes_item_data)

                intakes.append(intakes_item)

        _measurements = d.pop("measurements", UNSET)
        measurements: list[DatedMeasurement] | Unset = UNSET
        if _measurements is not UNSET:
            measurements = []
            for measurements_item_data in _measurements:
                measurements_item = DatedMeasurement.from_dict(measurements_item_data)

                measurements.append(measurements_item)

        _steps = d.pop("steps", UNSET)
        steps: list[StepsEntry] | Unset = UNSET
        if _steps is not UNSET:
            steps = []
            for steps_item_data in _steps:
                steps_item = StepsEntry.from_dict(steps_item_data)

                steps.append(steps_item)

        log = cls(
            weights=weights,
            check_ins=check_ins,
            cycle=cycle,
            events=events,
            intakes=intakes,
            measurements=measurements,
            steps=steps,
        )

        return log
