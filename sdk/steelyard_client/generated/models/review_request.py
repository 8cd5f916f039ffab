from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.log import Log
    from ..models.phase_followed import PhaseFollowed
    from ..models.profile import Profile
    from ..models.screening import Screening
    from ..models.settled_question import SettledQuestion
    from ..models.state import State


T = TypeVar("T", bound="ReviewRequest")


@_attrs_define
class ReviewRequest:
    """A person as at the phase's start, the plan, and the log so far.

    A log that begins some weeks before the phase tells more: it shows what is usual.

        Attributes:
            profile (Profile): The person. Nothing of it is kept.
            as_of_date (datetime.date | None | Unset): The day to review on; the last day of the log by default.
            is_finished (bool | Unset): Whether the phase ended on that day, before its last. `false` if absent.
            log (Log | None | Unset): Weights and intakes; with a state those since, and none where there are none.
            phase (None | PhaseFollowed | Unset): The phase to review; that of the state by default.
            screening (None | Screening | Unset): Safety questions; without them a deficit is not reviewed any further.
            settled (None | SettledQuestion | Unset): What came out of the `question` of an earlier review.
            state (None | State | Unset): What an earlier answer knew, as it gave it. It takes the place of the profile's
                weight and body fat, of the log up to its date, and of the phase; `log` then holds what came since.
    """

    profile: Profile
    as_of_date: datetime.date | None | Unset = UNSET
    is_finished: bool | Unset = UNSET
    log: Log | None | Unset = UNSET
    phase: None | PhaseFollowed | Unset = UNSET
    screening: None | Screening | Unset = UNSET
    settled: None | SettledQuestion | Unset = UNSET
    state: None | State | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.log import Log  # noqa: PLC0415
        from ..models.phase_followed import PhaseFollowed  # noqa: PLC0415
        from ..models.screening import Screening  # noqa: PLC0415
        from ..models.settled_question import SettledQuestion  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        profile = self.profile.to_dict()

        as_of_date: None | str | Unset
        if isinstance(self.as_of_date, Unset):
            as_of_date = UNSET
        elif isinstance(self.as_of_date, datetime.date):
            as_of_date = self.as_of_date.isoformat()
        else:
            as_of_date = self.as_of_date

        is_finished = self.is_finished

        log: dict[str, Any] | None | Unset
        if isinstance(self.log, Unset):
            log = UNSET
        elif isinstance(self.log, Log):
            log = self.log.to_dict()
        else:
            log = self.log

        phase: dict[str, Any] | None | Unset
        if isinstance(self.phase, Unset):
            phase = UNSET
        elif isinstance(self.phase, PhaseFollowed):
            phase = self.phase.to_dict()
        else:
            phase = self.phase

        screening: dict[str, Any] | None | Unset
        if isinstance(self.screening, Unset):
            screening = UNSET
        elif isinstance(self.screening, Screening):
            screening = self.screening.to_dict()
        else:
            screening = self.screening

        settled: dict[str, Any] | None | Unset
        if isinstance(self.settled, Unset):
            settled = UNSET
        elif isinstance(self.settled, SettledQuestion):
            settled = self.settled.to_dict()
        else:
            settled = self.settled

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
        if is_finished is not UNSET:
            field_dict["is_finished"] = is_finished
        if log is not UNSET:
            field_dict["log"] = log
        if phase is not UNSET:
            field_dict["phase"] = phase
        if screening is not UNSET:
            field_dict["screening"] = screening
        if settled is not UNSET:
            field_dict["settled"] = settled
        if state is not UNSET:
            field_dict["state"] = state

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.log import Log  # noqa: PLC0415
        from ..models.phase_followed import PhaseFollowed  # noqa: PLC0415
        from ..models.profile import Profile  # noqa: PLC0415
        from ..models.screening import Screening  # noqa: PLC0415
        from ..models.settled_question import SettledQuestion  # noqa: PLC0415
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

        is_finished = d.pop("is_finished", UNSET)

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

        def _parse_phase(data: object) -> None | PhaseFollowed | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                phase_type_0 = PhaseFollowed.from_dict(data)

                return phase_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | PhaseFollowed | Unset, data)

        phase = _parse_phase(d.pop("phase", UNSET))

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

        def _parse_settled(data: object) -> None | SettledQuestion | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                settled_type_0 = SettledQuestion.from_dict(data)

                return settled_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | SettledQuestion | Unset, data)

        settled = _parse_settled(d.pop("settled", UNSET))

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

        review_request = cls(
            profile=profile,
            as_of_date=as_of_date,
            is_finished=is_finished,
            log=log,
            phase=phase,
            screening=screening,
            settled=settled,
            state=state,
        )

        return review_request
