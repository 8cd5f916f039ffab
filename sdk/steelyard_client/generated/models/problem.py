from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.field_problem import FieldProblem


T = TypeVar("T", bound="Problem")


@_attrs_define
class Problem:
    """An error, as an RFC 9457 problem document. Branch on `type` or `code`; never parse `detail`.

    Attributes:
        code (str): The kind of problem in capitals. Extensible.
        detail (str): What happened in this request, and how to mend it.
        instance (str): The request id as a URI reference, to quote to the operator: a URN where it is a UUID.
        status (int): The HTTP status code.
        title (str): The kind of problem in words; the same for every occurrence.
        type_ (str): URI reference of the kind of problem; GET it for its documentation. Extensible.
        errors (list[FieldProblem] | Unset): The faults, each with its place. May be empty.
    """

    code: str
    detail: str
    instance: str
    status: int
    title: str
    type_: str
    errors: list[FieldProblem] | Unset = UNSET
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        code = self.code

        detail = self.detail

        instance = self.instance

        status = self.status

        title = self.title

        type_ = self.type_

        errors: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.errors, Unset):
            errors = []
            for errors_item_data in self.errors:
                errors_item = errors_item_data.to_dict()
                errors.append(errors_item)

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "code": code,
                "detail": detail,
                "instance": instance,
                "status": status,
                "title": title,
                "type": type_,
            }
        )
        if errors is not UNSET:
            field_dict["errors"] = errors

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.field_problem import FieldProblem  # noqa: PLC0415

        d = dict(src_dict)
        code = d.pop("code")

        detail = d.pop("detail")

        instance = d.pop("instance")

        status = d.pop("status")

        title = d.pop("title")

        type_ = d.pop("type")

        _errors = d.pop("errors", UNSET)
        errors: list[FieldProblem] | Unset = UNSET
        if _errors is not UNSET:
            errors = []
            for errors_item_data in _errors:
                errors_item = FieldProblem.from_dict(errors_item_data)

                errors.append(errors_item)

        problem = cls(
            code=code,
            detail=detail,
            instance=instance,
            status=status,
            title=title,
            type_=type_,
            errors=errors,
        )

        problem.additional_properties = d
        return problem

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
