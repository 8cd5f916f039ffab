"""Carried mass against studies of the first weeks that are no trials here, and whether it would stay off for good.

Two readings of what a deficit takes are weighed: the body takes most of its salt water back while the deficit lasts, as
the model has it, or it follows what is eaten alone and all of it comes back after the phase. Bodies and carbohydrate
that were not seen reported are assumed, and said so.
"""

from collections.abc import Callable
from typing import NamedTuple

import numpy as np
from steelyard.science.body.energy_balance import walk
from steelyard.science.body.forecasting import stored_kcal
from steelyard.science.body.state import BodyModel, BodyState, Diet, calibrate, current_maintenance_kcal
from steelyard.science.body.uncertainty import settle_at

from .comparison import closes, is_within
from .first_weeks import MAINTENANCE
from .leave_one_out import REFITTED, biases_of
from .trials import CARBOHYDRATE_SHARE, Case, mifflin_kcal


class Salt(NamedTuple):
    """How much salt water a large deficit takes [kg], and the share of it that is taken back while it lasts."""

    title: str
    water_kg: float
    recovery: float


_usual = BodyModel._field_defaults
AS_IT_IS = Salt("as it is", _usual["salt_water_kg"], _usual["salt_recovery"])
READINGS = (
    AS_IT_IS,
    Salt("half taken back", 1.0, 0.5),
    Salt("nothing taken back", 1.0, 0.0),
    Salt("nothing taken back, of less", 0.3, 0.0),
)


class Person(NamedTuple):
    """The mean participant [kg, kcal/d] and what the usual diet has of carbohydrate."""

    weight_kg: float
    fat_kg: float
    resting_kcal: float
    maintenance_kcal: float
    carbohydrate_share: float = CARBOHYDRATE_SHARE


def _days(person: Person, salt: Salt, eaten: list[tuple[Diet, int]]) -> list[BodyState]:
    """The body on the first morning and after each day."""
    model, state = calibrate(
        weight_kg=person.weight_kg,
        fat_kg=person.fat_kg,
        maintenance_kcal=person.maintenance_kcal,
        resting_kcal=person.resting_kcal,
        carbohydrate_share=person.carbohydrate_share,
    )
    model = model._replace(salt_water_kg=salt.water_kg, salt_recovery=salt.recovery)
    path = [state]
    for diet, days in eaten:
        path += walk(model, path[-1], diet, (1.0,) * days)
    return path


def _mixed(intake_kcal: float, protein_g_per_kg: float = 1.2) -> Diet:
    return Diet(intake_kcal, CARBOHYDRATE_SHARE * intake_kcal, protein_g_per_kg)


# Assumed, where ``assumed`` of a check says so: 25 y, 180 cm and 1.55 times resting energy in the first.
_LEAN = Person(78.0, 13.0, mifflin_kcal(78.0, 180.0, 25.0, 1.0), 1.55 * mifflin_kcal(78.0, 180.0, 25.0, 1.0))
_OBESE = Person(106.0, 42.0, 1900.0, 2740.0)
_OVERWEIGHT_MEN = Person(88.0, 28.0, 1780.0, 2400.0)
_FIT = Person(70.0, 14.0, 1600.0, 2700.0)
_FASTING = Person(90.0, 38.0, 1550.0, 2100.0)
_YOUNG = Person(63.6, 9.5, mifflin_kcal(63.6, 171.7, 23.1, 1.0), 1.6 * mifflin_kcal(63.6, 171.7, 23.1, 1.0))
_OVERWEIGHT = Person(82.0, 27.0, 1600.0, 2600.0)


def _lean(salt: Salt) -> list[BodyState]:
    more, less = 1.5 * _LEAN.maintenance_kcal, 0.5 * _LEAN.maintenance_kcal
    return _days(_LEAN, salt, [(_mixed(more), 7), (_mixed(less), 21), (_mixed(more), 14)])


def _weight(path: list[BodyState], first: int, last: int) -> float:
    return float(path[last].weight_kg - path[first].weight_kg)


def _six_days(salt: Salt, is_carbohydrate: bool) -> float:
    intake = _OBESE.maintenance_kcal - 800.0
    usual = CARBOHYDRATE_SHARE * _OBESE.maintenance_kcal
    path = _days(_OBESE, salt, [(Diet(intake, usual - 800.0 if is_carbohydrate else usual, 1.0), 6)])
    return _weight(path, 0, -1)


def _no_carbohydrate(salt: Salt) -> float:
    path = _days(_OVERWEIGHT_MEN, salt, [(Diet(_OVERWEIGHT_MEN.maintenance_kcal, 4.0 * 31.0, 1.2), 15)])
    return min(_weight(path, 0, day) for day in range(1, 16))


def _glycogen(salt: Salt) -> float:
    path = _days(_FASTING, salt, [(Diet(405.0, 4.0 * 45.0, 0.5), 4)])
    return float(path[-1].fat_free_kg - path[-1].water_kg - path[-1].lean_kg) - float(
        path[0].fat_free_kg - path[0].water_kg - path[0].lean_kg
    )


def _overfed(salt: Salt) -> list[BodyState]:
    # Food was chosen freely: more fat, and of energy less from carbohydrate than before.
    usual = _YOUNG.maintenance_kcal
    diet = Diet(usual + 1500.0, CARBOHYDRATE_SHARE * usual, 1.2)
    return _days(_YOUNG, salt, [(diet, 3), (_mixed(usual), 5)])


def _energy_of_loss(salt: Salt, weeks: int) -> float:
    path = _days(_OVERWEIGHT, salt, [(_mixed(0.75 * _OVERWEIGHT.maintenance_kcal, 0.9), 7 * weeks)])
    return stored_kcal(path[0], path[-1]) / _weight(path, 0, -1)


def _half_time(salt: Salt) -> float:
    """Days within which half of the carried mass that goes at most has gone."""
    gone = [float(-after.carried_kg) for after in _days(_OVERWEIGHT, salt, [(_mixed(1950.0, 0.9), 42)])]
    return float(next(day for day, kg in enumerate(gone) if kg >= 0.5 * max(gone)))


class Check(NamedTuple):
    """A figure of a study: from and to what it is taken as met, and the model's. ``set_on`` names the constants that
    were set with an eye on it (in-sample)."""

    study: str
    what: str
    measured: str
    least: float
    most: float
    found: Callable[[Salt], float]
    unit: str = "kg"
    set_on: tuple[str, ...] = ()
    assumed: str = ""

    def is_met(self, salt: Salt = AS_IT_IS) -> bool:
        """Whether the model's figure lies where the study's may."""
        return self.least <= self.found(salt) <= self.most


def _near(measured: float, within: float) -> tuple[float, float]:
    return measured - within, measured + within


# Of body mass the acceptance of the published cases, else two standard errors or the range told.
_KG = 0.7
_SALT = ("salt_water", "salt_water_scale")
CHECKS = (
    # Müller MJ et al. Am J Clin Nutr 2015;102:807-19, doi 10.3945/ajcn.115.109173; 32 lean men.
    Check("Müller 2015", "a week at half as much again", "+1.8", *_near(1.8, _KG), lambda s: _weight(_lean(s), 0, 7),
          set_on=(*_SALT, "salt_water_surplus"), assumed="body, maintenance, carbohydrate"),
    Check("Müller 2015", "then three at half", "−6.0", *_near(-6.0, _KG), lambda s: _weight(_lean(s), 7, 28),
          set_on=_SALT, assumed="as above"),
    Check("Müller 2015", "then two at half as much again", "+3.5", *_near(3.5, _KG),
          lambda s: _weight(_lean(s), 28, 42), set_on=("salt_water_surplus",), assumed="as above"),
    # Hall KD et al. Cell Metab 2015;22:427-36, doi 10.1016/j.cmet.2015.07.021; 19 people with obesity.
    Check("Hall 2015", "six days of 800 kcal/d less, of carbohydrate", "−1.85 (from memory)", *_near(-1.85, _KG),
          lambda s: _six_days(s, True), set_on=(*_SALT, "sodium_excretion_carbohydrate"), assumed="body"),
    Check("Hall 2015", "the same of fat", "−1.3 (from memory)", *_near(-1.3, _KG), lambda s: _six_days(s, False),
          set_on=(*_SALT, "sodium_excretion_carbohydrate"), assumed="body"),
    # Hall KD et al. Am J Clin Nutr 2016;104:324-33, doi 10.3945/ajcn.116.133561; 17 men, seen second-hand.
    Check("Hall 2016", "carbohydrate from 300 to 31 g/d, energy as before", "−1.6", *_near(-1.6, _KG), _no_carbohydrate,
          set_on=("sodium_excretion_carbohydrate",), assumed="body"),
    # Zachwieja JJ et al. Int J Sports Med 2001;22:310-6, doi 10.1055/s-2001-13822; 16 of 24 fit adults.
    Check("Zachwieja 2001", "two weeks of 750 kcal/d less", "−1.29 (SE 0.16)", *_near(-1.29, _KG),
          lambda s: _weight(_days(_FIT, s, [(_mixed(_FIT.maintenance_kcal - 750.0), 14)]), 0, 14),
          assumed="body, maintenance, carbohydrate"),
    # Kreitzman SN et al. Am J Clin Nutr 1992;56:292S-293S: some 400 g of glycogen with three to four parts of water.
    Check("Kreitzman 1992", "glycogen and its water, four days of 405 kcal/d", "−1.6 to −2.0", -2.0, -1.6, _glycogen,
          assumed="body, carbohydrate"),
    # Sagayama H et al. J Physiol Anthropol 2014;33:29, doi 10.1186/1880-6805-33-29; ten men.
    Check("Sagayama 2014", "three days of 1,500 kcal/d more", "+0.7 (SD 0.5)", *_near(0.7, _KG),
          lambda s: _weight(_overfed(s), 0, 3), set_on=("salt_water_surplus",), assumed="fat mass, carbohydrate"),
    Check("Sagayama 2014", "carried of it five days later", "0 (5.0 days, SD 4.9)", -0.1, 0.1,
          lambda s: float(_overfed(s)[-1].carried_kg), assumed="as above"),
    # Foo WL et al. Int J Sport Nutr Exerc Metab 2022;32:256: fibre from 30 to under 10 g/d, energy as before, day 5.
    Check("Foo 2022", "gut content that can go", "−0.58 (SD 0.83)", -0.58 - 0.83, -0.58 + 0.83,
          lambda s: -float(_usual["gut_kg"])),
    # Heymsfield SB et al. Obes Rev 2011;12:e348-61, doi 10.1111/j.1467-789X.2010.00767.x.
    Check("Heymsfield 2011", "half of what goes first has gone", "under a week", 0.0, 7.0, _half_time, unit="d",
          set_on=("salt_water_recovery_time",), assumed="body, deficit of a quarter"),
    # Heymsfield SB et al. Metabolism 2012;61:937-43, doi 10.1016/j.metabol.2011.11.012; 23 overweight people.
    Check("Heymsfield 2012", "energy of a kilogram lost in four weeks", "4858 (SE 388)", *_near(4858.0, 2 * 388.0),
          lambda s: _energy_of_loss(s, 4), unit="kcal/kg", assumed="body, deficit of a quarter"),
    Check("Heymsfield 2012", "in six weeks, and hardly more later", "6041 (SE 376)", *_near(6041.0, 2 * 376.0),
          lambda s: _energy_of_loss(s, 6), unit="kcal/kg", assumed="as above"),
)  # fmt: skip


class Weighed(NamedTuple):
    """What a reading makes of the published cases: figures accepted, and the root mean square of their biases [kg]."""

    accepted: int
    judged: int
    mass_kg: float
    fat_free_kg: float
    met: int  # of the checks above
    goes_kg: float  # at its deepest, from a surplus of 250 into a deficit of 500 kcal/d


def weighed(salt: Salt, cases: tuple[Case, ...]) -> Weighed:
    """How a reading does on the published cases and on the studies here, all other constants as they are."""
    constants = np.array([{"salt_water_kg": salt.water_kg, "salt_recovery": salt.recovery}.get(
        of.field, _usual[of.field]) for of in REFITTED])  # fmt: skip
    found = [
        (quantity, bias, is_within(case, quantity, bias))
        for case in cases
        if closes(case) is not False
        for quantity, bias in biases_of(case, constants).items()
    ]
    mass, free = (
        float(np.mean([bias**2 for quantity, bias, _ in found if quantity == asked]) ** 0.5)
        for asked in ("body mass", "fat-free mass")
    )
    met = sum(check.is_met(salt) for check in CHECKS)
    return Weighed(sum(ok for *_, ok in found), len(found), mass, free, met, _goes_kg(salt))


DEFICITS_KCAL, WEEKS, SURPLUS_KCAL = (300.0, 500.0, 750.0, 1000.0), (3, 6, 12, 24), 250.0
BACK_DAYS = (7, 14, 28)


class Phase(NamedTuple):
    """Carried mass of a phase of fat loss [kg]: gone after a week and on its last day, against the day before it, and
    what of it comes back within days at maintenance of the body there is, and at the surplus of before."""

    deficit_kcal: float
    weeks: int
    after_one_week: float
    on_last_day: float
    at_maintenance: tuple[float, ...]
    at_old_surplus: tuple[float, ...]


def _from_surplus(salt: Salt) -> tuple[BodyModel, BodyState]:
    """A lifter of 80 kg with 18 kg of fat, who comes from a surplus."""
    model, state = calibrate(
        weight_kg=80.0, fat_kg=18.0, maintenance_kcal=MAINTENANCE, resting_kcal=1900.0, experience_years=2.5,
        training_dose=1.0,
    )  # fmt: skip
    model = model._replace(salt_water_kg=salt.water_kg, salt_recovery=salt.recovery)
    return settle_at(model, state, MAINTENANCE + SURPLUS_KCAL)


def _goes_kg(salt: Salt) -> float:
    model, before = _from_surplus(salt)
    path = walk(model, before, _mixed(MAINTENANCE - 500.0, 2.0), (1.0,) * 14)
    return max(float(before.carried_kg - after.carried_kg) for after in path)


def phase(deficit_kcal: float, weeks: int) -> Phase:
    """A phase of that lifter, carbohydrate in proportion."""
    model, before = _from_surplus(AS_IT_IS)
    path = walk(model, before, _mixed(MAINTENANCE - deficit_kcal, 2.0), (1.0,) * 7 * weeks)
    last = path[-1]

    def back(intake_kcal: float) -> tuple[float, ...]:
        after = walk(model, last, _mixed(intake_kcal, 1.8), (1.0,) * BACK_DAYS[-1])
        return tuple(float(after[days - 1].carried_kg - last.carried_kg) for days in BACK_DAYS)

    held = current_maintenance_kcal(model, last)
    return Phase(
        deficit_kcal,
        weeks,
        float(path[6].carried_kg - before.carried_kg),
        float(last.carried_kg - before.carried_kg),
        back(held),
        back(MAINTENANCE + SURPLUS_KCAL),
    )
