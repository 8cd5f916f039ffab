from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..models.phase_kind import PhaseKind
from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.adherence_figure import AdherenceFigure
    from ..models.known_maintenance import KnownMaintenance
    from ..models.phase_change import PhaseChange
    from ..models.ratio_figure import RatioFigure
    from ..models.start_body import StartBody
    from ..models.week_followed import WeekFollowed


T = TypeVar("T", bound="PhaseFollowed")


@_attrs_define
class PhaseFollowed:
    """The phase that is being followed, or was.

    Attributes:
        kind (PhaseKind): What a phase is for.
        maintenance (KnownMaintenance): A maintenance estimate to plan from, such as an earlier answer of
            `/v1/maintenance`.
        start_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
        weeks (list[WeekFollowed]): The weeks as first planned, in order: those of the plan, whatever was corrected
            since.
        adherence (AdherenceFigure | Unset): How well deficits are kept to, learned from the log by reviews: the share
            of a planned deficit that is really
            followed, 1 for all of it.
        changes (list[PhaseChange] | Unset): What was changed since, in order of the dates. `[]` if absent.
        fat_ceiling_fraction (float | None | Unset): Body fat that ends a gain.
        fat_loss_kg (float | None | Unset): Fat that the phase is to lose, kilograms; where absent, its length is the
            target.
        logging_ratio (None | RatioFigure | Unset): Logged over eaten energy as the plan knew it, where it did.
        start_body (None | StartBody | Unset): The body on its first morning; the profile's where absent.
        usual_intake_kcal (float | None | Unset): What was eaten a day before the phase; maintenance by default.
        weeks_before (float | Unset): Weeks of a deficit just before that count as of this one, the weeks between
            included; absent where there are none.
    """

    kind: PhaseKind
    maintenance: KnownMaintenance
    start_date: datetime.date
    weeks: list[WeekFollowed]
    adherence: AdherenceFigure | Unset = UNSET
    changes: list[PhaseChange] | Unset = UNSET
    fat_ceiling_fraction: float | None | Unset = UNSET
    fat_loss_kg: float | None | Unset = UNSET
    logging_ratio: None | RatioFigure | Unset = UNSET
    start_body: None | StartBody | Unset = UNSET
    usual_intake_kcal: float | None | Unset = UNSET
    weeks_before: float | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.ratio_figure import RatioFigure  # noqa: PLC0415
        from ..models.start_body import StartBody  # noqa: PLC0415

        kind = self.kind.value

        maintenance = self.maintenance.to_dict()

        start_date = self.start_date.isoformat()

        weeks = []
        for weeks_item_data in self.weeks:
            weeks_item = weeks_item_data.to_dict()
            weeks.append(weeks_item)

        adherence: dict[str, Any] | Unset = UNSET
        if not isinstance(self.adherence, Unset):
            adherence = self.adherence.to_dict()

        changes: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.changes, Unset):
            changes = []
            for changes_item_data in self.changes:
                changes_item = changes_item_data.to_dict()
                changes.append(changes_item)

        fat_ceiling_fraction: float | None | Unset
        if isinstance(self.fat_ceiling_fraction, Unset):
            fat_ceiling_fraction = UNSET
        else:
            fat_ceiling_fraction = self.fat_ceiling_fraction

        fat_loss_kg: float | None | Unset
        if isinstance(self.fat_loss_kg, Unset):
            fat_loss_kg = UNSET
        else:
            fat_loss_kg = self.fat_loss_kg

        logging_ratio: dict[str, Any] | None | Unset
        if isinstance(self.logging_ratio, Unset):
            logging_ratio = UNSET
        elif isinstance(self.logging_ratio, RatioFigure):
            logging_ratio = self.logging_ratio.to_dict()
        else:
            logging_ratio = self.logging_ratio

        start_body: dict[str, Any] | None | Unset
        if isinstance(self.start_body, Unset):
            start_body = UNSET
        elif isinstance(self.start_body, StartBody):
            start_body = self.start_body.to_dict()
        else:
            start_body = self.start_body

        usual_intake_kcal: float | None | Unset
        if isinstance(self.usual_intake_kcal, Unset):
            usual_intake_kcal = UNSET
        else:
            usual_intake_kcal = self.usual_intake_kcal

        weeks_before = self.weeks_before

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "kind": kind,
                "maintenance": maintenance,
                "start_date": start_date,
                "weeks": weeks,
            }
        )
        if adherence is not UNSET:
            field_dict["adherence"] = adherence
        if changes is not UNSET:
            field_dict["changes"] = changes
        if fat_ceiling_fraction is not UNSET:
            field_dict["fat_ceiling_fraction"] = fat_ceiling_fraction
        if fat_loss_kg is not UNSET:
            field_dict["fat_loss_kg"] = fat_loss_kg
        if logging_ratio is not UNSET:
            field_dict["logging_ratio"] = logging_ratio
        if start_body is not UNSET:
            field_dict["start_body"] = start_body
        if usual_intake_kcal is not UNSET:
            field_dict["usual_intake_kcal"] = usual_intake_kcal
        if weeks_before is not UNSET:
            field_dict["weeks_before"] = weeks_before

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.adherence_figure import AdherenceFigure  # noqa: PLC0415
        from ..models.known_maintenance import KnownMaintenance  # noqa: PLC0415
        from ..models.phase_change import PhaseChange  # noqa: PLC0415
        from ..models.ratio_figure import RatioFigure  # noqa: PLC0415
        from ..models.start_body import StartBody  # noqa: PLC0415
        from ..models.week_followed import WeekFollowed  # noqa: PLC0415

        d = dict(src_dict)
        kind = PhaseKind(d.pop("kind"))

        maintenance = KnownMaintenance.from_dict(d.pop("maintenance"))

        start_date = datetime.date.fromisoformat(d.pop("start_date"))

        weeks = []
        _weeks = d.pop("weeks")
        for weeks_item_data in _weeks:
            weeks_item = WeekFollowed.from_dict(weeks_item_data)

            weeks.append(weeks_item)

        _adherence = d.pop("adherence", UNSET)
        adherence: AdherenceFigure | Unset
        if isinstance(_adherence, Unset):
            adherence = UNSET
        else:
            adherence = AdherenceFigure.from_dict(_adherence)

        _changes = d.pop("changes", UNSET)
        changes: list[PhaseChange] | Unset = UNSET
        if _changes is not UNSET:
            changes = []
            for changes_item_data in _changes:
                changes_item = PhaseChange.from_dict(changes_item_data)

                changes.append(changes_item)

        def _parse_fat_ceiling_fraction(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        fat_ceiling_fraction = _parse_fat_ceiling_fraction(
            d.pop("fat_ceiling_fraction", UNSET)
        )

        def _parse_fat_loss_kg(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        fat_loss_kg = _parse_fat_loss_kg(d.pop("fat_loss_kg", UNSET))

        def _parse_logging_ratio(data: object) -> None | RatioFigure | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                logging_ratio_type_0 = RatioFigure.from_dict(data)

                return logging_ratio_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | RatioFigure | Unset, data)

        logging_ratio = _parse_logging_ratio(d.pop("logging_ratio", UNSET))

        def _parse_start_body(data: object) -> None | StartBody | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                start_body_type_0 = StartBody.from_dict(data)

                return start_body_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | StartBody | Unset, data)

        start_body = _parse_start_body(d.pop("start_body", UNSET))

        def _parse_usual_intake_kcal(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        usual_intake_kcal = _parse_usual_intake_kcal(d.pop("usual_intake_kcal", UNSET))

        weeks_before = d.pop("weeks_before", UNSET)

        phase_followed = cls(
            kind=kind,
            maintenance=maintenance,
            start_date=start_date,
            weeks=weeks,
            adherence=adherence,
            changes=changes,
            fat_ceiling_fraction=fat_ceiling_fraction,
            fat_loss_kg=fat_loss_kg,
            logging_ratio=logging_ratio,
            start_body=start_body,
            usual_intake_kcal=usual_intake_kcal,
            weeks_before=weeks_before,
        )

        return phase_followed
