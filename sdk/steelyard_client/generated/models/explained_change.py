from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.explanation_row import ExplanationRow
    from ..models.interval import Interval
    from ..models.note import Note


T = TypeVar("T", bound="ExplainedChange")


@_attrs_define
class ExplainedChange:
    """Scale, log and equations against each other over the last weeks: explanations by their odds.

    Attributes:
        carried_beyond_log_kg (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
        causes (list[ExplanationRow]): The explanations, the likeliest first.
        days (int): So many days up to the day read at.
        settles (None | Note): What would settle between them; null where all goes as logged, or where it is water that
            events which were told lead to expect.
        tissue_beyond_log_kg (Interval): A central value with the interval that holds the truth with probability
            ``coverage``.
    """

    carried_beyond_log_kg: Interval
    causes: list[ExplanationRow]
    days: int
    settles: None | Note
    tissue_beyond_log_kg: Interval
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        from ..models.note import Note  # noqa: PLC0415

        carried_beyond_log_kg = self.carried_beyond_log_kg.to_dict()

        causes = []
        for causes_item_data in self.causes:
            causes_item = causes_item_data.to_dict()
            causes.append(causes_item)

        days = self.days

        settles: dict[str, Any] | None
        if isinstance(self.settles, Note):
            settles = self.settles.to_dict()
        else:
            settles = self.settles

        tissue_beyond_log_kg = self.tissue_beyond_log_kg.to_dict()

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "carried_beyond_log_kg": carried_beyond_log_kg,
                "causes": causes,
                "days": days,
                "settles": settles,
                "tissue_beyond_log_kg": tissue_beyond_log_kg,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.explanation_row import ExplanationRow  # noqa: PLC0415
        from ..models.interval import Interval  # noqa: PLC0415
        from ..models.note import Note  # noqa: PLC0415

        d = dict(src_dict)
        carried_beyond_log_kg = Interval.from_dict(d.pop("carried_beyond_log_kg"))

        causes = []
        _causes = d.pop("causes")
        for causes_item_data in _causes:
            causes_item = ExplanationRow.from_dict(causes_item_data)

            causes.append(causes_item)

        days = d.pop("days")

        def _parse_settles(data: object) -> None | Note:
            if data is None:
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                settles_type_0 = Note.from_dict(data)

                return settles_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | Note, data)

        settles = _parse_settles(d.pop("settles"))

        tissue_beyond_log_kg = Interval.from_dict(d.pop("tissue_beyond_log_kg"))

        explained_change = cls(
            carried_beyond_log_kg=carried_beyond_log_kg,
            causes=causes,
            days=days,
            settles=settles,
            tissue_beyond_log_kg=tissue_beyond_log_kg,
        )

        explained_change.additional_properties = d
        return explained_change

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
