from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.forecast_point import ForecastPoint


T = TypeVar("T", bound="SeasonWeek")


@_attrs_define
class SeasonWeek:
    """A week of the season.

    Attributes:
        at_end (ForecastPoint): The body expected at the end of a week.

            Central values are of a body that eats what is told (of a member who is known to keep to clearly less of a
            deficit:
            as much as that). Intervals hold that and, in a deficit, what people in general come to who are given it, or
            this
            member as their state knows them: reaching further towards eating more. Without `adherence` among the sources of
            uncertainty they are of the plan being eaten, alone.
        energy_balance_kcal (float): Expected intake minus expenditure, mean of the week.
        intake_kcal (int): Energy a day, to 10 kcal.
        kind (str): Kind of its phase. Extensible.
        start_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        week (int): Number from 1.
    """

    at_end: ForecastPoint
    energy_balance_kcal: float
    intake_kcal: int
    kind: str
    start_date: datetime.date
    week: int
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        at_end = self.at_end.to_dict()

        energy_balance_kcal = self.energy_balance_kcal

        intake_kcal = self.intake_kcal

        kind = self.kind

        start_date = self.start_date.isoformat()

        week = self.week

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "at_end": at_end,
                "energy_balance_kcal": energy_balance_kcal,
                "intake_kcal": intake_kcal,
                "kind": kind,
                "start_date": start_date,
                "week": week,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.forecast_point import ForecastPoint  # noqa: PLC0415

        d = dict(src_dict)
        at_end = ForecastPoint.from_dict(d.pop("at_end"))

        energy_balance_kcal = d.pop("energy_balance_kcal")

        intake_kcal = d.pop("intake_kcal")

        kind = d.pop("kind")

        start_date = datetime.date.fromisoformat(d.pop("start_date"))

        week = d.pop("week")

        season_week = cls(
            at_end=at_end,
            energy_balance_kcal=energy_balance_kcal,
            intake_kcal=intake_kcal,
            kind=kind,
            start_date=start_date,
            week=week,
        )

        season_week.additional_properties = d
        return season_week

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
