from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="EquationRow")


@_attrs_define
class EquationRow:
    """One prediction equation: its value for this person, whether it was used and how much it counted.

    Attributes:
        estimates (str): `resting` energy, or `total`: the estimate before a log, which the rows of `total` make by
            their weights, and by the factor that a note of theirs names.
        id (str): Id of the equation.
        is_applicable (bool): Whether this person is in its valid range.
        is_used (bool): Whether it entered the estimate.
        kcal_per_day (float): Its value, kilocalories a day.
        notes (list[str]): Why it does not apply or was not used, or how it was taken.
        weight (float): Its share in the estimate of what it predicts, 0 to 1.
    """

    estimates: str
    id: str
    is_applicable: bool
    is_used: bool
    kcal_per_day: float
    notes: list[str]
    weight: float
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        estimates = self.estimates

        id = self.id

        is_applicable = self.is_applicable

        is_used = self.is_used

        kcal_per_day = self.kcal_per_day

        notes = self.notes

        weight = self.weight

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "estimates": estimates,
                "id": id,
                "is_applicable": is_applicable,
                "is_used": is_used,
                "kcal_per_day": kcal_per_day,
                "notes": notes,
                "weight": weight,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        estimates = d.pop("estimates")

        id = d.pop("id")

        is_applicable = d.pop("is_applicable")

        is_used = d.pop("is_used")

        kcal_per_day = d.pop("kcal_per_day")

        notes = cast(list[str], d.pop("notes"))

        weight = d.pop("weight")

        equation_row = cls(
            estimates=estimates,
            id=id,
            is_applicable=is_applicable,
            is_used=is_used,
            kcal_per_day=kcal_per_day,
            notes=notes,
            weight=weight,
        )

        equation_row.additional_properties = d
        return equation_row

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
