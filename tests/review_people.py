"""Simulated members of a fat-loss phase: what they log, and the body that they have and the reviewer does not know.

Bodies come from the nonlinear energy-balance model with their own maintenance, logging ratio, partition, gut
content and adaptation, none of which the reviewer is told. Before the phase they log three weeks at what they
take for maintenance; the plan starts from the maintenance read from that log.
"""

import random
from typing import NamedTuple

from lifters import CLEAR, lifter
from steelyard.science.body.constants import ADAPTATION_SHARE, GUT_CONTENT_KG
from steelyard.science.body.energy_balance import advance
from steelyard.science.body.state import BodyModel, BodyState, Diet, calibrate
from steelyard.science.body.uncertainty import experience_years, training_dose
from steelyard.science.log import reader as log_reader
from steelyard.science.log.entries import IntakeDay, Log, Weighing
from steelyard.science.measures.assessment import Assessment, assess
from steelyard.science.member.member import Member as ToldMember
from steelyard.science.member.member import Told
from steelyard.science.person.person import BodyFatMethod, Sex
from steelyard.science.person.screening import Screening
from steelyard.science.phase import FollowedPhase, FollowedWeek, PhaseKind
from steelyard.science.rails import deficit_limits
from steelyard.science.rails.macronutrients import split_intake
from steelyard.science.rails.subject import Subject

START_DAY = 738_000
BASELINE_DAYS = 21
PROTEIN = 2.0
ROOM_KCAL = 50.0  # that a plan keeps from the rails


class Habits(NamedTuple):
    """How a member keeps to the plan: what they log beyond it, and eat beyond what they log [kcal/d]."""

    logged_beyond_kcal: float = 0.0
    unlogged_kcal: float = 0.0
    jump_kg: float = 0.0  # step of water
    jump_day: int = 14


AS_PLANNED = Habits()


class Member:
    """One simulated member, lived day by day."""

    def __init__(self, seed: int, *, noise_sd_kg: float = 0.5, lag: float = 0.3, missing: float = 0.2) -> None:
        self.rng = random.Random(seed)
        self.noise_sd_kg, self.lag, self.missing = noise_sd_kg, lag, missing
        gauss = self.rng.gauss
        sex = self.rng.choice([Sex.MALE, Sex.FEMALE])
        fraction = self.rng.uniform(0.15, 0.26) if sex is Sex.MALE else self.rng.uniform(0.24, 0.36)
        height = gauss(178.0, 6.0) if sex is Sex.MALE else gauss(166.0, 6.0)
        weight = self.rng.uniform(23.0, 28.0) * (height / 100.0) ** 2
        told = min(0.5, max(0.1, fraction + gauss(0.0, 0.03)))
        self.person = lifter(
            sex,
            age_years=self.rng.randint(22, 50),
            height_cm=height,
            weight_kg=weight,
            fat=told,
            method=BodyFatMethod.SKINFOLDS,
            sessions=4,
        )
        self.assessed: Assessment = assess(self.person)
        total = self.assessed.total

        def bounded(spread: float) -> float:
            return max(-2.5, min(2.5, gauss(0.0, 1.0))) * spread

        maintenance = total.mean + bounded(total.sd)
        self.ratio = min(1.0, 0.9 + bounded(0.06))
        model, state = calibrate(
            weight_kg=weight,
            fat_kg=fraction * weight,
            maintenance_kcal=maintenance,
            resting_kcal=self.assessed.resting.mean,
            experience_years=experience_years(self.person.training),
            training_dose=training_dose(self.person.training),
        )
        self.model: BodyModel = model._replace(
            partition_scale=max(0.3, 1.0 + bounded(0.3)),
            gut_kg=max(0.1, GUT_CONTENT_KG + bounded(0.2)),
            adaptation_share=max(0.0, ADAPTATION_SHARE + bounded(0.08)),
        )
        self.state: BodyState = state
        self.noise = gauss(0.0, noise_sd_kg)
        self.weighings: list[Weighing] = []
        self.intakes: list[IntakeDay] = []
        self.day = START_DAY - BASELINE_DAYS
        self.water_kg = 0.0
        usual = 10.0 * round(0.1 * self.ratio * maintenance + gauss(0.0, 10.0))
        for _ in range(BASELINE_DAYS):
            self.live(usual)
        self.start = self.state

    @property
    def log(self) -> Log:
        return Log(list(self.weighings), list(self.intakes))

    def told(self, screening: Screening | None = CLEAR) -> ToldMember:
        """What a reviewer is told of them, as at the phase's start."""
        return ToldMember(Told(self.person, screening))

    def subject(self, maintenance_kcal: float) -> Subject:
        """What the rails read at the phase's start."""
        return self.told().subject._replace(maintenance_kcal=maintenance_kcal)

    def live(self, planned_kcal: float, habits: Habits = AS_PLANNED) -> None:
        """A day: weigh in the morning (or not), eat, log."""
        rng = self.rng
        if self.rng.random() >= self.missing or not self.weighings:
            self.weighings.append(Weighing(self.day, self.state.weight_kg + self.water_kg + self.noise))
        logged = max(0.0, (planned_kcal + habits.logged_beyond_kcal) * (1.0 + rng.gauss(0.0, 0.10)))
        self.intakes.append(IntakeDay(self.day, logged))
        eaten = logged / self.ratio + habits.unlogged_kcal
        protein = PROTEIN * self.person.weight_kg
        self.state = advance(self.model, self.state, Diet(eaten, 0.5 * eaten, protein / self.state.weight_kg), 1.0)
        fresh = (1.0 - self.lag**2) ** 0.5 * self.noise_sd_kg
        self.noise = self.lag * self.noise + rng.gauss(0.0, fresh)
        self.day += 1

    def plan(self, weeks: int, deficit_kcal: float = 500.0, fat_loss_kg: float | None = None) -> FollowedPhase:
        """A cut planned from the log so far."""
        reading = log_reader.read_log(self.person, self.assessed, self.log, self.day - 1)
        read = log_reader.maintenance_of(reading, self.assessed).maintenance
        largest = deficit_limits(self.subject(read.mean), float(weeks))[0].deficit_kcal
        deficit = min(deficit_kcal, largest - ROOM_KCAL)
        macros = split_intake(read.mean - deficit, self.person.weight_kg, PROTEIN)
        week = FollowedWeek(
            intake_kcal=float(macros.intake_kcal),
            protein_g=float(macros.protein_g),
            carbohydrate_g=float(macros.carbohydrate_g),
        )
        return FollowedPhase(
            kind=PhaseKind.MINI_CUT if weeks <= 6 else PhaseKind.CUT,
            start_day=START_DAY,
            weeks=(week,) * weeks,
            maintenance=read,
            fat_loss_kg=fat_loss_kg,
        )

    def follow(self, phase: FollowedPhase, days: int, habits: Habits, correction_kcal: float = 0.0) -> None:
        """Live some days of a phase, the intake corrected."""
        for _ in range(days):
            gone = self.day - START_DAY
            self.water_kg = habits.jump_kg if gone >= habits.jump_day else 0.0
            self.live(phase.week_of(gone).intake_kcal + correction_kcal, habits)

    @property
    def tissue_change_kg(self) -> float:
        """True change of tissue since the phase's start."""
        return float(self.state.tissue_kg - self.start.tissue_kg)

    @property
    def fat_change_kg(self) -> float:
        """True change of fat since the phase's start."""
        return float(self.state.fat_kg - self.start.fat_kg)
