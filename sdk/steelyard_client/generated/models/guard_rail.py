from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.guard_rail_params import GuardRailParams


T = TypeVar("T", bound="GuardRail")


@_attrs_define
class GuardRail:
    """A guard rail that did something: what it read, its limit, and what it did.

    Attributes:
        action (str): `capped` or `warned`. Extensible.
        code (str): Code of the text, as in `/v1/messages`.
        id (str): Id of the rule, as in `/v1/methods`.
        limit (float | None): The limit applied.
        observed (float | None): What was asked for or found.
        params (GuardRailParams): Parameters of the text, units in the names.
        text (str): What was done and why.
        unit (str): Unit of `limit` and `observed`.
    """

    action: str
    code: str
    id: str
    limit: float | None
    observed: float | None
    params: GuardRailParams
    text: str
    unit: str
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        action = self.action

        code = self.code

        id = self.id

        limit: float | None
        limit = self.limit

        observed: float | None
        observed = self.observed

        params = self.params.to_dict()

        text = self.text

        unit = self.unit

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "action": action,
                "code": code,
                "id": id,
                "limit": limit,
                "observed": observed,
                "params": params,
                "text": text,
                "unit": unit,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.guard_rail_params import GuardRailParams  # noqa: PLC0415

        d = dict(src_dict)
        action = d.pop("action")

        code = d.pop("code")

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

        params = GuardRailParams.from_dict(d.pop("params"))

        text = d.pop("text")

        unit = d.pop("unit")

        guard_rail = cls(
            action=action,
            code=code,
            id=id,
            limit=limit,
            observed=observed,
            params=params,
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
