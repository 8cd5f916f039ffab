from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.field_problem_params import FieldProblemParams


T = TypeVar("T", bound="FieldProblem")


@_attrs_define
class FieldProblem:
    """One fault, and the place in the request body where it is.

    Attributes:
        code (str): Stable reason in capitals. Extensible.
        detail (str): What is wrong and what would be accepted, in English.
        pointer (str): JSON Pointer (RFC 6901) to the field, as a URI fragment; `#` is the whole body.
        params (FieldProblemParams | Unset): The dynamic parts of `detail`; quantities carry their unit in the name.
    """

    code: str
    detail: str
    pointer: str
    params: FieldProblemParams | Unset = UNSET
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        code = self.code

        detail = self.detail

        pointer = self.pointer

        params: dict[str, Any] | Unset = UNSET
        if not isinstance(self.params, Unset):
            params = self.params.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "code": code,
                "detail": detail,
                "pointer": pointer,
            }
        )
        if params is not UNSET:
            field_dict["params"] = params

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.field_problem_params import FieldProblemParams  # noqa: PLC0415

        d = dict(src_dict)
        code = d.pop("code")

        detail = d.pop("detail")

        pointer = d.pop("pointer")

        _params = d.pop("params", UNSET)
        params: FieldProblemParams | Unset
        if isinstance(_params, Unset):
            params = UNSET
        else:
            params = FieldProblemParams.from_dict(_params)

        field_problem = cls(
            code=code,
            detail=detail,
            pointer=pointer,
            params=params,
        )

        field_problem.additional_properties = d
        return field_problem

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
