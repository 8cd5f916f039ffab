from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.broken_limit import BrokenLimit
    from ..models.note import Note
    from ..models.season_plan import SeasonPlan
    from ..models.season_start import SeasonStart
    from ..models.state import State


T = TypeVar("T", bound="SeasonResponse")


@_attrs_define
class SeasonResponse:
    """The season. Where `feasible` is false it is the nearest the strategy gets to the limits; every rail holds.

    Attributes:
        broken_limits (list[BrokenLimit]): Limits that are not kept.
        cautions (list[Note]):
        contract_version (str): Version of the contract.
        feasible (bool): Whether every limit is kept.
        fingerprint (str): Digest of the input, the contract and the model version.
        methods (list[str]): Ids of the equations, constants and rules used; each is in `/v1/methods`.
        model_version (str): Version of the science.
        plan (SeasonPlan): A season laid out.
        protein_reference_kg (float): Body mass that protein is shared out for at the start: all of it, or less where
            body fat is high. Each phase shares it out for the body that it begins with.
        start (SeasonStart): What the season starts from.
        state (State): What is known of a person on a day, each figure with its error. Send it with the next request, as
            it is, beside
            the same `profile`: it takes the place of the profile's weight and body fat, of the log so far and of the phase,
            so
            that only what was logged since need be sent. Nothing of it is kept by the service.
    """

    broken_limits: list[BrokenLimit]
    cautions: list[Note]
    contract_version: str
    feasible: bool
    fingerprint: str
    methods: list[str]
    model_version: str
    plan: SeasonPlan
    protein_reference_kg: float
    start: SeasonStart
    state: State
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
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

        methods = self.methods

        model_version = self.model_version

        plan = self.plan.to_dict()

        protein_reference_kg = self.protein_reference_kg

        start = self.start.to_dict()

        state = self.state.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "broken_limits": broken_limits,
                "cautions": cautions,
                "contract_version": contract_version,
                "feasible": feasible,
                "fingerprint": fingerprint,
                "methods": methods,
                "model_version": model_version,
                "plan": plan,
                "protein_reference_kg": protein_reference_kg,
                "start": start,
                "state": state,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.broken_limit import BrokenLimit  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415
        from ..models.season_plan import SeasonPlan  # noqa: PLC0415
        from ..models.season_start import SeasonStart  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        d = dict(src_dict)
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

        methods = cast(list[str], d.pop("methods"))

        model_version = d.pop("model_version")

        plan = SeasonPlan.from_dict(d.pop("plan"))

        protein_reference_kg = d.pop("protein_reference_kg")

        start = SeasonStart.from_dict(d.pop("start"))

        state = State.from_dict(d.pop("state"))

        season_response = cls(
            broken_limits=broken_limits,
            cautions=cautions,
            contract_version=contract_version,
            feasible=feasible,
            fingerprint=fingerprint,
            methods=methods,
            model_version=model_version,
            plan=plan,
            protein_reference_kg=protein_reference_kg,
            start=start,
            state=state,
        )

        season_response.additional_properties = d
        return season_response

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
