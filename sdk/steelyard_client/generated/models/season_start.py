from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.interval import Interval


T = TypeVar("T", bound="SeasonStart")


@_attrs_define
class SeasonStart:
    """What the season starts from.

    Attributes:
        band_lower_fat_fraction (float): Lower end of the band.
        band_upper_fat_fraction (float): Upper end of the band.
        body_fat_fraction (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        maintenance_kcal (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        resting_kcal (Interval): A central value with the interval that holds the truth with probability ``coverage``.
    """

    band_lower_fat_fraction: float
    band_upper_fat_fraction: float
    body_fat_fraction: Interval
    maintenance_kcal: Interval
    resting_kcal: Interval
    additional_properties: dict[str, Any] = _attrs_field(init=False, factory=dict)

    def to_dict(self) -> dict[str, Any]:
        band_lower_fat_fraction = self.band_lower_fat_fraction

        band_upper_fat_fraction = self.band_upper_fat_fraction

        body_fat_fraction = self.body_fat_fraction.to_dict()

        maintenance_kcal = self.maintenance_kcal.to_dict()

        resting_kcal = self.resting_kcal.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "band_lower_fat_fraction": band_lower_fat_fraction,
                "band_upper_fat_fraction": band_upper_fat_fraction,
                "body_fat_fraction": body_fat_fraction,
                "maintenance_kcal": maintenance_kcal,
                "resting_kcal": resting_kcal,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.interval import Interval  # noqa: PLC0415

        d = dict(src_dict)
        band_lower_fat_fraction = d.pop("band_lower_fat_fraction")

        band_upper_fat_fraction = d.pop("band_upper_fat_fraction")

        body_fat_fraction = Interval.from_dict(d.pop("body_fat_fraction"))

        maintenance_kcal = Interval.from_dict(d.pop("maintenance_kcal"))

        resting_kcal = Interval.from_dict(d.pop("resting_kcal"))

        season_start = cls(
            band_lower_fat_fraction=band_lower_fat_fraction,
            band_upper_fat_fraction=band_upper_fat_fraction,
            body_fat_fraction=body_fat_fraction,
            maintenance_kcal=maintenance_kcal,
            resting_kcal=resting_kcal,
        )

        season_start.additional_properties = d
        return season_start

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
