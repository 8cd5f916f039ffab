from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..models.feeling import Feeling
from ..models.goal import Goal
from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.chosen_band import ChosenBand
    from ..models.known_maintenance import KnownMaintenance
    from ..models.log import Log
    from ..models.past_phase import PastPhase
    from ..models.present_phase import PresentPhase
    from ..models.profile import Profile
    from ..models.screening import Screening
    from ..models.state import State


T = TypeVar("T", bound="DecisionRequest")


@_attrs_define
class DecisionRequest:
    """A person, what they want, and what they have done so far.

    Attributes:
        as_of_date (datetime.date): The day of the decision.
        profile (Profile): The person. Nothing of it is kept.
        band (ChosenBand | None | Unset): The chosen band; by default 10-17 % for men, else 18-27 %, as is common
            practice.
        current_intake_kcal (float | None | Unset): What is eaten a day at present; maintenance by default.
        event_date (datetime.date | None | Unset): A day to be lean on.
        event_fat_fraction (float | None | Unset): Most body fat wanted on that day; set by the band by default.
        feeling (Feeling | Unset): How the person feels about their leanness.
        goal (Goal | Unset): What the person wants from the next months.
        log (Log | None | Unset): Dated weights and intakes to estimate maintenance from.
        maintenance (KnownMaintenance | None | Unset): A known maintenance; else it is estimated from the profile and
            log.
        phase_history (list[PastPhase] | None | Unset): Phases that are over, oldest first; empty for none. Unknown by
            default.
        present_phase (None | PresentPhase | Unset): The phase under way, where there is one.
        screening (None | Screening | Unset): Safety questions; without them no deficit and no gain is recommended.
        state (None | State | Unset): What an earlier answer knew, as it gave it. It takes the place of the profile's
            weight and body fat, of the log up to its date, and of the phase; `log` then holds what came since.
    """

    as_of_date: datetime.date
    profile: Profile
    band: ChosenBand | None | Unset = UNSET
    current_intake_kcal: float | None | Unset = UNSET
    event_date: datetime.date | None | Unset = UNSET
    event_fat_fraction: float | None | Unset = UNSET
    feeling: Feeling | Unset = UNSET
    goal: Goal | Unset = UNSET
    log: Log | None | Unset = UNSET
    maintenance: KnownMaintenance | None | Unset = UNSET
    phase_history: list[PastPhase] | None | Unset = UNSET
    present_phase: None | PresentPhase | Unset = UNSET
    screening: None | Screening | Unset = UNSET
    state: None | State | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.chosen_band import ChosenBand  # noqa: PLC0415
        from ..models.known_maintenance import KnownMaintenance  # noqa: PLC0415
        from ..models.log import Log  # noqa: PLC0415
        from ..models.present_phase import PresentPhase  # noqa: PLC0415
        from ..models.screening import Screening  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        as_of_date = self.as_of_date.isoformat()

        profile = self.profile.to_dict()

        band: dict[str, Any] | None | Unset
        if isinstance(self.band, Unset):
            band = UNSET
        elif isinstance(self.band, ChosenBand):
            band = self.band.to_dict()
        else:
            band = self.band

        current_intake_kcal: float | None | Unset
        if isinstance(self.current_intake_kcal, Unset):
            current_intake_kcal = UNSET
        else:
            current_intake_kcal = self.current_intake_kcal

        event_date: None | str | Unset
        if isinstance(self.event_date, Unset):
            event_date = UNSET
        elif isinstance(self.event_date, datetime.date):
            event_date = self.event_date.isoformat()
        else:
            event_date = self.event_date

        event_fat_fraction: float | None | Unset
        if isinstance(self.event_fat_fraction, Unset):
            event_fat_fraction = UNSET
        else:
            event_fat_fraction = self.event_fat_fraction

        feeling: str | Unset = UNSET
        if not isinstance(self.feeling, Unset):
            feeling = self.feeling.value

        goal: str | Unset = UNSET
        if not isinstance(self.goal, Unset):
            goal = self.goal.value

        log: dict[str, Any] | None | Unset
        if isinstance(self.log, Unset):
            log = UNSET
        elif isinstance(self.log, Log):
            log = self.log.to_dict()
        else:
            log = self.log

        maintenance: dict[str, Any] | None | Unset
        if isinstance(self.maintenance, Unset):
            maintenance = UNSET
        elif isinstance(self.maintenance, KnownMaintenance):
            maintenance = self.maintenance.to_dict()
        else:
            maintenance = self.maintenance

        phase_history: list[dict[str, Any]] | None | Unset
        if isinstance(self.phase_history, Unset):
            phase_history = UNSET
        elif isinstance(self.phase_history, list):
            phase_history = []
            for phase_history_type_0_item_data in self.phase_history:
                phase_history_type_0_item = phase_history_type_0_item_data.to_dict()
                phase_history.append(phase_history_type_0_item)

        else:
            phase_history = self.phase_history

        present_phase: dict[str, Any] | None | Unset
        if isinstance(self.present_phase, Unset):
            present_phase = UNSET
        elif isinstance(self.present_phase, PresentPhase):
            present_phase = self.present_phase.to_dict()
        else:
            present_phase = self.present_phase

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
                "as_of_date": as_of_date,
                "profile": profile,
            }
        )
        if band is not UNSET:
            field_dict["band"] = band
        if current_intake_kcal is not UNSET:
            field_dict["current_intake_kcal"] = current_intake_kcal
        if event_date is not UNSET:
            field_dict["event_date"] = event_date
        if event_fat_fraction is not UNSET:
            field_dict["event_fat_fraction"] = event_fat_fraction
        if feeling is not UNSET:
            field_dict["feeling"] = feeling
        if goal is not UNSET:
            field_dict["goal"] = goal
        if log is not UNSET:
            field_dict["log"] = log
        if maintenance is not UNSET:
            field_dict["maintenance"] = maintenance
        if phase_history is not UNSET:
            field_dict["phase_history"] = phase_history
        if present_phase is not UNSET:
            field_dict["present_phase"] = present_phase
        if screening is not UNSET:
            field_dict["screening"] = screening
        if state is not UNSET:
            field_dict["state"] = state

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.chosen_band import ChosenBand  # noqa: PLC0415
        from ..models.known_maintenance import KnownMaintenance  # noqa: PLC0415
        from ..models.log import Log  # noqa: PLC0415
        from ..models.past_phase import PastPhase  # noqa: PLC0415
        from ..models.present_phase import PresentPhase  # noqa: PLC0415
        from ..models.profile import Profile  # noqa: PLC0415
        from ..models.screening import Screening  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        d = dict(src_dict)
        as_of_date = datetime.date.fromisoformat(d.pop("as_of_date"))

        profile = Profile.from_dict(d.pop("profile"))

        def _parse_band(data: object) -> ChosenBand | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                band_type_0 = ChosenBand.from_dict(data)

                return band_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(ChosenBand | None | Unset, data)

        band = _parse_band(d.pop("band", UNSET))

        def _parse_current_intake_kcal(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        current_intake_kcal = _parse_current_intake_kcal(
            d.pop("current_intake_kcal", UNSET)
        )

        def _parse_event_date(data: object) -> datetime.date | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                event_date_type_0 = datetime.date.fromisoformat(data)

                return event_date_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(datetime.date | None | Unset, data)

        event_date = _parse_event_date(d.pop("event_date", UNSET))

        def _parse_event_fat_fraction(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        event_fat_fraction = _parse_event_fat_fraction(
            d.pop("event_fat_fraction", UNSET)
        )

        _feeling = d.pop("feeling", UNSET)
        feeling: Feeling | Unset
        if isinstance(_feeling, Unset):
            feeling = UNSET
        else:
            feeling = Feeling(_feeling)

        _goal = d.pop("goal", UNSET)
        goal: Goal | Unset
        if isinstance(_goal, Unset):
            goal = UNSET
        else:
            goal = Goal(_goal)

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

        def _parse_maintenance(data: object) -> KnownMaintenance | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                maintenance_type_0 = KnownMaintenance.from_dict(data)

                return maintenance_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(KnownMaintenance | None | Unset, data)

        maintenance = _parse_maintenance(d.pop("maintenance", UNSET))

        def _parse_phase_history(data: object) -> list[PastPhase] | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, list):
                    raise TypeError()
                phase_history_type_0 = []
                _phase_history_type_0 = data
                for phase_history_type_0_item_data in _phase_history_type_0:
                    phase_history_type_0_item = PastPhase.from_dict(
                        phase_history_type_0_item_data
                    )

                    phase_history_type_0.append(phase_history_type_0_item)

                return phase_history_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(list[PastPhase] | None | Unset, data)

        phase_history = _parse_phase_history(d.pop("phase_history", UNSET))

        def _parse_present_phase(data: object) -> None | PresentPhase | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                present_phase_type_0 = PresentPhase.from_dict(data)

                return present_phase_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | PresentPhase | Unset, data)

        present_phase = _parse_present_phase(d.pop("present_phase", UNSET))

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

        decision_request = cls(
            as_of_date=as_of_date,
            profile=profile,
            band=band,
            current_intake_kcal=current_intake_kcal,
            event_date=event_date,
            event_fat_fraction=event_fat_fraction,
            feeling=feeling,
            goal=goal,
            log=log,
            maintenance=maintenance,
            phase_history=phase_history,
            present_phase=present_phase,
            screening=screening,
            state=state,
        )

        return decision_request
