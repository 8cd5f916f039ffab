from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.day_kind_passed import DayKindPassed
    from ..models.day_passed import DayPassed
    from ..models.point_passed import PointPassed


T = TypeVar("T", bound="WeekFollowed")


@_attrs_define
class WeekFollowed:
    """A week as planned. A week of a plan's answer, or of a review's, is taken as it is: what is not needed of it is
    passed over.

        Attributes:
            intake_kcal (float): Energy per day, kilocalories.
            protein_g (float): Protein a day, grams.
            at_end (None | PointPassed | Unset): Not read: a week of a plan may be sent back whole.
            by_day (list[DayPassed] | Unset): Not read: a week of a plan may be sent back whole. `[]` if absent.
            carbohydrate_g (float | None | Unset): Carbohydrate a day; half of the energy by default.
            day_kinds (list[DayKindPassed] | Unset): Not read: a week of a plan may be sent back whole. `[]` if absent.
            days (int | None | Unset): As in a plan's week.
            element (None | str | Unset): As in a plan's week; `break` is a break.
            energy_balance_kcal (float | None | Unset): Not read: a week of a plan may be sent back whole.
            fat_g (float | None | Unset): Not read: a week of a plan may be sent back whole.
            fibre_g (float | None | Unset): Not read: a week of a plan may be sent back whole.
            is_break (bool | Unset): Whether the week is a break at maintenance, which is never corrected. `false` if
                absent.
            planned_intake_kcal (float | None | Unset): Energy a day as first planned, where `intake_kcal` is what a review
                made of it: the phase is held against this one, so that no correction counts as the plan.
            start_date (datetime.date | None | Unset): As in a plan's week; that of the first is the start of the phase.
            week (int | None | Unset): Number of the week; passed over.
    """

    intake_kcal: float
    protein_g: float
    at_end: None | PointPassed | Unset = UNSET
    by_day: list[DayPassed] | Unset = UNSET
    carbohydrate_g: float | None | Unset = UNSET
    day_kinds: list[DayKindPassed] | Unset = UNSET
    days: int | None | Unset = UNSET
    element: None | str | Unset = UNSET
    energy_balance_kcal: float | None | Unset = UNSET
    fat_g: float | None | Unset = UNSET
    fibre_g: float | None | Unset = UNSET
    is_break: bool | Unset = UNSET
    planned_intake_kcal: float | None | Unset = UNSET
    start_date: datetime.date | None | Unset = UNSET
    week: int | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.point_passed import PointPassed  # noqa: PLC0415

        intake_kcal = self.intake_kcal

        protein_g = self.protein_g

        at_end: dict[str, Any] | None | Unset
        if isinstance(self.at_end, Unset):
            at_end = UNSET
        elif isinstance(self.at_end, PointPassed):
            at_end = self.at_end.to_dict()
        else:
            at_end = self.at_end

        by_day: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.by_day, Unset):
            by_day = []
            for by_day_item_data in self.by_day:
                by_day_item = by_day_item_data.to_dict()
                by_day.append(by_day_item)

        carbohydrate_g: float | None | Unset
        if isinstance(self.carbohydrate_g, Unset):
            carbohydrate_g = UNSET
        else:
            carbohydrate_g = self.carbohydrate_g

        day_kinds: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.day_kinds, Unset):
            day_kinds = []
            for day_kinds_item_data in self.day_kinds:
                day_kinds_item = day_kinds_item_data.to_dict()
                day_kinds.append(day_kinds_item)

        days: int | None | Unset
        if isinstance(self.days, Unset):
            days = UNSET
        else:
            days = self.days

        element: None | str | Unset
        if isinstance(self.element, Unset):
            element = UNSET
        else:
            element = self.element

        energy_balance_kcal: float | None | Unset
        if isinstance(self.energy_balance_kcal, Unset):
            energy_balance_kcal = UNSET
        else:
            energy_balance_kcal = self.energy_balance_kcal

        fat_g: float | None | Unset
        if isinstance(self.fat_g, Unset):
            fat_g = UNSET
        else:
            fat_g = self.fat_g

        fibre_g: float | None | Unset
        if isinstance(self.fibre_g, Unset):
            fibre_g = UNSET
        else:
            fibre_g = self.fibre_g

        is_break = self.is_break

        planned_intake_kcal: float | None | Unset
        if isinstance(self.planned_intake_kcal, Unset):
            planned_intake_kcal = UNSET
        else:
            planned_intake_kcal = self.planned_intake_kcal

        start_date: None | str | Unset
        if isinstance(self.start_date, Unset):
            start_date = UNSET
        elif isinstance(self.start_date, datetime.date):
            start_date = self.start_date.isoformat()
        else:
            start_date = self.start_date

        week: int | None | Unset
        if isinstance(self.week, Unset):
            week = UNSET
        else:
            week = self.week

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "intake_kcal": intake_kcal,
                "protein_g": protein_g,
            }
        )
        if at_end is not UNSET:
            field_dict["at_end"] = at_end
        if by_day is not UNSET:
            field_dict["by_day"] = by_day
        if carbohydrate_g is not UNSET:
            field_dict["carbohydrate_g"] = carbohydrate_g
        if day_kinds is not UNSET:
            field_dict["day_kinds"] = day_kinds
        if days is not UNSET:
            field_dict["days"] = days
        if element is not UNSET:
            field_dict["element"] = element
        if energy_balance_kcal is not UNSET:
            field_dict["energy_balance_kcal"] = energy_balance_kcal
        if fat_g is not UNSET:
            field_dict["fat_g"] = fat_g
        if fibre_g is not UNSET:
            field_dict["fibre_g"] = fibre_g
        if is_break is not UNSET:
            field_dict["is_break"] = is_break
        if planned_intake_kcal is not UNSET:
            field_dict["planned_intake_kcal"] = planned_intake_kcal
        if start_date is not UNSET:
            field_dict["start_date"] = start_date
        if week is not UNSET:
            field_dict["week"] = week

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.day_kind_passed import DayKindPassed  # noqa: PLC0415
        from ..models.day_passed import DayPassed  # noqa: PLC0415
        from ..models.point_passed import PointPassed  # noqa: PLC0415

        d = dict(src_dict)
        intake_kcal = d.pop("intake_kcal")

        protein_g = d.pop("protein_g")

        def _parse_at_end(data: object) -> None | PointPassed | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                at_end_type_0 = PointPassed.from_dict(data)

                return at_end_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | PointPassed | Unset, data)

        at_end = _parse_at_end(d.pop("at_end", UNSET))

        _by_day = d.pop("by_day", UNSET)
        by_day: list[DayPassed] | Unset = UNSET
        if _by_day is not UNSET:
            by_day = []
            for by_day_item_data in _by_day:
                by_day_item = DayPassed.from_dict(by_day_item_data)

                by_day.append(by_day_item)

        def _parse_carbohydrate_g(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        carbohydrate_g = _parse_carbohydrate_g(d.pop("carbohydrate_g", UNSET))

        _day_kinds = d.pop("day_kinds", UNSET)
        day_kinds: list[DayKindPassed] | Unset = UNSET
        if _day_kinds is not UNSET:
            day_kinds = []
            for day_kinds_item_data in _day_kinds:
                day_kinds_item = DayKindPassed.from_dict(day_kinds_item_data)

                day_kinds.append(day_kinds_item)

        def _parse_days(data: object) -> int | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(int | None | Unset, data)

        days = _parse_days(d.pop("days", UNSET))

        def _parse_element(data: object) -> None | str | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(None | str | Unset, data)

        element = _parse_element(d.pop("element", UNSET))

        def _parse_energy_balance_kcal(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        energy_balance_kcal = _parse_energy_balance_kcal(
            d.pop("energy_balance_kcal", UNSET)
        )

        def _parse_fat_g(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        fat_g = _parse_fat_g(d.pop("fat_g", UNSET))

        def _parse_fibre_g(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        fibre_g = _parse_fibre_g(d.pop("fibre_g", UNSET))

        is_break = d.pop("is_break", UNSET)

        def _parse_planned_intake_kcal(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        planned_intake_kcal = _parse_planned_intake_kcal(
            d.pop("planned_intake_kcal", UNSET)
        )

        def _parse_start_date(data: object) -> datetime.date | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                start_date_type_0 = datetime.date.fromisoformat(data)

                return start_date_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(datetime.date | None | Unset, data)

        start_date = _parse_start_date(d.pop("start_date", UNSET))

        def _parse_week(data: object) -> int | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(int | None | Unset, data)

        week = _parse_week(d.pop("week", UNSET))

        week_followed = cls(
            intake_kcal=intake_kcal,
            protein_g=protein_g,
            at_end=at_end,
            by_day=by_day,
            carbohydrate_g=carbohydrate_g,
            day_kinds=day_kinds,
            days=days,
            element=element,
            energy_balance_kcal=energy_balance_kcal,
            fat_g=fat_g,
            fibre_g=fibre_g,
            is_break=is_break,
            planned_intake_kcal=planned_intake_kcal,
            start_date=start_date,
            week=week,
        )

        return week_followed
