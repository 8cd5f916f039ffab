from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.forecast_point import ForecastPoint
    from ..models.interval import Interval


T = TypeVar("T", bound="FirstWeeksAfter")


@_attrs_define
class FirstWeeksAfter:
    """The first two weeks after the phase, at the maintenance of the body there is.

    Attributes:
        intake_kcal (int): Energy a day that holds tissue, logging scale.
        points (list[ForecastPoint]): Expected on days 3, 7 and 14.
        rebound_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
    """

    intake_kcal: int
    points: list[ForecastPoint]
    rebound_kg: Interval
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        intake_kcal = self.intake_kcal

        points = []
        for points_item_data in self.points:
            points_item = points_item_data.to_dict()
            points.append(points_item)

        rebound_kg = self.rebound_kg.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "intake_kcal": intake_kcal,
                "points": points,
                "rebound_kg": rebound_kg,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.forecast_point import ForecastPoint  # noqa: PLC0415
        from ..models.interval import Interval  # noqa: PLC0415

        d = dict(src_dict)
        intake_kcal = d.pop("intake_kcal")

        points = []
        _points = d.pop("points")
        for points_item_data in _points:
            points_item = ForecastPoint.from_dict(points_item_data)

            points.append(points_item)

        rebound_kg = Interval.from_dict(d.pop("rebound_kg"))

        first_weeks_after = cls(
            intake_kcal=intake_kcal,
            points=points,
            rebound_kg=rebound_kg,
        )

        first_weeks_after.additional_properties = d
        return first_weeks_after

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
