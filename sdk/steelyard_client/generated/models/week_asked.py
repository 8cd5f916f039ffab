from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar

from attrs import define as _attrs_define

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.flexible_day_asked import FlexibleDayAsked
    from ..models.training_day import TrainingDay


T = TypeVar("T", bound="WeekAsked")


@_attrs_define
class WeekAsked:
    """How the member lives the week: then each week of the plan tells what to eat on each day. The week's total stays
    exactly as planned, and every day keeps the guard rails.

        Attributes:
            flexible_days (list[FlexibleDayAsked] | Unset): Days with more food or with alcohol. `[]` if absent.
            is_plant_based (bool | Unset): Whether all protein is of plants: where `protein_g_per_kg` is left open, a tenth
                more of it is planned. `false` if absent.
            meals_per_day (int | Unset): Meals that the protein is shared among. `4` if absent.
            training (list[TrainingDay] | Unset): When training is: those days have what it burns more, the others less.
                `[]` if absent.
    """

    flexible_days: list[FlexibleDayAsked] | Unset = UNSET
    is_plant_based: bool | Unset = UNSET
    meals_per_day: int | Unset = UNSET
    training: list[TrainingDay] | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        flexible_days: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.flexible_days, Unset):
            flexible_days = []
            for flexible_days_item_data in self.flexible_days:
                flexible_days_item = flexible_days_item_data.to_dict()
                flexible_days.append(flexible_days_item)

        is_plant_based = self.is_plant_based

        meals_per_day = self.meals_per_day

        training: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.training, Unset):
            training = []
            for training_item_data in self.training:
                training_item = training_item_data.to_dict()
                training.append(training_item)

        field_dict: dict[str, Any] = {}

        field_dict.update({})
        if flexible_days is not UNSET:
            field_dict["flexible_days"] = flexible_days
        if is_plant_based is not UNSET:
            field_dict["is_plant_based"] = is_plant_based
        if meals_per_day is not UNSET:
            field_dict["meals_per_day"] = meals_per_day
        if training is not UNSET:
            field_dict["training"] = training

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.flexible_day_asked import FlexibleDayAsked  # noqa: PLC0415
        from ..models.training_day import TrainingDay  # noqa: PLC0415

        d = dict(src_dict)
        _flexible_days = d.pop("flexible_days", UNSET)
        flexible_days: list[FlexibleDayAsked] | Unset = UNSET
        if _flexible_days is not UNSET:
            flexible_days = []
            for flexible_days_item_data in _flexible_days:
                flexible_days_item = FlexibleDayAsked.from_dict(flexible_days_item_data)

                flexible_days.append(flexible_days_item)

        is_plant_based = d.pop("is_plant_based", UNSET)

        meals_per_day = d.pop("meals_per_day", UNSET)

        _training = d.pop("training", UNSET)
        training: list[TrainingDay] | Unset = UNSET
        if _training is not UNSET:
            training = []
            for training_item_data in _training:
                training_item = TrainingDay.from_dict(training_item_data)

                training.append(training_item)

        week_asked = cls(
            flexible_days=flexible_days,
            is_plant_based=is_plant_based,
            meals_per_day=meals_per_day,
            training=training,
        )

        return week_asked
