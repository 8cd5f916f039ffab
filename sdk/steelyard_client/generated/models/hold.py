from __future__ import annotations

from collections.abc import Mapping
from typing import (
    Any,
    Literal,
    TypeVar,
    cast,
)

from attrs import define as _attrs_define

from ..models.carbohydrate_preference import CarbohydratePreference
from ..types import UNSET, Unset

T = TypeVar("T", bound="Hold")


@_attrs_define
class Hold:
    """Weeks at maintenance, as a bridge or a rest; a gain follows as `return_to_gain` says.

    Attributes:
        kind (Literal['maintenance']):
        weeks (int): Length in weeks.
        carbohydrate_preference (CarbohydratePreference | Unset): How the energy left after protein is shared between
            carbohydrate and fat.
    """

    kind: Literal["maintenance"]
    weeks: int
    carbohydrate_preference: CarbohydratePreference | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        kind = self.kind

        weeks = self.weeks

        carbohydrate_preference: str | Unset = UNSET
        if not isinstance(self.carbohydrate_preference, Unset):
            carbohydrate_preference = self.carbohydrate_preference.value

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "kind": kind,
                "weeks": weeks,
            }
        )
        if carbohydrate_preference is not UNSET:
            field_dict["carbohydrate_preference"] = carbohydrate_preference

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        kind = cast(Literal["maintenance"], d.pop("kind"))
        if kind != "maintenance":
            raise ValueError(f"kind must match const 'maintenance', got '{kind}'")

        weeks = d.pop("weeks")

        _carbohydrate_preference = d.pop("carbohydrate_preference", UNSET)
        carbohydrate_preference: CarbohydratePreference | Unset
        if isinstance(_carbohydrate_preference, Unset):
            carbohydrate_preference = UNSET
        else:
            carbohydrate_preference = CarbohydratePreference(_carbohydrate_preference)

        hold = cls(
            kind=kind,
            weeks=weeks,
            carbohydrate_preference=carbohydrate_preference,
        )

        return hold
