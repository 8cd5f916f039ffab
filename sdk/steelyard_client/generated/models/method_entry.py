from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

from ..types import UNSET, Unset

T = TypeVar("T", bound="MethodEntry")


@_attrs_define
class MethodEntry:
    """One constant, equation, model or rule that answers can rest on.

    Attributes:
        basis (str): How well it is supported. Extensible; now published; from memory; common practice, no published
            source; our judgement, no published source.
        formula (str): The computation in words and symbols; of a constant, its value.
        id (str): The id that answers cite.
        kind (str): What it is. Extensible; now constant, equation, model, rule.
        source_ids (list[str]): Ids of the sources it rests on.
        summary (str): What it is for, in one sentence.
        standard_deviation (float | None | Unset): Spread of `value` between people, or its error, in `unit`.
        unit (None | str | Unset): The unit of `value`.
        valid_range (None | str | Unset): For whom, or in which range, the source holds.
        value (float | None | Unset): The value of a constant or a limit, in `unit`.
    """

    basis: str
    formula: str
    id: str
    kind: str
    source_ids: list[str]
    summary: str
    standard_deviation: float | None | Unset = UNSET
    unit: None | str | Unset = UNSET
    valid_range: None | str | Unset = UNSET
    value: float | None | Unset = UNSET
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        basis = self.basis

        formula = self.formula

        id = self.id

        kind = self.kind

        source_ids = self.source_ids

        summary = self.summary

        standard_deviation: float | None | Unset
        if isinstance(self.standard_deviation, Unset):
            standard_deviation = UNSET
        else:
            standard_deviation = self.standard_deviation

        unit: None | str | Unset
        if isinstance(self.unit, Unset):
            unit = UNSET
        else:
            unit = self.unit

        valid_range: None | str | Unset
        if isinstance(self.valid_range, Unset):
            valid_range = UNSET
        else:
            valid_range = self.valid_range

        value: float | None | Unset
        if isinstance(self.value, Unset):
            value = UNSET
        else:
            value = self.value

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "basis": basis,
                "formula": formula,
                "id": id,
                "kind": kind,
                "source_ids": source_ids,
                "summary": summary,
            }
        )
        if standard_deviation is not UNSET:
            field_dict["standard_deviation"] = standard_deviation
        if unit is not UNSET:
            field_dict["unit"] = unit
        if valid_range is not UNSET:
            field_dict["valid_range"] = valid_range
        if value is not UNSET:
            field_dict["value"] = value

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        basis = d.pop("basis")

        formula = d.pop("formula")

        id = d.pop("id")

        kind = d.pop("kind")

        source_ids = cast(list[str], d.pop("source_ids"))

        summary = d.pop("summary")

        def _parse_standard_deviation(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        standard_deviation = _parse_standard_deviation(
            d.pop("standard_deviation", UNSET)
        )

        def _parse_unit(data: object) -> None | str | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(None | str | Unset, data)

        unit = _parse_unit(d.pop("unit", UNSET))

        def _parse_valid_range(data: object) -> None | str | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(None | str | Unset, data)

        valid_range = _parse_valid_range(d.pop("valid_range", UNSET))

        def _parse_value(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        value = _parse_value(d.pop("value", UNSET))

        method_entry = cls(
            basis=basis,
            formula=formula,
            id=id,
            kind=kind,
            source_ids=source_ids,
            summary=summary,
            standard_deviation=standard_deviation,
            unit=unit,
            valid_range=valid_range,
            value=value,
        )

        method_entry.additional_properties = d
        return method_entry

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
