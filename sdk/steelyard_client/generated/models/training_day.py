from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define

from ..models.training_kind import TrainingKind
from ..models.weekday import Weekday
from ..types import UNSET, Unset

T = TypeVar("T", bound="TrainingDay")


@_attrs_define
class TrainingDay:
    """A bout of training on a weekday. It moves food to its day; it adds nothing to the maintenance, which counts the
    usual training already.

        Attributes:
            weekday (Weekday): A day of the week.
            kind (TrainingKind | Unset): What is trained.
            met (float | None | Unset): Intensity in METs; usual for its kind by default.
            minutes (float | Unset): Its length. `60` if absent.
    """

    weekday: Weekday
    kind: TrainingKind | Unset = UNSET
    met: float | None | Unset = UNSET
    minutes: float | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        weekday = self.weekday.value

        kind: str | Unset = UNSET
        if not isinstance(self.kind, Unset):
            kind = self.kind.value

        met: float | None | Unset
        if isinstance(self.met, Unset):
            met = UNSET
        else:
            met = self.met

        minutes = self.minutes

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "weekday": weekday,
            }
        )
        if kind is not UNSET:
            field_dict["kind"] = kind
        if met is not UNSET:
            field_dict["met"] = met
        if minutes is not UNSET:
            field_dict["minutes"] = minutes

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        weekday = Weekday(d.pop("weekday"))

        _kind = d.pop("kind", UNSET)
        kind: TrainingKind | Unset
        if isinstance(_kind, Unset):
            kind = UNSET
        else:
            kind = TrainingKind(_kind)

        def _parse_met(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        met = _parse_met(d.pop("met", UNSET))

        minutes = d.pop("minutes", UNSET)

        training_day = cls(
            weekday=weekday,
            kind=kind,
            met=met,
            minutes=minutes,
        )

        return training_day
