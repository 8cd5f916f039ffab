from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.refused_strategy_params import RefusedStrategyParams


T = TypeVar("T", bound="RefusedStrategy")


@_attrs_define
class RefusedStrategy:
    """A strategy that a rule refuses for this person.

    Attributes:
        code (str): Code of the text, as in `/v1/messages`.
        label (str): Name of a ready-made strategy, or the label given.
        params (RefusedStrategyParams): Parameters of the text, units in the names.
        rule (str): Id of the rule, as in `/v1/methods`.
        text (str): Why, and what to do.
    """

    code: str
    label: str
    params: RefusedStrategyParams
    rule: str
    text: str
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        code = self.code

        label = self.label

        params = self.params.to_dict()

        rule = self.rule

        text = self.text

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "code": code,
                "label": label,
                "params": params,
                "rule": rule,
                "text": text,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.refused_strategy_params import RefusedStrategyParams  # noqa: PLC0415

        d = dict(src_dict)
        code = d.pop("code")

        label = d.pop("label")

        params = RefusedStrategyParams.from_dict(d.pop("params"))

        rule = d.pop("rule")

        text = d.pop("text")

        refused_strategy = cls(
            code=code,
            label=label,
            params=params,
            rule=rule,
            text=text,
        )

        refused_strategy.additional_properties = d
        return refused_strategy

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
