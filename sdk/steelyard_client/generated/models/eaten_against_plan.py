from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.interval import Interval


T = TypeVar("T", bound="EatenAgainstPlan")


@_attrs_define
class EatenAgainstPlan:
    """Intake as logged against intake as planned, both on the logging scale.

    Attributes:
        days (int): Days of the phase so far.
        days_logged (int): Of them, days with a full log.
        difference_kcal (Interval | None): Logged less planned, mean a day; wider where days are missing.
        implied_difference_kcal (Interval | None): Eaten less planned as the weight tells it, if maintenance were what
            the plan started from.
        logged_kcal (float | None): Mean of the logged days.
        planned_kcal (float): Mean of the plan over all days.
    """

    days: int
    days_logged: int
    difference_kcal: Interval | None
    implied_difference_kcal: Interval | None
    logged_kcal: float | None
    planned_kcal: float
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.interval import Interval  # noqa: PLC0415

        days = self.days

        days_logged = self.days_logged

        difference_kcal: dict[str, Any] | None
        if isinstance(self.difference_kcal, Interval):
            difference_kcal = self.difference_kcal.to_dict()
        else:
            difference_kcal = self.difference_kcal

        implied_difference_kcal: dict[str, Any] | None
        if isinstance(self.implied_difference_kcal, Interval):
            implied_difference_kcal = self.implied_difference_kcal.to_dict()
        else:
            implied_difference_kcal = self.implied_difference_kcal

        logged_kcal: float | None
        logged_kcal = self.logged_kcal

        planned_kcal = self.planned_kcal

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "days": days,
                "days_logged": days_logged,
                "difference_kcal": difference_kcal,
                "implied_difference_kcal": implied_difference_kcal,
                "logged_kcal": logged_kcal,
                "planned_kcal": planned_kcal,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.interval import Interval  # noqa: PLC0415

        d = dict(src_dict)
        days = d.pop("days")

        days_logged = d.pop("days_logged")

        def _parse_difference_kcal(data: object) -> Interval | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                difference_kcal_type_0 = Interval.from_dict(data)

                return difference_kcal_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Interval | None, data)

        difference_kcal = _parse_difference_kcal(d.pop("difference_kcal"))

        def _parse_implied_difference_kcal(data: object) -> Interval | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                implied_difference_kcal_type_0 = Interval.from_dict(data)

                return implied_difference_kcal_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Interval | None, data)

        implied_difference_kcal = _parse_implied_difference_kcal(
            d.pop("implied_difference_kcal")
        )

        def _parse_logged_kcal(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        logged_kcal = _parse_logged_kcal(d.pop("logged_kcal"))

        planned_kcal = d.pop("planned_kcal")

        eaten_against_plan = cls(
            days=days,
            days_logged=days_logged,
            difference_kcal=difference_kcal,
            implied_difference_kcal=implied_difference_kcal,
            logged_kcal=logged_kcal,
            planned_kcal=planned_kcal,
        )

        eaten_against_plan.additional_properties = d
        return eaten_against_plan

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
