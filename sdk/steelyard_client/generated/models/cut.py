from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import (
    Any,
    Literal,
    TypeVar,
    cast,
)

from attrs import define as _attrs_define

from ..models.carbohydrate_preference import CarbohydratePreference
from ..models.pace import Pace
from ..types import UNSET, Unset

T = TypeVar("T", bound="Cut")


@_attrs_define
class Cut:
    """A longer fat-loss phase of 7 to 26 weeks, its intake set anew every few weeks, with breaks where wanted.

    Attributes:
        kind (Literal['cut']):
        break_every_weeks (int | None | Unset): A break at maintenance after this many weeks.
        break_weeks (int | Unset): Length of a break. `1` if absent.
        carbohydrate_preference (CarbohydratePreference | Unset): How the energy left after protein is shared between
            carbohydrate and fat.
        deficit_kcal (float | None | Unset): Daily deficit at the start; chosen by body, history and `pace` where
            neither it nor both a goal and a time are given.
        easing_in_weeks (int | Unset): How many of the first weeks run at half the deficit, to limit hunger; none by
            default. `0` if absent.
        event_date (datetime.date | None | Unset): A day to be ready for: the phase and the maintenance that lets
            carried mass settle end before it, as late as will do. Instead of `weeks`.
        fat_loss_kg (float | None | Unset): Fat to lose, kilograms.
        pace (Pace | Unset): How fast somebody would like to go, where the size of a phase is left open.
        protein_g_per_kg (float | None | Unset): Protein, grams per kilogram; 2.0 by default.
        target_fat_fraction (float | None | Unset): Body fat as a fraction of body mass, 0 to 1.
        target_weight_kg (float | None | Unset): Weight to reach once carried mass has settled, kilograms.
        weeks (int | None | Unset): Length in weeks, 7 or more unless some are done.
        weeks_done (int | Unset): Weeks of this phase already done, to plan its rest from the body as it is now. `0` if
            absent.
    """

    kind: Literal["cut"]
    break_every_weeks: int | None | Unset = UNSET
    break_weeks: int | Unset = UNSET
    carbohydrate_preference: CarbohydratePreference | Unset = UNSET
    deficit_kcal: float | None | Unset = UNSET
    easing_in_weeks: int | Unset = UNSET
    event_date: datetime.date | None | Unset = UNSET
    fat_loss_kg: float | None | Unset = UNSET
    pace: Pace | Unset = UNSET
    protein_g_per_kg: float | None | Unset = UNSET
    target_fat_fraction: float | None | Unset = UNSET
    target_weight_kg: float | None | Unset = UNSET
    weeks: int | None | Unset = UNSET
    weeks_done: int | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        kind = self.kind

        break_every_weeks: int | None | Unset
        if isinstance(self.break_every_weeks, Unset):
            break_every_weeks = UNSET
        else:
            break_every_weeks = self.break_every_weeks

        break_weeks = self.break_weeks

        carbohydrate_preference: str | Unset = UNSET
        if not isinstance(self.carbohydrate_preference, Unset):
            carbohydrate_preference = self.carbohydrate_preference.value

        deficit_kcal: float | None | Unset
        if isinstance(self.deficit_kcal, Unset):
            deficit_kcal = UNSET
        else:
            deficit_kcal = self.deficit_kcal

        easing_in_weeks = self.easing_in_weeks

        event_date: None | str | Unset
        if isinstance(self.event_date, Unset):
            event_date = UNSET
        elif isinstance(self.event_date, datetime.date):
            event_date = self.event_date.isoformat()
        else:
            event_date = self.event_date

        fat_loss_kg: float | None | Unset
        if isinstance(self.fat_loss_kg, Unset):
            fat_loss_kg = UNSET
        else:
            fat_loss_kg = self.fat_loss_kg

        pace: str | Unset = UNSET
        if not isinstance(self.pace, Unset):
            pace = self.pace.value

        protein_g_per_kg: float | None | Unset
        if isinstance(self.protein_g_per_kg, Unset):
            protein_g_per_kg = UNSET
        else:
            protein_g_per_kg = self.protein_g_per_kg

        target_fat_fraction: float | None | Unset
        if isinstance(self.target_fat_fraction, Unset):
            target_fat_fraction = UNSET
        else:
            target_fat_fraction = self.target_fat_fraction

        target_weight_kg: float | None | Unset
        if isinstance(self.target_weight_kg, Unset):
            target_weight_kg = UNSET
        else:
            target_weight_kg = self.target_weight_kg

        weeks: int | None | Unset
        if isinstance(self.weeks, Unset):
            weeks = UNSET
        else:
            weeks = self.weeks

        weeks_done = self.weeks_done

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "kind": kind,
            }
        )
        if break_every_weeks is not UNSET:
            field_dict["break_every_weeks"] = break_every_weeks
        if break_weeks is not UNSET:
            field_dict["break_weeks"] = break_weeks
        if carbohydrate_preference is not UNSET:
            field_dict["carbohydrate_preference"] = carbohydrate_preference
        if deficit_kcal is not UNSET:
            field_dict["deficit_kcal"] = deficit_kcal
        if easing_in_weeks is not UNSET:
            field_dict["easing_in_weeks"] = easing_in_weeks
        if event_date is not UNSET:
            field_dict["event_date"] = event_date
        if fat_loss_kg is not UNSET:
            field_dict["fat_loss_kg"] = fat_loss_kg
        if pace is not UNSET:
            field_dict["pace"] = pace
        if protein_g_per_kg is not UNSET:
            field_dict["protein_g_per_kg"] = protein_g_per_kg
        if target_fat_fraction is not UNSET:
            field_dict["target_fat_fraction"] = target_fat_fraction
        if target_weight_kg is not UNSET:
            field_dict["target_weight_kg"] = target_weight_kg
        if weeks is not UNSET:
            field_dict["weeks"] = weeks
        if weeks_done is not UNSET:
            field_dict["weeks_done"] = weeks_done

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        kind = cast(Literal["cut"], d.pop("kind"))
        if kind != "cut":
            raise ValueError(f"kind must match const 'cut', got '{kind}'")

        def _parse_break_every_weeks(data: object) -> int | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(int | None | Unset, data)

        break_every_weeks = _parse_break_every_weeks(d.pop("break_every_weeks", UNSET))

        break_weeks = d.pop("break_weeks", UNSET)

        _carbohydrate_preference = d.pop("carbohydrate_preference", UNSET)
        carbohydrate_preference: CarbohydratePreference | Unset
        if isinstance(_carbohydrate_preference, Unset):
            carbohydrate_preference = UNSET
        else:
            carbohydrate_preference = CarbohydratePreference(_carbohydrate_preference)

        def _parse_deficit_kcal(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        deficit_kcal = _parse_deficit_kcal(d.pop("deficit_kcal", UNSET))

        easing_in_weeks = d.pop("easing_in_weeks", UNSET)

        def _parse_event_date(data: object) -> datetime.date | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                event_date_type_0 = datetime.date.fromisoformat(data)

                return event_date_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(datetime.date | None | Unset, data)

        event_date = _parse_event_date(d.pop("event_date", UNSET))

        def _parse_fat_loss_kg(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        fat_loss_kg = _parse_fat_loss_kg(d.pop("fat_loss_kg", UNSET))

        _pace = d.pop("pace", UNSET)
        pace: Pace | Unset
        if isinstance(_pace, Unset):
            pace = UNSET
        else:
            pace = Pace(_pace)

        def _parse_protein_g_per_kg(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        protein_g_per_kg = _parse_protein_g_per_kg(d.pop("protein_g_per_kg", UNSET))

        def _parse_target_fat_fraction(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        target_fat_fraction = _parse_target_fat_fraction(
            d.pop("target_fat_fraction", UNSET)
        )

        def _parse_target_weight_kg(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        target_weight_kg = _parse_target_weight_kg(d.pop("target_weight_kg", UNSET))

        def _parse_weeks(data: object) -> int | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(int | None | Unset, data)

        weeks = _parse_weeks(d.pop("weeks", UNSET))

        weeks_done = d.pop("weeks_done", UNSET)

        cut = cls(
            kind=kind,
            break_every_weeks=break_every_weeks,
            break_weeks=break_weeks,
            carbohydrate_preference=carbohydrate_preference,
            deficit_kcal=deficit_kcal,
            easing_in_weeks=easing_in_weeks,
            event_date=event_date,
            fat_loss_kg=fat_loss_kg,
            pace=pace,
            protein_g_per_kg=protein_g_per_kg,
            target_fat_fraction=target_fat_fraction,
            target_weight_kg=target_weight_kg,
            weeks=weeks,
            weeks_done=weeks_done,
        )

        return cut
