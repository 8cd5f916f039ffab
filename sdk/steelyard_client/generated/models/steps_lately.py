from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.interval import Interval
    from ..models.note import Note


T = TypeVar("T", bound="StepsLately")


@_attrs_define
class StepsLately:
    """Steps of the last fortnight against the one before it.

    Attributes:
        change (float | None): Steps a day more; negative: fewer.
        says (None | Note): The same for the member; null with too few counted.
        steps_before (float | None): Mean over the 14 days before those; null with too few counted.
        steps_per_day (float): Mean over the 14 days before the day read at, of those counted.
        worth_kcal (Interval | None): What that changes of expenditure, kilocalories a day, once the body has taken back
            its part. Maintenance has followed it already.
    """

    change: float | None
    says: None | Note
    steps_before: float | None
    steps_per_day: float
    worth_kcal: Interval | None
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415

        change: float | None
        change = self.change

        says: dict[str, Any] | None
        if isinstance(self.says, Note):
            says = self.says.to_dict()
        else:
            says = self.says

        steps_before: float | None
        steps_before = self.steps_before

        steps_per_day = self.steps_per_day

        worth_kcal: dict[str, Any] | None
        if isinstance(self.worth_kcal, Interval):
            worth_kcal = self.worth_kcal.to_dict()
        else:
            worth_kcal = self.worth_kcal

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "change": change,
                "says": says,
                "steps_before": steps_before,
                "steps_per_day": steps_per_day,
                "worth_kcal": worth_kcal,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415

        d = dict(src_dict)

        def _parse_change(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        change = _parse_change(d.pop("change"))

        def _parse_says(data: object) -> None | Note:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                says_type_0 = Note.from_dict(data)

                return says_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | Note, data)

        says = _parse_says(d.pop("says"))

        def _parse_steps_before(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        steps_before = _parse_steps_before(d.pop("steps_before"))

        steps_per_day = d.pop("steps_per_day")

        def _parse_worth_kcal(data: object) -> Interval | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                worth_kcal_type_0 = Interval.from_dict(data)

                return worth_kcal_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Interval | None, data)

        worth_kcal = _parse_worth_kcal(d.pop("worth_kcal"))

        steps_lately = cls(
            change=change,
            says=says,
            steps_before=steps_before,
            steps_per_day=steps_per_day,
            worth_kcal=worth_kcal,
        )

        steps_lately.additional_properties = d
        return steps_lately

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
