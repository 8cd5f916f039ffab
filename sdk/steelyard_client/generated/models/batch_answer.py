from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.problem import Problem


T = TypeVar("T", bound="BatchAnswer")


@_attrs_define
class BatchAnswer:
    """One line out: either `result` or `problem`, in the order of the lines in.

    Attributes:
        line (int): Number of the line it answers, from 1.
        reference (None | str): The line's reference; null where none could be read.
        problem (Problem | Unset): An error, as an RFC 9457 problem document. Branch on `type` or `code`; never parse
            `detail`.
        result (Any | Unset): The answer of the operation, the same bytes as when it is called by itself.
    """

    line: int
    reference: None | str
    problem: Problem | Unset = UNSET
    result: Any | Unset = UNSET
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        line = self.line

        reference: None | str
        reference = self.reference

        problem: dict[str, Any] | Unset = UNSET
        if not isinstance(self.problem, Unset):
            problem = self.problem.to_dict()

        result = self.result

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "line": line,
                "reference": reference,
            }
        )
        if problem is not UNSET:
            field_dict["problem"] = problem
        if result is not UNSET:
            field_dict["result"] = result

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.problem import Problem  # noqa: PLC0415

        d = dict(src_dict)
        line = d.pop("line")

        def _parse_reference(data: object) -> None | str:
            if data is None:
                return data
            return cast(None | str, data)

        reference = _parse_reference(d.pop("reference"))

        _problem = d.pop("problem", UNSET)
        problem: Problem | Unset
        if isinstance(_problem, Unset):
            problem = UNSET
        else:
            problem = Problem.from_dict(_problem)

        result = d.pop("result", UNSET)

        batch_answer = cls(
            line=line,
            reference=reference,
            problem=problem,
            result=result,
        )

        batch_answer.additional_properties = d
        return batch_answer

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
