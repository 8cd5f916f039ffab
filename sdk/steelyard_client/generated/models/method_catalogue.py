from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.method_entry import MethodEntry
    from ..models.method_source import MethodSource


T = TypeVar("T", bound="MethodCatalogue")


@_attrs_define
class MethodCatalogue:
    """Everything the service computes with, and where it comes from.

    Attributes:
        contract_version (str): Version of this contract.
        entries (list[MethodEntry]): Sorted by id.
        sources (list[MethodSource]): Sorted by id.
    """

    contract_version: str
    entries: list[MethodEntry]
    sources: list[MethodSource]
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        contract_version = self.contract_version

        entries = []
        for entries_item_data in self.entries:
            entries_item = entries_item_data.to_dict()
            entries.append(entries_item)

        sources = []
        for sources_item_data in self.sources:
            sources_item = sources_item_data.to_dict()
            sources.append(sources_item)

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "contract_version": contract_version,
                "entries": entries,
                "sources": sources,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.method_entry import MethodEntry  # noqa: PLC0415
        from ..models.method_source import MethodSource  # noqa: PLC0415

        d = dict(src_dict)
        contract_version = d.pop("contract_version")

        entries = []
        _entries = d.pop("entries")
        for entries_item_data in _entries:
            entries_item = MethodEntry.from_dict(entries_item_data)

            entries.append(entries_item)

        sources = []
        _sources = d.pop("sources")
        for sources_item_data in _sources:
            sources_item = MethodSource.from_dict(sources_item_data)

            sources.append(sources_item)

        method_catalogue = cls(
            contract_version=contract_version,
            entries=entries,
            sources=sources,
        )

        method_catalogue.additional_properties = d
        return method_catalogue

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
