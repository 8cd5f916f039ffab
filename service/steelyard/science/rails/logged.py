"""What is logged is judged too, on every endpoint that gets a log: what was really eaten, and how fast weight falls."""

from collections.abc import Sequence

from ..numbers import FLOATS, Elementwise, Number, compiled
from ..register import say, traced
from .person_rails import needs_doctor, periods_of
from .subject import Logged, RailAction, Subject, stricter, warning
from .table import AVAILABILITY, AVAILABILITY_LIMIT, FLOOR, INTAKE_FLOOR, LOGGED_LOSS_WARN, LOSS

# Our judgement, no published source: the days of which intake is the mean, and the fewest of them that are whole; the
# days of a line through weights, and the fewest weights of one.
_EATEN_DAYS, _LEAST_DAYS, _HALF_DAYS, _LEAST_WEIGHTS = 14, 7, 14, 9
LOGGED_DAYS = 2 * _HALF_DAYS  # of a log that are looked at
# Who weighs seldom is judged by all of these days, where the fewest weights of a line lie so far apart: a line over
# three weeks is surer than one through nine days, and water of the first week tilts it less. A weight as far from their
# middle is a slip or in another unit, and a line through few is all too easily led by one (judgement).
_SELDOM_WEIGHTS, _SELDOM_DAYS, _SLIP_SHARE = 3, 20, 0.15
_LEVEL_WEIGHTS = 5  # the newest, of which the middle one is the level (judgement)
# A tenth under a floor, to the digits that an answer tells, is more than a log's days differ by chance (judgement).
_CLEARLY = 0.905


def logged_of(weights: Sequence[tuple[int, float]], intakes: Sequence[tuple[int, float]], last_day: int) -> Logged:
    """What a log says as it stands. Rows are (day, kg) and (day, kcal of a full day), up to ``last_day``."""
    days, kilograms = [day for day, _ in weights], [kg for _, kg in weights]
    # The earlier half is looked at only where the later one shows a loss.
    loss = _loss_of_half(days, kilograms, last_day, last_day)
    if loss > 0.0:
        loss = min(loss, _loss_of_half(days, kilograms, last_day - _HALF_DAYS, last_day))
    return Logged(_eaten_kcal(intakes, last_day), max(0.0, loss), _level_kg(weights, last_day))


def _level_kg(weights: Sequence[tuple[int, float]], last_day: int) -> float | None:
    """The middle of the newest weights of two weeks, of four where those have fewer than three; None of one alone."""
    for length, least in ((_HALF_DAYS, _SELDOM_WEIGHTS), (LOGGED_DAYS, 2)):
        newest = sorted(row for row in weights if last_day - length < row[0] <= last_day)[-_LEVEL_WEIGHTS:]
        if len(newest) >= least:
            return sorted(kg for _, kg in newest)[len(newest) // 2]
    return None


def _eaten_kcal(intakes: Sequence[tuple[int, float]], last_day: int) -> float | None:
    """Mean of the full days of the last two weeks; of the last four, where those two have few."""
    for length in (_EATEN_DAYS, LOGGED_DAYS):
        eaten = [kcal for day, kcal in intakes if last_day - length < day <= last_day]
        if len(eaten) >= _LEAST_DAYS:
            return sum(eaten) / len(eaten)
    return None


def _loss_of_half(days: Sequence[int], kilograms: Sequence[float], end: int, last_day: int) -> float:
    """Body mass lost a week in the two weeks up to ``end``; in all four, where those two have few weights."""
    if sum(end - _HALF_DAYS < day <= end for day in days) >= _LEAST_WEIGHTS:
        return _loss_share(days, kilograms, end, _HALF_DAYS)
    rows = [row for row in zip(days, kilograms, strict=True) if last_day - LOGGED_DAYS < row[0] <= last_day]
    if not rows:
        return 0.0
    middle = sorted(kg for _, kg in rows)[len(rows) // 2]
    rows = [(day, kg) for day, kg in rows if abs(kg / middle - 1.0) < _SLIP_SHARE]
    if len(rows) < _SELDOM_WEIGHTS or max(rows)[0] - min(rows)[0] < _SELDOM_DAYS:
        return 0.0
    return _loss_share([day for day, _ in rows], [kg for _, kg in rows], last_day, LOGGED_DAYS)


@compiled
def _loss_share(
    days: Sequence[Number], kilograms: Sequence[Number], last_day: Number, length: Number, *, ops: Elementwise = FLOATS
) -> Number:
    """Body mass lost a week, as the slope of a straight line over the days of that length up to the last."""
    count = total_days = total_kg = 0.0
    for day, weight in zip(days, kilograms, strict=True):
        if last_day - length < day <= last_day:
            count = count + 1.0
            total_days = total_days + day
            total_kg = total_kg + weight
    if count < 2.0:
        return 0.0
    middle, mean = total_days / count, total_kg / count
    spread = along = 0.0
    for day, weight in zip(days, kilograms, strict=True):
        if last_day - length < day <= last_day:
            spread = spread + (day - middle) ** 2
            along = along + (day - middle) * (weight - mean)
    return -7.0 * along / spread / mean if spread > 0.0 else 0.0


@traced
def judge_logged(subject: Subject) -> list[RailAction]:
    """Warnings on what a log says was eaten and lost; who may eat more under supervision only is not told to."""
    logged, found, is_urgent = subject.logged, [], needs_doctor(subject)
    if logged.loss_share > LOGGED_LOSS_WARN:
        code = "WARNED_LOGGED_LOSS_URGENT" if is_urgent else "WARNED_LOGGED_LOSS"
        message = say(code, percent=100 * logged.loss_share)
        found.append(warning(LOSS, message, LOGGED_LOSS_WARN, logged.loss_share, "of body mass a week"))
    if logged.eaten_kcal is None:
        return found
    eaten = logged.eaten_kcal / subject.scale.ratio
    floor, periods = stricter(INTAKE_FLOOR, subject.sex), periods_of(subject)
    if eaten < _CLEARLY * floor < subject.physical_kcal:
        message = say("WARNED_EATEN_FLOOR", eaten_kcal=eaten, limit_kcal=floor, periods=periods)
        if is_urgent:
            message = say("WARNED_EATEN_FLOOR_URGENT", eaten_kcal=eaten)
        found.append(warning(FLOOR, message, floor, eaten, "kcal/d"))
    available = subject.availability(eaten)
    if available < subject.availability_left * AVAILABILITY_LIMIT:
        code = "WARNED_EATEN_AVAILABILITY_URGENT" if is_urgent else "WARNED_EATEN_AVAILABILITY"
        message = say(code, observed=available, limit=AVAILABILITY_LIMIT, periods=periods)
        found.append(warning(AVAILABILITY, message, AVAILABILITY_LIMIT, available, "kcal/kg fat-free mass/d"))
    return found
