from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.cut_history import CutHistory
    from ..models.known_maintenance import KnownMaintenance
    from ..models.log import Log
    from ..models.own_strategy import OwnStrategy
    from ..models.profile import Profile
    from ..models.ready_made_strategy import ReadyMadeStrategy
    from ..models.screening import Screening
    from ..models.season_limits import SeasonLimits
    from ..models.state import State


T = TypeVar("T", bound="ComparisonRequest")


@_attrs_define
class ComparisonRequest:
    """A person, a horizon, limits and the strategies to compare.

    Attributes:
        horizon_weeks (int): Length of the season in weeks.
        profile (Profile): The person. Nothing of it is kept.
        start_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        strategies (list[OwnStrategy | ReadyMadeStrategy]): The strategies to compare, each under a name or label of its
            own.
        current_intake_kcal (float | None | Unset): What is eaten a day at present; maintenance by default.
        cut_history (CutHistory | None | Unset): Cuts already done.
        limits (SeasonLimits | Unset): What the season must keep to.
        log (Log | None | Unset): Dated weights and intakes to estimate maintenance from.
        maintenance (KnownMaintenance | None | Unset): A known maintenance; else it is estimated from the profile and
            log.
        screening (None | Screening | Unset): Safety questions; without them no cut is planned.
        state (None | State | Unset): What an earlier answer knew, as it gave it. It takes the place of the profile's
            weight and body fat, of the log up to its date, and of the phase; `log` then holds what came since.
    """

    horizon_weeks: int
    profile: Profile
    start_date: datetime.date
    strategies: list[OwnStrategy | ReadyMadeStrategy]
    current_intake_kcal: float | None | Unset = UNSET
    cut_history: CutHistory | None | Unset = UNSET
    limits: SeasonLimits | Unset = UNSET
    log: Log | None | Unset = UNSET
    maintenance: KnownMaintenance | None | Unset = UNSET
    screening: None | Screening | Unset = UNSET
    state: None | State | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.cut_history import CutHistory  # noqa: PLC0415
        from ..models.known_maintenance import KnownMaintenance  # noqa: PLC0415
        from ..models.log import Log  # noqa: PLC0415
        from ..models.ready_made_strategy import ReadyMadeStrategy  # noqa: PLC0415
        from ..models.screening import Screening  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        horizon_weeks = self.horizon_weeks

        profile = self.profile.to_dict()

        start_date = self.start_date.isoformat()

        strategies = []
        for strategies_item_data in self.strategies:
            strategies_item: dict[str, Any]
            if isinstance(strategies_item_data, ReadyMadeStrategy):
                strategies_item = strategies_item_data.to_dict()
            else:
                strategies_item = strategies_item_data.to_dict()

            strategies.append(strategies_item)

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

        limits: dict[str, Any] | Unset = UNSET
        if not isinstance(self.limits, Unset):
            limits = self.limits.to_dict()

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
                "horizon_weeks": horizon_weeks,
                "profile": profile,
                "start_date": start_date,
                "strategies": strategies,
            }
        )
        if current_intake_kcal is not UNSET:
            field_dict["current_intake_kcal"] = current_intake_kcal
        if cut_history is not UNSET:
            field_dict["cut_history"] = cut_history
        if limits is not UNSET:
            field_dict["limits"] = limits
        if log is not UNSET:
            field_dict["log"] = log
        if maintenance is not UNSET:
            field_dict["maintenance"] = maintenance
        if screening is not UNSET:
            field_dict["screening"] = screening
        if state is not UNSET:
            field_dict["state"] = state

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.cut_history import CutHistory  # noqa: PLC0415
        from ..models.known_maintenance import KnownMaintenance  # noqa: PLC0415
        from ..models.log import Log  # noqa: PLC0415
        from ..models.own_strategy import OwnStrategy  # noqa: PLC0415
        from ..models.profile import Profile  # noqa: PLC0415
        from ..models.ready_made_strategy import ReadyMadeStrategy  # noqa: PLC0415
        from ..models.screening import Screening  # noqa: PLC0415
        from ..models.season_limits import SeasonLimits  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        d = dict(src_dict)
        horizon_weeks = d.pop("horizon_weeks")

        profile = Profile.from_dict(d.pop("profile"))

        start_date = datetime.date.fromisoformat(d.pop("start_date"))

        strategies = []
        _strategies = d.pop("strategies")
        for strategies_item_data in _strategies:

            def _parse_strategies_item(data: object) -> OwnStrategy | ReadyMadeStrategy:
                try:
                    if not isinstance(data, dict):
                        raise TypeError()
                    strategies_item_type_0 = ReadyMadeStrategy.from_dict(data)

                    return strategies_item_type_0
                except (TypeError, ValueError, AttributeError, KeyError):
                    pass
                if not isinstance(data, dict):
                    raise TypeError()
                strategies_item_type_1 = OwnStrategy.from_dict(data)

                return strategies_item_type_1

            strategies_item = _parse_strategies_item(strategies_item_data)

            strategies.append(strategies_item)

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

        _limits = d.pop("limits", UNSET)
        limits: SeasonLimits | Unset
        if isinstance(_limits, Unset):
            limits = UNSET
        else:
            limits = SeasonLimits.from_dict(_limits)

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

        comparison_request = cls(
            horizon_weeks=horizon_weeks,
            profile=profile,
            start_date=start_date,
            strategies=strategies,
            current_intake_kcal=current_intake_kcal,
            cut_history=cut_history,
            limits=limits,
            log=log,
            maintenance=maintenance,
            screening=screening,
            state=state,
        )

        return comparison_request
