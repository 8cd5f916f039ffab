from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.known_cuts import KnownCuts
    from ..models.suggested_cut import SuggestedCut
    from ..models.suggested_gain import SuggestedGain
    from ..models.suggested_hold import SuggestedHold
    from ..models.suggested_mini_cut import SuggestedMiniCut
    from ..models.suggested_return import SuggestedReturn


T = TypeVar("T", bound="PlanFragment")


@_attrs_define
class PlanFragment:
    """Part of a request to `/v1/plans`: add `profile`, `screening`, `maintenance`, `log` or `state` as sent here.

    Attributes:
        current_intake_kcal (float | None): As it was sent.
        cut_history (KnownCuts | None): From the phase history, where it was told.
        phase (SuggestedCut | SuggestedGain | SuggestedHold | SuggestedMiniCut): The phase to plan.
        return_to_gain (SuggestedReturn): What follows.
        start_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
    """

    current_intake_kcal: float | None
    cut_history: KnownCuts | None
    phase: SuggestedCut | SuggestedGain | SuggestedHold | SuggestedMiniCut
    return_to_gain: SuggestedReturn
    start_date: datetime.date
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.known_cuts import KnownCuts  # noqa: PLC0415
        from ..models.suggested_cut import SuggestedCut  # noqa: PLC0415
        from ..models.suggested_gain import SuggestedGain  # noqa: PLC0415
        from ..models.suggested_mini_cut import SuggestedMiniCut  # noqa: PLC0415

        current_intake_kcal: float | None
        current_intake_kcal = self.current_intake_kcal

        cut_history: dict[str, Any] | None
        if isinstance(self.cut_history, KnownCuts):
            cut_history = self.cut_history.to_dict()
        else:
            cut_history = self.cut_history

        phase: dict[str, Any]
        if isinstance(self.phase, SuggestedMiniCut):
            phase = self.phase.to_dict()
        elif isinstance(self.phase, SuggestedCut):
            phase = self.phase.to_dict()
        elif isinstance(self.phase, SuggestedGain):
            phase = self.phase.to_dict()
        else:
            phase = self.phase.to_dict()

        return_to_gain = self.return_to_gain.to_dict()

        start_date = self.start_date.isoformat()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "current_intake_kcal": current_intake_kcal,
                "cut_history": cut_history,
                "phase": phase,
                "return_to_gain": return_to_gain,
                "start_date": start_date,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.known_cuts import KnownCuts  # noqa: PLC0415
        from ..models.suggested_cut import SuggestedCut  # noqa: PLC0415
        from ..models.suggested_gain import SuggestedGain  # noqa: PLC0415
        from ..models.suggested_hold import SuggestedHold  # noqa: PLC0415
        from ..models.suggested_mini_cut import SuggestedMiniCut  # noqa: PLC0415
        from ..models.suggested_return import SuggestedReturn  # noqa: PLC0415

        d = dict(src_dict)

        def _parse_current_intake_kcal(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        current_intake_kcal = _parse_current_intake_kcal(d.pop("current_intake_kcal"))

        def _parse_cut_history(data: object) -> KnownCuts | None:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                cut_history_type_0 = KnownCuts.from_dict(data)

                return cut_history_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(KnownCuts | None, data)

        cut_history = _parse_cut_history(d.pop("cut_history"))

        def _parse_phase(
            data: object,
        ) -> SuggestedCut | SuggestedGain | SuggestedHold | SuggestedMiniCut:
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                phase_type_0 = SuggestedMiniCut.from_dict(data)

                return phase_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                phase_type_1 = SuggestedCut.from_dict(data)

                return phase_type_1
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                phase_type_2 = SuggestedGain.from_dict(data)

                return phase_type_2
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            if not isinstance(data, dict):
                raise TypeError()
            phase_type_3 = SuggestedHold.from_dict(data)

            return phase_type_3

        phase = _parse_phase(d.pop("phase"))

        return_to_gain = SuggestedReturn.from_dict(d.pop("return_to_gain"))

        start_date = datetime.date.fromisoformat(d.pop("start_date"))

        plan_fragment = cls(
            current_intake_kcal=current_intake_kcal,
            cut_history=cut_history,
            phase=phase,
            return_to_gain=return_to_gain,
            start_date=start_date,
        )

        plan_fragment.additional_properties = d
        return plan_fragment

    @property
    def additional_keys(self) -> list[str]:
        return list(self.additional_properties.keys())

    def __getitem__(self, key: str) -> Any:
        return self.additional_properties[key]

    def __setitem__(self, key: str, value: Any) -> None:
        self.additional_properties[key] = value

    def __delitem__(self, key: str) -> None:
        del self.additional_properties[key]

    def __contains__(self, key: str) -> bool:
        return key in self.additional_properties
