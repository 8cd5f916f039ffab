from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.plan_fragment import PlanFragment


T = TypeVar("T", bound="NextPhase")


@_attrs_define
class NextPhase:
    """The phase that comes next.

    Attributes:
        kind (str): `mini_cut`, `cut`, `gain` or `maintenance`. Extensible.
        plan (PlanFragment): Part of a request to `/v1/plans`: add `profile`, `screening`, `maintenance`, `log` or
            `state` as sent here.
        weeks (int): Its length.
    """

    kind: str
    plan: PlanFragment
    weeks: int
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        kind = self.kind

        plan = self.plan.to_dict()

        weeks = self.weeks

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "kind": kind,
                "plan": plan,
                "weeks": weeks,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.plan_fragment import PlanFragment  # noqa: PLC0415

        d = dict(src_dict)
        kind = d.pop("kind")

        plan = PlanFragment.from_dict(d.pop("plan"))

        weeks = d.pop("weeks")

        next_phase = cls(
            kind=kind,
            plan=plan,
            weeks=weeks,
        )

        next_phase.additional_properties = d
        return next_phase

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
