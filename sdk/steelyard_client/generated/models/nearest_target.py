from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="NearestTarget")


@_attrs_define
class NearestTarget:
    """How near a safe intake comes, on each axis. Absent where there is nothing safe on it.

    Attributes:
        by_date (datetime.date | None): The date nearest to the one asked for on which the nearest safe intake reaches
            it: earlier where it has gone past it by then.
        intake_kcal (float | None): The nearest safe intake.
        value (float | None): The value reached by the date at the nearest safe intake; for `date_for_target` after 26
            weeks at the intake asked about.
    """

    by_date: datetime.date | None
    intake_kcal: float | None
    value: float | None
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        by_date: None | str
        if isinstance(self.by_date, datetime.date):
            by_date = self.by_date.isoformat()
        else:
            by_date = self.by_date

        intake_kcal: float | None
        intake_kcal = self.intake_kcal

        value: float | None
        value = self.value

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "by_date": by_date,
                "intake_kcal": intake_kcal,
                "value": value,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)

        def _parse_by_date(data: object) -> datetime.date | None:
            if data is None:
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                by_date_type_0 = datetime.date.fromisoformat(data)

                return by_date_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(datetime.date | None, data)

        by_date = _parse_by_date(d.pop("by_date"))

        def _parse_intake_kcal(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        intake_kcal = _parse_intake_kcal(d.pop("intake_kcal"))

        def _parse_value(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        value = _parse_value(d.pop("value"))

        nearest_target = cls(
            by_date=by_date,
            intake_kcal=intake_kcal,
            value=value,
        )

        nearest_target.additional_properties = d
        return nearest_target

    @property
    def additional_keys(self) -> list[str]:
        return list(self.additional_properties.keys())

    def __getitem__(self, key: str) -> Any:
        return self.additional_properties[key]

    def __setitem__(self, key: str, value: Any) -> None:
        self.additional_properties[key] = value

    def __delitem__(self, key: str) -> None:
        del self.additional_properties[key]

    def __contains__(self, key: str) -> bool:
        return key in self.additional_properties
