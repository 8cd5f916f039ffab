from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.note import Note


T = TypeVar("T", bound="MeasurementRow")


@_attrs_define
class MeasurementRow:
    """One measurement: what it says alone, and how much it counts.

    Attributes:
        fat_fraction (float): Its value, 0 to 1.
        kind (str): As in the request. Extensible.
        methods (list[str]): Ids of the equations, constants and rules used; each is in `/v1/methods`.
        notes (list[Note]): Ranges exceeded, measures not used.
        standard_deviation (float): Error of this one value, 1 SD, as a fraction of body mass.
        weight (float): Its share in the answer; all sum to 1.
    """

    fat_fraction: float
    kind: str
    methods: list[str]
    notes: list[Note]
    standard_deviation: float
    weight: float
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        fat_fraction = self.fat_fraction

        kind = self.kind

        methods = self.methods

        notes = []
        for notes_item_data in self.notes:
            notes_item = notes_item_data.to_dict()
            notes.append(notes_item)

        standard_deviation = self.standard_deviation

        weight = self.weight

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "fat_fraction": fat_fraction,
                "kind": kind,
                "methods": methods,
                "notes": notes,
                "standard_deviation": standard_deviation,
                "weight": weight,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.note import Note  # noqa: PLC0415

        d = dict(src_dict)
        fat_fraction = d.pop("fat_fraction")

        kind = d.pop("kind")

        methods = cast(list[str], d.pop("methods"))

        notes = []
        _notes = d.pop("notes")
        for notes_item_data in _notes:
            notes_item = Note.from_dict(notes_item_data)

            notes.append(notes_item)

        standard_deviation = d.pop("standard_deviation")

        weight = d.pop("weight")

        measurement_row = cls(
            fat_fraction=fat_fraction,
            kind=kind,
            methods=methods,
            notes=notes,
            standard_deviation=standard_deviation,
            weight=weight,
        )

        measurement_row.additional_properties = d
        return measurement_row

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
