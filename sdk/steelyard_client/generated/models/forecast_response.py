from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.forecast_week import ForecastWeek
    from ..models.guard_rail import GuardRail
    from ..models.interval import Interval
    from ..models.nearest_target import NearestTarget
    from ..models.note import Note
    from ..models.source_effect import SourceEffect
    from ..models.state import State


T = TypeVar("T", bound="ForecastResponse")


@_attrs_define
class ForecastResponse:
    """The forecast. `feasible` is false when no safe intake reaches the target: then `nearest` says what would.

    Attributes:
        cautions (list[Note]):
        contract_version (str): Version of the contract.
        feasible (bool): Whether the target is reached by a safe intake; always true for a `path`.
        fingerprint (str): Digest of the input, the contract and the model version.
        guard_rails (list[GuardRail]): Rails that warned.
        intake_kcal (float | None): The intake asked about or found, for targets.
        logging_ratio (Interval | None): Logged over eaten energy, where a log of intakes was read; null without one.
            Guard rails on the body divide what is told by its mean, those that protect by its upper end, 1 at most.
        maintenance_kcal (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        methods (list[str]): Ids of the equations, constants and rules used; each is in `/v1/methods`.
        model_version (str): Version of the science.
        nearest (NearestTarget | None): Set when not feasible.
        physical_maintenance_kcal (Interval | None): Maintenance in energy really eaten, kilocalories a day, where a log
            of intakes was read; null without one. `maintenance_kcal` is on the scale of that log.
        protein_reference_kg (float): Body mass that the least protein is for: all of it, or less where body fat is
            high.
        reached_on (datetime.date | None): When the target is reached, for targets.
        reasons (list[Note]):
        state (State): What is known of a person on a day, each figure with its error. Send it with the next request, as
            it is, beside
            the same `profile`: it takes the place of the profile's weight and body fat, of the log so far and of the phase,
            so
            that only what was logged since need be sent. Nothing of it is kept by the service.
        uncertainty (list[SourceEffect]): What makes the forecast uncertain, largest first.
        weeks (list[ForecastWeek]):
    """

    cautions: list[Note]
    contract_version: str
    feasible: bool
    fingerprint: str
    guard_rails: list[GuardRail]
    intake_kcal: float | None
    logging_ratio: Interval | None
    maintenance_kcal: Interval
    methods: list[str]
    model_version: str
    nearest: NearestTarget | None
    physical_maintenance_kcal: Interval | None
    protein_reference_kg: float
    reached_on: datetime.date | None
    reasons: list[Note]
    state: State
    uncertainty: list[SourceEffect]
    weeks: list[ForecastWeek]
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.nearest_target import NearestTarget  # noqa: PLC0415

        cautions = []
        for cautions_item_data in self.cautions:
            cautions_item = cautions_item_data.to_dict()
            cautions.append(cautions_item)

        contract_version = self.contract_version

        feasible = self.feasible

        fingerprint = self.fingerprint

        guard_rails = []
        for guard_rails_item_data in self.guard_rails:
            guard_rails_item = guard_rails_item_data.to_dict()
            guard_rails.append(guard_rails_item)

        intake_kcal: float | None
        intake_kcal = self.intake_kcal

        logging_ratio: dict[str, Any] | None
        if isinstance(self.logging_ratio, Interval):
            logging_ratio = self.logging_ratio.to_dict()
        else:
            logging_ratio = self.logging_ratio

        maintenance_kcal = self.maintenance_kcal.to_dict()

        methods = self.methods

        model_version = self.model_version

        nearest: dict[str, Any] | None
        if isinstance(self.nearest, NearestTarget):
            nearest = self.nearest.to_dict()
        else:
            nearest = self.nearest

        physical_maintenance_kcal: dict[str, Any] | None
        if isinstance(self.physical_maintenance_kcal, Interval):
            physical_maintenance_kcal = self.physical_maintenance_kcal.to_dict()
        else:
            physical_maintenance_kcal = self.physical_maintenance_kcal

        protein_reference_kg = self.protein_reference_kg

        reached_on: None | str
        if isinstance(self.reached_on, datetime.date):
            reached_on = self.reached_on.isoformat()
        else:
            reached_on = self.reached_on

        reasons = []
        for reasons_item_data in self.reasons:
            reasons_item = reasons_item_data.to_dict()
            reasons.append(reasons_item)

        state = self.state.to_dict()

        uncertainty = []
        for uncertainty_item_data in self.uncertainty:
            uncertainty_item = uncertainty_item_data.to_dict()
            uncertainty.append(uncertainty_item)

        weeks = []
        for weeks_item_data in self.weeks:
            weeks_item = weeks_item_data.to_dict()
            weeks.append(weeks_item)

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "cautions": cautions,
                "contract_version": contract_version,
                "feasible": feasible,
                "fingerprint": fingerprint,
                "guard_rails": guard_rails,
                "intake_kcal": intake_kcal,
                "logging_ratio": logging_ratio,
                "maintenance_kcal": maintenance_kcal,
                "methods": methods,
                "model_version": model_version,
                "nearest": nearest,
                "physical_maintenance_kcal": physical_maintenance_kcal,
                "protein_reference_kg": protein_reference_kg,
                "reached_on": reached_on,
                "reasons": reasons,
                "state": state,
                "uncertainty": uncertainty,
                "weeks": weeks,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.forecast_week import ForecastWeek  # noqa: PLC0415
        from ..models.guard_rail import GuardRail  # noqa: PLC0415
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.nearest_target import NearestTarget  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415
        from ..models.source_effect import SourceEffect  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        d = dict(src_dict)
        cautions = []
        _cautions = d.pop("cautions")
        for cautions_item_data in _cautions:
            cautions_item = Note.from_dict(cautions_item_data)

            cautions.append(cautions_item)

        contract_version = d.pop("contract_version")

        feasible = d.pop("feasible")

        fingerprint = d.pop("fingerprint")

        guard_rails = []
        _guard_rails = d.pop("guard_rails")
        for guard_rails_item_data in _guard_rails:
            guard_rails_item = GuardRail.from_dict(guard_rails_item_data)

            guard_rails.append(guard_rails_item)

        def _parse_intake_kcal(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        intake_kcal = _parse_intake_kcal(d.pop("intake_kcal"))

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

        def _parse_nearest(data: object) -> NearestTarget | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                nearest_type_0 = NearestTarget.from_dict(data)

                return nearest_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(NearestTarget | None, data)

        nearest = _parse_nearest(d.pop("nearest"))

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

        def _parse_reached_on(data: object) -> datetime.date | None:
            if data is None:
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                reached_on_type_0 = datetime.date.fromisoformat(data)

                return reached_on_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(datetime.date | None, data)

        reached_on = _parse_reached_on(d.pop("reached_on"))

        reasons = []
        _reasons = d.pop("reasons")
        for reasons_item_data in _reasons:
            reasons_item = Note.from_dict(reasons_item_data)

            reasons.append(reasons_item)

        state = State.from_dict(d.pop("state"))

        uncertainty = []
        _uncertainty = d.pop("uncertainty")
        for uncertainty_item_data in _uncertainty:
            uncertainty_item = SourceEffect.from_dict(uncertainty_item_data)

            uncertainty.append(uncertainty_item)

        weeks = []
        _weeks = d.pop("weeks")
        for weeks_item_data in _weeks:
            weeks_item = ForecastWeek.from_dict(weeks_item_data)

            weeks.append(weeks_item)

        forecast_response = cls(
            cautions=cautions,
            contract_version=contract_version,
            feasible=feasible,
            fingerprint=fingerprint,
            guard_rails=guard_rails,
            intake_kcal=intake_kcal,
            logging_ratio=logging_ratio,
            maintenance_kcal=maintenance_kcal,
            methods=methods,
            model_version=model_version,
            nearest=nearest,
            physical_maintenance_kcal=physical_maintenance_kcal,
            protein_reference_kg=protein_reference_kg,
            reached_on=reached_on,
            reasons=reasons,
            state=state,
            uncertainty=uncertainty,
            weeks=weeks,
        )

        forecast_response.additional_properties = d
        return forecast_response

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
