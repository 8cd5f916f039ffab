from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

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
        logging_ratio (Interval | None): Logged over eaten energy, where a log of intakes was read; null without one.
            Guard rails on the body divide what is told by its mean, those that protect by its upper end, 1 at most.
        maintenance_kcal (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        physical_maintenance_kcal (Interval | None): Maintenance in energy really eaten, kilocalories a day, where a log
            of intakes was read; null without one. `maintenance_kcal` is on the scale of that log.
        resting_kcal (Interval): A central value with the interval that holds the truth with probability ``coverage``.
    """

    band_lower_fat_fraction: float
    band_upper_fat_fraction: float
    body_fat_fraction: Interval
    logging_ratio: Interval | None
    maintenance_kcal: Interval
    physical_maintenance_kcal: Interval | None
    resting_kcal: Interval
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.interval import Interval  # noqa: PLC0415

        band_lower_fat_fraction = self.band_lower_fat_fraction

        band_upper_fat_fraction = self.band_upper_fat_fraction

        body_fat_fraction = self.body_fat_fraction.to_dict()

        logging_ratio: dict[str, Any] | None
        if isinstance(self.logging_ratio, Interval):
            logging_ratio = self.logging_ratio.to_dict()
        else:
            logging_ratio = self.logging_ratio

        maintenance_kcal = self.maintenance_kcal.to_dict()

        physical_maintenance_kcal: dict[str, Any] | None
        if isinstance(self.physical_maintenance_kcal, Interval):
            physical_maintenance_kcal = self.physical_maintenance_kcal.to_dict()
        else:
            physical_maintenance_kcal = self.physical_maintenance_kcal

        resting_kcal = self.resting_kcal.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "band_lower_fat_fraction": band_lower_fat_fraction,
                "band_upper_fat_fraction": band_upper_fat_fraction,
                "body_fat_fraction": body_fat_fraction,
                "logging_ratio": logging_ratio,
                "maintenance_kcal": maintenance_kcal,
                "physical_maintenance_kcal": physical_maintenance_kcal,
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

        def _parse_logging_ratio(data: object) -> Interval | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                logging_ratio_type_0 = Interval.from_dict(data)

                return logging_ratio_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Interval | None, data)

        logging_ratio = _parse_logging_ratio(d.pop("logging_ratio"))

        maintenance_kcal = Interval.from_dict(d.pop("maintenance_kcal"))

        def _parse_physical_maintenance_kcal(data: object) -> Interval | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                physical_maintenance_kcal_type_0 = Interval.from_dict(data)

                return physical_maintenance_kcal_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Interval | None, data)

        physical_maintenance_kcal = _parse_physical_maintenance_kcal(
            d.pop("physical_maintenance_kcal")
        )

        resting_kcal = Interval.from_dict(d.pop("resting_kcal"))

        season_start = cls(
            band_lower_fat_fraction=band_lower_fat_fraction,
            band_upper_fat_fraction=band_upper_fat_fraction,
            body_fat_fraction=body_fat_fraction,
            logging_ratio=logging_ratio,
            maintenance_kcal=maintenance_kcal,
            physical_maintenance_kcal=physical_maintenance_kcal,
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
