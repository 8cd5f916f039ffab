from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define

from ..models.sex import Sex
from ..models.training_status import TrainingStatus

if TYPE_CHECKING:
    from ..models.bmi_measurement import BmiMeasurement
    from ..models.girth_measurement import GirthMeasurement
    from ..models.reading_measurement import ReadingMeasurement
    from ..models.skinfold_measurement import SkinfoldMeasurement


T = TypeVar("T", bound="BodyCompositionRequest")


@_attrs_define
class BodyCompositionRequest:
    """A person and what was measured. Repeats of a kind are welcome: they average out the day-to-day error.

    Attributes:
        age_years (float): Age in years.
        height_cm (float): Height in centimetres.
        measurements (list[BmiMeasurement | GirthMeasurement | ReadingMeasurement | SkinfoldMeasurement]): What was
            measured, in any order.
        sex (Sex): Which set of equations applies. ``UNSPECIFIED`` uses both, widens the interval, takes the stricter
            rail.
        training_status (TrainingStatus): Resistance-training experience, which sets how fast muscle can still be
            gained.
        weight_kg (float): Body mass in kilograms.
    """

    age_years: float
    height_cm: float
    measurements: list[
        BmiMeasurement | GirthMeasurement | ReadingMeasurement | SkinfoldMeasurement
    ]
    sex: Sex
    training_status: TrainingStatus
    weight_kg: float

    def to_dict(self) -> dict[str, Any]:
        from ..models.girth_measurement import GirthMeasurement  # noqa: PLC0415
        from ..models.reading_measurement import ReadingMeasurement  # noqa: PLC0415
        from ..models.skinfold_measurement import SkinfoldMeasurement  # noqa: PLC0415

        age_years = self.age_years

        height_cm = self.height_cm

        measurements = []
        for measurements_item_data in self.measurements:
            measurements_item: dict[str, Any]
            if isinstance(measurements_item_data, GirthMeasurement):
                measurements_item = measurements_item_data.to_dict()
            elif isinstance(measurements_item_data, SkinfoldMeasurement):
                measurements_item = measurements_item_data.to_dict()
            elif isinstance(measurements_item_data, ReadingMeasurement):
                measurements_item = measurements_item_data.to_dict()
            else:
                measurements_item = measurements_item_data.to_dict()

            measurements.append(measurements_item)

        sex = self.sex.value

        training_status = self.training_status.value

        weight_kg = self.weight_kg

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "age_years": age_years,
                "height_cm": height_cm,
                "measurements": measurements,
                "sex": sex,
                "training_status": training_status,
                "weight_kg": weight_kg,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.bmi_measurement import BmiMeasurement  # noqa: PLC0415
        from ..models.girth_measurement import GirthMeasurement  # noqa: PLC0415
        from ..models.reading_measurement import ReadingMeasurement  # noqa: PLC0415
        from ..models.skinfold_measurement import SkinfoldMeasurement  # noqa: PLC0415

        d = dict(src_dict)
        age_years = d.pop("age_years")

        height_cm = d.pop("height_cm")

        measurements = []
        _measurements = d.pop("measurements")
        for measurements_item_data in _measurements:

            def _parse_measurements_item(
                data: object,
            ) -> (
                BmiMeasurement
                | GirthMeasurement
                | ReadingMeasurement
                | SkinfoldMeasurement
            ):
                try:
                    if not isinstance(data, dict):
                        raise TypeError()
                    measurements_item_type_0 = GirthMeasurement.from_dict(data)

                    return measurements_item_type_0
                except (TypeError, ValueError, AttributeError, KeyError):
                    pass
                try:
                    if not isinstance(data, dict):
                        raise TypeError()
                    measurements_item_type_1 = SkinfoldMeasurement.from_dict(data)

                    return measurements_item_type_1
                except (TypeError, ValueError, AttributeError, KeyError):
                    pass
                try:
                    if not isinstance(data, dict):
                        raise TypeError()
                    measurements_item_type_2 = ReadingMeasurement.from_dict(data)

                    return measurements_item_type_2
                except (TypeError, ValueError, AttributeError, KeyError):
                    pass
                if not isinstance(data, dict):
                    raise TypeError()
                measurements_item_type_3 = BmiMeasurement.from_dict(data)

                return measurements_item_type_3

            measurements_item = _parse_measurements_item(measurements_item_data)

            measurements.append(measurements_item)

        sex = Sex(d.pop("sex"))

        training_status = TrainingStatus(d.pop("training_status"))

        weight_kg = d.pop("weight_kg")

        body_composition_request = cls(
            age_years=age_years,
            height_cm=height_cm,
            measurements=measurements,
            sex=sex,
            training_status=training_status,
            weight_kg=weight_kg,
        )

        return body_composition_request
