from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="GuardRail")


@_attrs_define
class GuardRail:
    """A guard rail that did something: what it read, its limit, and what it did.

    Attributes:
        action (str): `capped` or `warned`. Extensible.
        id (str): Id of the rule, as in `/v1/methods`.
        limit (float | None): The limit applied.
        observed (float | None): What was asked for or found.
        text (str): What was done and why.
        unit (str): Unit of `limit` and `observed`.
    """

    action: str
    id: str
    limit: float | None
    observed: float | None
    text: str
    unit: str
    additional_properties: dict[str, Any] = _attrs_field(init=False, factory=dict)

    def to_dict(self) -> dict[str, Any]:
        action = self.action

        id = self.id

        limit: float | None
        limit = self.limit

        observed: float | None
        observed = self.observed

        text = self.text

        unit = self.unit

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "action": action,
                "id": id,
                "limit": limit,
                "observed": observed,
                "text": text,
                "unit": unit,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        action = d.pop("action")

        id = d.pop("id")

        def _parse_limit(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        limit = _parse_limit(d.pop("limit"))

        def _parse_observed(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        observed = _parse_observed(d.pop("observed"))

        text = d.pop("text")

        unit = d.pop("unit")

        guard_rail = cls(
            action=action,
            id=id,
            limit=limit,
            observed=observed,
            text=text,
            unit=unit,
        )

        guard_rail.additional_properties = d
        return guard_rail

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
