"""How well somebody keeps to deficits: the share of a planned deficit that is really followed.

It is learned in reviews, handed on in the state, and used where a deficit is planned or forecast: what is told stays as
it was written, and what is expected to be eaten lies between that and maintenance.

Two questions have two answers. What a body comes to that eats the plan is the path: plans are solved by it, guard rails
hold on it, and reviews judge by it. What comes of people who are given the plan is wider, and not even on both sides:
the interval of a forecast, from ``usual_share`` and what is known of somebody. Only where a log has shown that somebody
keeps to clearly less is less counted on as well (``kept``).
"""

import math
from typing import NamedTuple

from ..numbers import FLOATS, Elementwise, Estimate, Number
from ..register import DORLING_2021, RACETTE_2012, Basis, Kind, constant, equation, traced
from .state import BodyModel, BodyState, Diet, current_maintenance_kcal
from .uncertainty import ADHERENCE_SPREAD

SHARE_SPREAD = constant(
    "adherence_share_spread",
    4.0 * ADHERENCE_SPREAD,
    unit="1",
    summary="SD between people of the share of a planned deficit that is followed: adherence_spread, in a deficit of a "
    "fifth of maintenance, whose intake is four times the deficit. On the mean all of it is followed",
    basis=Basis.JUDGEMENT,
)
FADES_DAYS = constant(
    "adherence_fades",
    365.0,
    unit="d",
    summary="Time in which what is known of somebody's adherence fades to a third (1/e), towards that of all people",
    basis=Basis.JUDGEMENT,
)
COUNTS_UNDER = constant(
    "adherence_counts_under",
    0.9,
    unit="1",
    summary="Share from which on a deficit counts as kept: nearer to the whole no plan and no forecast is changed, so "
    "that whoever keeps to plans is not moved by chance",
    basis=Basis.JUDGEMENT,
)
DEFICIT_FROM = constant(
    "adherence_deficit_from",
    50.0,
    unit="kcal/d",
    summary="Less than this under maintenance is no deficit that somebody keeps to or not",
    basis=Basis.JUDGEMENT,
)
USUAL_FIRST = constant(
    "adherence_usual_first",
    0.85,
    unit="1",
    summary="Share of a planned deficit that people really follow in its first weeks: under close guidance near all "
    "of it, by labelled water (24.9 +- 8.7 % of 25 over six months)",
    basis=Basis.JUDGEMENT,
    sources=(RACETTE_2012,),
)
USUAL_THEN = constant(
    "adherence_usual_then",
    0.65,
    unit="1",
    summary="Share that people follow after the first weeks, up to half a year (63.6 +- 31 % over 155 days of "
    "800 kcal/d, doi 10.1002/oby.23333)",
    basis=Basis.JUDGEMENT,
)
USUAL_LATER = constant(
    "adherence_usual_later",
    0.5,
    unit="1",
    summary="Share that people follow of a deficit of more than half a year: 11.9 of 25 % over two years",
    basis=Basis.JUDGEMENT,
    sources=(DORLING_2021,),
)
USUAL_FIRST_DAYS = constant(
    "adherence_usual_first_days",
    42.0,
    unit="d",
    summary="Days of a deficit that are followed as in the first weeks",
    basis=Basis.JUDGEMENT,
)
USUAL_THEN_DAYS = constant(
    "adherence_usual_then_days",
    182.0,
    unit="d",
    summary="Days of a deficit after which it is followed as one of more than half a year",
    basis=Basis.JUDGEMENT,
)
USUAL_SPREAD = constant(
    "adherence_usual_spread",
    0.3,
    unit="1",
    summary="SD between people of the share of a planned deficit that they follow: 0.31 over 155 days, 0.35 over six "
    "months and about 0.32 over two years, errors of measurement in it",
    basis=Basis.JUDGEMENT,
    sources=(RACETTE_2012, DORLING_2021),
)


class Adherence(NamedTuple):
    """The share of planned deficits that was really followed, with its error, and the weeks in which that was seen."""

    share: Estimate
    weeks: float

    @property
    @traced
    def kept(self) -> Estimate | None:
        """The share to count on; None where deficits are kept well enough for none to be counted."""
        return self.share if self.share.mean < COUNTS_UNDER else None

    @traced
    def faded(self, days: float) -> "Adherence":
        """What is still known some days later: people change."""
        left = math.exp(-max(0.0, days) / FADES_DAYS)
        mean = 1.0 + left * (self.share.mean - 1.0)
        return self._replace(share=Estimate(mean, math.hypot(left * self.share.sd, _spread_after(left))))


def _spread_after(left: float) -> float:
    return SHARE_SPREAD * math.sqrt(1.0 - left * left)


OF_PEOPLE = Adherence(Estimate(1.0, SHARE_SPREAD), 0.0)


@equation(
    "adherence_learned",
    summary="How well somebody keeps to deficits, from what was known and what a phase showed",
    formula="precision-weighted mean of the share known before and the share seen; before any phase 1 +- "
    "adherence_share_spread; known towards that with exp(-t / adherence_fades)",
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    valid_range="deficits",
)
def learned(before: Adherence, seen: Estimate, weeks: float) -> Adherence:
    """What is known after some weeks that showed the share ``seen``."""
    of_before, of_seen = before.share.sd**-2.0, seen.sd**-2.0
    mean = (of_before * before.share.mean + of_seen * seen.mean) / (of_before + of_seen)
    return Adherence(Estimate(mean, (of_before + of_seen) ** -0.5), before.weeks + weeks)


@equation(
    "adherence_usual",
    summary="Of a deficit, how much people in general follow in its first days, as days of all of it",
    formula="adherence_usual_first a day up to adherence_usual_first_days, adherence_usual_then up to "
    "adherence_usual_then_days, adherence_usual_later from there",
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    valid_range="deficits that people are given and follow by themselves",
)
def followed_days(days: Number, ops: Elementwise = FLOATS) -> Number:
    """Days of a deficit, weighed by what people in general follow of them."""
    first = ops.minimum(days, USUAL_FIRST_DAYS)
    then = ops.minimum(days, USUAL_THEN_DAYS) - first
    return USUAL_FIRST * first + USUAL_THEN * then + USUAL_LATER * (days - first - then)


def usual_share(since: Number, until: Number, ops: Elementwise = FLOATS) -> Number:
    """The share of a deficit that people in general follow between two of its days."""
    return (followed_days(until, ops) - followed_days(since, ops)) / (until - since)


def usual_days(days: float, since: float = 0.0, apart: float = 0.0) -> float:
    """In how many days of a deficit, from its day ``since`` on, people get as far as in ``days`` of which all is
    followed; of whom follows ``apart`` more of it than people in general."""
    found, left = 0.0, days
    for until, usual in ((USUAL_FIRST_DAYS, USUAL_FIRST), (USUAL_THEN_DAYS, USUAL_THEN)):
        share, here = usual + apart, max(0.0, until - since - found)
        if share * here >= left:
            return found + left / share
        found, left = found + here, left - share * here
    return found + left / (USUAL_LATER + apart)


OF_ANYBODY = Estimate(0.0, USUAL_SPREAD)


@equation(
    "adherence_apart",
    summary="By how much more of a deficit somebody follows than people in general do at the same time",
    formula="precision-weighted mean of 0 +- adherence_usual_spread and what phases showed, less adherence_usual over "
    "as many weeks; what they showed is what adherence_learned says without the 1 +- adherence_share_spread in it",
    kind=Kind.MODEL,
    basis=Basis.JUDGEMENT,
    valid_range="deficits",
)
def apart_from_people(known: Adherence | None) -> Estimate:
    """What ``known`` says of somebody against people in general; who differ by ``OF_ANYBODY`` where nothing is.

    A plan believes somebody until they have shown otherwise; a forecast has no reason to.
    """
    if known is None or known.weeks <= 0.0:
        return OF_ANYBODY
    of_before, of_all = SHARE_SPREAD**-2.0, known.share.sd**-2.0
    of_seen, of_people = max(0.0, of_all - of_before), USUAL_SPREAD**-2.0
    if of_seen <= 0.0:
        return OF_ANYBODY
    usual = usual_share(0.0, 7.0 * known.weeks)
    seen = of_all * known.share.mean - of_before * OF_PEOPLE.share.mean - of_seen * usual
    return Estimate(seen / (of_seen + of_people), (of_seen + of_people) ** -0.5)


@traced
def unfollowed_share(
    intake_kcal: Number,
    gap_kcal: Number,
    share: Number,
    sd: Number,
    score: float | Number = 0.0,
    ops: Elementwise = FLOATS,
) -> Number:
    """What is eaten beyond an intake, as a share of it, by somebody ``score`` SDs under the share that they follow.

    ``gap_kcal``: by how much the intake lies under maintenance; where it does not, the error is that of all people.
    Of nothing, nothing is more than a share: an intake counts as a kilocalorie at least.
    """
    in_deficit = ((1.0 - share) + score * sd) * gap_kcal / ops.maximum(intake_kcal, 1.0)
    return ops.where(gap_kcal > DEFICIT_FROM, in_deficit, score * ADHERENCE_SPREAD)


def as_followed(model: BodyModel, state: BodyState, diet: Diet, kept: Estimate, score: float = 0.0) -> Diet:
    """What is expected to be eaten of a diet that is told to a body."""
    needed = current_maintenance_kcal(model, state) + diet.activity_change_kcal_per_kg * state.weight_kg
    scale = 1.0 + unfollowed_share(diet.intake_kcal, needed - diet.intake_kcal, kept.mean, kept.sd, score)
    return diet._replace(intake_kcal=scale * diet.intake_kcal, carbohydrate_kcal=scale * diet.carbohydrate_kcal)
