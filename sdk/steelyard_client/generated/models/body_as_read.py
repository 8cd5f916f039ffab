from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

T = TypeVar("T", bound="BodyAsRead")


@_attrs_define
class BodyAsRead:
    """The body that the first reading of the log took, kept so that nothing drifts by being handed on.

    Attributes:
        adaptation_gain (float): Lagging adaptation, as a share of a change of intake.
        carried_per_kcal (float): Carried mass that a lasting kilocalorie a day moves, kilograms.
        expenditure_slope_kcal_per_kg_day (float): Expenditure that a kilogram of tissue adds, kilocalories a day.
        growth_kg_per_day (float): Mass that training adds at balance.
        growth_sd (float): Its standard deviation.
        is_usual_known (bool): Whether that was told.
        prior_kcal (float): Maintenance by the equations, kcal/d.
        prior_sd_kcal (float): Its standard deviation.
        rho_kcal_per_kg (float): Energy of a kilogram of tissue.
        rho_sd (float): Its standard deviation.
        usual_kcal (float): Eaten a day before the log, logging scale.
        settled_kg (float | None | Unset): Weight when the log began; as tissue stands by default.
    """

    adaptation_gain: float
    carried_per_kcal: float
    expenditure_slope_kcal_per_kg_day: float
    growth_kg_per_day: float
    growth_sd: float
    is_usual_known: bool
    prior_kcal: float
    prior_sd_kcal: float
    rho_kcal_per_kg: float
    rho_sd: float
    usual_kcal: float
    settled_kg: float | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        adaptation_gain = self.adaptation_gain

        carried_per_kcal = self.carried_per_kcal

        expenditure_slope_kcal_per_kg_day = self.expenditure_slope_kcal_per_kg_day

        growth_kg_per_day = self.growth_kg_per_day

        growth_sd = self.growth_sd

        is_usual_known = self.is_usual_known

        prior_kcal = self.prior_kcal

        prior_sd_kcal = self.prior_sd_kcal

        rho_kcal_per_kg = self.rho_kcal_per_kg

        rho_sd = self.rho_sd

        usual_kcal = self.usual_kcal

        settled_kg: float | None | Unset
        if isinstance(self.settled_kg, Unset):
            settled_kg = UNSET
        else:
            settled_kg = self.settled_kg

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "adaptation_gain": adaptation_gain,
                "carried_per_kcal": carried_per_kcal,
                "expenditure_slope_kcal_per_kg_day": expenditure_slope_kcal_per_kg_day,
                "growth_kg_per_day": growth_kg_per_day,
                "growth_sd": growth_sd,
                "is_usual_known": is_usual_known,
                "prior_kcal": prior_kcal,
                "prior_sd_kcal": prior_sd_kcal,
                "rho_kcal_per_kg": rho_kcal_per_kg,
                "rho_sd": rho_sd,
                "usual_kcal": usual_kcal,
            }
        )
        if settled_kg is not UNSET:
            field_dict["settled_kg"] = settled_kg

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        d = dict(src_dict)
        adaptation_gain = d.pop("adaptation_gain")

        carried_per_kcal = d.pop("carried_per_kcal")

        expenditure_slope_kcal_per_kg_day = d.pop("expenditure_slope_kcal_per_kg_day")

        growth_kg_per_day = d.pop("growth_kg_per_day")

        growth_sd = d.pop("growth_sd")

        is_usual_known = d.pop("is_usual_known")

        prior_kcal = d.pop("prior_kcal")

        prior_sd_kcal = d.pop("prior_sd_kcal")

        rho_kcal_per_kg = d.pop("rho_kcal_per_kg")

        rho_sd = d.pop("rho_sd")

        usual_kcal = d.pop("usual_kcal")

        def _parse_settled_kg(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        settled_kg = _parse_settled_kg(d.pop("settled_kg", UNSET))

        body_as_read = cls(
            adaptation_gain=adaptation_gain,
            carried_per_kcal=carried_per_kcal,
            expenditure_slope_kcal_per_kg_day=expenditure_slope_kcal_per_kg_day,
            growth_kg_per_day=growth_kg_per_day,
            growth_sd=growth_sd,
            is_usual_known=is_usual_known,
            prior_kcal=prior_kcal,
            prior_sd_kcal=prior_sd_kcal,
            rho_kcal_per_kg=rho_kcal_per_kg,
            rho_sd=rho_sd,
            usual_kcal=usual_kcal,
            settled_kg=settled_kg,
        )

        return body_as_read
