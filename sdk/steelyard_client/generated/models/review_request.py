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


T = TypeVar("T", bound="ReviewRequest")


@_attrs_define
class ReviewRequest:
    """A person as at the phase's start, the plan, and the log so far.

    A log that begins some weeks before the phase tells more: it shows what is usual.

        Attributes:
            log (Log): Weights and intakes in any order; gaps are fine.
            phase (PhaseFollowed): The phase that is being followed, or was.
            profile (Profile): The person. Nothing of it is kept.
            as_of_date (datetime.date | None | Unset): The day to review on; the last day of the log by default.
            is_finished (bool | Unset): Whether the phase ended on that day, before its last. `false` if absent.
            screening (None | Screening | Unset): Safety questions; without them a deficit is not reviewed any further.
    """

    log: Log
    phase: PhaseFollowed
    profile: Profile
    as_of_date: datetime.date | None | Unset = UNSET
    is_finished: bool | Unset = UNSET
    screening: None | Screening | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.screening import Screening  # noqa: PLC0415

        log = self.log.to_dict()

        phase = self.phase.to_dict()

        profile = self.profile.to_dict()

        as_of_date: None | str | Unset
        if isinstance(self.as_of_date, Unset):
            as_of_date = UNSET
        elif isinstance(self.as_of_date, datetime.date):
            as_of_date = self.as_of_date.isoformat()
        else:
            as_of_date = self.as_of_date

        is_finished = self.is_finished

        screening: dict[str, Any] | None | Unset
        if isinstance(self.screening, Unset):
            screening = UNSET
        elif isinstance(self.screening, Screening):
            screening = self.screening.to_dict()
        else:
            screening = self.screening

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "log": log,
                "phase": phase,
                "profile": profile,
            }
        )
        if as_of_date is not UNSET:
            field_dict["as_of_date"] = as_of_date
        if is_finished is not UNSET:
            field_dict["is_finished"] = is_finished
        if screening is not UNSET:
            field_dict["screening"] = screening

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.log import Log  # noqa: PLC0415
        from ..models.phase_followed import PhaseFollowed  # noqa: PLC0415
        from ..models.profile import Profile  # noqa: PLC0415
        from ..models.screening import Screening  # noqa: PLC0415

        d = dict(src_dict)
        log = Log.from_dict(d.pop("log"))

        phase = PhaseFollowed.from_dict(d.pop("phase"))

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

        review_request = cls(
            log=log,
            phase=phase,
            profile=profile,
            as_of_date=as_of_date,
            is_finished=is_finished,
            screening=screening,
        )

        return review_request
