from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

T = TypeVar("T", bound="CutHistory")


@_attrs_define
class CutHistory:
    """Cuts already done. Unknown history keeps a plan to the default deficit, and a forecast says so.

    Attributes:
        cuts_last_12_months (int): Fat-loss phases in the last twelve months.
        weeks_since_last_cut (int | None | Unset): Weeks since the last one ended.
    """

    cuts_last_12_months: int
    weeks_since_last_cut: int | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        cuts_last_12_months = self.cuts_last_12_months

        weeks_since_last_cut: int | None | Unset
        if isinstance(self.weeks_since_last_cut, Unset):
            weeks_since_last_cut = UNSET
        else:
            weeks_since_last_cut = self.weeks_since_last_cut

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "cuts_last_12_months": cuts_last_12_months,
            }
        )
        if weeks_since_last_cut is not UNSET:
            field_dict["weeks_since_last_cut"] = weeks_since_last_cut

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        cuts_last_12_months = d.pop("cuts_last_12_months")

        def _parse_weeks_since_last_cut(data: object) -> int | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(int | None | Unset, data)

        weeks_since_last_cut = _parse_weeks_since_last_cut(
            d.pop("weeks_since_last_cut", UNSET)
        )

        cut_history = cls(
            cuts_last_12_months=cuts_last_12_months,
            weeks_since_last_cut=weeks_since_last_cut,
        )

        return cut_history
