from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define

if TYPE_CHECKING:
    from ..models.girth_measurement import GirthMeasurement
    from ..models.reading_measurement import ReadingMeasurement
    from ..models.skinfold_measurement import SkinfoldMeasurement


T = TypeVar("T", bound="DatedMeasurement")


@_attrs_define
class DatedMeasurement:
    """A measurement of body fat on a day: girths, skinfolds, or a reading and its method, which sets the error.

    Attributes:
        date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        measurement (GirthMeasurement | ReadingMeasurement | SkinfoldMeasurement):
    """

    date: datetime.date
    measurement: GirthMeasurement | ReadingMeasurement | SkinfoldMeasurement

    def to_dict(self) -> dict[str, Any]:
        from ..models.girth_measurement import GirthMeasurement  # noqa: PLC0415
        from ..models.skinfold_measurement import SkinfoldMeasurement  # noqa: PLC0415

        date = self.date.isoformat()

        measurement: dict[str, Any]
        if isinstance(self.measurement, GirthMeasurement):
            measurement = self.measurement.to_dict()
        elif isinstance(self.measurement, SkinfoldMeasurement):
            measurement = self.measurement.to_dict()
        else:
            measurement = self.measurement.to_dict()

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "date": date,
                "measurement": measurement,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.girth_measurement import GirthMeasurement  # noqa: PLC0415
        from ..models.reading_measurement import ReadingMeasurement  # noqa: PLC0415
        from ..models.skinfold_measurement import SkinfoldMeasurement  # noqa: PLC0415

        d = dict(src_dict)
        date = datetime.date.fromisoformat(d.pop("date"))

        def _parse_measurement(
            data: object,
        ) -> GirthMeasurement | ReadingMeasurement | SkinfoldMeasurement:
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                measurement_type_0 = GirthMeasurement.from_dict(data)

                return measurement_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                measurement_type_1 = SkinfoldMeasurement.from_dict(data)

                return measurement_type_1
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            if not isinstance(data, dict):
                raise TypeError()
            measurement_type_2 = ReadingMeasurement.from_dict(data)

            return measurement_type_2

        measurement = _parse_measurement(d.pop("measurement"))

        dated_measurement = cls(
            date=date,
            measurement=measurement,
        )

        return dated_measurement
