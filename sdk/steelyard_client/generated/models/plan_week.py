from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.day_kind import DayKind
    from ..models.day_plan import DayPlan
    from ..models.forecast_point import ForecastPoint


T = TypeVar("T", bound="PlanWeek")


@_attrs_define
class PlanWeek:
    """A week of a phase: what to eat and what to expect at its end.

    Attributes:
        at_end (ForecastPoint): The body expected at the end of a week.

            Central values are of a body that eats what is told (of a member who is known to keep to clearly less of a
            deficit:
            as much as that). Intervals hold that and, in a deficit, what people in general come to who are given it, or
            this
            member as their state knows them: reaching further towards eating more. Without `adherence` among the sources of
            uncertainty they are of the plan being eaten, alone.
        by_day (list[DayPlan]): Each day of the week, where `week` was sent. They add up to seven times `intake_kcal`.
        carbohydrate_g (int): Carbohydrate a day, to 5 g.
        day_kinds (list[DayKind]): The week's kinds of day, where a split was asked for.
        days (int): Days in it.
        element (str): Its purpose: `easing_in`, `deficit`, `break`, `maintenance` or `surplus`. Extensible.
        energy_balance_kcal (float): Expected intake minus expenditure, mean of the week.
        fat_g (int): Fat a day, to 5 g.
        fibre_g (int): Fibre a day, within the carbohydrate.
        intake_kcal (int): Energy a day, to 10 kcal.
        protein_g (int): Protein a day, to 5 g.
        start_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        week (int): Number within the phase, from 1.
    """

    at_end: ForecastPoint
    by_day: list[DayPlan]
    carbohydrate_g: int
    day_kinds: list[DayKind]
    days: int
    element: str
    energy_balance_kcal: float
    fat_g: int
    fibre_g: int
    intake_kcal: int
    protein_g: int
    start_date: datetime.date
    week: int
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        at_end = self.at_end.to_dict()

        by_day = []
        for by_day_item_data in self.by_day:
            by_day_item = by_day_item_data.to_dict()
            by_day.append(by_day_item)

        carbohydrate_g = self.carbohydrate_g

        day_kinds = []
        for day_kinds_item_data in self.day_kinds:
            day_kinds_item = day_kinds_item_data.to_dict()
            day_kinds.append(day_kinds_item)

        days = self.days

        element = self.element

        energy_balance_kcal = self.energy_balance_kcal

        fat_g = self.fat_g

        fibre_g = self.fibre_g

        intake_kcal = self.intake_kcal

        protein_g = self.protein_g

        start_date = self.start_date.isoformat()

        week = self.week

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "at_end": at_end,
                "by_day": by_day,
                "carbohydrate_g": carbohydrate_g,
                "day_kinds": day_kinds,
                "days": days,
                "element": element,
                "energy_balance_kcal": energy_balance_kcal,
                "fat_g": fat_g,
                "fibre_g": fibre_g,
                "intake_kcal": intake_kcal,
                "protein_g": protein_g,
                "start_date": start_date,
                "week": week,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.day_kind import DayKind  # noqa: PLC0415
        from ..models.day_plan import DayPlan  # noqa: PLC0415
        from ..models.forecast_point import ForecastPoint  # noqa: PLC0415

        d = dict(src_dict)
        at_end = ForecastPoint.from_dict(d.pop("at_end"))

        by_day = []
        _by_day = d.pop("by_day")
        for by_day_item_data in _by_day:
            by_day_item = DayPlan.from_dict(by_day_item_data)

            by_day.append(by_day_item)

        carbohydrate_g = d.pop("carbohydrate_g")

        day_kinds = []
        _day_kinds = d.pop("day_kinds")
        for day_kinds_item_data in _day_kinds:
            day_kinds_item = DayKind.from_dict(day_kinds_item_data)

            day_kinds.append(day_kinds_item)

        days = d.pop("days")

        element = d.pop("element")

        energy_balance_kcal = d.pop("energy_balance_kcal")

        fat_g = d.pop("fat_g")

        fibre_g = d.pop("fibre_g")

        intake_kcal = d.pop("intake_kcal")

        protein_g = d.pop("protein_g")

        start_date = datetime.date.fromisoformat(d.pop("start_date"))

        week = d.pop("week")

        plan_week = cls(
            at_end=at_end,
            by_day=by_day,
            carbohydrate_g=carbohydrate_g,
            day_kinds=day_kinds,
            days=days,
            element=element,
            energy_balance_kcal=energy_balance_kcal,
            fat_g=fat_g,
            fibre_g=fibre_g,
            intake_kcal=intake_kcal,
            protein_g=protein_g,
            start_date=start_date,
            week=week,
        )

        plan_week.additional_properties = d
        return plan_week

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
