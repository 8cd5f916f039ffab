from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.note import Note
    from ..models.roster_place import RosterPlace


T = TypeVar("T", bound="RosterResponse")


@_attrs_define
class RosterResponse:
    """The members in the order in which to look at them.

    Attributes:
        as_of_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        by_level (list[int]): How many there are of level 0, 1, 2 and 3.
        cautions (list[Note]):
        contract_version (str): Version of the contract.
        fingerprint (str): Digest of the input, the contract and the model version.
        members (list[RosterPlace]): The first needs it most.
        methods (list[str]): Ids of the equations, constants and rules used; each is in `/v1/methods`.
        model_version (str): Version of the science.
    """

    as_of_date: datetime.date
    by_level: list[int]
    cautions: list[Note]
    contract_version: str
    fingerprint: str
    members: list[RosterPlace]
    methods: list[str]
    model_version: str
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        as_of_date = self.as_of_date.isoformat()

        by_level = self.by_level

        cautions = []
        for cautions_item_data in self.cautions:
            cautions_item = cautions_item_data.to_dict()
            cautions.append(cautions_item)

        contract_version = self.contract_version

        fingerprint = self.fingerprint

        members = []
        for members_item_data in self.members:
            members_item = members_item_data.to_dict()
            members.append(members_item)

        methods = self.methods

        model_version = self.model_version

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "as_of_date": as_of_date,
                "by_level": by_level,
                "cautions": cautions,
                "contract_version": contract_version,
                "fingerprint": fingerprint,
                "members": members,
                "methods": methods,
                "model_version": model_version,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.note import Note  # noqa: PLC0415
        from ..models.roster_place import RosterPlace  # noqa: PLC0415

        d = dict(src_dict)
        as_of_date = datetime.date.fromisoformat(d.pop("as_of_date"))

        by_level = cast(list[int], d.pop("by_level"))

        cautions = []
        _cautions = d.pop("cautions")
        for cautions_item_data in _cautions:
            cautions_item = Note.from_dict(cautions_item_data)

            cautions.append(cautions_item)

        contract_version = d.pop("contract_version")

        fingerprint = d.pop("fingerprint")

        members = []
        _members = d.pop("members")
        for members_item_data in _members:
            members_item = RosterPlace.from_dict(members_item_data)

            members.append(members_item)

        methods = cast(list[str], d.pop("methods"))

        model_version = d.pop("model_version")

        roster_response = cls(
            as_of_date=as_of_date,
            by_level=by_level,
            cautions=cautions,
            contract_version=contract_version,
            fingerprint=fingerprint,
            members=members,
            methods=methods,
            model_version=model_version,
        )

        roster_response.additional_properties = d
        return roster_response

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
