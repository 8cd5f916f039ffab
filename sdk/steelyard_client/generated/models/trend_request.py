from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import (
    TYPE_CHECKING,
    Any,
    Literal,
    TypeVar,
    cast,
)

from attrs import define as _attrs_define

from ..models.aim import Aim
from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.dated_measurement import DatedMeasurement
    from ..models.log import Log
    from ..models.profile import Profile
    from ..models.screening import Screening
    from ..models.state import State


T = TypeVar("T", bound="TrendRequest")


@_attrs_define
class TrendRequest:
    """A log to read, and whose it is: the person as on the day read at.

    Body fat that was measured on an earlier day goes into the log's `measurements`, with its date: in the profile it
    counts as that of the last day.

        Attributes:
            profile (Profile): The person. Nothing of it is kept.
            aim (Aim | None | Unset): What weight is meant to do; by default what the phase of a state is for, else it is
                read from the log. A stall is told only where it is meant to fall.
            as_of_date (datetime.date | None | Unset): The day to read the log at; its last day by default.
            include (list[Literal['implied_intake']] | Unset): What to read beside the trend: `implied_intake`, mean intake
                from weight alone, also of someone who logs food; none by default. `[]` if absent.
            log (Log | None | Unset): Weights and intakes; with a state those since.
            measurements (list[DatedMeasurement] | Unset): Body-fat readings, girths or skinfolds during the log. `[]` if
                absent.
            screening (None | Screening | Unset): Safety questions: who is pregnant or has an eating disorder is told
                nothing of leanness.
            state (None | State | Unset): What an earlier answer knew, as it gave it. It takes the place of the profile's
                weight and body fat, of the log up to its date, and of the phase; `log` then holds what came since.
            usual_intake_kcal (float | None | Unset): What was eaten a day before the log began; maintenance by default.
    """

    profile: Profile
    aim: Aim | None | Unset = UNSET
    as_of_date: datetime.date | None | Unset = UNSET
    include: list[Literal["implied_intake"]] | Unset = UNSET
    log: Log | None | Unset = UNSET
    measurements: list[DatedMeasurement] | Unset = UNSET
    screening: None | Screening | Unset = UNSET
    state: None | State | Unset = UNSET
    usual_intake_kcal: float | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.log import Log  # noqa: PLC0415
        from ..models.screening import Screening  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        profile = self.profile.to_dict()

        aim: None | str | Unset
        if isinstance(self.aim, Unset):
            aim = UNSET
        elif isinstance(self.aim, Aim):
            aim = self.aim.value
        else:
            aim = self.aim

        as_of_date: None | str | Unset
        if isinstance(self.as_of_date, Unset):
            as_of_date = UNSET
        elif isinstance(self.as_of_date, datetime.date):
            as_of_date = self.as_of_date.isoformat()
        else:
            as_of_date = self.as_of_date

        include: list[Literal["implied_intake"]] | Unset = UNSET
        if not isinstance(self.include, Unset):
            include = self.include

        log: dict[str, Any] | None | Unset
        if isinstance(self.log, Unset):
            log = UNSET
        elif isinstance(self.log, Log):
            log = self.log.to_dict()
        else:
            log = self.log

        measurements: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.measurements, Unset):
            measurements = []
            for measurements_item_data in self.measurements:
                measurements_item = measurements_item_data.to_dict()
                measurements.append(measurements_item)

        screening: dict[str, Any] | None | Unset
        if isinstance(self.screening, Unset):
            screening = UNSET
        elif isinstance(self.screening, Screening):
            screening = self.screening.to_dict()
        else:
            screening = self.screening

        state: dict[str, Any] | None | Unset
        if isinstance(self.state, Unset):
            state = UNSET
        elif isinstance(self.state, State):
            state = self.state.to_dict()
        else:
            state = self.state

        usual_intake_kcal: float | None | Unset
        if isinstance(self.usual_intake_kcal, Unset):
            usual_intake_kcal = UNSET
        else:
            usual_intake_kcal = self.usual_intake_kcal

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "profile": profile,
            }
        )
        if aim is not UNSET:
            field_dict["aim"] = aim
        if as_of_date is not UNSET:
            field_dict["as_of_date"] = as_of_date
        if include is not UNSET:
            field_dict["include"] = include
        if log is not UNSET:
            field_dict["log"] = log
        if measurements is not UNSET:
            field_dict["measurements"] = measurements
        if screening is not UNSET:
            field_dict["screening"] = screening
        if state is not UNSET:
            field_dict["state"] = state
        if usual_intake_kcal is not UNSET:
            field_dict["usual_intake_kcal"] = usual_intake_kcal

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.dated_measurement import DatedMeasurement  # noqa: PLC0415
        from ..models.log import Log  # noqa: PLC0415
        from ..models.profile import Profile  # noqa: PLC0415
        from ..models.screening import Screening  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        d = dict(src_dict)
        profile = Profile.from_dict(d.pop("profile"))

        def _parse_aim(data: object) -> Aim | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                aim_type_0 = Aim(data)

                return aim_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Aim | None | Unset, data)

        aim = _parse_aim(d.pop("aim", UNSET))

        def _parse_as_of_date(data: object) -> datetime.date | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                as_of_date_type_0 = datetime.date.fromisoformat(data)

                return as_of_date_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(datetime.date | None | Unset, data)

        as_of_date = _parse_as_of_date(d.pop("as_of_date", UNSET))

        _include = d.pop("include", UNSET)
        include: list[Literal["implied_intake"]] | Unset = UNSET
        if _include is not UNSET:
            include = []
            for include_item_data in _include:
                include_item = cast(Literal["implied_intake"], include_item_data)
                if include_item != "implied_intake":
                    raise ValueError(
                        f"include_item must match const 'implied_intake', got '{include_item}'"
                    )
                include.append(include_item)

        def _parse_log(data: object) -> Log | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                log_type_0 = Log.from_dict(data)

                return log_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Log | None | Unset, data)

        log = _parse_log(d.pop("log", UNSET))

        _measurements = d.pop("measurements", UNSET)
        measurements: list[DatedMeasurement] | Unset = UNSET
        if _measurements is not UNSET:
            measurements = []
            for measurements_item_data in _measurements:
                measurements_item = DatedMeasurement.from_dict(measurements_item_data)

                measurements.append(measurements_item)

        def _parse_screening(data: object) -> None | Screening | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                screening_type_0 = Screening.from_dict(data)

                return screening_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | Screening | Unset, data)

        screening = _parse_screening(d.pop("screening", UNSET))

        def _parse_state(data: object) -> None | State | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                state_type_0 = State.from_dict(data)

                return state_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | State | Unset, data)

        state = _parse_state(d.pop("state", UNSET))

        def _parse_usual_intake_kcal(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        usual_intake_kcal = _parse_usual_intake_kcal(d.pop("usual_intake_kcal", UNSET))

        trend_request = cls(
            profile=profile,
            aim=aim,
            as_of_date=as_of_date,
            include=include,
            log=log,
            measurements=measurements,
            screening=screening,
            state=state,
            usual_intake_kcal=usual_intake_kcal,
        )

        return trend_request
