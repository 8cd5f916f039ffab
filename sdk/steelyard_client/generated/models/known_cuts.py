from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="KnownCuts")


@_attrs_define
class KnownCuts:
    """Cuts already done, counted in the phase history.

    Attributes:
        cuts_last_12_months (int): Cuts that ended in the last twelve months.
        weeks_since_last_cut (int | None): Weeks since the last one ended.
    """

    cuts_last_12_months: int
    weeks_since_last_cut: int | None
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        cuts_last_12_months = self.cuts_last_12_months

        weeks_since_last_cut: int | None
        weeks_since_last_cut = self.weeks_since_last_cut

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "cuts_last_12_months": cuts_last_12_months,
                "weeks_since_last_cut": weeks_since_last_cut,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        cuts_last_12_months = d.pop("cuts_last_12_months")

        def _parse_weeks_since_last_cut(data: object) -> int | None:
            if data is None:
                return data
            return cast(int | None, data)

        weeks_since_last_cut = _parse_weeks_since_last_cut(
            d.pop("weeks_since_last_cut")
        )

        known_cuts = cls(
            cuts_last_12_months=cuts_last_12_months,
            weeks_since_last_cut=weeks_since_last_cut,
        )

        known_cuts.additional_properties = d
        return known_cuts

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
