from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

T = TypeVar("T", bound="AccountAsRead")


@_attrs_define
class AccountAsRead:
    """One explanation of the log so far, with its odds.

    Attributes:
        log_odds (float): Natural logarithm of its odds, up to a constant.
        mean (list[float]): Tissue [kg]; tissue made by 1,000 kcal as logged [kg]; tissue spent a day [kg]; error of the
            energy of a kilogram, on the log scale; amplitude of expected carried mass; water that fades [kg]; noise that
            lingers [kg]; water that stays [kg]; where a cycle is told, the rise around menstruation [kg] and that times the
            days by which it comes late [kg d].
        spread (list[float]): Their covariance, in the units of `mean`: its lower triangle, row by row.
        noise (float | Unset): Noise variance of the scale, a fraction of the usual. `1` if absent.
        noise_weighings (float | Unset): How many weighings say so. `3` if absent.
        water_days_ago (float | Unset): Days since water moved in it. `1000` if absent.
        water_side (float | Unset): To which side it moved. `0` if absent.
    """

    log_odds: float
    mean: list[float]
    spread: list[float]
    noise: float | Unset = UNSET
    noise_weighings: float | Unset = UNSET
    water_days_ago: float | Unset = UNSET
    water_side: float | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        log_odds = self.log_odds

        mean = self.mean

        spread = self.spread

        noise = self.noise

        noise_weighings = self.noise_weighings

        water_days_ago = self.water_days_ago

        water_side = self.water_side

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "log_odds": log_odds,
                "mean": mean,
                "spread": spread,
            }
        )
        if noise is not UNSET:
            field_dict["noise"] = noise
        if noise_weighings is not UNSET:
            field_dict["noise_weighings"] = noise_weighings
        if water_days_ago is not UNSET:
            field_dict["water_days_ago"] = water_days_ago
        if water_side is not UNSET:
            field_dict["water_side"] = water_side

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        log_odds = d.pop("log_odds")

        mean = cast(list[float], d.pop("mean"))

        spread = cast(list[float], d.pop("spread"))

        noise = d.pop("noise", UNSET)

        noise_weighings = d.pop("noise_weighings", UNSET)

        water_days_ago = d.pop("water_days_ago", UNSET)

        water_side = d.pop("water_side", UNSET)

        account_as_read = cls(
            log_odds=log_odds,
            mean=mean,
            spread=spread,
            noise=noise,
            noise_weighings=noise_weighings,
            water_days_ago=water_days_ago,
            water_side=water_side,
        )

        return account_as_read
