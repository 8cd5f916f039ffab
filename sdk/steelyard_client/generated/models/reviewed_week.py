from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.forecast_point import ForecastPoint


T = TypeVar("T", bound="ReviewedWeek")


@_attrs_define
class ReviewedWeek:
    """Days to come of one week of the phase: the corrected intake and where it leads.

    Attributes:
        at_end (ForecastPoint): The body expected at the end of a week.

            Central values are of a body that eats what is told (of a member who is known to keep to clearly less of a
            deficit:
            as much as that). Intervals hold that and, in a deficit, what people in general come to who are given it, or
            this
            member as their state knows them: reaching further towards eating more. Without `adherence` among the sources of
            uncertainty they are of the plan being eaten, alone.
        carbohydrate_g (float | None): Carbohydrate a day, to 5 g, where the plan named it.
        days (int): Days in it, up to 7.
        intake_kcal (float): Energy a day, correction included.
        planned_intake_kcal (float): Energy a day as first planned: the correction is the difference.
        protein_g (float): Protein a day, grams.
        start_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    """

    at_end: ForecastPoint
    carbohydrate_g: float | None
    days: int
    intake_kcal: float
    planned_intake_kcal: float
    protein_g: float
    start_date: datetime.date
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        at_end = self.at_end.to_dict()

        carbohydrate_g: float | None
        carbohydrate_g = self.carbohydrate_g

        days = self.days

        intake_kcal = self.intake_kcal

        planned_intake_kcal = self.planned_intake_kcal

        protein_g = self.protein_g

        start_date = self.start_date.isoformat()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "at_end": at_end,
                "carbohydrate_g": carbohydrate_g,
                "days": days,
                "intake_kcal": intake_kcal,
                "planned_intake_kcal": planned_intake_kcal,
                "protein_g": protein_g,
                "start_date": start_date,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.forecast_point import ForecastPoint  # noqa: PLC0415

        d = dict(src_dict)
        at_end = ForecastPoint.from_dict(d.pop("at_end"))

        def _parse_carbohydrate_g(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        carbohydrate_g = _parse_carbohydrate_g(d.pop("carbohydrate_g"))

        days = d.pop("days")

        intake_kcal = d.pop("intake_kcal")

        planned_intake_kcal = d.pop("planned_intake_kcal")

        protein_g = d.pop("protein_g")

        start_date = datetime.date.fromisoformat(d.pop("start_date"))

        reviewed_week = cls(
            at_end=at_end,
            carbohydrate_g=carbohydrate_g,
            days=days,
            intake_kcal=intake_kcal,
            planned_intake_kcal=planned_intake_kcal,
            protein_g=protein_g,
            start_date=start_date,
        )

        reviewed_week.additional_properties = d
        return reviewed_week

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
