from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.interval import Interval


T = TypeVar("T", bound="ChangeSplit")


@_attrs_define
class ChangeSplit:
    """The change over a window, split into tissue and carried mass.

    Attributes:
        carried_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        days (int): Length of the window in days.
        implied_intake_kcal (Interval | None): Mean intake over the window read from weight alone, in energy really
            eaten: maintenance by the equations and the energy of the tissue gained or lost. No intake of the log enters.
            Null where food is logged and `include` does not ask for it.
        tissue_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        weight_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
    """

    carried_kg: Interval
    days: int
    implied_intake_kcal: Interval | None
    tissue_kg: Interval
    weight_kg: Interval
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.interval import Interval  # noqa: PLC0415

        carried_kg = self.carried_kg.to_dict()

        days = self.days

        implied_intake_kcal: dict[str, Any] | None
        if isinstance(self.implied_intake_kcal, Interval):
            implied_intake_kcal = self.implied_intake_kcal.to_dict()
        else:
            implied_intake_kcal = self.implied_intake_kcal

        tissue_kg = self.tissue_kg.to_dict()

        weight_kg = self.weight_kg.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "carried_kg": carried_kg,
                "days": days,
                "implied_intake_kcal": implied_intake_kcal,
                "tissue_kg": tissue_kg,
                "weight_kg": weight_kg,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.interval import Interval  # noqa: PLC0415

        d = dict(src_dict)
        carried_kg = Interval.from_dict(d.pop("carried_kg"))

        days = d.pop("days")

        def _parse_implied_intake_kcal(data: object) -> Interval | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                implied_intake_kcal_type_0 = Interval.from_dict(data)

                return implied_intake_kcal_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Interval | None, data)

        implied_intake_kcal = _parse_implied_intake_kcal(d.pop("implied_intake_kcal"))

        tissue_kg = Interval.from_dict(d.pop("tissue_kg"))

        weight_kg = Interval.from_dict(d.pop("weight_kg"))

        change_split = cls(
            carried_kg=carried_kg,
            days=days,
            implied_intake_kcal=implied_intake_kcal,
            tissue_kg=tissue_kg,
            weight_kg=weight_kg,
        )

        change_split.additional_properties = d
        return change_split

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
