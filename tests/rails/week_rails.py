"""Every rail that speaks of a day's intake or of the body on a day, for any stretch of weeks.

Tolerances are those of the printed digits alone: whole kilocalories, grams, a hundredth of a percent of body fat, and
of a logging ratio the third decimal.
"""

import math
from collections.abc import Iterator
from typing import NamedTuple

from . import limits
from .limits import Person, Ratio
from .stretches import Body, Stretch, Week

KCAL = 1.0  # a printed maintenance and what is computed from it
GRAM = 0.002  # the sum or difference of some printed masses
# Of added training in a deficit about half is made up for by moving less (evidence in the register; judgement).
COMPENSATED = 0.5
# Where the first day's carried mass is not told, a rate leaves out the first week, when tissue changes a little faster
# or slower than on the mean.
FIRST_WEEK = 0.02


class Scene(NamedTuple):
    """Whose weeks, on which scale, and what is known besides."""

    person: Person
    ratio: Ratio
    physical: float  # posterior mean of maintenance in energy eaten; 0 where the prior stays
    start: Body  # the body whose resting energy is the person's
    protein_mass: float | None = None  # the reference mass that the answer tells
    history_known: bool = True
    is_review: bool = False  # of a phase under way, which is changed in steps
    settled: float = 0.0  # settled weight that a forecast starts from
    planned_on: float = math.inf  # maintenance that a phase under way was planned with, as told
    settled_kcal: float = math.inf  # maintenance that the answer tells

    def eaten(self, told: float) -> float:
        """Expected to be eaten, by the ratio's mean."""
        return told / self.ratio.mean

    def eaten_at_least(self, told: float) -> float:
        """Expected to be eaten by the limits that protect, by the upper end of the ratio."""
        return told / self.ratio.protective

    def slack(self, told: float) -> float:
        """What the printed digits leave open of an intake eaten."""
        return KCAL + (0.0 if self.ratio.mean == 1.0 else 0.001 * told)

    def resting(self, body: Body) -> float:
        """Resting energy of a body on the way: fat and lean mass that is gone rests no more, what came rests too."""
        fat = body.fat - self.start.fat
        lean = (body.settled - body.fat) - (self.start.settled - self.start.fat)
        return self.person.resting + limits.FAT_UPKEEP * fat + limits.LEAN_UPKEEP * lean


def violations(scene: Scene, stretch: Stretch) -> Iterator[str]:
    """What is wrong in a stretch."""
    for i, week in enumerate(stretch.weeks):
        for found in _day(scene, stretch, week):
            yield f"{found} ({stretch.kind}, week {i + 1})"
    yield from (f"{found} ({stretch.kind})" for found in _whole(scene, stretch))


def _day(scene: Scene, stretch: Stretch, week: Week) -> Iterator[str]:
    yield from _told(scene, week)
    yield from _nutrients(scene, stretch, week)
    if scene.person.may_diet_never:
        yield from _need(scene, week)
    if stretch.is_deficit and not week.is_break:
        yield from _deficit_day(scene, stretch, week)
    else:
        yield from _hold_day(scene, stretch, week)
    yield from _underweight(scene, stretch, week)


def _told(scene: Scene, week: Week) -> Iterator[str]:
    told, sex = week.least_intake, scene.person.sex
    if told < limits.FLOOR_TOLD[sex]:
        yield f"floor_told: {told:g} told, under {limits.FLOOR_TOLD[sex]}"
    least = limits.RESTING_TOLD * scene.resting(week.after)
    if told < least - KCAL:
        yield f"resting_told: {told:g} told, under {least:.0f}, 0.8 of resting energy"


def _nutrients(scene: Scene, stretch: Stretch, week: Week) -> Iterator[str]:
    if week.protein is None:
        return
    mass = min(scene.start.weight, *(other.after.weight for other in stretch.weeks))
    if scene.protein_mass is not None:
        mass = min(mass, scene.protein_mass)
    least_fat = max(limits.DIETARY_FAT * mass, limits.DIETARY_FAT_SHARE * week.intake / 9)
    fat = least_fat if week.fat is None else week.fat
    carbohydrate = week.carbohydrate or 0.0
    energy = 4 * week.protein + 4 * carbohydrate + 9 * fat
    exact = week.fat is not None
    if energy > week.intake + 10 or (exact and energy < week.intake - 10):
        yield f"macronutrients: {energy:.0f} kcal in an intake of {week.intake:g}"
    if fat < least_fat - 1e-6:
        yield f"dietary_fat: {fat:g} g, least {least_fat:.0f}"


def _need(scene: Scene, week: Week) -> Iterator[str]:
    ratio = max(scene.ratio.mean, limits.LEAST_RATIO)
    eaten, need = week.least_intake / ratio, scene.person.need(scene.physical)
    # An intake is told in steps of 10 kcal: half a step of it is not less.
    if eaten < need - 5 - scene.slack(week.least_intake):
        yield f"need: {eaten:.0f} eaten by someone who may not diet and needs {need:.0f}"


def _deficit_day(scene: Scene, stretch: Stretch, week: Week) -> Iterator[str]:
    person, told = scene.person, week.least_intake
    slack = scene.slack(told)
    floor = limits.FLOOR[person.sex]
    low, mean = scene.eaten_at_least(told), scene.eaten(told)
    if low < floor - slack:
        yield f"intake_floor: {low:.0f} eaten, under {floor}"
    if stretch.is_long and low < scene.resting(week.after) - slack:
        yield f"resting: {low:.0f} eaten in a long cut, resting energy is {scene.resting(week.after):.0f}"
    before, after = week.before, week.after
    # Activity is as burnt, maintenance on the scale of the log.
    more = COMPENSATED * week.exercise * scene.ratio.mean
    if told < (1 - limits.DEFICIT_SHARE) * (before.maintenance + more) - KCAL:
        yield f"deficit_share: {told:g} of {before.maintenance:g}"
    for body in (before, after):
        drawn = (body.maintenance + more - told) / scene.ratio.mean
        if drawn > limits.FAT_SUPPLY * (body.fat + GRAM) + slack + 0.5:
            yield f"fat_supply: {drawn:.0f} from {body.fat:.2f} kg of fat"
            break
    yield from _availability(scene, stretch, week, low, mean)
    mass = stretch.weeks[0].before.weight
    if scene.protein_mass is not None:
        mass = min(mass, scene.protein_mass)
    if week.protein is not None and week.protein < limits.PROTEIN * mass - 0.01:
        yield f"protein: {week.protein:g} g for {mass:g} kg"
    if before.fraction <= limits.LEAST_FAT[person.sex] - 5e-5 or after.fraction < limits.LEAST_FAT[person.sex] - 5e-5:
        yield f"body_fat: {min(before.fraction, after.fraction):.4f} in a deficit"
    least = limits.UNDERWEIGHT * person.height_m**2
    if min(before.settled, after.settled) < least - GRAM:
        yield f"bmi: {min(before.settled, after.settled) / person.height_m**2:.2f} in a deficit"


def _availability(scene: Scene, stretch: Stretch, week: Week, low: float, mean: float) -> Iterator[str]:
    exercise = scene.person.exercise + week.exercise
    for body in (week.before, week.after):
        fat_free = body.weight - body.fat
        left = scene.person.fading(body.fraction)
        checks = [("25", limits.AVAILABILITY, low)]
        if stretch.is_long:
            checks.append(("30", limits.AVAILABILITY_LONG, mean))
        for name, limit, eaten in checks:
            available = (eaten - exercise) / fat_free
            # Body fat is printed to a hundredth of a percent, which the fade steepens by a seventh of a percent.
            if available < left * limit - 0.05 - limit * 0.01:
                yield f"energy_availability: {available:.1f} under {name} ({left * limit:.1f} at this body fat)"
                return


def _hold_day(scene: Scene, stretch: Stretch, week: Week) -> Iterator[str]:
    told = week.least_intake
    low, slack = scene.eaten_at_least(told), scene.slack(told)
    resting = scene.resting(week.after)
    if low < resting - slack:
        yield f"hold_resting: {low:.0f} eaten, resting energy is {resting:.0f}"
    floor = limits.FLOOR[scene.person.sex]
    # A maintenance under the floor leaves a hold there, where it would else be a gain.
    if scene.eaten(week.before.maintenance) > floor + slack and low < floor - slack:
        yield f"hold_floor: {low:.0f} eaten, under {floor}"
    # Who is underweight holds at maintenance, to the step that an intake is told in.
    # What a phase under way started from is past: its body is that of the first week to come.
    bodies = [week.before, week.after, stretch.weeks[0].after if scene.is_review else scene.start]
    settled = max(body.settled for body in bodies)
    # After days of eating more a body needs more for some weeks: settled maintenance is what is told.
    needed = min(scene.settled_kcal, *(body.maintenance for body in bodies))
    is_light = scene.person.is_adult and settled < (limits.UNDERWEIGHT - 0.1) * scene.person.height_m**2
    if is_light and told < needed - 10 - KCAL:
        yield f"hold_underweight: {told:g} told to an underweight body that needs {needed:.0f}"
    if stretch.is_deficit or scene.person.may_diet_never or scene.is_review:
        return
    # A body adapted to little holds on less at first.
    maintenance = min(week.before.maintenance, week.after.maintenance)
    if week.intake < 0.9 * maintenance - 25:
        yield f"hold_deficit: {week.intake:g} of {maintenance:g} is a deficit by another name"


def _underweight(scene: Scene, stretch: Stretch, week: Week) -> Iterator[str]:
    """No target under the underweight limit, whatever the weeks are called."""
    least = limits.UNDERWEIGHT * scene.person.height_m**2
    lost = scene.settled - week.after.settled
    if not stretch.is_deficit and week.after.settled < least - GRAM and lost > 0.5:
        yield f"bmi: {week.after.settled / scene.person.height_m**2:.2f}, {lost:.1f} kg lost"


def _whole(scene: Scene, stretch: Stretch) -> Iterator[str]:
    weeks, person = stretch.weeks, scene.person
    first, last = weeks[0].before, weeks[-1].after
    counted = weeks
    if not stretch.is_start_settled:  # what was carried on the first day is not told: from its first week's end
        first, counted = weeks[0].after, weeks[1:]
    spent = [week for week in counted if not (stretch.is_deficit and week.is_break)]
    length = sum(week.days for week in spent) / 7
    if length < 1:
        return
    tissue = (last.settled - first.settled) / length / first.weight
    gram = 2 * GRAM / length / first.weight + (0.0 if stretch.is_start_settled else FIRST_WEEK * abs(tissue))
    if stretch.is_deficit:
        if -tissue > limits.LOSS + gram:
            yield f"tissue_loss: {-100 * tissue:.2f} % a week"
        wanted = weeks[0].before.maintenance - weeks[0].intake
        if not scene.history_known and wanted > limits.DEFAULT_DEFICIT + KCAL:
            yield f"cut_history: unknown, and a deficit of {wanted:.0f}"
        # One that runs was not larger than that when it was planned.
        wanted = min(wanted, scene.planned_on - weeks[0].intake)
        if not person.is_measured and wanted > limits.DEFAULT_DEFICIT + KCAL:
            yield f"unmeasured: a deficit of {wanted:.0f} on fat from height and weight"
    elif stretch.kind == "gain":
        pregnant = bool((person.screening or {}).get("is_pregnant"))
        if not pregnant and tissue > limits.GAIN[person.status] + gram:
            yield f"gain_rate: {100 * tissue:.3f} % a week"
        # Of other sizes only the body at the end is told, which stands for those before it.
        bodies = [week.before for week in weeks if week.before is not week.after]
        over = [body.fraction for body in bodies if body.fraction >= (stretch.ceiling or 1.0) + 5e-5]
        if over:
            yield f"gain_ceiling: a gain from {over[0]:.4f} over its ceiling {stretch.ceiling:g}"


def warned(scene: Scene, stretch: Stretch) -> Iterator[tuple[str, str]]:
    """Ids of rails whose warning is due, where it is due by more than the printed digits, and why."""
    if not stretch.is_deficit:
        return
    week = next((week for week in stretch.weeks if not week.is_break), stretch.weeks[0])
    person, body, told = scene.person, week.before, week.intake
    eaten = scene.eaten(told)
    deficit = (body.maintenance - told) / scene.ratio.mean
    if body.maintenance - told > (limits.DEFICIT_SHARE_WARN + 0.002) * body.maintenance:
        yield "deficit_share", f"{told:g} of {body.maintenance:g}"
    if deficit > (limits.FAT_SUPPLY_WARN + 0.5) * body.fat:
        yield "fat_supply", f"{deficit:.0f} from {body.fat:.1f} kg"
    available = (eaten - person.exercise) / (body.weight - body.fat)
    if available < limits.AVAILABILITY_LONG - 0.5:
        yield "energy_availability", f"{available:.1f}"
    if eaten < scene.resting(body) - 10:
        yield "intake_floor", f"{eaten:.0f} eaten, under resting energy {scene.resting(body):.0f}"
    end = stretch.weeks[-1].after
    if end.settled / person.height_m**2 < limits.NEAR_UNDERWEIGHT - 0.01:
        yield "bmi", f"{end.settled / person.height_m**2:.2f} at the end"
    if end.fraction < limits.LOW_FAT[person.sex] - 0.001:
        yield "body_fat", f"{end.fraction:.4f} at the end"
    if week.fat is not None and 9 * (week.fat + 2.5) < limits.DIETARY_FAT_SHARE_WARN * told:  # told to 5 g
        yield "dietary_fat", f"{week.fat:g} g of {told:g} kcal"
    if week.fat is not None and week.carbohydrate is not None and week.carbohydrate < limits.CARBOHYDRATE_WARN:
        yield "carbohydrate", f"{week.carbohydrate:g} g"
    if limits.ADULT <= person.age < 20:
        yield "age", f"{person.age:g} years"
