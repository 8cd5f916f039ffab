from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

from ..types import UNSET, Unset

T = TypeVar("T", bound="WeightEntry")


@_attrs_define
class WeightEntry:
    """A weighing. Several a day are allowed; `order` tells them apart.

    Attributes:
        date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        weight_kg (float): Body mass in kilograms. One that does not go with those around it is set aside and named.
        order (int | Unset): Order within the day, for several weighings. `0` if absent.
    """

    date: datetime.date
    weight_kg: float
    order: int | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        date = self.date.isoformat()

        weight_kg = self.weight_kg

        order = self.order

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "date": date,
                "weight_kg": weight_kg,
            }
        )
        if order is not UNSET:
            field_dict["order"] = order

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        date = datetime.date.fromisoformat(d.pop("date"))

        weight_kg = d.pop("weight_kg")

        order = d.pop("order", UNSET)

        weight_entry = cls(
            date=date,
            weight_kg=weight_kg,
            order=order,
        )

        return weight_entry
