from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, TypeVar, cast

from attrs import define as _attrs_define

from ..models.body_fat_method import BodyFatMethod
from ..models.maintenance_basis import MaintenanceBasis
from ..models.sex import Sex
from ..types import UNSET, Unset

if TYPE_CHECKING:
    from ..models.adherence_figure import AdherenceFigure
    from ..models.attention import Attention
    from ..models.energy_figure import EnergyFigure
    from ..models.known_reading import KnownReading
    from ..models.log import Log
    from ..models.mass_figure import MassFigure
    from ..models.past_phase import PastPhase
    from ..models.phase_followed import PhaseFollowed
    from ..models.question_asked import QuestionAsked
    from ..models.ratio_figure import RatioFigure
    from ..models.read_so_far import ReadSoFar
    from ..models.steered_figure import SteeredFigure
    from ..models.training import Training


T = TypeVar("T", bound="State")


@_attrs_define
class State:
    """What is known of a person on a day, each figure with its error. Send it with the next request, as it is, beside
    the same `profile`: it takes the place of the profile's weight and body fat, of the log so far and of the phase, so
    that only what was logged since need be sent. Nothing of it is kept by the service.

        Attributes:
            adaptation_kcal (EnergyFigure): An energy a day with its error.
            as_of_date (datetime.date): A civil date (the person's local day), 2000-01-01 to 2100-12-31.
            carried_kg (MassFigure): A mass with its error.
            fat_is_measured (bool): Whether a reading is behind it, rather than height and weight.
            fat_kg (MassFigure): A mass with its error.
            fat_method (BodyFatMethod): How a body-fat reading was taken, which sets its error.
            height_cm (float): Height in centimetres.
            lean_kg (MassFigure): A mass with its error.
            logging_ratio (RatioFigure): A ratio with its error.
            maintenance_basis (MaintenanceBasis): What maintenance rests on.
            maintenance_kcal (EnergyFigure): An energy a day with its error.
            physical_maintenance_kcal (EnergyFigure): An energy a day with its error.
            sex (Sex): Which set of equations applies. ``UNSPECIFIED`` uses both, widens the interval, takes the stricter
                rail.
            training (Training): Resistance training.
            weight_kg (MassFigure): A mass with its error.
            adherence (AdherenceFigure | Unset): How well deficits are kept to, learned from the log by reviews: the share
                of a planned deficit that is really
                followed, 1 for all of it.
            attention (Attention | None | Unset): That of the last review.
            log (Log | None | Unset): The last weeks of the log, as sent.
            phase (None | PhaseFollowed | Unset): The phase under way and what changed of it.
            phase_history (list[PastPhase] | None | Unset): Past phases, oldest first; null: not known.
            question (QuestionAsked | Unset): The question that reviews last asked in the phase under way; one that is open
                is not asked anew every week.
            reading (None | ReadSoFar | Unset): What was read of the log before those weeks.
            readings (list[KnownReading] | Unset): Readings of body fat so far, oldest first. `[]` if absent.
            steered (SteeredFigure | Unset): What weight taught of the maintenance of somebody who hardly logs food, as
                told, in the reviews by a day.
            usual_intake_kcal (float | None | Unset): Eaten a day at present, logging scale; null where not known.
            version (int | Unset): Version of the state. `1` if absent.
    """

    adaptation_kcal: EnergyFigure
    as_of_date: datetime.date
    carried_kg: MassFigure
    fat_is_measured: bool
    fat_kg: MassFigure
    fat_method: BodyFatMethod
    height_cm: float
    lean_kg: MassFigure
    logging_ratio: RatioFigure
    maintenance_basis: MaintenanceBasis
    maintenance_kcal: EnergyFigure
    physical_maintenance_kcal: EnergyFigure
    sex: Sex
    training: Training
    weight_kg: MassFigure
    adherence: AdherenceFigure | Unset = UNSET
    attention: Attention | None | Unset = UNSET
    log: Log | None | Unset = UNSET
    phase: None | PhaseFollowed | Unset = UNSET
    phase_history: list[PastPhase] | None | Unset = UNSET
    question: QuestionAsked | Unset = UNSET
    reading: None | ReadSoFar | Unset = UNSET
    readings: list[KnownReading] | Unset = UNSET
    steered: SteeredFigure | Unset = UNSET
    usual_intake_kcal: float | None | Unset = UNSET
    version: int | Unset = UNSET

    def to_dict(self) -> dict[str, Any]:
        from ..models.attention import Attention  # noqa: PLC0415
        from ..models.log import Log  # noqa: PLC0415
        from ..models.phase_followed import PhaseFollowed  # noqa: PLC0415
        from ..models.read_so_far import ReadSoFar  # noqa: PLC0415

        adaptation_kcal = self.adaptation_kcal.to_dict()

        as_of_date = self.as_of_date.isoformat()

        carried_kg = self.carried_kg.to_dict()

        fat_is_measured = self.fat_is_measured

        fat_kg = self.fat_kg.to_dict()

        fat_method = self.fat_method.value

        height_cm = self.height_cm

        lean_kg = self.lean_kg.to_dict()

        logging_ratio = self.logging_ratio.to_dict()

        maintenance_basis = self.maintenance_basis.value

        maintenance_kcal = self.maintenance_kcal.to_dict()

        physical_maintenance_kcal = self.physical_maintenance_kcal.to_dict()

        sex = self.sex.value

        training = self.training.to_dict()

        weight_kg = self.weight_kg.to_dict()

        adherence: dict[str, Any] | Unset = UNSET
        if not isinstance(self.adherence, Unset):
            adherence = self.adherence.to_dict()

        attention: dict[str, Any] | None | Unset
        if isinstance(self.attention, Unset):
            attention = UNSET
        elif isinstance(self.attention, Attention):
            attention = self.attention.to_dict()
        else:
            attention = self.attention

        log: dict[str, Any] | None | Unset
        if isinstance(self.log, Unset):
            log = UNSET
        elif isinstance(self.log, Log):
            log = self.log.to_dict()
        else:
            log = self.log

        phase: dict[str, Any] | None | Unset
        if isinstance(self.phase, Unset):
            phase = UNSET
        elif isinstance(self.phase, PhaseFollowed):
            phase = self.phase.to_dict()
        else:
            phase = self.phase

        phase_history: list[dict[str, Any]] | None | Unset
        if isinstance(self.phase_history, Unset):
            phase_history = UNSET
        elif isinstance(self.phase_history, list):
            phase_history = []
            for phase_history_type_0_item_data in self.phase_history:
                phase_history_type_0_item = phase_history_type_0_item_data.to_dict()
                phase_history.append(phase_history_type_0_item)

        else:
            phase_history = self.phase_history

        question: dict[str, Any] | Unset = UNSET
        if not isinstance(self.question, Unset):
            question = self.question.to_dict()

        reading: dict[str, Any] | None | Unset
        if isinstance(self.reading, Unset):
            reading = UNSET
        elif isinstance(self.reading, ReadSoFar):
            reading = self.reading.to_dict()
        else:
            reading = self.reading

        readings: list[dict[str, Any]] | Unset = UNSET
        if not isinstance(self.readings, Unset):
            readings = []
            for readings_item_data in self.readings:
                readings_item = readings_item_data.to_dict()
                readings.append(readings_item)

        steered: dict[str, Any] | Unset = UNSET
        if not isinstance(self.steered, Unset):
            steered = self.steered.to_dict()

        usual_intake_kcal: float | None | Unset
        if isinstance(self.usual_intake_kcal, Unset):
            usual_intake_kcal = UNSET
        else:
            usual_intake_kcal = self.usual_intake_kcal

        version = self.version

        field_dict: dict[str, Any] = {}

        field_dict.update(
            {
                "adaptation_kcal": adaptation_kcal,
                "as_of_date": as_of_date,
                "carried_kg": carried_kg,
                "fat_is_measured": fat_is_measured,
                "fat_kg": fat_kg,
                "fat_method": fat_method,
                "height_cm": height_cm,
                "lean_kg": lean_kg,
                "logging_ratio": logging_ratio,
                "maintenance_basis": maintenance_basis,
                "maintenance_kcal": maintenance_kcal,
                "physical_maintenance_kcal": physical_maintenance_kcal,
                "sex": sex,
                "training": training,
                "weight_kg": weight_kg,
            }
        )
        if adherence is not UNSET:
            field_dict["adherence"] = adherence
        if attention is not UNSET:
            field_dict["attention"] = attention
        if log is not UNSET:
            field_dict["log"] = log
        if phase is not UNSET:
            field_dict["phase"] = phase
        if phase_history is not UNSET:
            field_dict["phase_history"] = phase_history
        if question is not UNSET:
            field_dict["question"] = question
        if reading is not UNSET:
            field_dict["reading"] = reading
        if readings is not UNSET:
            field_dict["readings"] = readings
        if steered is not UNSET:
            field_dict["steered"] = steered
        if usual_intake_kcal is not UNSET:
            field_dict["usual_intake_kcal"] = usual_intake_kcal
        if version is not UNSET:
            field_dict["version"] = version

        return field_dict

    @classmethod
    def from_dict(cls: type[T], src_dict: Mapping[str, Any]) -> T:
        from ..models.adherence_figure import AdherenceFigure  # noqa: PLC0415
        from ..models.attention import Attention  # noqa: PLC0415
        from ..models.energy_figure import EnergyFigure  # noqa: PLC0415
        from ..models.known_reading import KnownReading  # noqa: PLC0415
        from ..models.log import Log  # noqa: PLC0415
        from ..models.mass_figure import MassFigure  # noqa: PLC0415
        from ..models.past_phase import PastPhase  # noqa: PLC0415
        from ..models.phase_followed import PhaseFollowed  # noqa: PLC0415
        from ..models.question_asked import QuestionAsked  # noqa: PLC0415
        from ..models.ratio_figure import RatioFigure  # noqa: PLC0415
        from ..models.read_so_far import ReadSoFar  # noqa: PLC0415
        from ..models.steered_figure import SteeredFigure  # noqa: PLC0415
        from ..models.training import Training  # noqa: PLC0415

        d = dict(src_dict)
        adaptation_kcal = EnergyFigure.from_dict(d.pop("adaptation_kcal"))

        as_of_date = datetime.date.fromisoformat(d.pop("as_of_date"))

        carried_kg = MassFigure.from_dict(d.pop("carried_kg"))

        fat_is_measured = d.pop("fat_is_measured")

        fat_kg = MassFigure.from_dict(d.pop("fat_kg"))

        fat_method = BodyFatMethod(d.pop("fat_method"))

        height_cm = d.pop("height_cm")

        lean_kg = MassFigure.from_dict(d.pop("lean_kg"))

        logging_ratio = RatioFigure.from_dict(d.pop("logging_ratio"))

        maintenance_basis = MaintenanceBasis(d.pop("maintenance_basis"))

        maintenance_kcal = EnergyFigure.from_dict(d.pop("maintenance_kcal"))

        physical_maintenance_kcal = EnergyFigure.from_dict(
            d.pop("physical_maintenance_kcal")
        )

        sex = Sex(d.pop("sex"))

        training = Training.from_dict(d.pop("training"))

        weight_kg = MassFigure.from_dict(d.pop("weight_kg"))

        _adherence = d.pop("adherence", UNSET)
        adherence: AdherenceFigure | Unset
        if isinstance(_adherence, Unset):
            adherence = UNSET
        else:
            adherence = AdherenceFigure.from_dict(_adherence)

        def _parse_attention(data: object) -> Attention | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                attention_type_0 = Attention.from_dict(data)

                return attention_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(Attention | None | Unset, data)

        attention = _parse_attention(d.pop("attention", UNSET))

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

        def _parse_phase(data: object) -> None | PhaseFollowed | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                phase_type_0 = PhaseFollowed.from_dict(data)

                return phase_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | PhaseFollowed | Unset, data)

        phase = _parse_phase(d.pop("phase", UNSET))

        def _parse_phase_history(data: object) -> list[PastPhase] | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, list):
                    raise TypeError()
                phase_history_type_0 = []
                _phase_history_type_0 = data
                for phase_history_type_0_item_data in _phase_history_type_0:
                    phase_history_type_0_item = PastPhase.from_dict(
                        phase_history_type_0_item_data
                    )

                    phase_history_type_0.append(phase_history_type_0_item)

                return phase_history_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(list[PastPhase] | None | Unset, data)

        phase_history = _parse_phase_history(d.pop("phase_history", UNSET))

        _question = d.pop("question", UNSET)
        question: QuestionAsked | Unset
        if isinstance(_question, Unset):
            question = UNSET
        else:
            question = QuestionAsked.from_dict(_question)

        def _parse_reading(data: object) -> None | ReadSoFar | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            try:
                if not isinstance(data, dict):
                    raise TypeError()
                reading_type_0 = ReadSoFar.from_dict(data)

                return reading_type_0
            except (TypeError, ValueError, AttributeError, KeyError):
                pass
            return cast(None | ReadSoFar | Unset, data)

        reading = _parse_reading(d.pop("reading", UNSET))

        _readings = d.pop("readings", UNSET)
        readings: list[KnownReading] | Unset = UNSET
        if _readings is not UNSET:
            readings = []
            for readings_item_data in _readings:
                readings_item = KnownReading.from_dict(readings_item_data)

                readings.append(readings_item)

        _steered = d.pop("steered", UNSET)
        steered: SteeredFigure | Unset
        if isinstance(_steered, Unset):
            steered = UNSET
        else:
            steered = SteeredFigure.from_dict(_steered)

        def _parse_usual_intake_kcal(data: object) -> float | None | Unset:
            if data is None:
                return data
            if isinstance(data, Unset):
                return data
            return cast(float | None | Unset, data)

        usual_intake_kcal = _parse_usual_intake_kcal(d.pop("usual_intake_kcal", UNSET))

        version = d.pop("version", UNSET)

        state = cls(
            adaptation_kcal=adaptation_kcal,
            as_of_date=as_of_date,
            carried_kg=carried_kg,
            fat_is_measured=fat_is_measured,
            fat_kg=fat_kg,
            fat_method=fat_method,
            height_cm=height_cm,
            lean_kg=lean_kg,
            logging_ratio=logging_ratio,
            maintenance_basis=maintenance_basis,
            maintenance_kcal=maintenance_kcal,
            physical_maintenance_kcal=physical_maintenance_kcal,
            sex=sex,
            training=training,
            weight_kg=weight_kg,
            adherence=adherence,
            attention=attention,
            log=log,
            phase=phase,
            phase_history=phase_history,
            question=question,
            reading=reading,
            readings=readings,
            steered=steered,
            usual_intake_kcal=usual_intake_kcal,
            version=version,
        )

        return state
