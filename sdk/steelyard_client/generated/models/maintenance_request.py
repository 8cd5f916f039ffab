from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.log import Log
    from ..models.profile import Profile
    from ..models.screening import Screening
    from ..models.state import State


T = TypeVar("T", bound="MaintenanceRequest")


@_attrs_define
class MaintenanceRequest:
    """Whose maintenance to estimate, as on the day that the estimate is for, and the log to learn from, where there is
    one.

        Attributes:
            profile (Profile): The person. Nothing of it is kept.
            as_of_date (datetime.date | None | Unset): The day the estimate is for; the last day of the log by default.
            log (Log | None | Unset): Dated weights and intakes.
            screening (None | Screening | Unset): Safety questions: who is pregnant or has an eating disorder is told
                nothing of leanness.
            state (None | State | Unset): What an earlier answer knew, as it gave it. It takes the place of the profile's
                weight and body fat, of the log up to its date, and of the phase; `log` then holds what came since.
    """

    profile: Profile
    as_of_date: datetime.date | None | Unset = UNSET
    log: Log | None | Unset = UNSET
    screening: None | Screening | Unset = UNSET
    state: None | State | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.log import Log  # noqa: PLC0415
        from ..models.screening import Screening  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        profile = self.profile.to_dict()

        as_of_date: None | str | Unset
        if isinstance(self.as_of_date, Unset):
            as_of_date = UNSET
        elif isinstance(self.as_of_date, datetime.date):
            as_of_date = self.as_of_date.isoformat()
        else:
            as_of_date = self.as_of_date

        log: dict[str, Any] | None | Unset
        if isinstance(self.log, Unset):
            log = UNSET
        elif isinstance(self.log, Log):
            log = self.log.to_dict()
        else:
            log = self.log

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

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "profile": profile,
            }
        )
        if as_of_date is not UNSET:
            field_dict["as_of_date"] = as_of_date
        if log is not UNSET:
            field_dict["log"] = log
        if screening is not UNSET:
            field_dict["screening"] = screening
        if state is not UNSET:
            field_dict["state"] = state

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.log import Log  # noqa: PLC0415
        from ..models.profile import Profile  # noqa: PLC0415
        from ..models.screening import Screening  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        d = dict(src_dict)
        profile = Profile.from_dict(d.pop("profile"))

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

        maintenance_request = cls(
            profile=profile,
            as_of_date=as_of_date,
            log=log,
            screening=screening,
            state=state,
        )

        return maintenance_request
