"""The usual size of a deficit or a surplus for a body, its history and the pace that is preferred."""

from enum import StrEnum
from typing import NamedTuple

from .. import rails
from ..numbers import Estimate
from ..rails import Subject
from ..register import GARTHE_2011, HELMS_2014, Basis, Message, constant, say, traced
from .defaults import FAT_CEILING, LEAST_DEFICIT, STATIC_KCAL_PER_KG, SURPLUS_DEFAULT
from .history import History

RATE_LEAN = constant(
    "deficit_rate_lean",
    0.005,
    unit="of body mass a week",
    summary="Usual size of a deficit in the lean, by the static rule: the lower end of 0.5-1.0 %",
    sources=(HELMS_2014,),
)
RATE_USUAL = constant(
    "deficit_rate_usual",
    0.007,
    unit="of body mass a week",
    summary="The same from the body fat at which a mini-cut is usually considered",
    sources=(GARTHE_2011,),
)
SHARE_LEAN = constant(
    "deficit_share_lean",
    0.20,
    unit="of maintenance",
    summary="Usual largest deficit in the lean; where a mini-cut is usual it goes up to what is warned of",
    basis=Basis.JUDGEMENT,
)
CAREFUL = constant(
    "deficit_careful",
    0.75,
    unit="1",
    summary="Share of the usual deficit soon after another cut, after many, and in the lean who do not train",
    basis=Basis.JUDGEMENT,
)
NOT_KEPT_LEAST = constant(
    "deficit_not_kept_least",
    0.5,
    unit="1",
    summary="Least share of the usual deficit for whom deficits were not kept: the kept one, for as much longer",
    basis=Basis.JUDGEMENT,
)
SURPLUS_REFERENCE_KG = constant(
    "surplus_reference",
    70.0,
    unit="kg fat-free mass",
    summary="Fat-free mass that the usual surpluses are for; others have them in proportion",
    basis=Basis.JUDGEMENT,
)


class Pace(StrEnum):
    """How fast somebody would like to go, where the size of a phase is left open."""

    GENTLE = "gentle"
    STEADY = "steady"
    BRISK = "brisk"


class Size(StrEnum):
    """The name of a size on offer: a pace, what was asked or solved for, or the most that the rails allow."""

    GENTLE = "gentle"
    STEADY = "steady"
    BRISK = "brisk"
    OWN = "own"
    LARGEST = "largest"


_DEFICIT_PACE = {
    Pace.GENTLE: constant(
        "deficit_gentle", 0.7, unit="1", summary="A gentle deficit, of the usual one", basis=Basis.JUDGEMENT
    ),
    Pace.STEADY: constant(
        "deficit_steady", 1.0, unit="1", summary="A steady deficit is the usual one", basis=Basis.JUDGEMENT
    ),
    Pace.BRISK: constant(
        "deficit_pace_brisk",
        1.4,
        unit="1",
        summary="A brisk deficit, of the usual one: the upper end of 0.5-1.0 % of body mass a week",
        basis=Basis.JUDGEMENT,
        sources=(HELMS_2014,),
    ),
}
_SURPLUS_PACE = {
    Pace.GENTLE: constant(
        "surplus_gentle", 0.5, unit="1", summary="A gentle surplus, of the usual one", basis=Basis.JUDGEMENT
    ),
    Pace.STEADY: constant(
        "surplus_steady", 1.0, unit="1", summary="A steady surplus is the usual one", basis=Basis.JUDGEMENT
    ),
    Pace.BRISK: constant(
        "surplus_brisk", 1.5, unit="1", summary="A brisk surplus, of the usual one", basis=Basis.JUDGEMENT
    ),
}
_STEP_KCAL = 10.0


class Because(StrEnum):
    """What settles the usual size of a deficit."""

    BODY = "body"  # a share of body mass a week, by body fat
    MAINTENANCE = "maintenance"  # a share of what is used
    FAT = "fat"  # what body fat readily supplies
    UPPER_END = "upper_end"  # of what is usual at all
    RECENT_CUT = "recent_cut"
    MANY_CUTS = "many_cuts"
    NO_TRAINING = "no_training"
    NOT_KEPT = "not_kept"
    HISTORY_UNKNOWN = "history_unknown"
    FAT_UNMEASURED = "fat_unmeasured"


class UsualDeficit(NamedTuple):
    """The usual deficit of a body [kcal/d], its shares of body mass a week and of maintenance, and what settles it."""

    deficit_kcal: float
    body_share: float
    maintenance_share: float
    because: Because

    def said(self) -> Message:
        """The reason."""
        return say(
            "DEFICIT_CHOSEN",
            deficit_kcal=self.deficit_kcal,
            percent=100 * self.body_share,
            share_percent=100 * self.maintenance_share,
            because=self.because.value,
        )


def usual_deficit(
    subject: Subject,
    history: History,
    pace: Pace = Pace.STEADY,
    *,
    is_training: bool = True,
    kept: Estimate | None = None,
) -> UsualDeficit:
    """The deficit to start with where none is asked for.

    A share of body mass a week, less for the lean; at most a share of maintenance, and what body fat readily supplies.
    Less for those who have cut soon before or often, or are lean and do not train; no more than the default deficit
    where history or body fat is unknown. Of all that the share that is ``kept`` to, where it is less than the whole: a
    smaller deficit, for longer.
    """
    scale = _DEFICIT_PACE[pace]
    per_share = subject.scale.ratio * subject.weight_kg * STATIC_KCAL_PER_KG / 7.0  # as told, of a log's own scale
    by_body = scale * usual_rate(subject) * per_share
    share = SHARE_LEAN + (rails.DEFICIT_SHARE_WARN - SHARE_LEAN) * _fatness(subject)
    most = min(scale * share, rails.DEFICIT_SHARE_WARN) * subject.maintenance_kcal
    sizes = [(by_body, Because.BODY), (most, Because.MAINTENANCE), (rails.BRISK_DEFICIT, Because.UPPER_END)]
    if pace is not Pace.BRISK:
        sizes.append((subject.scale.ratio * rails.FAT_SUPPLY_WARN * subject.fat_kg, Because.FAT))
    size, because = min(sizes)
    careful = _careful(history, is_spared=is_training or _fatness(subject) == 1.0)
    if careful is not None:
        size, because = CAREFUL * size, careful
    if size > rails.DEFAULT_DEFICIT and not history.is_known:
        size, because = rails.DEFAULT_DEFICIT, Because.HISTORY_UNKNOWN
    if size > rails.DEFAULT_DEFICIT and not subject.is_fat_measured:
        size, because = rails.DEFAULT_DEFICIT, Because.FAT_UNMEASURED
    if kept is not None:
        size, because = smaller_by(kept) * size, Because.NOT_KEPT
    size = max(LEAST_DEFICIT, size // _STEP_KCAL * _STEP_KCAL)
    return UsualDeficit(size, size / per_share, size / subject.maintenance_kcal, because)


@traced
def smaller_by(kept: Estimate) -> float:
    """The share of a usual deficit, and of its pace, for somebody who keeps to no more than a share of deficits."""
    return max(NOT_KEPT_LEAST, kept.mean)


def usual_rate(subject: Subject) -> float:
    """The usual rate of a deficit, of body mass a week: slower the nearer body fat is to what is warned of as low."""
    return RATE_LEAN + (RATE_USUAL - RATE_LEAN) * _fatness(subject)


def _fatness(subject: Subject) -> float:
    """From 0 at the body fat that is warned of as low to 1 where a mini-cut is usual."""
    low, full = rails.stricter(rails.FAT_FRACTION_WARN, subject.sex), rails.stricter(FAT_CEILING, subject.sex)
    return min(1.0, max(0.0, (subject.fat_fraction - low) / (full - low)))


def usual_surplus(subject: Subject, pace: Pace = Pace.STEADY) -> float:
    """The surplus to start with where none is asked for [kcal/d]: by training status, in proportion to lean mass."""
    size = SURPLUS_DEFAULT[subject.training_status] * subject.fat_free_kg / SURPLUS_REFERENCE_KG
    return max(5 * _STEP_KCAL, round(_SURPLUS_PACE[pace] * size / _STEP_KCAL) * _STEP_KCAL)


def _careful(history: History, *, is_spared: bool) -> Because | None:
    """Why less than usual is planned to start with; ``is_spared``: training or fat spares lean tissue."""
    since, cuts = history.weeks_since_last_cut, history.cuts_last_12_months
    if since is not None and since < rails.WEEKS_BETWEEN_CUTS:
        return Because.RECENT_CUT
    if cuts is not None and cuts + 1 > rails.CUTS_A_YEAR_WARN:
        return Because.MANY_CUTS
    return None if is_spared else Because.NO_TRAINING
