"""A log read in parts: cut anywhere, handed on, and read with the rest, it says what the whole says.

A self-test of the hand-over (both sides are our reader); that the reading itself is right is tested elsewhere.
"""

import math
import random

import msgspec
import pytest
from lifters import lifter
from msgspec.structs import replace
from steelyard.science.log import check_onset
from steelyard.science.log import kernel as k
from steelyard.science.log.entries import IntakeDay, Log, StepsDay, Weighing
from steelyard.science.log.events import EFFECTS, WATER_DAYS, EventKind, LoggedEvent, expected_water
from steelyard.science.log.handing_on import TAIL_DAYS, hand_on, joined, tail_of
from steelyard.science.log.onset import Onset
from steelyard.science.log.reader import maintenance_of, read_log, trend_of_log
from steelyard.science.measures.assessment import assess
from steelyard.science.person import CheckIn
from steelyard.science.person.person import Sex
from steelyard.science.register import OutOfDomain

PERSON = lifter(Sex.FEMALE, age_years=33.0, height_cm=170.0, weight_kg=72.0, fat=0.27, sessions=3)
ASSESSED = assess(PERSON)
FIRST = 738_000
WITHIN = 0.05  # of the whole reading's SD


def lived(seed: int, days: int, *, carbohydrate: bool = False, cycle: bool = False, steps: bool = False) -> Log:
    """A log with gaps, a diet from day 60 on, a jump of water, a wrong weighing and weeks without intakes."""
    rng = random.Random(seed)
    weight, water, weighings, intakes = 72.0, 0.0, [], []
    for day in range(days):
        intake = (2050.0 if day < 60 or day > 170 else 1600.0) * (1.0 + rng.gauss(0.0, 0.08))
        weight += (intake / 0.88 - 2320.0) / 8000.0
        water = 0.9 * water + rng.gauss(0.0, 0.12) + (1.2 if day == 100 else 0.0)
        if rng.random() > 0.25:
            odd = 3.0 if rng.random() < 0.01 else 0.0
            weighings.append(Weighing(FIRST + day, weight + water + odd + rng.gauss(0.0, 0.4)))
        if rng.random() > 0.1 and not 120 <= day < 130:
            grams = 0.12 * intake * (1.0 + rng.gauss(0.0, 0.1)) if carbohydrate else None
            intakes.append(IntakeDay(FIRST + day, intake, grams))
    starts = [FIRST + 28 * i + 5 for i in range(days // 28)] if cycle else []
    return Log(weighings, intakes, starts, steps=counted(seed, days) if steps else ())


def counted(seed: int, days: int) -> list[StepsDay]:
    """Steps with gaps, also of the fortnight before the log; fewer from day 50 on, more from day 110 on."""
    rng = random.Random(1000 + seed)
    found = []
    for day in range(-14, days):
        level = 4500.0 if 50 <= day < 110 else 9500.0
        if rng.random() > 0.15:
            found.append(StepsDay(FIRST + day, round(rng.gauss(level, 1500.0))))
    return found


def until(log: Log, day: int) -> Log:
    return replace(
        log,
        weighings=[w for w in log.weighings if w.day <= day],
        intakes=[i for i in log.intakes if i.day < day],
        cycle_starts=[start for start in log.cycle_starts if start <= day],
        steps=[each for each in log.steps if each.day < day],
    )


def after(log: Log, day: int) -> Log:
    return replace(
        log,
        weighings=[w for w in log.weighings if w.day > day],
        intakes=[i for i in log.intakes if i.day >= day],
        steps=[each for each in log.steps if each.day >= day],
    )


def carried_over(log: Log, cuts: list[int], **told: object) -> Log:
    """What is handed on after a chain of cuts, each through its bytes, and the rest."""
    handed = until(log, cuts[0])
    for i, cut in enumerate(cuts):
        handed = hand_on(read_log(PERSON, ASSESSED, handed, cut, tail=tail_of, **told)).log  # type: ignore[arg-type]
        if handed.onset is not None:
            check_onset(handed.onset, "state.reading")
        handed = msgspec.json.decode(msgspec.json.encode(handed), type=_Wire).log()
        following = cuts[i + 1] if i + 1 < len(cuts) else None
        rest = after(log, cut) if following is None else until(after(log, cut), following)
        handed, notes = joined(handed, rest)
        assert not notes
    return handed


class _Wire(msgspec.Struct):
    weighings: list[Weighing]
    intakes: list[IntakeDay]
    cycle_starts: list[int]
    onset: Onset | None
    events: list[LoggedEvent] = []
    steps: list[StepsDay] = []

    def log(self) -> Log:
        return Log(self.weighings, self.intakes, self.cycle_starts, self.events, steps=self.steps, onset=self.onset)


def days_that_tell(log: Log, last: int) -> list[int]:
    """Days of a log whose intake tells what is spent."""
    columns = read_log(PERSON, ASSESSED, log, last).fit.columns
    return [day for day, variance in enumerate(columns[k.BALANCE_VARIANCE :: k.COLUMNS]) if variance]


def apart(whole: Log, parts: Log, last: int) -> float:
    """The largest distance of what two logs say on a day, in SDs of what the first says."""
    one, other = (trend_of_log(PERSON, ASSESSED, log, last)[0] for log in (whole, parts))
    pairs = [
        (one.weekly_rate, other.weekly_rate),
        (one.maintenance.maintenance, other.maintenance.maintenance),
        (one.maintenance.physical, other.maintenance.physical),
        (one.maintenance.logging_ratio, other.maintenance.logging_ratio),
    ]
    for change, same in zip(one.changes[:3], other.changes[:3], strict=True):
        assert change.days == same.days or change is one.changes[-1]
        if change.days == same.days:
            pairs += [(change.weight, same.weight), (change.tissue, same.tissue), (change.carried, same.carried)]
    assert one.steps == other.steps
    if one.explained is not None and other.explained is not None:
        odds = {each.cause: each.probability for each in other.explained.causes}
        assert all(abs(each.probability - odds[each.cause]) < WITHIN for each in one.explained.causes)
    level = (one.smoothed.weight_kg[-1] - other.smoothed.weight_kg[-1]) / one.smoothed.weight_sd_kg[-1]
    return max(abs(level), *(max(abs(a.mean - b.mean), abs(a.sd - b.sd)) / a.sd for a, b in pairs if a.sd > 0.0))


@pytest.mark.parametrize("steps", [False, True])
@pytest.mark.parametrize("seed", range(6))
def test_a_log_cut_anywhere_is_read_as_the_whole(seed: int, steps: bool) -> None:
    rng = random.Random(100 + seed)
    days = rng.randint(100, 300)
    log = lived(seed, days, carbohydrate=seed % 3 == 1, cycle=seed % 3 == 2, steps=steps)
    cuts = sorted(FIRST + day for day in rng.sample(range(8, days - 1), rng.randint(1, 5)))
    last = FIRST + days - 1
    assert apart(log, carried_over(log, cuts), last) < WITHIN


@pytest.mark.parametrize("goes_on", [94, 100, 110])
@pytest.mark.parametrize("until_day", [0, 9, 30])
def test_days_that_tell_what_is_spent_count_once(until_day: int, goes_on: int) -> None:
    """Of someone who logs food at first, if at all, and again from day 90 on, read on from within the fortnight that is
    told, or after it. Who logged for nine days eats as before; who logged for thirty eats less from day 90 on, so that
    with the shift is seen that nine days more tell it anew."""
    last = FIRST + goes_on + TAIL_DAYS
    whole = lived(5, goes_on + TAIL_DAYS + 1)
    logged = [each for each in whole.intakes if not FIRST + until_day <= each.day < FIRST + 90]
    if until_day == 9:
        logged = [
            replace(each, intake_kcal=each.intake_kcal * (2050 / 1600 if each.day >= FIRST + 90 else 1.0))
            for each in logged
        ]
    log = replace(whole, intakes=logged)
    handed = carried_over(log, [last])
    assert handed.onset is not None
    assert handed.onset.days == goes_on
    told, again = (days_that_tell(each, last) for each in (log, handed))
    assert len(told) == (14 if until_day < 30 else 14 + 9)
    assert again == [day - goes_on for day in told if day > goes_on]


def test_a_short_log_is_handed_on_as_it_is() -> None:
    log = lived(3, TAIL_DAYS - 6, steps=True)
    handed = carried_over(log, [FIRST + 9, FIRST + 30])
    assert (handed.weighings, handed.intakes, handed.steps) == (log.weighings, log.intakes, log.steps)
    assert apart(log, handed, FIRST + TAIL_DAYS - 7) == 0.0


def test_nothing_is_counted_twice() -> None:
    """Who sends the whole log beside what was handed on is told, and nothing counts twice."""
    log = lived(4, 220, steps=True)
    cut = FIRST + 150
    handed = hand_on(read_log(PERSON, ASSESSED, until(log, cut), cut, tail=tail_of)).log
    again, notes = joined(handed, log)
    assert [note.code for note in notes] == ["LOG_COUNTED_BEFORE"]
    assert handed.onset is not None
    first = handed.onset.day
    before = sum(w.day <= first for w in log.weighings) + sum(i.day < first for i in log.intakes)
    assert notes[0].params["count"] == before + sum(each.day < first for each in log.steps)
    assert list(again.steps) == [each for each in log.steps if each.day >= first]
    assert apart(log, again, FIRST + 219) < WITHIN


def test_entries_of_a_handed_log_that_were_counted_already_are_left_out_too() -> None:
    """A state comes from outside: of days before its reading goes on there are no columns. One was counted among the
    last days of the log, and one from further back was an index that no list has."""
    log = lived(4, 220, steps=True)
    handed = hand_on(read_log(PERSON, ASSESSED, log, FIRST + 219, tail=tail_of)).log
    assert handed.onset is not None
    day = handed.onset.day
    for ago in (1, 200):
        odd = replace(
            handed,
            weighings=[Weighing(day - ago, 71.5), *handed.weighings],
            intakes=[IntakeDay(day - ago, 2000.0), *handed.intakes],
        )
        for later in (None, Log([Weighing(FIRST + 220, 71.0)])):
            again, notes = joined(odd, later)
            assert [(note.code, note.params["count"]) for note in notes] == [("LOG_COUNTED_BEFORE", 2)]
            assert again == joined(handed, later)[0]


def test_what_is_told_again_of_a_day_or_an_event_counts_as_it_was_told_last() -> None:
    """An illness is told on its first day, and again when it is over: its water was counted twice. Of a check-in that
    was corrected, chance settled which of the two counted."""
    days = range(FIRST, FIRST + 20)
    ill = LoggedEvent(FIRST + 3, EventKind.ILLNESS)
    before = Log([Weighing(FIRST, 72.0)], events=[ill], check_ins=[CheckIn(day, hunger=2) for day in days])
    over = LoggedEvent(FIRST + 3, EventKind.ILLNESS, FIRST + 9)
    since = Log([Weighing(FIRST + 20, 72.0)], events=[over], check_ins=[CheckIn(day, hunger=5) for day in days])
    found, _ = joined(before, since)
    assert list(found.events) == [over]
    assert list(found.check_ins) == list(since.check_ins)
    assert expected_water([ill, over], FIRST, 30, FIRST) == expected_water([over], FIRST, 30, FIRST)


def test_two_words_on_one_day_are_handed_on_in_the_order_in_which_they_were_sent() -> None:
    """Not in a set's, which differs from process to process: a state is to be the same bytes everywhere."""
    log = lived(3, 40)
    days = range(FIRST + 30, FIRST + 9, -1)
    twice = replace(log, intakes=[IntakeDay(day, kcal) for day in days for kcal in (2300.0, 2000.0)])
    handed = hand_on(read_log(PERSON, ASSESSED, twice, FIRST + 39, tail=tail_of)).log
    assert [entry.intake_kcal for entry in handed.intakes] == [2300.0, 2000.0] * len(days)


def test_handed_on_at_the_same_day_says_the_same_again() -> None:
    log = lived(5, 260, steps=True)
    last = FIRST + 259
    once = hand_on(read_log(PERSON, ASSESSED, log, last, tail=tail_of)).log
    twice = hand_on(read_log(PERSON, ASSESSED, once, last, tail=tail_of)).log
    assert once == twice
    assert apart(log, twice, last) < WITHIN


def test_what_is_handed_on_stays_small() -> None:
    year = lived(6, 365)
    sent = msgspec.json.encode(hand_on(read_log(PERSON, ASSESSED, year, FIRST + 364, tail=tail_of)).log)
    assert len(sent) < 0.6 * len(msgspec.json.encode(year))


def beyond_certain(spread: tuple[float, ...]) -> tuple[float, ...]:
    """The lower half of a covariance, the noise that lingers (state 6) correlated with tissue by 1.1."""
    row, variance = 6 * 7 // 2, 6 * 7 // 2 + 6
    return (*spread[:row], 1.1 * math.sqrt(spread[0] * spread[variance]), *spread[row + 1 :])


@pytest.mark.parametrize(
    "spoil",
    [
        lambda a: replace(a, mean=a.mean[:-1]),
        lambda a: replace(a, mean=(1e9, *a.mean[1:])),
        lambda a: replace(a, mean=(a.mean[0], -a.mean[1], *a.mean[2:])),
        lambda a: replace(a, spread=tuple(-value for value in a.spread)),
        lambda a: replace(a, spread=beyond_certain(a.spread)),
        lambda a: replace(a, mean=(*a.mean[:2], 9.0 * a.mean[2], *a.mean[3:])),
    ],
)
def test_what_no_reading_leaves_is_refused(spoil: object) -> None:
    onset = hand_on(read_log(PERSON, ASSESSED, lived(7, 200), FIRST + 199, tail=tail_of)).log.onset
    assert onset is not None
    check_onset(onset, "state.reading")
    spoilt = replace(onset, accounts=(spoil(onset.accounts[0]), *onset.accounts[1:]))  # type: ignore[operator]
    with pytest.raises(OutOfDomain) as refused:
        check_onset(spoilt, "state.reading")
    assert refused.value.code == "STATE_NOT_READABLE"


def test_creatine_explains_its_kilogram() -> None:
    """A kilogram from the first week of creatine is not read as tissue where it is told (mass: Powers 2003)."""
    plain = lived(8, 120)
    start = FIRST + 95

    def with_creatine(day: int) -> float:
        return min(1.0, max(0.0, (day - start) / 6.0))

    log = replace(plain, weighings=[Weighing(w.day, w.weight_kg + with_creatine(w.day)) for w in plain.weighings])
    told = replace(log, events=[LoggedEvent(start, EventKind.CREATINE_START)])
    tissue = {}
    for name, each in (("plain", plain), ("silent", log), ("told", told)):
        trend, _ = trend_of_log(PERSON, ASSESSED, each, FIRST + 119)
        tissue[name] = next(change.tissue.mean for change in trend.changes if change.days == 28)
    assert abs(tissue["told"] - tissue["plain"]) < 0.25
    assert abs(tissue["told"] - tissue["plain"]) < abs(tissue["silent"] - tissue["plain"])


@pytest.mark.parametrize("days", [29, 60, 119])
def test_water_from_long_before_a_log_is_in_its_first_weight(days: int) -> None:
    """Whoever has taken creatine for a year is read as anybody; a kilogram still to come was made up for by tissue, of
    half a kilogram in eight weeks."""
    plain = until(lived(8, 120), FIRST + days)
    told = replace(plain, events=[LoggedEvent(FIRST - 365, EventKind.CREATINE_START)])
    one, other = (trend_of_log(PERSON, ASSESSED, each, FIRST + days)[0] for each in (plain, told))
    assert other.changes == one.changes
    assert other.maintenance == one.maintenance


def test_water_of_a_feast_before_a_log_goes_within_it() -> None:
    """Of days that ended the day before: the first weight holds their kilogram, and what goes of it is no tissue."""
    event = LoggedEvent(FIRST - 4, EventKind.FESTIVE_DAYS, FIRST - 1)
    water, _ = expected_water([event], FIRST, 60, FIRST)
    assert water is not None
    level = 0.0
    for more in water:
        level = level * math.exp(-1.0 / WATER_DAYS) + more
    assert level == pytest.approx(-EFFECTS[EventKind.FESTIVE_DAYS].mass_kg, abs=1e-6)


@pytest.mark.parametrize("kind", [EventKind.CREATINE_START, EventKind.FESTIVE_DAYS])
@pytest.mark.parametrize("ago", [2, 300])
def test_a_log_with_an_event_before_it_is_read_as_the_whole_where_it_is_handed_on(kind: EventKind, ago: int) -> None:
    log = replace(lived(8, 200), events=[LoggedEvent(FIRST - ago, kind)])
    handed = carried_over(log, [FIRST + 90, FIRST + 150])
    assert handed.onset is not None
    assert handed.onset.goes_on
    assert apart(log, handed, FIRST + 199) < WITHIN


def test_maintenance_goes_on_as_the_trend_does() -> None:
    log = lived(9, 200)
    handed = carried_over(log, [FIRST + 140])
    one, other = (maintenance_of(read_log(PERSON, ASSESSED, each, FIRST + 199), ASSESSED) for each in (log, handed))
    assert abs(one.maintenance.mean - other.maintenance.mean) < WITHIN * one.maintenance.sd


@pytest.mark.parametrize("kind", list(EventKind))
def test_the_water_of_an_event_comes_and_goes(kind: EventKind) -> None:
    """Nothing before it; what fades is gone in time; an end before its beginning is that day."""
    event = LoggedEvent(FIRST + 10, kind, FIRST + 12)
    water, variance = expected_water([event], FIRST, 200, FIRST)
    assert water is not None
    assert variance is not None
    assert set(water[:10]) == {0.0}
    assert min(variance) == 0.0 < max(variance)
    level, path = 0.0, []
    for more in water:
        level = level * math.exp(-1.0 / WATER_DAYS) + more
        path.append(level)
    mass = EFFECTS[kind].mass_kg
    assert max(map(abs, path)) <= abs(mass) + 1e-9
    if EFFECTS[kind].lasts:
        assert path[-1] == pytest.approx(mass)
    else:
        assert abs(path[-1]) < 0.01
        # The last day still acts: the morning after it nothing has faded yet, and the one after that something has.
        rises = EFFECTS[kind].rises_days
        fades = math.exp(-1.0 / EFFECTS[kind].fades_days)
        assert path[10:14] == pytest.approx([mass * min(1.0, day / rises) for day in (1, 2, 3)] + [path[12] * fades])
    odd = expected_water([LoggedEvent(FIRST + 10, kind, FIRST + 3)], FIRST, 200, FIRST)
    assert odd == expected_water([LoggedEvent(FIRST + 10, kind, FIRST + 10)], FIRST, 200, FIRST)


@pytest.mark.parametrize(
    ("kind", "lower_kg", "upper_kg"),
    [
        # Loading: total body water +0.8, lean by DXA +1.1, body mass up to +1.5 kg (Powers 2003; PMC155510).
        (EventKind.CREATINE_START, 0.8, 1.5),
        (EventKind.CREATINE_STOP, -1.5, -0.8),
        # Ten hours seated: +0.3 to 0.8 kg (0.25 L a leg after nine: 10.2310/7060.2003.9359).
        (EventKind.TRAVEL, 0.3, 0.8),
        # Swelling of trained muscle up to the third week: +0.3 to 1.0 kg (Damas 2016: area +2.7 %).
        (EventKind.NEW_PROGRAMME, 0.3, 1.0),
    ],
)
def test_the_water_of_an_event_is_as_large_as_measured(kind: EventKind, lower_kg: float, upper_kg: float) -> None:
    assert lower_kg <= EFFECTS[kind].mass_kg <= upper_kg
    assert EFFECTS[kind].sd_kg >= (upper_kg - lower_kg) / 4.0


def test_what_the_body_weighed_when_the_log_began_is_handed_on() -> None:
    """Carried mass is counted from it. A state of before that has none goes on from where tissue stands: what is
    carried then steps by what the kilograms since are worth, a fiftieth of them, and weight does not."""
    log = lived(5, 200)
    parts = carried_over(log, [FIRST + 90, FIRST + 150])
    assert parts.onset is not None
    assert parts.onset.body.settled_kg == log.weighings[0].weight_kg
    older = replace(parts, onset=replace(parts.onset, body=replace(parts.onset.body, settled_kg=None)))
    now, then = (trend_of_log(PERSON, ASSESSED, each, FIRST + 199)[0] for each in (parts, older))
    assert now.smoothed.weight_kg[-1] == pytest.approx(then.smoothed.weight_kg[-1], abs=0.05)
    assert now.changes[0].tissue.mean == pytest.approx(then.changes[0].tissue.mean, abs=0.1 * now.changes[0].tissue.sd)


def test_a_cycle_that_is_told_only_after_a_log_was_handed_on_is_learnt_from_then_on() -> None:
    """What was read before says nothing of it; who stops telling theirs is still read."""
    told, cut = lived(7, 200, cycle=True), FIRST + 150
    silent = replace(until(told, cut), cycle_starts=())
    handed = hand_on(read_log(PERSON, ASSESSED, silent, cut, tail=tail_of)).log
    assert handed.onset is not None
    assert {len(each.mean) for each in handed.onset.accounts} == {k.STATES}
    joined_up, _ = joined(handed, after(told, cut))
    joined_up = replace(joined_up, cycle_starts=told.cycle_starts)
    trend, reading = trend_of_log(PERSON, ASSESSED, joined_up, FIRST + 199, tail=tail_of)
    assert trend.cycle is not None
    assert 0.0 < trend.cycle.sd < 0.5
    on = hand_on(reading).log
    assert on.onset is not None
    assert {len(each.mean) for each in on.onset.accounts} == {k.STATES + 2}
    check_onset(on.onset, "state.reading")
    assert trend_of_log(PERSON, ASSESSED, replace(on, cycle_starts=()), FIRST + 199)[0].cycle is None
