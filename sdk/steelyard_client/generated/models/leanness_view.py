from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define
from attrs import field as _attrs_field

if TYPE_CHECKING:
    from ..models.interval import Interval


T = TypeVar("T", bound="LeannessView")


@_attrs_define
class LeannessView:
    """What the decision rests on in body fat. Fractions of body mass, 0 to 1.

    Attributes:
        band_basis (str): `chosen`, or where the default comes from: `common practice` (men), `judgement` by analogy
            (women, unspecified). Extensible.
        band_lower_fat_fraction (float): Lower end of the band.
        band_upper_fat_fraction (float): Upper end of the band.
        counts_from_fat_fraction (float): From here on body fat has a price, by the motive.
        cut_due_date (datetime.date | None): When it is expected at the present rate; null where not within the horizon.
        cut_due_fat_fraction (float | None): From here on a cut is the better trade; null where nowhere.
        fat_fraction (Interval): A central value with the interval that holds the truth with probability ``coverage``.
        healthy_lower_fat_fraction (float | None): Lower end of the healthy range for age and sex.
        healthy_upper_fat_fraction (float | None): Upper end of the healthy range for age and sex.
        margin_over_due (float | None): Body fat less `cut_due_fat_fraction`.
        probability_other_side (float | None): Probability that body fat is truly on the other side of that value.
        probability_over_line (float): Probability that body fat is over `counts_from_fat_fraction`.
        reading_is_good_enough (bool): Whether this reading may start a cut at this body fat.
        reading_sd (float): Error of the reading, 1 SD.
        target_fat_fraction (float): Where a cut leads, by the motive.
    """

    band_basis: str
    band_lower_fat_fraction: float
    band_upper_fat_fraction: float
    counts_from_fat_fraction: float
    cut_due_date: datetime.date | None
    cut_due_fat_fraction: float | None
    fat_fraction: Interval
    healthy_lower_fat_fraction: float | None
    healthy_upper_fat_fraction: float | None
    margin_over_due: float | None
    probability_other_side: float | None
    probability_over_line: float
    reading_is_good_enough: bool
    reading_sd: float
    target_fat_fraction: float
    additional_properties: dict[str, Any] = _attrs_field(
        init=False, factory=dict, repr=False
    )

    def to_dict(self) -> dict[str, Any]:
        band_basis = self.band_basis

        band_lower_fat_fraction = self.band_lower_fat_fraction

        band_upper_fat_fraction = self.band_upper_fat_fraction

        counts_from_fat_fraction = self.counts_from_fat_fraction

        cut_due_date: None | str
        if isinstance(self.cut_due_date, datetime.date):
            cut_due_date = self.cut_due_date.isoformat()
        else:
            cut_due_date = self.cut_due_date

        cut_due_fat_fraction: float | None
        cut_due_fat_fraction = self.cut_due_fat_fraction

        fat_fraction = self.fat_fraction.to_dict()

        healthy_lower_fat_fraction: float | None
        healthy_lower_fat_fraction = self.healthy_lower_fat_fraction

        healthy_upper_fat_fraction: float | None
        healthy_upper_fat_fraction = self.healthy_upper_fat_fraction

        margin_over_due: float | None
        margin_over_due = self.margin_over_due

        probability_other_side: float | None
        probability_other_side = self.probability_other_side

        probability_over_line = self.probability_over_line

        reading_is_good_enough = self.reading_is_good_enough

        reading_sd = self.reading_sd

        target_fat_fraction = self.target_fat_fraction

        field_dict: dict[str, Any] = {}
        field_dict.update(self.additional_properties)
        field_dict.update(
            {
                "band_basis": band_basis,
                "band_lower_fat_fraction": band_lower_fat_fraction,
                "band_upper_fat_fraction": band_upper_fat_fraction,
                "counts_from_fat_fraction": counts_from_fat_fraction,
                "cut_due_date": cut_due_date,
                "cut_due_fat_fraction": cut_due_fat_fraction,
                "fat_fraction": fat_fraction,
                "healthy_lower_fat_fraction": healthy_lower_fat_fraction,
                "healthy_upper_fat_fraction": healthy_upper_fat_fraction,
                "margin_over_due": margin_over_due,
                "probability_other_side": probability_other_side,
                "probability_over_line": probability_over_line,
                "reading_is_good_enough": reading_is_good_enough,
                "reading_sd": reading_sd,
                "target_fat_fraction": target_fat_fraction,
            }
        )

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.interval import Interval  # noqa: PLC0415

        d = dict(src_dict)
        band_basis = d.pop("band_basis")

        band_lower_fat_fraction = d.pop("band_lower_fat_fraction")

        band_upper_fat_fraction = d.pop("band_upper_fat_fraction")

        counts_from_fat_fraction = d.pop("counts_from_fat_fraction")

        def _parse_cut_due_date(data: object) -> datetime.date | None:
            if data is None:
                return data
            try:
                if not isinstance(data, str):
                    raise TypeError()
                cut_due_date_type_0 = datetime.date.fromisoformat(data)

                return cut_due_date_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(datetime.date | None, data)

        cut_due_date = _parse_cut_due_date(d.pop("cut_due_date"))

        def _parse_cut_due_fat_fraction(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        cut_due_fat_fraction = _parse_cut_due_fat_fraction(
            d.pop("cut_due_fat_fraction")
        )

        fat_fraction = Interval.from_dict(d.pop("fat_fraction"))

        def _parse_healthy_lower_fat_fraction(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        healthy_lower_fat_fraction = _parse_healthy_lower_fat_fraction(
            d.pop("healthy_lower_fat_fraction")
        )

        def _parse_healthy_upper_fat_fraction(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        healthy_upper_fat_fraction = _parse_healthy_upper_fat_fraction(
            d.pop("healthy_upper_fat_fraction")
        )

        def _parse_margin_over_due(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        margin_over_due = _parse_margin_over_due(d.pop("margin_over_due"))

        def _parse_probability_other_side(data: object) -> float | None:
            if data is None:
                return data
            return cast(float | None, data)

        probability_other_side = _parse_probability_other_side(
            d.pop("probability_other_side")
        )

        probability_over_line = d.pop("probability_over_line")

        reading_is_good_enough = d.pop("reading_is_good_enough")

        reading_sd = d.pop("reading_sd")

        target_fat_fraction = d.pop("target_fat_fraction")

        leanness_view = cls(
            band_basis=band_basis,
            band_lower_fat_fraction=band_lower_fat_fraction,
            band_upper_fat_fraction=band_upper_fat_fraction,
            counts_from_fat_fraction=counts_from_fat_fraction,
            cut_due_date=cut_due_date,
            cut_due_fat_fraction=cut_due_fat_fraction,
            fat_fraction=fat_fraction,
            healthy_lower_fat_fraction=healthy_lower_fat_fraction,
            healthy_upper_fat_fraction=healthy_upper_fat_fraction,
            margin_over_due=margin_over_due,
            probability_other_side=probability_other_side,
            probability_over_line=probability_over_line,
            reading_is_good_enough=reading_is_good_enough,
            reading_sd=reading_sd,
            target_fat_fraction=target_fat_fraction,
        )

        leanness_view.additional_properties = d
        return leanness_view

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
