from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.contribution import Contribution
    from ..models.equation_row import EquationRow
    from ..models.interval import Interval
    from ..models.note import Note
    from ..models.state import State


T = TypeVar("T", bound="MaintenanceResponse")


@_attrs_define
class MaintenanceResponse:
    """Settled maintenance: the intake at which tissue is stable at today's body and activity, once adaptation has
    followed intake there. (Plans and forecasts list today's, with the adaptation that a deficit has left.)

        Attributes:
            activity_level (float): Implied physical activity level: maintenance over resting.
            as_of_date (datetime.date | None): The day the estimate is for.
            body_fat_fraction (Interval): A central value with the interval that holds the truth with probability
                ``coverage``.
            cautions (list[Note]):
            contract_version (str): Version of the contract.
            contribution (Contribution): What each kind of evidence says and how much it counted.
            equations (list[EquationRow]): Every equation, resting and total.
            fingerprint (str): Digest of the input, the contract and the model version.
            maintenance_kcal (Interval): A central value with the interval that holds the truth with probability
                ``coverage``.
            methods (list[str]): Ids of the equations, constants and rules used; each is in `/v1/methods`.
            model_version (str): Version of the science.
            physical_maintenance_kcal (Interval | None): Maintenance in energy really eaten, where it is known to differ
                from the logging scale.
            reasons (list[Note]):
            resting_kcal (Interval): A central value with the interval that holds the truth with probability ``coverage``.
            state (None | State): What is known now; null without a day to know it of.
    """

    activity_level: float
    as_of_date: datetime.date | None
    body_fat_fraction: Interval
    cautions: list[Note]
    contract_version: str
    contribution: Contribution
    equations: list[EquationRow]
    fingerprint: str
    maintenance_kcal: Interval
    methods: list[str]
    model_version: str
    physical_maintenance_kcal: Interval | None
    reasons: list[Note]
    resting_kcal: Interval
    state: None | State
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        activity_level = self.activity_level

        as_of_date: None | str
        if isinstance(self.as_of_date, datetime.date):
            as_of_date = self.as_of_date.isoformat()
        else:
            as_of_date = self.as_of_date

        body_fat_fraction = self.body_fat_fraction.to_dict()

        cautions = []
        for cautions_item_data in self.cautions:
            cautions_item = cautions_item_data.to_dict()
            cautions.append(cautions_item)

        contract_version = self.contract_version

        contribution = self.contribution.to_dict()

        equations = []
        for equations_item_data in self.equations:
            equations_item = equations_item_data.to_dict()
            equations.append(equations_item)

        fingerprint = self.fingerprint

        maintenance_kcal = self.maintenance_kcal.to_dict()

        methods = self.methods

        model_version = self.model_version

        physical_maintenance_kcal: dict[str, Any] | None
        if isinstance(self.physical_maintenance_kcal, Interval):
            physical_maintenance_kcal = self.physical_maintenance_kcal.to_dict()
        else:
            physical_maintenance_kcal = self.physical_maintenance_kcal

        reasons = []
        for reasons_item_data in self.reasons:
            reasons_item = reasons_item_data.to_dict()
            reasons.append(reasons_item)

        resting_kcal = self.resting_kcal.to_dict()

        state: dict[str, Any] | None
        if isinstance(self.state, State):
            state = self.state.to_dict()
        else:
            state = self.state

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "activity_level": activity_level,
                "as_of_date": as_of_date,
                "body_fat_fraction": body_fat_fraction,
                "cautions": cautions,
                "contract_version": contract_version,
                "contribution": contribution,
                "equations": equations,
                "fingerprint": fingerprint,
                "maintenance_kcal": maintenance_kcal,
                "methods": methods,
                "model_version": model_version,
                "physical_maintenance_kcal": physical_maintenance_kcal,
                "reasons": reasons,
                "resting_kcal": resting_kcal,
                "state": state,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.contribution import Contribution  # noqa: PLC0415
        from ..models.equation_row import EquationRow  # noqa: PLC0415
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        d = dict(src_dict)
        activity_level = d.pop("activity_level")

        def _parse_as_of_date(data: object) -> datetime.date | None:
            if data is None:
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                as_of_date_type_0 = datetime.date.fromisoformat(data)

                return as_of_date_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(datetime.date | None, data)

        as_of_date = _parse_as_of_date(d.pop("as_of_date"))

        body_fat_fraction = Interval.from_dict(d.pop("body_fat_fraction"))

        cautions = []
        _cautions = d.pop("cautions")
        for cautions_item_data in _cautions:
            cautions_item = Note.from_dict(cautions_item_data)

            cautions.append(cautions_item)

        contract_version = d.pop("contract_version")

        contribution = Contribution.from_dict(d.pop("contribution"))

        equations = []
        _equations = d.pop("equations")
        for equations_item_data in _equations:
            equations_item = EquationRow.from_dict(equations_item_data)

            equations.append(equations_item)

        fingerprint = d.pop("fingerprint")

        maintenance_kcal = Interval.from_dict(d.pop("maintenance_kcal"))

        methods = cast(list[str], d.pop("methods"))

        model_version = d.pop("model_version")

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

        reasons = []
        _reasons = d.pop("reasons")
        for reasons_item_data in _reasons:
            reasons_item = Note.from_dict(reasons_item_data)

            reasons.append(reasons_item)

        resting_kcal = Interval.from_dict(d.pop("resting_kcal"))

        def _parse_state(data: object) -> None | State:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                state_type_0 = State.from_dict(data)

                return state_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | State, data)

        state = _parse_state(d.pop("state"))

        maintenance_response = cls(
            activity_level=activity_level,
            as_of_date=as_of_date,
            body_fat_fraction=body_fat_fraction,
            cautions=cautions,
            contract_version=contract_version,
            contribution=contribution,
            equations=equations,
            fingerprint=fingerprint,
            maintenance_kcal=maintenance_kcal,
            methods=methods,
            model_version=model_version,
            physical_maintenance_kcal=physical_maintenance_kcal,
            reasons=reasons,
            resting_kcal=resting_kcal,
            state=state,
        )

        maintenance_response.additional_properties = d
        return maintenance_response

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
