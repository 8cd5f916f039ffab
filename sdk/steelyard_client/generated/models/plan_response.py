from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.activity_lever import ActivityLever
    from ..models.guard_rail import GuardRail
    from ..models.interval import Interval
    from ..models.nearest import Nearest
    from ..models.note import Note
    from ..models.phase import Phase
    from ..models.phase_size import PhaseSize
    from ..models.rule_of_thumb import RuleOfThumb
    from ..models.state import State


T = TypeVar("T", bound="PlanResponse")


@_attrs_define
class PlanResponse:
    """The plan. `feasible` is false when no safe plan does what was asked: then `nearest` says what would.

    Attributes:
        body_fat_fraction (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        cautions (list[Note]):
        contract_version (str): Version of the contract.
        deficit_kcal (float | None): Daily deficit in full, at the start of the mini-cut or the cut and under the
            maintenance by then; null where none is planned.
        dominant_uncertainty (None | str): Source that widens the fat forecast most at the end of the phase that was
            asked for. Extensible.
        feasible (bool): Whether a safe plan does what was asked.
        fingerprint (str): Digest of the input, the contract and the model version.
        guard_rails (list[GuardRail]): Rails that refused, capped or warned.
        levers (list[ActivityLever]): Activity beside a fat loss; empty where `include` does not ask for it, or a
            clinician comes first.
        logging_ratio (Interval | None): Logged over eaten energy, where a log of intakes was read; null without one.
            Guard rails on the body divide what is told by its mean, those that protect by its upper end, 1 at most.
        maintenance_kcal (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        methods (list[str]): Ids of the equations, constants and rules used; each is in `/v1/methods`.
        model_version (str): Version of the science.
        nearest (Nearest | None): Set when not feasible.
        phases (list[Phase]):
        physical_maintenance_kcal (Interval | None): Maintenance in energy really eaten, kilocalories a day, where a log
            of intakes was read; null without one. `maintenance_kcal` is on the scale of that log.
        protein_reference_kg (float): Body mass that protein is shared out for: the start weight, or less of it where
            body fat is high.
        reasons (list[Note]):
        resting_kcal (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        rule_of_thumb (None | RuleOfThumb): Simple rules beside the forecast of a mini-cut or a cut; null where none is
            planned.
        sizes (list[PhaseSize]): The phase at other sizes, smallest first, and as planned; empty where `include` does
            not ask for them, or there is no choice.
        start_weight_kg (float): Scale weight the plan starts from: as given, as a `state` knows it, or that of the log
            where it is clearly less.
        state (State): What is known of a person on a day, each figure with its error. Send it with the next request, as
            it is, beside
            the same `profile`: it takes the place of the profile's weight and body fat, of the log so far and of the phase,
            so
            that only what was logged since need be sent. Nothing of it is kept by the service.
    """

    body_fat_fraction: Interval
    cautions: list[Note]
    contract_version: str
    deficit_kcal: float | None
    dominant_uncertainty: None | str
    feasible: bool
    fingerprint: str
    guard_rails: list[GuardRail]
    levers: list[ActivityLever]
    logging_ratio: Interval | None
    maintenance_kcal: Interval
    methods: list[str]
    model_version: str
    nearest: Nearest | None
    phases: list[Phase]
    physical_maintenance_kcal: Interval | None
    protein_reference_kg: float
    reasons: list[Note]
    resting_kcal: Interval
    rule_of_thumb: None | RuleOfThumb
    sizes: list[PhaseSize]
    start_weight_kg: float
    state: State
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.nearest import Nearest  # noqa: PLC0415
        from ..models.rule_of_thumb import RuleOfThumb  # noqa: PLC0415

        body_fat_fraction = self.body_fat_fraction.to_dict()

        cautions = []
        for cautions_item_data in self.cautions:
            cautions_item = cautions_item_data.to_dict()
            cautions.append(cautions_item)

        contract_version = self.contract_version

        deficit_kcal: float | None
        deficit_kcal = self.deficit_kcal

        dominant_uncertainty: None | str
        dominant_uncertainty = self.dominant_uncertainty

        feasible = self.feasible

        fingerprint = self.fingerprint

        guard_rails = []
        for guard_rails_item_data in self.guard_rails:
            guard_rails_item = guard_rails_item_data.to_dict()
            guard_rails.append(guard_rails_item)

        levers = []
        for levers_item_data in self.levers:
            levers_item = levers_item_data.to_dict()
            levers.append(levers_item)

        logging_ratio: dict[str, Any] | None
        if isinstance(self.logging_ratio, Interval):
            logging_ratio = self.logging_ratio.to_dict()
        else:
            logging_ratio = self.logging_ratio

        maintenance_kcal = self.maintenance_kcal.to_dict()

        methods = self.methods

        model_version = self.model_version

        nearest: dict[str, Any] | None
        if isinstance(self.nearest, Nearest):
            nearest = self.nearest.to_dict()
        else:
            nearest = self.nearest

        phases = []
        for phases_item_data in self.phases:
            phases_item = phases_item_data.to_dict()
            phases.append(phases_item)

        physical_maintenance_kcal: dict[str, Any] | None
        if isinstance(self.physical_maintenance_kcal, Interval):
            physical_maintenance_kcal = self.physical_maintenance_kcal.to_dict()
        else:
            physical_maintenance_kcal = self.physical_maintenance_kcal

        protein_reference_kg = self.protein_reference_kg

        reasons = []
        for reasons_item_data in self.reasons:
            reasons_item = reasons_item_data.to_dict()
            reasons.append(reasons_item)

        resting_kcal = self.resting_kcal.to_dict()

        rule_of_thumb: dict[str, Any] | None
        if isinstance(self.rule_of_thumb, RuleOfThumb):
            rule_of_thumb = self.rule_of_thumb.to_dict()
        else:
            rule_of_thumb = self.rule_of_thumb

        sizes = []
        for sizes_item_data in self.sizes:
            sizes_item = sizes_item_data.to_dict()
            sizes.append(sizes_item)

        start_weight_kg = self.start_weight_kg

        state = self.state.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "body_fat_fraction": body_fat_fraction,
                "cautions": cautions,
                "contract_version": contract_version,
                "deficit_kcal": deficit_kcal,
                "dominant_uncertainty": dominant_uncertainty,
                "feasible": feasible,
                "fingerprint": fingerprint,
                "guard_rails": guard_rails,
                "levers": levers,
                "logging_ratio": logging_ratio,
                "maintenance_kcal": maintenance_kcal,
                "methods": methods,
                "model_version": model_version,
                "nearest": nearest,
                "phases": phases,
                "physical_maintenance_kcal": physical_maintenance_kcal,
                "protein_reference_kg": protein_reference_kg,
                "reasons": reasons,
                "resting_kcal": resting_kcal,
                "rule_of_thumb": rule_of_thumb,
                "sizes": sizes,
                "start_weight_kg": start_weight_kg,
                "state": state,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.activity_lever import ActivityLever  # noqa: PLC0415
        from ..models.guard_rail import GuardRail  # noqa: PLC0415
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.nearest import Nearest  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415
        from ..models.phase import Phase  # noqa: PLC0415
        from ..models.phase_size import PhaseSize  # noqa: PLC0415
        from ..models.rule_of_thumb import RuleOfThumb  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        d = dict(src_dict)
        body_fat_fraction = Interval.from_dict(d.pop("body_fat_fraction"))

        cautions = []
        _cautions = d.pop("cautions")
        for cautions_item_data in _cautions:
            cautions_item = Note.from_dict(cautions_item_data)

            cautions.append(cautions_item)

        contract_version = d.pop("contract_version")

        def _parse_deficit_kcal(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        deficit_kcal = _parse_deficit_kcal(d.pop("deficit_kcal"))

        def _parse_dominant_uncertainty(data: object) -> None | str:
            if data is None:
                return data
            return cast(None | str, data)

        dominant_uncertainty = _parse_dominant_uncertainty(
            d.pop("dominant_uncertainty")
        )

        feasible = d.pop("feasible")

        fingerprint = d.pop("fingerprint")

        guard_rails = []
        _guard_rails = d.pop("guard_rails")
        for guard_rails_item_data in _guard_rails:
            guard_rails_item = GuardRail.from_dict(guard_rails_item_data)

            guard_rails.append(guard_rails_item)

        levers = []
        _levers = d.pop("levers")
        for levers_item_data in _levers:
            levers_item = ActivityLever.from_dict(levers_item_data)

            levers.append(levers_item)

        def _parse_logging_ratio(data: object) -> Interval | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                logging_ratio_type_0 = Interval.from_dict(data)

                return logging_ratio_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Interval | None, data)

        logging_ratio = _parse_logging_ratio(d.pop("logging_ratio"))

        maintenance_kcal = Interval.from_dict(d.pop("maintenance_kcal"))

        methods = cast(list[str], d.pop("methods"))

        model_version = d.pop("model_version")

        def _parse_nearest(data: object) -> Nearest | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                nearest_type_0 = Nearest.from_dict(data)

                return nearest_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Nearest | None, data)

        nearest = _parse_nearest(d.pop("nearest"))

        phases = []
        _phases = d.pop("phases")
        for phases_item_data in _phases:
            phases_item = Phase.from_dict(phases_item_data)

            phases.append(phases_item)

        def _parse_physical_maintenance_kcal(data: object) -> Interval | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                physical_maintenance_kcal_type_0 = Interval.from_dict(data)

                return physical_maintenance_kcal_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Interval | None, data)

        physical_maintenance_kcal = _parse_physical_maintenance_kcal(
            d.pop("physical_maintenance_kcal")
        )

        protein_reference_kg = d.pop("protein_reference_kg")

        reasons = []
        _reasons = d.pop("reasons")
        for reasons_item_data in _reasons:
            reasons_item = Note.from_dict(reasons_item_data)

            reasons.append(reasons_item)

        resting_kcal = Interval.from_dict(d.pop("resting_kcal"))

        def _parse_rule_of_thumb(data: object) -> None | RuleOfThumb:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                rule_of_thumb_type_0 = RuleOfThumb.from_dict(data)

                return rule_of_thumb_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | RuleOfThumb, data)

        rule_of_thumb = _parse_rule_of_thumb(d.pop("rule_of_thumb"))

        sizes = []
        _sizes = d.pop("sizes")
        for sizes_item_data in _sizes:
            sizes_item = PhaseSize.from_dict(sizes_item_data)

            sizes.append(sizes_item)

        start_weight_kg = d.pop("start_weight_kg")

        state = State.from_dict(d.pop("state"))

        plan_response = cls(
            body_fat_fraction=body_fat_fraction,
            cautions=cautions,
            contract_version=contract_version,
            deficit_kcal=deficit_kcal,
            dominant_uncertainty=dominant_uncertainty,
            feasible=feasible,
            fingerprint=fingerprint,
            guard_rails=guard_rails,
            levers=levers,
            logging_ratio=logging_ratio,
            maintenance_kcal=maintenance_kcal,
            methods=methods,
            model_version=model_version,
            nearest=nearest,
            phases=phases,
            physical_maintenance_kcal=physical_maintenance_kcal,
            protein_reference_kg=protein_reference_kg,
            reasons=reasons,
            resting_kcal=resting_kcal,
            rule_of_thumb=rule_of_thumb,
            sizes=sizes,
            start_weight_kg=start_weight_kg,
            state=state,
        )

        plan_response.additional_properties = d
        return plan_response

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
