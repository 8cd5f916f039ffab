from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define

from ..models.cycle_said import CycleSaid
from ..models.strength_said import StrengthSaid
from ..types import UNSET, Unset

T = TypeVar("T", bound="CheckIn")


@_attrs_define
class CheckIn:
    """How somebody is, in five short answers; those left out say nothing.

    Attributes:
        date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        cycle (CycleSaid | None | Unset): `regular`, `late` by more than a week, `missed`, or `none` to speak of
            (contraception, menopause, does not menstruate).
        hunger (int | None | Unset): 1 none to 5 all day long.
        mood (int | None | Unset): 1 bad to 5 good.
        sleep (int | None | Unset): 1 bad to 5 good.
        strength (None | StrengthSaid | Unset): Main lifts against four weeks ago: `up`, `steady`, `down` (about 5 %),
            `down_much` (10 % or more).
    """

    date: datetime.date
    cycle: CycleSaid | None | Unset = UNSET
    hunger: int | None | Unset = UNSET
    mood: int | None | Unset = UNSET
    sleep: int | None | Unset = UNSET
    strength: None | StrengthSaid | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        date = self.date.isoformat()

        cycle: None | str | Unset
        if isinstance(self.cycle, Unset):
            cycle = UNSET
        elif isinstance(self.cycle, CycleSaid):
            cycle = self.cycle.value
        else:
            cycle = self.cycle

        hunger: int | None | Unset
        if isinstance(self.hunger, Unset):
            hunger = UNSET
        else:
            hunger = self.hunger

        mood: int | None | Unset
        if isinstance(self.mood, Unset):
            mood = UNSET
        else:
            mood = self.mood

        sleep: int | None | Unset
        if isinstance(self.sleep, Unset):
            sleep = UNSET
        else:
            sleep = self.sleep

        strength: None | str | Unset
        if isinstance(self.strength, Unset):
            strength = UNSET
        elif isinstance(self.strength, StrengthSaid):
            strength = self.strength.value
        else:
            strength = self.strength

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "date": date,
            }
        )
        if cycle is not UNSET:
            field_dict["cycle"] = cycle
        if hunger is not UNSET:
            field_dict["hunger"] = hunger
        if mood is not UNSET:
            field_dict["mood"] = mood
        if sleep is not UNSET:
            field_dict["sleep"] = sleep
        if strength is not UNSET:
            field_dict["strength"] = strength

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        date = datetime.date.fromisoformat(d.pop("date"))

        def _parse_cycle(data: object) -> CycleSaid | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                cycle_type_0 = CycleSaid(data)

                return cycle_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(CycleSaid | None | Unset, data)

        cycle = _parse_cycle(d.pop("cycle", UNSET))

        def _parse_hunger(data: object) -> int | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(int | None | Unset, data)

        hunger = _parse_hunger(d.pop("hunger", UNSET))

        def _parse_mood(data: object) -> int | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(int | None | Unset, data)

        mood = _parse_mood(d.pop("mood", UNSET))

        def _parse_sleep(data: object) -> int | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(int | None | Unset, data)

        sleep = _parse_sleep(d.pop("sleep", UNSET))

        def _parse_strength(data: object) -> None | StrengthSaid | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                strength_type_0 = StrengthSaid(data)

                return strength_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | StrengthSaid | Unset, data)

        strength = _parse_strength(d.pop("strength", UNSET))

        check_in = cls(
            date=date,
            cycle=cycle,
            hunger=hunger,
            mood=mood,
            sleep=sleep,
            strength=strength,
        )

        return check_in
