from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.intake_entry import IntakeEntry
    from ..models.weight_entry import WeightEntry


T = TypeVar("T", bound="Log")


@_attrs_define
class Log:
    """Weights and intakes in any order; gaps are fine.

    Attributes:
        weights (list[WeightEntry]): Weighings.
        cycle (list[datetime.date] | Unset): First days of menstruation, also the last before the log: the rise of
            weight around them then does not read as a change of tissue. `[]` if absent.
        intakes (list[IntakeEntry] | Unset): Daily intakes. `[]` if absent.
    """

    weights: list[WeightEntry]
    cycle: list[datetime.date] | Unset = UNSET
    intakes: list[IntakeEntry] | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        weights = []
        for weights_item_data in self.weights:
            weights_item = weights_item_data.to_dict()
            weights.append(weights_item)

        cycle: list[str] | Unset = UNSET
        if not isinstance(self.cycle, Unset):
            cycle = []
            for cycle_item_data in self.cycle:
                cycle_item = cycle_item_data.isoformat()
                cycle.append(cycle_item)

        intakes: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.intakes, Unset):
            intakes = []
            for intakes_item_data in self.intakes:
                intakes_item = intakes_item_data.to_dict()
                intakes.append(intakes_item)

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "weights": weights,
            }
        )
        if cycle is not UNSET:
            field_dict["cycle"] = cycle
        if intakes is not UNSET:
            field_dict["intakes"] = intakes

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.intake_entry import IntakeEntry  # noqa: PLC0415
        from ..models.weight_entry import WeightEntry  # noqa: PLC0415

        d = dict(src_dict)
        weights = []
        _weights = d.pop("weights")
        for weights_item_data in _weights:
            weights_item = WeightEntry.from_dict(weights_item_data)

            weights.append(weights_item)

        _cycle = d.pop("cycle", UNSET)
        cycle: list[datetime.date] | Unset = UNSET
        if _cycle is not UNSET:
            cycle = []
            for cycle_item_data in _cycle:
                cycle_item = datetime.date.fromisoformat(cycle_item_data)

                cycle.append(cycle_item)

        _intakes = d.pop("intakes", UNSET)
        intakes: list[IntakeEntry] | Unset = UNSET
        if _intakes is not UNSET:
            intakes = []
            for intakes_item_data in _intakes:
                intakes_item = IntakeEntry.from_dict(intakes_item_data)

                intakes.append(intakes_item)

        log = cls(
            weights=weights,
            cycle=cycle,
            intakes=intakes,
        )

        return log
