from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.blocked_dates import BlockedDates
    from ..models.body_fat_band import BodyFatBand
    from ..models.season_event import SeasonEvent


T = TypeVar("T", bound="SeasonLimits")


@_attrs_define
class SeasonLimits:
    """What the season must keep to.

    Attributes:
        band (BodyFatBand | None | Unset): The chosen band of body fat; a usual one by default.
        blocked_dates (list[BlockedDates] | Unset): When no cut may run. `[]` if absent.
        events (list[SeasonEvent] | Unset): Days to arrive at settled. `[]` if absent.
        least_weeks_between_cuts (int | Unset): From a cut's end to the next. Under eight is warned of. `8` if absent.
        most_cuts (int | None | Unset): Most cuts in the whole season; open by default.
        most_cuts_a_year (int | Unset): Most cuts in any 52 weeks. More than three are warned of. `3` if absent.
        most_weeks_above_band (int | None | Unset): Most weeks that may end above the band. By default a season only
            counts them, and an optimum keeps to at most a quarter more than the fewest possible.
        most_weeks_dieting (int | None | Unset): Most weeks in a deficit; any by default.
    """

    band: BodyFatBand | None | Unset = UNSET
    blocked_dates: list[BlockedDates] | Unset = UNSET
    events: list[SeasonEvent] | Unset = UNSET
    least_weeks_between_cuts: int | Unset = UNSET
    most_cuts: int | None | Unset = UNSET
    most_cuts_a_year: int | Unset = UNSET
    most_weeks_above_band: int | None | Unset = UNSET
    most_weeks_dieting: int | None | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.body_fat_band import BodyFatBand  # noqa: PLC0415

        band: dict[str, Any] | None | Unset
        if isinstance(self.band, Unset):
            band = UNSET
        elif isinstance(self.band, BodyFatBand):
            band = self.band.to_dict()
        else:
            band = self.band

        blocked_dates: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.blocked_dates, Unset):
            blocked_dates = []
            for blocked_dates_item_data in self.blocked_dates:
                blocked_dates_item = blocked_dates_item_data.to_dict()
                blocked_dates.append(blocked_dates_item)

        events: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.events, Unset):
            events = []
            for events_item_data in self.events:
                events_item = events_item_data.to_dict()
                events.append(events_item)

        least_weeks_between_cuts = self.least_weeks_between_cuts

        most_cuts: int | None | Unset
        if isinstance(self.most_cuts, Unset):
            most_cuts = UNSET
        else:
            most_cuts = self.most_cuts

        most_cuts_a_year = self.most_cuts_a_year

        most_weeks_above_band: int | None | Unset
        if isinstance(self.most_weeks_above_band, Unset):
            most_weeks_above_band = UNSET
        else:
            most_weeks_above_band = self.most_weeks_above_band

        most_weeks_dieting: int | None | Unset
        if isinstance(self.most_weeks_dieting, Unset):
            most_weeks_dieting = UNSET
        else:
            most_weeks_dieting = self.most_weeks_dieting

        field_dict: dict[str, Any] = {}

        field_dict.update({})
        if band is not UNSET:
            field_dict["band"] = band
        if blocked_dates is not UNSET:
            field_dict["blocked_dates"] = blocked_dates
        if events is not UNSET:
            field_dict["events"] = events
        if least_weeks_between_cuts is not UNSET:
            field_dict["least_weeks_between_cuts"] = least_weeks_between_cuts
        if most_cuts is not UNSET:
            field_dict["most_cuts"] = most_cuts
        if most_cuts_a_year is not UNSET:
            field_dict["most_cuts_a_year"] = most_cuts_a_year
        if most_weeks_above_band is not UNSET:
            field_dict["most_weeks_above_band"] = most_weeks_above_band
        if most_weeks_dieting is not UNSET:
            field_dict["most_weeks_dieting"] = most_weeks_dieting

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.blocked_dates import BlockedDates  # noqa: PLC0415
        from ..models.body_fat_band import BodyFatBand  # noqa: PLC0415
        from ..models.season_event import SeasonEvent  # noqa: PLC0415

        d = dict(src_dict)

        def _parse_band(data: object) -> BodyFatBand | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                band_type_0 = BodyFatBand.from_dict(data)

                return band_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(BodyFatBand | None | Unset, data)

        band = _parse_band(d.pop("band", UNSET))

        _blocked_dates = d.pop("blocked_dates", UNSET)
        blocked_dates: list[BlockedDates] | Unset = UNSET
        if _blocked_dates is not UNSET:
            blocked_dates = []
            for blocked_dates_item_data in _blocked_dates:
                blocked_dates_item = BlockedDates.from_dict(blocked_dates_item_data)

                blocked_dates.append(blocked_dates_item)

        _events = d.pop("events", UNSET)
        events: list[SeasonEvent] | Unset = UNSET
        if _events is not UNSET:
            events = []
            for events_item_data in _events:
                events_item = SeasonEvent.from_dict(events_item_data)

                events.append(events_item)

        least_weeks_between_cuts = d.pop("least_weeks_between_cuts", UNSET)

        def _parse_most_cuts(data: object) -> int | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(int | None | Unset, data)

        most_cuts = _parse_most_cuts(d.pop("most_cuts", UNSET))

        most_cuts_a_year = d.pop("most_cuts_a_year", UNSET)

        def _parse_most_weeks_above_band(data: object) -> int | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(int | None | Unset, data)

        most_weeks_above_band = _parse_most_weeks_above_band(
            d.pop("most_weeks_above_band", UNSET)
        )

        def _parse_most_weeks_dieting(data: object) -> int | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(int | None | Unset, data)

        most_weeks_dieting = _parse_most_weeks_dieting(
            d.pop("most_weeks_dieting", UNSET)
        )

        season_limits = cls(
            band=band,
            blocked_dates=blocked_dates,
            events=events,
            least_weeks_between_cuts=least_weeks_between_cuts,
            most_cuts=most_cuts,
            most_cuts_a_year=most_cuts_a_year,
            most_weeks_above_band=most_weeks_above_band,
            most_weeks_dieting=most_weeks_dieting,
        )

        return season_limits
