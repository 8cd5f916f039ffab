from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..models.sex import Sex
from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.activity_by_level import ActivityByLevel
    from ..models.activity_by_week import ActivityByWeek
    from ..models.body_fat import BodyFat
    from ..models.training import Training


T = TypeVar("T", bound="Profile")


@_attrs_define
class Profile:
    """The person. Nothing of it is kept.

    Attributes:
        activity (ActivityByLevel | ActivityByWeek): A whole-day level, or a week of steps and sessions.
        age_years (float): Age in years.
        height_cm (float): Height in centimetres.
        sex (Sex): Which set of equations applies. ``UNSPECIFIED`` uses both, widens the interval, takes the stricter
            rail.
        training (Training): Resistance training.
        weight_kg (float): Body mass in kilograms.
        body_fat (BodyFat | None | Unset): A body-fat reading, where there is one.
    """

    activity: ActivityByLevel | ActivityByWeek
    age_years: float
    height_cm: float
    sex: Sex
    training: Training
    weight_kg: float
    body_fat: BodyFat | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.activity_by_level import ActivityByLevel  # noqa: PLC0415
        from ..models.body_fat import BodyFat  # noqa: PLC0415

        activity: dict[str, Any]
        if isinstance(self.activity, ActivityByLevel):
            activity = self.activity.to_dict()
        else:
            activity = self.activity.to_dict()

        age_years = self.age_years

        height_cm = self.height_cm

        sex = self.sex.value

        training = self.training.to_dict()

        weight_kg = self.weight_kg

        body_fat: dict[str, Any] | None | Unset
        if isinstance(self.body_fat, Unset):
            body_fat = UNSET
        elif isinstance(self.body_fat, BodyFat):
            body_fat = self.body_fat.to_dict()
        else:
            body_fat = self.body_fat

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "activity": activity,
                "age_years": age_years,
                "height_cm": height_cm,
                "sex": sex,
                "training": training,
                "weight_kg": weight_kg,
            }
        )
        if body_fat is not UNSET:
            field_dict["body_fat"] = body_fat

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.activity_by_level import ActivityByLevel  # noqa: PLC0415
        from ..models.activity_by_week import ActivityByWeek  # noqa: PLC0415
        from ..models.body_fat import BodyFat  # noqa: PLC0415
        from ..models.training import Training  # noqa: PLC0415

        d = dict(src_dict)

        def _parse_activity(data: object) -> ActivityByLevel | ActivityByWeek:
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                activity_type_0 = ActivityByLevel.from_dict(data)

                return activity_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            if not isinstance(data, dict):
                raise TypeError()
            activity_type_1 = ActivityByWeek.from_dict(data)

            return activity_type_1

        activity = _parse_activity(d.pop("activity"))

        age_years = d.pop("age_years")

        height_cm = d.pop("height_cm")

        sex = Sex(d.pop("sex"))

        training = Training.from_dict(d.pop("training"))

        weight_kg = d.pop("weight_kg")

        def _parse_body_fat(data: object) -> BodyFat | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                body_fat_type_0 = BodyFat.from_dict(data)

                return body_fat_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(BodyFat | None | Unset, data)

        body_fat = _parse_body_fat(d.pop("body_fat", UNSET))

        profile = cls(
            activity=activity,
            age_years=age_years,
            height_cm=height_cm,
            sex=sex,
            training=training,
            weight_kg=weight_kg,
            body_fat=body_fat,
        )

        return profile
