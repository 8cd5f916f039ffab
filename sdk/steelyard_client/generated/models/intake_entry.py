from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

T = TypeVar("T", bound="IntakeEntry")


@_attrs_define
class IntakeEntry:
    """What was eaten on a day. A missing day is an absent entry, not a zero.

    Attributes:
        date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        intake_kcal (float): Energy eaten in a day, kilocalories. One that cannot be meant so is set aside and named. 0
            counts as a day that was not logged, and is named; of a whole day's fast send 1.
        carbohydrate_g (float | None | Unset): Carbohydrate eaten, grams.
        is_partial (bool | Unset): Whether the day was logged only in part. `false` if absent.
    """

    date: datetime.date
    intake_kcal: float
    carbohydrate_g: float | None | Unset = UNSET
    is_partial: bool | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        date = self.date.isoformat()

        intake_kcal = self.intake_kcal

        carbohydrate_g: float | None | Unset
        if isinstance(self.carbohydrate_g, Unset):
            carbohydrate_g = UNSET
        else:
            carbohydrate_g = self.carbohydrate_g

        is_partial = self.is_partial

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "date": date,
                "intake_kcal": intake_kcal,
            }
        )
        if carbohydrate_g is not UNSET:
            field_dict["carbohydrate_g"] = carbohydrate_g
        if is_partial is not UNSET:
            field_dict["is_partial"] = is_partial

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        date = datetime.date.fromisoformat(d.pop("date"))

        intake_kcal = d.pop("intake_kcal")

        def _parse_carbohydrate_g(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        carbohydrate_g = _parse_carbohydrate_g(d.pop("carbohydrate_g", UNSET))

        is_partial = d.pop("is_partial", UNSET)

        intake_entry = cls(
            date=date,
            intake_kcal=intake_kcal,
            carbohydrate_g=carbohydrate_g,
            is_partial=is_partial,
        )

        return intake_entry
