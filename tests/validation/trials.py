"""A trial as a file: who took part, what they ate, and what was measured. ``trials.md`` describes the format.

A file names what a paper reports; where it leaves a figure of the simulation open, one rule fills it for every trial:

- Resting energy: as measured, else Mifflin MD et al. Am J Clin Nutr 1990;51:241-7.
- Maintenance: as measured, else what the service says of such a person, given the resting energy and the activity
  level: of both sexes by their share.
- Carbohydrate: half of intake, before and during, where it was not reported.
"""

from pathlib import Path
from typing import Any

import msgspec
from steelyard.science.body.uncertainty import Body, experience_years, training_dose
from steelyard.science.measures import total_energy
from steelyard.science.measures.resting_energy import INDIVIDUAL_ERROR
from steelyard.science.numbers.estimate import Estimate
from steelyard.science.person.person import ActivityLevel, BodyFatMethod, Sex, Training, TrainingStatus
from steelyard.science.person.person import Person as ServicePerson

SHARED = Path(__file__).with_name("trials.toml")
CARBOHYDRATE_SHARE = 0.5
PROTEIN_KCAL_PER_G = 4.0
CARBOHYDRATE_KCAL_PER_G = 4.0


class TrialError(ValueError):
    """A trial that leaves out what is needed, or says it twice; the text names the trial and the field."""


class _Struct(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    pass


class Measured(_Struct):
    """A measured mean change [kg], its standard error and the SD of change between participants, where known."""

    change_kg: float
    standard_error_kg: float | None = None
    sd_kg: float | None = None


class Person(_Struct):
    """The mean participant: ``fat_kg`` or ``body_fat_percent``; ``male_share`` 0-1."""

    weight_kg: float
    fat_kg: float | None = None
    body_fat_percent: float | None = None
    body_fat_method: BodyFatMethod = BodyFatMethod.DXA
    male_share: float = 0.5
    age_years: float | None = None
    height_cm: float | None = None


class TrialTraining(_Struct):
    """How participants trained during the trial, and what they were used to."""

    status: TrainingStatus = TrainingStatus.UNTRAINED
    resistance_sessions_per_week: float = 0.0
    is_new_programme: bool = False


class Maintenance(_Struct):
    """Intake at energy balance before the trial: ``kcal`` as measured, or the activity ``level`` it follows from."""

    kcal: float | None = None
    level: ActivityLevel | None = None
    resting_kcal: float | None = None


class Eaten(_Struct):
    """A diet held for ``days``. Intake in exactly one way; the others are optional, each in at most one way."""

    days: float
    intake_kcal: float | None = None
    change_kcal: float | None = None  # against maintenance
    share_of_maintenance: float | None = None
    protein_g_per_kg: float | None = None
    protein_share: float | None = None
    carbohydrate_g: float | None = None
    carbohydrate_change_g: float | None = None  # against the usual diet
    carbohydrate_share: float | None = None
    sodium_change_mg: float = 0.0


class Before(_Struct):
    """What was eaten before the trial, where it was not maintenance."""

    intake_kcal: float | None = None
    change_kcal: float | None = None
    carbohydrate_share: float = CARBOHYDRATE_SHARE


class Changes(_Struct):
    """Measured changes; at least one. Fat-free mass by difference where a paper gives it so."""

    body_mass: Measured | None = None
    fat_mass: Measured | None = None
    fat_free_mass: Measured | None = None


class Trial(_Struct):
    """One arm of a study. ``study`` groups arms; ``in_sample`` names constants of the model that were set on it."""

    id: str
    title: str
    source: str
    participants: int
    person: Person
    maintenance: Maintenance
    eaten: tuple[Eaten, ...]
    measured: Changes
    study: str | None = None
    training: TrialTraining = TrialTraining()
    before: Before = Before()
    in_sample: tuple[str, ...] = ()
    intake_from: str = ""
    assumed: str = ""


class TrialFile(_Struct):
    """The whole file."""

    trial: tuple[Trial, ...]


class Period(msgspec.Struct, frozen=True):
    """A diet as simulated: [d], [kcal/d], [g/kg/d], [mg/d]."""

    days: float
    intake_kcal: float
    carbohydrate_kcal: float
    protein_g_per_kg: float
    sodium_change_mg: float


class Case(msgspec.Struct, frozen=True):
    """A trial with every open figure filled."""

    trial: Trial
    fat_kg: float
    resting_kcal: float
    maintenance_kcal: float
    usual_intake_kcal: float | None
    periods: tuple[Period, ...]

    @property
    def id(self) -> str:
        """Of the trial."""
        return self.trial.id

    @property
    def study(self) -> str:
        """Of which the trial is an arm."""
        return self.trial.study or self.trial.id

    @property
    def days(self) -> float:
        """Length of the trial [d]."""
        return sum(period.days for period in self.periods)

    @property
    def training(self) -> Training:
        """As the service is told of it."""
        told = self.trial.training
        return Training(
            status=told.status,
            resistance_sessions_per_week=told.resistance_sessions_per_week,
            is_new_programme=told.is_new_programme,
        )

    def body(self, fat: Any, maintenance: Any) -> Body:
        """The forecast's view of the mean participant, given estimates of fat mass and maintenance."""
        dose = training_dose(self.training)
        return Body(
            weight_kg=self.trial.person.weight_kg,
            fat_kg=fat,
            maintenance_kcal=maintenance,
            resting_kcal=self.resting_kcal,
            experience_years=experience_years(self.training),
            training_dose=dose,
            new_training=dose if self.training.is_new_programme else 0.0,
            carbohydrate_share=self.trial.before.carbohydrate_share,
            usual_intake_kcal=self.usual_intake_kcal,
        )

    @property
    def tissue_share(self) -> float | None:
        """Energy of the measured tissue over that which the intake told leaves in it; None where fat is unknown.

        Far from 1 the trial's own numbers do not close: see ``comparison.closes``.
        """
        measured = self.trial.measured
        if measured.fat_mass is None:
            return None
        free = measured.fat_free_mass
        if free is None and measured.body_mass is None:
            return None
        lean = free.change_kg if free else measured.body_mass.change_kg - measured.fat_mass.change_kg  # type: ignore[union-attr]
        tissue = 9441.0 * measured.fat_mass.change_kg + 1816.0 * lean
        told = sum(p.days * (p.intake_kcal - self.maintenance_kcal) for p in self.periods)
        return tissue / told if abs(told) > 1.0 else None


def read(path: Path = SHARED) -> tuple[Case, ...]:
    """The trials of a file, filled. Raises ``TrialError`` for what cannot be simulated, naming trial and field."""
    try:
        file = msgspec.toml.decode(path.read_bytes(), type=TrialFile)
    except msgspec.ValidationError as error:
        raise TrialError(f"{path.name}: {error}") from error
    except msgspec.DecodeError as error:
        raise TrialError(f"{path.name} is no TOML: {error}") from error
    ids = [trial.id for trial in file.trial]
    if doubles := sorted({id for id in ids if ids.count(id) > 1}):
        raise TrialError(f"{path.name}: more than one trial has the id {', '.join(doubles)}")
    return tuple(fill(trial) for trial in file.trial)


def _one(trial: Trial, where: str, given: dict[str, float | None], *, is_needed: bool) -> str | None:
    told = [name for name, value in given.items() if value is not None]
    if len(told) > 1 or (is_needed and not told):
        raise TrialError(f"{trial.id}: {where} needs {'exactly' if is_needed else 'at most'} one of {', '.join(given)}")
    return told[0] if told else None


def fill(trial: Trial) -> Case:
    """The trial with every open figure filled by the rules above."""
    person = trial.person
    if not (person.weight_kg > 0.0 and trial.participants > 0 and trial.eaten):
        raise TrialError(f"{trial.id}: needs a body mass, participants and at least one [[trial.eaten]]")
    given = {"fat_kg": person.fat_kg, "body_fat_percent": person.body_fat_percent}
    told = _one(trial, "person", given, is_needed=True)
    fat = person.fat_kg if told == "fat_kg" else person.weight_kg * (person.body_fat_percent or 0.0) / 100.0
    if fat is None or not 0.0 < fat < person.weight_kg:
        raise TrialError(f"{trial.id}: person.{told} leaves no lean tissue or no fat")
    resting = _resting_kcal(trial)
    maintenance = _maintenance_kcal(trial, resting)
    before = trial.before
    usual = _one(
        trial, "before", {"intake_kcal": before.intake_kcal, "change_kcal": before.change_kcal}, is_needed=False
    )
    usual_kcal = (
        None if usual is None else before.intake_kcal if usual == "intake_kcal" else maintenance + before.change_kcal  # type: ignore[operator]
    )
    usual_carbohydrate = before.carbohydrate_share * maintenance
    periods = tuple(_period(trial, eaten, maintenance, usual_carbohydrate) for eaten in trial.eaten)
    return Case(trial, fat, resting, maintenance, usual_kcal, periods)


def mifflin_kcal(weight_kg: float, height_cm: float, age_years: float, male_share: float) -> float:
    """Resting energy of a group of both sexes (Mifflin 1990)."""
    return 10 * weight_kg + 6.25 * height_cm - 5 * age_years + 5 * male_share - 161 * (1 - male_share)


def _resting_kcal(trial: Trial) -> float:
    if trial.maintenance.resting_kcal is not None:
        return trial.maintenance.resting_kcal
    person = trial.person
    if person.height_cm is None or person.age_years is None:
        raise TrialError(
            f"{trial.id}: needs maintenance.resting_kcal, or person.height_cm and person.age_years to compute it"
        )
    return mifflin_kcal(person.weight_kg, person.height_cm, person.age_years, person.male_share)


def _maintenance_kcal(trial: Trial, resting_kcal: float) -> float:
    told = trial.maintenance
    if (told.kcal is None) == (told.level is None):
        raise TrialError(f"{trial.id}: maintenance needs exactly one of kcal, level")
    if told.kcal is not None:
        return told.kcal
    assert told.level is not None
    person = trial.person
    if person.height_cm is None or person.age_years is None:
        raise TrialError(f"{trial.id}: maintenance.level needs person.height_cm and person.age_years")
    resting = Estimate(resting_kcal, INDIVIDUAL_ERROR * resting_kcal)
    shares = ((Sex.MALE, person.male_share), (Sex.FEMALE, 1.0 - person.male_share))
    return sum(
        share
        * total_energy.estimate(
            ServicePerson(
                sex=sex,
                age_years=person.age_years,
                height_cm=person.height_cm,
                weight_kg=person.weight_kg,
                activity=told.level,
                training=Training(status=trial.training.status, resistance_sessions_per_week=0.0),
            ),
            resting,
        ).mean
        for sex, share in shares
        if share > 0.0
    )


def _period(trial: Trial, eaten: Eaten, maintenance_kcal: float, usual_carbohydrate_kcal: float) -> Period:
    if eaten.days <= 0.0:
        raise TrialError(f"{trial.id}: eaten.days must be over 0")
    how = _one(
        trial,
        "eaten",
        {
            "intake_kcal": eaten.intake_kcal,
            "change_kcal": eaten.change_kcal,
            "share_of_maintenance": eaten.share_of_maintenance,
        },
        is_needed=True,
    )
    if how == "intake_kcal":
        intake = eaten.intake_kcal or 0.0
    elif how == "change_kcal":
        intake = maintenance_kcal + (eaten.change_kcal or 0.0)
    else:
        intake = maintenance_kcal * (eaten.share_of_maintenance or 0.0)
    if intake < 0.0:
        raise TrialError(f"{trial.id}: eaten.{how} leaves an intake under 0")
    protein = _one(
        trial,
        "eaten",
        {"protein_g_per_kg": eaten.protein_g_per_kg, "protein_share": eaten.protein_share},
        is_needed=True,
    )
    protein_g_per_kg = (
        eaten.protein_g_per_kg
        if protein == "protein_g_per_kg"
        else (eaten.protein_share or 0.0) * intake / PROTEIN_KCAL_PER_G / trial.person.weight_kg
    )
    carbohydrate = _one(
        trial,
        "eaten",
        {
            "carbohydrate_g": eaten.carbohydrate_g,
            "carbohydrate_change_g": eaten.carbohydrate_change_g,
            "carbohydrate_share": eaten.carbohydrate_share,
        },
        is_needed=False,
    )
    if carbohydrate == "carbohydrate_g":
        carbohydrate_kcal = CARBOHYDRATE_KCAL_PER_G * (eaten.carbohydrate_g or 0.0)
    elif carbohydrate == "carbohydrate_change_g":
        change = CARBOHYDRATE_KCAL_PER_G * (eaten.carbohydrate_change_g or 0.0)
        carbohydrate_kcal = max(usual_carbohydrate_kcal + change, 0.0)
    else:
        carbohydrate_kcal = (eaten.carbohydrate_share or trial.before.carbohydrate_share) * intake
    return Period(eaten.days, intake, carbohydrate_kcal, protein_g_per_kg or 0.0, eaten.sodium_change_mg)
