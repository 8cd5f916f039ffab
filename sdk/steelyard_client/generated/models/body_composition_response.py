from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.healthy_range import HealthyRange
    from ..models.interval import Interval
    from ..models.measurement_row import MeasurementRow
    from ..models.note import Note


T = TypeVar("T", bound="BodyCompositionResponse")


@_attrs_define
class BodyCompositionResponse:
    """Fat and fat-free mass with their intervals, and what they rest on.

    Attributes:
        cautions (list[Note]):
        contract_version (str): Version of the contract.
        fat_fraction (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        fat_free_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        fat_kg (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        ffmi (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        fingerprint (str): Digest of the input, the contract and the model version.
        healthy_range (HealthyRange | None): Null under 18 years: the ranges of adults do not apply.
        is_measured (bool): False where nothing but height and weight is behind it.
        measurements (list[MeasurementRow]): One row a measurement, in the request's order.
        methods (list[str]): Ids of the equations, constants and rules used; each is in `/v1/methods`.
        model_version (str): Version of the science.
        normalised_ffmi (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        notes (list[Note]): Measurements that disagree, figures worth a second look.
    """

    cautions: list[Note]
    contract_version: str
    fat_fraction: Interval
    fat_free_kg: Interval
    fat_kg: Interval
    ffmi: Interval
    fingerprint: str
    healthy_range: HealthyRange | None
    is_measured: bool
    measurements: list[MeasurementRow]
    methods: list[str]
    model_version: str
    normalised_ffmi: Interval
    notes: list[Note]
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.healthy_range import HealthyRange  # noqa: PLC0415

        cautions = []
        for cautions_item_data in self.cautions:
            cautions_item = cautions_item_data.to_dict()
            cautions.append(cautions_item)

        contract_version = self.contract_version

        fat_fraction = self.fat_fraction.to_dict()

        fat_free_kg = self.fat_free_kg.to_dict()

        fat_kg = self.fat_kg.to_dict()

        ffmi = self.ffmi.to_dict()

        fingerprint = self.fingerprint

        healthy_range: dict[str, Any] | None
        if isinstance(self.healthy_range, HealthyRange):
            healthy_range = self.healthy_range.to_dict()
        else:
            healthy_range = self.healthy_range

        is_measured = self.is_measured

        measurements = []
        for measurements_item_data in self.measurements:
            measurements_item = measurements_item_data.to_dict()
            measurements.append(measurements_item)

        methods = self.methods

        model_version = self.model_version

        normalised_ffmi = self.normalised_ffmi.to_dict()

        notes = []
        for notes_item_data in self.notes:
            notes_item = notes_item_data.to_dict()
            notes.append(notes_item)

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "cautions": cautions,
                "contract_version": contract_version,
                "fat_fraction": fat_fraction,
                "fat_free_kg": fat_free_kg,
                "fat_kg": fat_kg,
                "ffmi": ffmi,
                "fingerprint": fingerprint,
                "healthy_range": healthy_range,
                "is_measured": is_measured,
                "measurements": measurements,
                "methods": methods,
                "model_version": model_version,
                "normalised_ffmi": normalised_ffmi,
                "notes": notes,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.healthy_range import HealthyRange  # noqa: PLC0415
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.measurement_row import MeasurementRow  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415

        d = dict(src_dict)
        cautions = []
        _cautions = d.pop("cautions")
        for cautions_item_data in _cautions:
            cautions_item = Note.from_dict(cautions_item_data)

            cautions.append(cautions_item)

        contract_version = d.pop("contract_version")

        fat_fraction = Interval.from_dict(d.pop("fat_fraction"))

        fat_free_kg = Interval.from_dict(d.pop("fat_free_kg"))

        fat_kg = Interval.from_dict(d.pop("fat_kg"))

        ffmi = Interval.from_dict(d.pop("ffmi"))

        fingerprint = d.pop("fingerprint")

        def _parse_healthy_range(data: object) -> HealthyRange | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                healthy_range_type_0 = HealthyRange.from_dict(data)

                return healthy_range_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(HealthyRange | None, data)

        healthy_range = _parse_healthy_range(d.pop("healthy_range"))

        is_measured = d.pop("is_measured")

        measurements = []
        _measurements = d.pop("measurements")
        for measurements_item_data in _measurements:
            measurements_item = MeasurementRow.from_dict(measurements_item_data)

            measurements.append(measurements_item)

        methods = cast(list[str], d.pop("methods"))

        model_version = d.pop("model_version")

        normalised_ffmi = Interval.from_dict(d.pop("normalised_ffmi"))

        notes = []
        _notes = d.pop("notes")
        for notes_item_data in _notes:
            notes_item = Note.from_dict(notes_item_data)

            notes.append(notes_item)

        body_composition_response = cls(
            cautions=cautions,
            contract_version=contract_version,
            fat_fraction=fat_fraction,
            fat_free_kg=fat_free_kg,
            fat_kg=fat_kg,
            ffmi=ffmi,
            fingerprint=fingerprint,
            healthy_range=healthy_range,
            is_measured=is_measured,
            measurements=measurements,
            methods=methods,
            model_version=model_version,
            normalised_ffmi=normalised_ffmi,
            notes=notes,
        )

        body_composition_response.additional_properties = d
        return body_composition_response

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
