from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from attrs import define as _attrs_define

from ..models.training_status import TrainingStatus
from ..types import UNSET, Unset

T = TypeVar("T", bound="Training")


@_attrs_define
class Training:
    """Resistance training.

    Attributes:
        resistance_sessions_per_week (float): Resistance sessions a week.
        status (TrainingStatus): Resistance-training experience, which sets how fast muscle can still be gained.
        is_new_programme (bool | Unset): Whether training started or clearly increased in the last weeks. `false` if
            absent.
    """

    resistance_sessions_per_week: float
    status: TrainingStatus
    is_new_programme: bool | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        resistance_sessions_per_week = self.resistance_sessions_per_week

        status = self.status.value

        is_new_programme = self.is_new_programme

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "resistance_sessions_per_week": resistance_sessions_per_week,
                "status": status,
            }
        )
        if is_new_programme is not UNSET:
            field_dict["is_new_programme"] = is_new_programme

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        resistance_sessions_per_week = d.pop("resistance_sessions_per_week")

        status = TrainingStatus(d.pop("status"))

        is_new_programme = d.pop("is_new_programme", UNSET)

        training = cls(
            resistance_sessions_per_week=resistance_sessions_per_week,
            status=status,
            is_new_programme=is_new_programme,
        )

        return training
