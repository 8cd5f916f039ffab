from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

T = TypeVar("T", bound="RefusedStrategy")


@_attrs_define
class RefusedStrategy:
    """A strategy that a rule refuses for this person.

    Attributes:
        label (str): Name of a ready-made strategy, or the label given.
        rule (str): Id of the rule, as in `/v1/methods`.
        text (str): Why, and what to do.
    """

    label: str
    rule: str
    text: str
    additional_properties: dict[str, Any] = _attrs_field(init=False, factory=dict)

    def to_dict(self) -> dict[str, Any]:
        label = self.label

        rule = self.rule

        text = self.text

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "label": label,
                "rule": rule,
                "text": text,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        label = d.pop("label")

        rule = d.pop("rule")

        text = d.pop("text")

        refused_strategy = cls(
            label=label,
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
