from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

T = TypeVar("T", bound="ClinicalClearance")


@_attrs_define
class ClinicalClearance:
    """A supervising professional's clearance. Echoed in the answer.

    Attributes:
        given_by (str): The professional's role.
        reason (str): Why a deficit is acceptable here.
    """

    given_by: str
    reason: str

    def to_dict(self) -> dict[str, Any]:
        given_by = self.given_by

        reason = self.reason

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "given_by": given_by,
                "reason": reason,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        given_by = d.pop("given_by")

        reason = d.pop("reason")

        clinical_clearance = cls(
            given_by=given_by,
            reason=reason,
        )

        return clinical_clearance
