from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.batch_counts_problems_by_status import BatchCountsProblemsByStatus


T = TypeVar("T", bound="BatchCounts")


@_attrs_define
class BatchCounts:
    """What became of the lines.

    Attributes:
        is_complete (bool): Whether every line was read; false where a limit or the wait for a line ended the batch.
        lines (int): Lines answered; blank lines are passed over.
        problems (int): Lines answered with a problem.
        problems_by_status (BatchCountsProblemsByStatus): The problems by their status.
        results (int): Lines answered with a result.
    """

    is_complete: bool
    lines: int
    problems: int
    problems_by_status: BatchCountsProblemsByStatus
    results: int
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        is_complete = self.is_complete

        lines = self.lines

        problems = self.problems

        problems_by_status = self.problems_by_status.to_dict()

        results = self.results

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "is_complete": is_complete,
                "lines": lines,
                "problems": problems,
                "problems_by_status": problems_by_status,
                "results": results,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.batch_counts_problems_by_status import BatchCountsProblemsByStatus  # noqa: PLC0415

        d = dict(src_dict)
        is_complete = d.pop("is_complete")

        lines = d.pop("lines")

        problems = d.pop("problems")

        problems_by_status = BatchCountsProblemsByStatus.from_dict(
            d.pop("problems_by_status")
        )

        results = d.pop("results")

        batch_counts = cls(
            is_complete=is_complete,
            lines=lines,
            problems=problems,
            problems_by_status=problems_by_status,
            results=results,
        )

        batch_counts.additional_properties = d
        return batch_counts

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
