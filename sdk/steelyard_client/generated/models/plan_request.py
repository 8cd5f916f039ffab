from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..models.plan_choice import PlanChoice
from ..models.uncertainty_source import UncertaintySource
from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.cut import Cut
    from ..models.cut_history import CutHistory
    from ..models.day_split import DaySplit
    from ..models.gain import Gain
    from ..models.hold import Hold
    from ..models.known_maintenance import KnownMaintenance
    from ..models.log import Log
    from ..models.mini_cut import MiniCut
    from ..models.pause import Pause
    from ..models.profile import Profile
    from ..models.return_to_gain import ReturnToGain
    from ..models.screening import Screening
    from ..models.state import State
    from ..models.week_asked import WeekAsked


T = TypeVar("T", bound="PlanRequest")


@_attrs_define
class PlanRequest:
    """A person, their screening answers, and the phase to plan.

    Attributes:
        phase (Cut | Gain | Hold | MiniCut): The phase to plan.
        profile (Profile): The person. Nothing of it is kept.
        start_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        current_intake_kcal (float | None | Unset): What is eaten a day at present; maintenance by default.
        cut_history (CutHistory | None | Unset): Cuts already done.
        day_split (DaySplit | None | Unset): Higher- and lower-carbohydrate days with the same weekly total.
        include (list[PlanChoice] | Unset): What to work out beside the plan, for somebody who may still choose:
            `sizes`, the phase at other sizes with the price of each; `levers`, what more steps or cycling would do for a
            fat loss. The two together take about as long to compute as the plan itself; none by default. `[]` if absent.
        log (Log | None | Unset): Dated weights and intakes to estimate maintenance from.
        maintenance (KnownMaintenance | None | Unset): A known maintenance; else it is estimated from the profile and
            log.
        pause (None | Pause | Unset): Weeks at maintenance first: travel, illness, injury.
        return_to_gain (ReturnToGain | Unset): What follows a fat-loss phase or a hold: maintenance, then a measured
            surplus.
        screening (None | Screening | Unset): Safety questions; without them no deficit and no gain is planned.
        state (None | State | Unset): What an earlier answer knew, as it gave it. It takes the place of the profile's
            weight and body fat, of the log up to its date, and of the phase; `log` then holds what came since.
        uncertainty_sources (list[UncertaintySource] | None | Unset): Which sources of uncertainty the intervals carry;
            all by default.
        week (None | Unset | WeekAsked): How the week is lived, for what to eat on each day. Instead of `day_split`.
    """

    phase: Cut | Gain | Hold | MiniCut
    profile: Profile
    start_date: datetime.date
    current_intake_kcal: float | None | Unset = UNSET
    cut_history: CutHistory | None | Unset = UNSET
    day_split: DaySplit | None | Unset = UNSET
    include: list[PlanChoice] | Unset = UNSET
    log: Log | None | Unset = UNSET
    maintenance: KnownMaintenance | None | Unset = UNSET
    pause: None | Pause | Unset = UNSET
    return_to_gain: ReturnToGain | Unset = UNSET
    screening: None | Screening | Unset = UNSET
    state: None | State | Unset = UNSET
    uncertainty_sources: list[UncertaintySource] | None | Unset = UNSET
    week: None | Unset | WeekAsked = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.cut import Cut  # noqa: PLC0415
        from ..models.cut_history import CutHistory  # noqa: PLC0415
        from ..models.day_split import DaySplit  # noqa: PLC0415
        from ..models.gain import Gain  # noqa: PLC0415
        from ..models.known_maintenance import KnownMaintenance  # noqa: PLC0415
        from ..models.log import Log  # noqa: PLC0415
        from ..models.mini_cut import MiniCut  # noqa: PLC0415
        from ..models.pause import Pause  # noqa: PLC0415
        from ..models.screening import Screening  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415
        from ..models.week_asked import WeekAsked  # noqa: PLC0415

        phase: dict[str, Any]
        if isinstance(self.phase, MiniCut):
            phase = self.phase.to_dict()
        elif isinstance(self.phase, Cut):
            phase = self.phase.to_dict()
        elif isinstance(self.phase, Gain):
            phase = self.phase.to_dict()
        else:
            phase = self.phase.to_dict()

        profile = self.profile.to_dict()

        start_date = self.start_date.isoformat()

        current_intake_kcal: float | None | Unset
        if isinstance(self.current_intake_kcal, Unset):
            current_intake_kcal = UNSET
        else:
            current_intake_kcal = self.current_intake_kcal

        cut_history: dict[str, Any] | None | Unset
        if isinstance(self.cut_history, Unset):
            cut_history = UNSET
        elif isinstance(self.cut_history, CutHistory):
            cut_history = self.cut_history.to_dict()
        else:
            cut_history = self.cut_history

        day_split: dict[str, Any] | None | Unset
        if isinstance(self.day_split, Unset):
            day_split = UNSET
        elif isinstance(self.day_split, DaySplit):
            day_split = self.day_split.to_dict()
        else:
            day_split = self.day_split

        include: list[str] | Unset = UNSET
        if not isinstance(self.include, Unset):
            include = []
            for include_item_data in self.include:
                include_item = include_item_data.value
                include.append(include_item)

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

        pause: dict[str, Any] | None | Unset
        if isinstance(self.pause, Unset):
            pause = UNSET
        elif isinstance(self.pause, Pause):
            pause = self.pause.to_dict()
        else:
            pause = self.pause

        return_to_gain: dict[str, Any] | Unset = UNSET
        if not isinstance(self.return_to_gain, Unset):
            return_to_gain = self.return_to_gain.to_dict()

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

        uncertainty_sources: list[str] | None | Unset
        if isinstance(self.uncertainty_sources, Unset):
            uncertainty_sources = UNSET
        elif isinstance(self.uncertainty_sources, list):
            uncertainty_sources = []
            for uncertainty_sources_type_0_item_data in self.uncertainty_sources:
                uncertainty_sources_type_0_item = (
                    uncertainty_sources_type_0_item_data.value
                )
                uncertainty_sources.append(uncertainty_sources_type_0_item)

        else:
            uncertainty_sources = self.uncertainty_sources

        week: dict[str, Any] | None | Unset
        if isinstance(self.week, Unset):
            week = UNSET
        elif isinstance(self.week, WeekAsked):
            week = self.week.to_dict()
        else:
            week = self.week

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "phase": phase,
                "profile": profile,
                "start_date": start_date,
            }
        )
        if current_intake_kcal is not UNSET:
            field_dict["current_intake_kcal"] = current_intake_kcal
        if cut_history is not UNSET:
            field_dict["cut_history"] = cut_history
        if day_split is not UNSET:
            field_dict["day_split"] = day_split
        if include is not UNSET:
            field_dict["include"] = include
        if log is not UNSET:
            field_dict["log"] = log
        if maintenance is not UNSET:
            field_dict["maintenance"] = maintenance
        if pause is not UNSET:
            field_dict["pause"] = pause
        if return_to_gain is not UNSET:
            field_dict["return_to_gain"] = return_to_gain
        if screening is not UNSET:
            field_dict["screening"] = screening
        if state is not UNSET:
            field_dict["state"] = state
        if uncertainty_sources is not UNSET:
            field_dict["uncertainty_sources"] = uncertainty_sources
        if week is not UNSET:
            field_dict["week"] = week

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.cut import Cut  # noqa: PLC0415
        from ..models.cut_history import CutHistory  # noqa: PLC0415
        from ..models.day_split import DaySplit  # noqa: PLC0415
        from ..models.gain import Gain  # noqa: PLC0415
        from ..models.hold import Hold  # noqa: PLC0415
        from ..models.known_maintenance import KnownMaintenance  # noqa: PLC0415
        from ..models.log import Log  # noqa: PLC0415
        from ..models.mini_cut import MiniCut  # noqa: PLC0415
        from ..models.pause import Pause  # noqa: PLC0415
        from ..models.profile import Profile  # noqa: PLC0415
        from ..models.return_to_gain import ReturnToGain  # noqa: PLC0415
        from ..models.screening import Screening  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415
        from ..models.week_asked import WeekAsked  # noqa: PLC0415

        d = dict(src_dict)

        def _parse_phase(data: object) -> Cut | Gain | Hold | MiniCut:
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                phase_type_0 = MiniCut.from_dict(data)

                return phase_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                phase_type_1 = Cut.from_dict(data)

                return phase_type_1
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                phase_type_2 = Gain.from_dict(data)

                return phase_type_2
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            if not isinstance(data, dict):
                raise TypeError()
            phase_type_3 = Hold.from_dict(data)

            return phase_type_3

        phase = _parse_phase(d.pop("phase"))

        profile = Profile.from_dict(d.pop("profile"))

        start_date = datetime.date.fromisoformat(d.pop("start_date"))

        def _parse_current_intake_kcal(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        current_intake_kcal = _parse_current_intake_kcal(
            d.pop("current_intake_kcal", UNSET)
        )

        def _parse_cut_history(data: object) -> CutHistory | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                cut_history_type_0 = CutHistory.from_dict(data)

                return cut_history_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(CutHistory | None | Unset, data)

        cut_history = _parse_cut_history(d.pop("cut_history", UNSET))

        def _parse_day_split(data: object) -> DaySplit | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                day_split_type_0 = DaySplit.from_dict(data)

                return day_split_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(DaySplit | None | Unset, data)

        day_split = _parse_day_split(d.pop("day_split", UNSET))

        _include = d.pop("include", UNSET)
        include: list[PlanChoice] | Unset = UNSET
        if _include is not UNSET:
            include = []
            for include_item_data in _include:
                include_item = PlanChoice(include_item_data)

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

        def _parse_pause(data: object) -> None | Pause | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                pause_type_0 = Pause.from_dict(data)

                return pause_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | Pause | Unset, data)

        pause = _parse_pause(d.pop("pause", UNSET))

        _return_to_gain = d.pop("return_to_gain", UNSET)
        return_to_gain: ReturnToGain | Unset
        if isinstance(_return_to_gain, Unset):
            return_to_gain = UNSET
        else:
            return_to_gain = ReturnToGain.from_dict(_return_to_gain)

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

        def _parse_uncertainty_sources(
            data: object,
        ) -> list[UncertaintySource] | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, list):
                    raise TypeError()
                uncertainty_sources_type_0 = []
                _uncertainty_sources_type_0 = data
                for uncertainty_sources_type_0_item_data in _uncertainty_sources_type_0:
                    uncertainty_sources_type_0_item = UncertaintySource(
                        uncertainty_sources_type_0_item_data
                    )

                    uncertainty_sources_type_0.append(uncertainty_sources_type_0_item)

                return uncertainty_sources_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(list[UncertaintySource] | None | Unset, data)

        uncertainty_sources = _parse_uncertainty_sources(
            d.pop("uncertainty_sources", UNSET)
        )

        def _parse_week(data: object) -> None | Unset | WeekAsked:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                week_type_0 = WeekAsked.from_dict(data)

                return week_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | Unset | WeekAsked, data)

        week = _parse_week(d.pop("week", UNSET))

        plan_request = cls(
            phase=phase,
            profile=profile,
            start_date=start_date,
            current_intake_kcal=current_intake_kcal,
            cut_history=cut_history,
            day_split=day_split,
            include=include,
            log=log,
            maintenance=maintenance,
            pause=pause,
            return_to_gain=return_to_gain,
            screening=screening,
            state=state,
            uncertainty_sources=uncertainty_sources,
            week=week,
        )

        return plan_request
