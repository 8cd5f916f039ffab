from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..models.uncertainty_source import UncertaintySource
from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.cut_history import CutHistory
    from ..models.date_question import DateQuestion
    from ..models.intake_question import IntakeQuestion
    from ..models.known_maintenance import KnownMaintenance
    from ..models.log import Log
    from ..models.path_question import PathQuestion
    from ..models.profile import Profile
    from ..models.screening import Screening
    from ..models.state import State


T = TypeVar("T", bound="ForecastRequest")


@_attrs_define
class ForecastRequest:
    """A person and a question about what an intake does.

    Attributes:
        profile (Profile): The person. Nothing of it is kept.
        question (DateQuestion | IntakeQuestion | PathQuestion): What to forecast or to solve for.
        start_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        current_intake_kcal (float | None | Unset): What is eaten a day at present; maintenance by default.
        cut_history (CutHistory | None | Unset): Cuts already done, for the rails that count them; else as the state
            knows them.
        log (Log | None | Unset): Dated weights and intakes to estimate maintenance from.
        maintenance (KnownMaintenance | None | Unset): A known maintenance; else it is estimated from the profile and
            log.
        screening (None | Screening | Unset): Safety questions; without them no deficit and no gain is forecast.
        state (None | State | Unset): What an earlier answer knew, as it gave it. It takes the place of the profile's
            weight and body fat, of the log up to its date, and of the phase; `log` then holds what came since.
        uncertainty_sources (list[UncertaintySource] | None | Unset): Which sources of uncertainty the intervals carry;
            all by default.
    """

    profile: Profile
    question: DateQuestion | IntakeQuestion | PathQuestion
    start_date: datetime.date
    current_intake_kcal: float | None | Unset = UNSET
    cut_history: CutHistory | None | Unset = UNSET
    log: Log | None | Unset = UNSET
    maintenance: KnownMaintenance | None | Unset = UNSET
    screening: None | Screening | Unset = UNSET
    state: None | State | Unset = UNSET
    uncertainty_sources: list[UncertaintySource] | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.cut_history import CutHistory  # noqa: PLC0415
        from ..models.intake_question import IntakeQuestion  # noqa: PLC0415
        from ..models.known_maintenance import KnownMaintenance  # noqa: PLC0415
        from ..models.log import Log  # noqa: PLC0415
        from ..models.path_question import PathQuestion  # noqa: PLC0415
        from ..models.screening import Screening  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        profile = self.profile.to_dict()

        question: dict[str, Any]
        if isinstance(self.question, PathQuestion):
            question = self.question.to_dict()
        elif isinstance(self.question, IntakeQuestion):
            question = self.question.to_dict()
        else:
            question = self.question.to_dict()

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

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "profile": profile,
                "question": question,
                "start_date": start_date,
            }
        )
        if current_intake_kcal is not UNSET:
            field_dict["current_intake_kcal"] = current_intake_kcal
        if cut_history is not UNSET:
            field_dict["cut_history"] = cut_history
        if log is not UNSET:
            field_dict["log"] = log
        if maintenance is not UNSET:
            field_dict["maintenance"] = maintenance
        if screening is not UNSET:
            field_dict["screening"] = screening
        if state is not UNSET:
            field_dict["state"] = state
        if uncertainty_sources is not UNSET:
            field_dict["uncertainty_sources"] = uncertainty_sources

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.cut_history import CutHistory  # noqa: PLC0415
        from ..models.date_question import DateQuestion  # noqa: PLC0415
        from ..models.intake_question import IntakeQuestion  # noqa: PLC0415
        from ..models.known_maintenance import KnownMaintenance  # noqa: PLC0415
        from ..models.log import Log  # noqa: PLC0415
        from ..models.path_question import PathQuestion  # noqa: PLC0415
        from ..models.profile import Profile  # noqa: PLC0415
        from ..models.screening import Screening  # noqa: PLC0415
        from ..models.state import State  # noqa: PLC0415

        d = dict(src_dict)
        profile = Profile.from_dict(d.pop("profile"))

        def _parse_question(
            data: object,
        ) -> DateQuestion | IntakeQuestion | PathQuestion:
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                question_type_0 = PathQuestion.from_dict(data)

                return question_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                question_type_1 = IntakeQuestion.from_dict(data)

                return question_type_1
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            if not isinstance(data, dict):
                raise TypeError()
            question_type_2 = DateQuestion.from_dict(data)

            return question_type_2

        question = _parse_question(d.pop("question"))

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

        forecast_request = cls(
            profile=profile,
            question=question,
            start_date=start_date,
            current_intake_kcal=current_intake_kcal,
            cut_history=cut_history,
            log=log,
            maintenance=maintenance,
            screening=screening,
            state=state,
            uncertainty_sources=uncertainty_sources,
        )

        return forecast_request
