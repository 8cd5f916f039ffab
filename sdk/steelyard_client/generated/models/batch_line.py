from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

from ..models.batch_operation import BatchOperation

T = TypeVar("T", bound="BatchLine")


@_attrs_define
class BatchLine:
    """One line in: an operation and its body, under a reference of the caller's choosing.

    Attributes:
        body (Any): The body that the operation takes when it is called by itself.
        operation (BatchOperation): The operations that a line may ask for: those that take one person.
        reference (str): Comes back with the answer.
    """

    body: Any
    operation: BatchOperation
    reference: str

    def to_dict(self) -> dict[str, Any]:
        body = self.body

        operation = self.operation.value

        reference = self.reference

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "body": body,
                "operation": operation,
                "reference": reference,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        body = d.pop("body")

        operation = BatchOperation(d.pop("operation"))

        reference = d.pop("reference")

        batch_line = cls(
            body=body,
            operation=operation,
            reference=reference,
        )

        return batch_line
