from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.broken_limit import BrokenLimit
    from ..models.note import Note
    from ..models.other_season import OtherSeason
    from ..models.search_size import SearchSize
    from ..models.season_plan import SeasonPlan
    from ..models.season_start import SeasonStart
    from ..models.state import State


T = TypeVar("T", bound="OptimumResponse")


@_attrs_define
class OptimumResponse:
    """The season with the most lean tissue inside the limits, the next unlike it, and the trade-off.

    Where `feasible` is false no searched season keeps the limits: the plan is the nearest.

        Attributes:
            allowed_weeks_above_band (int): Weeks above the band that were allowed, as asked or by default.
            broken_limits (list[BrokenLimit]): Limits that the nearest season does not keep.
            cautions (list[Note]):
            contract_version (str): Version of the contract.
            feasible (bool): Whether every limit is kept.
            fingerprint (str): Digest of the input, the contract and the model version.
            lean_sd_kg (float | None): SD of lean gained over the draws, where `caution` asked for it.
            methods (list[str]): Ids of the equations, constants and rules used; each is in `/v1/methods`.
            model_version (str): Version of the science.
            plan (SeasonPlan): A season laid out.
            protein_reference_kg (float): Body mass that protein is shared out for at the start: all of it, or less where
                body fat is high. Each phase shares it out for the body that it begins with.
            runner_up (None | OtherSeason): The best that differs in surplus or in its cuts.
            searched (SearchSize): How much was searched.
            start (SeasonStart): What the season starts from.
            state (State): What is known of a person on a day, each figure with its error. Send it with the next request, as
                it is, beside
                the same `profile`: it takes the place of the profile's weight and body fat, of the log so far and of the phase,
                so
                that only what was logged since need be sent. Nothing of it is kept by the service.
            trade_off (list[OtherSeason]): Most lean tissue for each number of weeks above the band, fewest weeks first.
                With an `allowed_final_fat_fraction`, for each body fat at the horizon, the least first.
            allowed_final_fat_fraction (float | None | Unset): Body fat at the horizon that was allowed, where every week
                may be above the band since it starts far above it; null elsewhere.
    """

    allowed_weeks_above_band: int
    broken_limits: list[BrokenLimit]
    cautions: list[Note]
    contract_version: str
    feasible: bool
    fingerprint: str
    lean_sd_kg: float | None
    methods: list[str]
    model_version: str
    plan: SeasonPlan
    protein_reference_kg: float
    runner_up: None | OtherSeason
    searched: SearchSize
    start: SeasonStart
    state: State
    trade_off: list[OtherSeason]
    allowed_final_fat_fraction: float | None | Unset = UNSET
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.other_season import OtherSeason  # noqa: PLC0415

        allowed_weeks_above_band = self.allowed_weeks_above_band

        broken_limits = []
        for broken_limits_item_data in self.broken_limits:
            broken_limits_item = broken_limits_item_data.to_dict()
            broken_limits.append(broken_limits_item)

        cautions = []
        for cautions_item_data in self.cautions:
            cautions_item = cautions_item_data.to_dict()
            cautions.append(cautions_item)

        contract_version = self.contract_version

        feasible = self.feasible

        fingerprint = self.fingerprint

        lean_sd_kg: float | None
        lean_sd_kg = self.lean_sd_kg

        methods = self.methods

        model_version = self.model_version

        plan = self.plan.to_dict()

        protein_reference_kg = self.protein_reference_kg

        runner_up: dict[str, Any] | None
        if isinstance(self.runner_up, OtherSeason):
            runner_up = self.runner_up.to_dict()
        else:
            runner_up = self.runner_up

        searched = self.searched.to_dict()

        start = self.start.to_dict()

        state = self.state.to_dict()

        trade_off = []
        for trade_off_item_data in self.trade_off:
            trade_off_item = trade_off_item_data.to_dict()
            trade_off.append(trade_off_item)

        allowed_final_fat_fraction: float | None | Unset
        if isinstance(self.allowed_final_fat_fraction, Unset):
            allowed_final_fat_fraction = UNSET
        else:
            allowed_final_fat_fraction = self.allowed_final_fat_fraction

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "allowed_weeks_above_band": allowed_weeks_above_band,
                "broken_limits": broken_limits,
                "cautions": cautions,
                "contract_version": contract_version,
                "feasible": feasible,
                "fingerprint": fingerprint,
                "lean_sd_kg": lean_sd_kg,
                "methods": methods,
                "model_version": model_version,
                "plan": plan,
                "protein_reference_kg": protein_reference_kg,
                "runner_up": runner_up,
                "searched": searched,
                "start": start,
                "state": state,
                "trade_off": trade_off,
            }
        )
        if allowed_final_fat_fraction is not UNSET:
            field_dict["allowed_final_fat_fraction"] = allowed_final_fat_fraction

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.broken_limit import BrokenLimit  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415
        from ..models.other_season import OtherSeason  # noqa: PLC0415
        from ..models.search_size import SearchSize  # noqa: PLC0415
        from ..models.season_plan import SeasonPlan  # noqa: PLC0415
        from ..models.season_start import SeasonStart  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        d = dict(src_dict)
        allowed_weeks_above_band = d.pop("allowed_weeks_above_band")

        broken_limits = []
        _broken_limits = d.pop("broken_limits")
        for broken_limits_item_data in _broken_limits:
            broken_limits_item = BrokenLimit.from_dict(broken_limits_item_data)

            broken_limits.append(broken_limits_item)

        cautions = []
        _cautions = d.pop("cautions")
        for cautions_item_data in _cautions:
            cautions_item = Note.from_dict(cautions_item_data)

            cautions.append(cautions_item)

        contract_version = d.pop("contract_version")

        feasible = d.pop("feasible")

        fingerprint = d.pop("fingerprint")

        def _parse_lean_sd_kg(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        lean_sd_kg = _parse_lean_sd_kg(d.pop("lean_sd_kg"))

        methods = cast(list[str], d.pop("methods"))

        model_version = d.pop("model_version")

        plan = SeasonPlan.from_dict(d.pop("plan"))

        protein_reference_kg = d.pop("protein_reference_kg")

        def _parse_runner_up(data: object) -> None | OtherSeason:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                runner_up_type_0 = OtherSeason.from_dict(data)

                return runner_up_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | OtherSeason, data)

        runner_up = _parse_runner_up(d.pop("runner_up"))

        searched = SearchSize.from_dict(d.pop("searched"))

        start = SeasonStart.from_dict(d.pop("start"))

        state = State.from_dict(d.pop("state"))

        trade_off = []
        _trade_off = d.pop("trade_off")
        for trade_off_item_data in _trade_off:
            trade_off_item = OtherSeason.from_dict(trade_off_item_data)

            trade_off.append(trade_off_item)

        def _parse_allowed_final_fat_fraction(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        allowed_final_fat_fraction = _parse_allowed_final_fat_fraction(
            d.pop("allowed_final_fat_fraction", UNSET)
        )

        optimum_response = cls(
            allowed_weeks_above_band=allowed_weeks_above_band,
            broken_limits=broken_limits,
            cautions=cautions,
            contract_version=contract_version,
            feasible=feasible,
            fingerprint=fingerprint,
            lean_sd_kg=lean_sd_kg,
            methods=methods,
            model_version=model_version,
            plan=plan,
            protein_reference_kg=protein_reference_kg,
            runner_up=runner_up,
            searched=searched,
            start=start,
            state=state,
            trade_off=trade_off,
            allowed_final_fat_fraction=allowed_final_fat_fraction,
        )

        optimum_response.additional_properties = d
        return optimum_response

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
