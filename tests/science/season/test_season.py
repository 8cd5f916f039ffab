"""A season lived week by week: the state machine, its rails, its calendar, and its intervals."""

import itertools
import random
from datetime import timedelta

import msgspec
import numpy as np
import pytest
from plan_people import CLEAR
from season_people import START, asked, having, screened
from steelyard.science import rails
from steelyard.science.body.energy_balance import advance
from steelyard.science.body.forecasting import Stretch, forecast
from steelyard.science.body.state import Diet
from steelyard.science.body.uncertainty import UncertaintySource, start_body
from steelyard.science.member.member import Member
from steelyard.science.numbers.elementwise import arrays
from steelyard.science.numbers.estimate import Estimate
from steelyard.science.person.person import Sex, TrainingStatus
from steelyard.science.phase import History
from steelyard.science.rails import table
from steelyard.science.season.asked import Asked, may_cut
from steelyard.science.season.calendar import BlockedDays, Event
from steelyard.science.season.plan import live_season
from steelyard.science.season.policy import Policy, ReadyMade
from steelyard.science.season.rails_by_week import most_deficit_kcal, surplus_for_gain_rate
from steelyard.science.season.run import BRIDGE, CUT, GAIN, HOLD, Life, WeekRecord, live

PREGNANT = msgspec.structs.replace(CLEAR, is_pregnant=True)


def lived(season: Asked, policy: Policy) -> list[WeekRecord]:
    weeks: list[WeekRecord] = []
    live(season.life, policy, season.person(), season.calendar, season.limits.band.upper, record=weeks)
    return weeks


def modes(season: Asked, policy: Policy) -> str:
    return "".join("GCBH"[int(week.mode)] for week in lived(season, policy))


def random_policy(rng: random.Random) -> Policy:
    cut_at = rng.uniform(0.13, 0.2)
    return Policy(
        float(rng.randrange(0, 400, 10)), cut_at, cut_at - rng.uniform(0.01, 0.06), float(rng.randrange(200, 1200, 10)),
        float(rng.randint(2, 20)), float(rng.randint(1, 4)), float(rng.randint(2, 20)), float(rng.randint(0, 4)),
        float(rng.choice([0, 1, 2, 1000])),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("history", "blocked", "starts", "told"),
    [
        (History(0, None), None, [0, 6], []),
        (History(2, 10), None, [0, 6], [4]),  # two before, and the second of its own
        (History(2, 10), (2, 44), [0, 45], []),  # over a year after the last of those before
        (History(3, 20), (0, 30), [31], [4]),
        (History(3, 20), (0, 32), [33], []),
    ],
)  # fmt: skip
def test_cuts_before_a_season_count_for_a_year_after_the_last_of_them(
    history: History, blocked: tuple[int, int] | None, starts: list[int], told: list[int]
) -> None:
    closed = [] if blocked is None else [BlockedDays(*(START + timedelta(days=7 * week) for week in blocked))]
    season = asked(fat_fraction=0.2, weeks=60, history=history, blocked=closed)
    most = float(len(starts))
    planned = live_season(season, Policy(0.0, 0.15, 0.1, 500.0, 2.0, 1.0, 4.0, 6.0, most), START)
    assert [phase.first for phase in planned.phases if phase.kind == "mini_cut"] == starts
    messages = [action.message for action in planned.actions]
    assert [message.params["cuts"] for message in messages if message.code == "WARNED_CUTS_A_YEAR"] == told


def test_arrays_live_the_same_seasons_as_floats() -> None:
    rng = random.Random(4)
    season = asked(weeks=80, blocked=[BlockedDays(START + timedelta(days=100), START + timedelta(days=160))],
                   events=[Event(START + timedelta(days=300), 0.13)])  # fmt: skip
    policies = [random_policy(rng) for _ in range(60)]
    columns = Policy(*[np.array(column) for column in zip(*policies, strict=True)])
    together = live(season.life, columns, season.person(), season.calendar, 0.17, ops=arrays())
    assert len(set(together.cuts)) > 2  # the policies differ enough to mean something
    for i, policy in enumerate(policies):
        alone = live(season.life, policy, season.person(), season.calendar, 0.17)
        for name, value in alone._asdict().items():
            assert getattr(together, name)[i] == pytest.approx(value, rel=1e-9, abs=1e-9), name


def test_it_is_deterministic() -> None:
    season = asked()
    policy = season.ready_made(ReadyMade.FAST_GAIN_REPEATED_MINI_CUTS)
    assert lived(season, policy) == lived(season, policy)


def test_deficit_limit_is_the_strictest_of_the_rails() -> None:
    """The elementwise limit equals that of ``rails`` on single people, wherever the rate of loss is slower."""
    rng = random.Random(8)
    compared = 0
    for _ in range(300):
        weight, fraction = rng.uniform(50, 130), rng.uniform(0.1, 0.4)
        season = asked(
            weight_kg=weight, fat_fraction=fraction, maintenance_kcal=weight * rng.uniform(26, 42),
            sex=rng.choice(list(Sex)), status=rng.choice(list(TrainingStatus)), dose=rng.uniform(0, 1),
        )  # fmt: skip
        model, state = season.life[:2]
        weeks = rng.choice([2, 6, 7, 16])
        found = most_deficit_kcal(
            season.person(), model, state, state.fat_kg, season.member.subject.maintenance_kcal, float(weeks)
        )
        strictest = rails.deficit_limits(season.member.subject, weeks)[0].deficit_kcal
        assert found <= strictest + 1e-6
        if found > strictest - 1e-6:
            compared += 1
        else:
            # Then it is the rate of loss that binds, or a limit after the shortest cut: what is left of energy
            # availability rises as fat falls. Usual carbohydrate, so that no glycogen is burnt instead.
            diet = Diet(season.member.subject.maintenance_kcal - found, model.baseline_carbohydrate_kcal, 2.0)
            end = advance(model, state, diet, 1.0)
            later = advance(model, state, diet, 14.0)
            # Of tissue alone: water that leaves first is back when the cut is over.
            built_kg = float(later.tissue_kg - state.tissue_kg)
            then = season.member.subject._replace(weight_kg=weight + built_kg, fat_kg=float(later.fat_kg))
            if found > then.maintenance_kcal - rails.least_on_day_kcal(then, weeks)[0] - 75.0:
                continue
            assert 0.8 * table.LOSS_LIMIT < (state.tissue_kg - end.tissue_kg) * 7 / weight <= table.LOSS_LIMIT
    assert compared > 150


def test_a_cut_past_six_weeks_has_the_limits_of_a_long_one() -> None:
    """Of the lean: 25 kcal/kg of fat-free mass beside training are for six weeks, 30 for longer (Mountjoy 2023)."""
    season = asked(sex=Sex.FEMALE, height_cm=166.0, weight_kg=62.0, fat_fraction=0.22, maintenance_kcal=1900.0)
    limit = {}
    for weeks in (6.0, 7.0):
        week = lived(season, Policy(150.0, 0.2, 0.17, 1500.0, weeks))[0]
        assert week.mode == CUT
        limit[weeks] = float(week.deficit_kcal)
        assert limit[weeks] <= rails.deficit_limits(season.member.subject, weeks)[0].deficit_kcal + 1e-6
    assert limit[7.0] < limit[6.0] - 50.0


def test_a_cut_takes_two_weeks_at_least_where_all_that_fat_can_supply_is_taken_of_it() -> None:
    """Of the lean the size is limited by what fat mass can release: there is less of it in the second week."""
    rng = random.Random(11)
    taken = 0
    for _ in range(60):
        weight, fraction = rng.uniform(55.0, 100.0), rng.uniform(0.1, 0.16)
        season = asked(
            weight_kg=weight, fat_fraction=fraction, maintenance_kcal=weight * rng.uniform(34.0, 42.0), weeks=30,
            status=TrainingStatus.ADVANCED,
        )  # fmt: skip
        cuts = lived(season, Policy(0.0, fraction - 0.02, fraction - 0.04, 1500.0, 6.0, 3.0, 4.0, 3.0, 3.0))
        lengths = [len(list(run)) for is_cut, run in itertools.groupby(week.mode == CUT for week in cuts) if is_cut]
        assert all(length >= 2 for length in lengths)
        taken += len(lengths)
    assert taken > 30


def test_unknown_history_keeps_the_default_deficit() -> None:
    season = asked(fat_fraction=0.22, history=History())
    week = lived(season, Policy(150.0, 0.17, 0.13, 900.0))[0]
    assert week.mode == CUT
    assert week.deficit_kcal == table.DEFAULT_DEFICIT


@pytest.mark.parametrize("status", TrainingStatus)
@pytest.mark.parametrize("fraction", [0.1, 0.15, 0.25, 0.35])
def test_surplus_for_gain_rate_meets_the_ceiling_from_below(status: TrainingStatus, fraction: float) -> None:
    """The closed form against the model itself: two weeks at that surplus, with adaptation still small."""
    years = {"untrained": 0.0, "novice": 0.5, "intermediate": 2.5, "advanced": 7.0}[status]
    season = asked(fat_fraction=fraction, status=status, years=years)
    model, state = season.life[:2]
    limit = table.GAIN_RATE_LIMIT[status]
    surplus = surplus_for_gain_rate(
        season.person(), model, state, state.fat_kg, model.maintenance_kcal, state.weight_kg, limit
    )
    intake = model.maintenance_kcal + surplus
    # Glycogen as it is, so that no energy goes into it.
    diet = Diet(intake, model.baseline_carbohydrate_kcal, 1.8)
    rate = (advance(model, state, diet, 2.0).tissue_kg - state.tissue_kg) / state.weight_kg * 7.0 / 2.0
    assert 0.93 * limit < rate <= limit


def test_no_surplus_never_gains_and_more_surplus_gains_more_fat() -> None:
    season = asked()
    assert set(modes(season, Policy(0.0).without_cuts)) == {"H"}
    fats = [
        live(season.life, Policy(s).without_cuts, season.person(), season.calendar, 0.17).fat_gained_kg
        for s in (0.0, 50.0, 100.0, 150.0, 200.0)
    ]
    assert fats == sorted(fats)
    assert fats[-1] - fats[0] > 1.0


def test_without_surplus_and_training_nothing_is_gained() -> None:
    season = asked(dose=0.0)
    outcome = live(season.life, Policy(0.0).without_cuts, season.person(), season.calendar, 0.17)
    # Intakes are rounded to 10 kcal/d, so up to 5 kcal/d for a year: 0.24 kg of fat at most.
    assert abs(outcome.fat_gained_kg) < 0.24
    assert abs(outcome.lean_gained_kg) < 0.05


def test_phases_follow_one_another_as_they_should() -> None:
    season = asked(weeks=156)
    sequence = modes(season, season.ready_made(ReadyMade.FAST_GAIN_REPEATED_MINI_CUTS))
    assert "CG" not in sequence  # maintenance after every cut
    assert "CH" not in sequence
    assert sequence.count("C") == 4 * sequence.count("CB")
    assert not sequence.endswith("C")


def test_a_cut_keeps_its_intake_and_a_gain_is_set_every_four_weeks() -> None:
    season = asked(weeks=104)
    weeks = lived(season, season.ready_made(ReadyMade.SLOW_GAIN_RARE_MINI_CUTS))
    since = 0
    for before, after in itertools.pairwise(weeks):
        since = since + 1 if before.mode == after.mode else 0
        if before.mode == after.mode == CUT:
            assert before.intake_kcal == after.intake_kcal
        if before.mode == after.mode == GAIN and since % 4:
            assert before.intake_kcal == after.intake_kcal
    assert len({week.intake_kcal for week in weeks if week.mode == GAIN}) > 5


def test_no_cut_runs_on_blocked_dates_or_into_an_event() -> None:
    first, last = START + timedelta(days=3), START + timedelta(days=80)
    party = START + timedelta(days=7 * 20 + 2)
    season = asked(fat_fraction=0.2, blocked=[BlockedDays(first, last)], events=[Event(party)])
    sequence = modes(season, Policy(150.0, 0.17, 0.13, 500.0, 16.0))
    assert "C" not in sequence[:12]  # the week of day 3 to that of day 80
    assert sequence[12:19] == "C" * 7  # at once, and no longer than until the week before the event
    assert sequence[19:21] == "BG" or sequence[19:21] == "BH"


def test_body_fat_above_the_ceiling_is_held_while_no_cut_may_start() -> None:
    season = asked(fat_fraction=0.2, blocked=[BlockedDays(START, START + timedelta(days=700))])
    assert set(modes(season, Policy(150.0, 0.17, 0.13))) == {"H"}


@pytest.mark.parametrize("wanted", [0.12, 0.13, 0.14])
def test_a_season_arrives_lean_at_an_event(wanted: float) -> None:
    event = Event(START + timedelta(days=7 * 30 + 4), wanted)
    season = asked(events=[event])
    policy = Policy(150.0, 0.19, 0.17, 600.0, 16.0)
    weeks = lived(season, policy)
    outcome = live(season.life, policy, season.person(), season.calendar, 0.17)
    at_event = weeks[30].before
    assert at_event.fat_kg / at_event.weight_kg <= wanted
    assert outcome.missed_target == 0.0
    assert at_event.fat_kg / at_event.weight_kg > wanted - 0.006  # not earlier or leaner than asked
    assert weeks[29].mode == BRIDGE  # settled
    assert weeks[30].mode != CUT


def test_an_event_out_of_reach_is_told() -> None:
    season = asked(fat_fraction=0.25, events=[Event(START + timedelta(days=40), 0.12)])
    planned = live_season(season, Policy(100.0, 0.17, 0.12, 500.0), START)
    assert [unkept.limit for unkept in planned.unkept] == ["event_fat_fraction"]
    assert planned.unkept[0].found > 0.08
    on_the_day = asked(fat_fraction=0.2, events=[Event(START, 0.12)])
    assert live_season(on_the_day, Policy(100.0, 0.17, 0.12), START).unkept[0].found == pytest.approx(0.08)


def test_limits_on_cuts_are_kept() -> None:
    rng = random.Random(2)
    for _ in range(60):
        season = asked(weeks=156, fat_fraction=rng.uniform(0.12, 0.2), history=History(rng.randint(0, 3), 10))
        policy = random_policy(rng)
        sequence = modes(season, policy)
        starts = [w for w in range(156) if sequence[w] == "C" and (w == 0 or sequence[w - 1] != "C")]
        ends = [w for w in range(1, 156) if sequence[w - 1] == "C" and sequence[w] != "C"]
        assert len(starts) <= policy.most_cuts
        for k, start in enumerate(starts):
            assert sum(1 for other in starts[: k + 1] if start - other < 52) <= policy.cuts_a_year
            assert 2 <= ends[k] - start <= policy.longest_cut_weeks
            if k:
                assert start - ends[k - 1] >= policy.weeks_between_cuts


def test_earlier_cuts_count_within_the_year() -> None:
    policy = Policy(150.0, 0.17, 0.13, cuts_a_year=3.0)
    sequence = modes(asked(fat_fraction=0.2, weeks=80, history=History(3, 10)), policy)
    assert "C" not in sequence[:42]  # the last of them ended 10 weeks ago
    assert sequence[43] == "C"


def test_totals_agree_with_the_weeks() -> None:
    season = asked(weeks=100)
    planned = live_season(season, season.ready_made(ReadyMade.FAST_GAIN_LONG_CUT), START)
    states = planned.forecast.states
    outcome = planned.outcome
    assert states[-1].lean_kg - states[0].lean_kg == pytest.approx(outcome.lean_gained_kg)
    fractions = [state.fat_kg / state.weight_kg for state in states[1:]]
    assert max(fractions) == outcome.peak_fat_fraction
    assert sum(f > season.limits.band.upper for f in fractions) == outcome.weeks_above_band
    assert sum(len(p.weeks) for p in planned.phases if p.kind in ("cut", "mini_cut")) == outcome.weeks_dieting
    assert sum(len(p.weeks) for p in planned.phases) == 100
    assert sum(float(state.fat_kg) for state in states[1:]) / 100 == pytest.approx(outcome.mean_fat_kg)


def test_what_is_shown_is_what_was_lived() -> None:
    """The printed intakes, eaten week by week in the model, give the states of the season."""
    season = asked(weeks=60)
    planned = live_season(season, season.ready_made(ReadyMade.FAST_GAIN_REPEATED_MINI_CUTS), START)
    model, state = start_body(season.member.body)
    weeks = lived(season, planned.policy)
    rows = [row for phase in planned.phases for row in phase.weeks]
    for row, week in zip(rows, weeks, strict=True):
        macros = row.intake
        diet = Diet(float(macros.intake_kcal), 4.0 * macros.carbohydrate_g, macros.protein_g / float(week.protein_kg))
        state = advance(model, state, diet, 7.0)
        assert state == planned.forecast.states[row.point]


def test_protein_is_shared_out_as_in_a_plan() -> None:
    """By the plan's own function: for less than all of the body where body fat is high, and for all of it elsewhere."""
    for weight, fraction, sex in ((130.0, 0.42, Sex.MALE), (120.0, 0.5, Sex.FEMALE), (80.0, 0.15, Sex.MALE)):
        season = asked(weight_kg=weight, fat_fraction=fraction, sex=sex, maintenance_kcal=3100.0)
        first = lived(season, season.ready_made(ReadyMade.SLOW_GAIN_RARE_MINI_CUTS))[0]
        reference = season.member.subject.protein_kg
        assert first.protein_kg == pytest.approx(reference)
        assert (reference < weight) == (fraction > 0.4)
        planned = live_season(season, season.ready_made(ReadyMade.SLOW_GAIN_RARE_MINI_CUTS), START)
        grams = planned.phases[0].weeks[0].intake.protein_g
        assert 1.8 * reference <= grams <= 2.0 * reference + 5.0


def test_intervals_widen_and_hold_more_with_a_worse_reading() -> None:
    season = asked(weeks=104)
    policy = season.ready_made(ReadyMade.SLOW_GAIN_RARE_MINI_CUTS)
    spreads = live_season(season, policy, START).forecast.spreads()
    assert spreads[104].lean_kg > spreads[26].lean_kg > spreads[0].lean_kg
    fat = season.member.body.fat_kg
    body = season.member.body._replace(fat_kg=Estimate(fat.mean, 2 * fat.sd))
    worse = season._replace(member=having(season.member, body=body))
    assert live_season(worse, policy, START).forecast.spreads()[50].fat_kg > spreads[50].fat_kg


def test_a_review_keeps_an_error_in_maintenance_from_growing() -> None:
    """The same weeks eaten as written, without a review, have far wider intervals: why the plan sets intakes anew."""
    season = asked(weeks=104)
    policy = season.ready_made(ReadyMade.SLOW_GAIN_NO_CUT)
    sources = frozenset({UncertaintySource.MAINTENANCE})
    reviewed = live_season(season, policy, START, sources).forecast.spreads()
    stretches = [Stretch(week.diet, (7.0,)) for week in lived(season, policy)]
    written = forecast(season.member.body, stretches, sources=sources).spreads()
    assert reviewed[4].fat_kg == pytest.approx(written[4].fat_kg, rel=0.02)  # no review until then
    assert 2.0 * reviewed[104].fat_kg < written[104].fat_kg


def test_ready_made_strategies_differ_as_their_names_say() -> None:
    season = asked(weeks=156)
    outcomes = {
        name: live(season.life, season.ready_made(name), season.person(), season.calendar, season.limits.band.upper)
        for name in ReadyMade
    }
    rare, long, often, none = (outcomes[name] for name in ReadyMade)
    assert none.cuts == none.weeks_dieting == 0
    assert often.cuts > rare.cuts >= 1
    assert long.weeks_dieting / long.cuts > 6
    assert long.peak_fat_fraction > rare.peak_fat_fraction > often.peak_fat_fraction


def test_whoever_is_refused_a_deficit_can_have_a_season_without_cuts() -> None:
    season = asked()
    refused = screened(season, PREGNANT)
    with pytest.raises(rails.Refused):
        live_season(refused, season.ready_made(ReadyMade.SLOW_GAIN_RARE_MINI_CUTS), START)
    planned = live_season(refused, season.ready_made(ReadyMade.SLOW_GAIN_NO_CUT), START)
    assert {phase.kind for phase in planned.phases} == {"gain"}


def test_unanswered_screening_gets_no_season_at_all() -> None:
    """A season without cuts is a gain, and that is not planned blindly either."""
    with pytest.raises(rails.Refused) as refused:
        screened(asked(), None)
    assert refused.value.action.id == table.UNANSWERED


def test_body_fat_from_height_and_weight_never_starts_a_cut() -> None:
    member = asked().member
    unread = Member(member.told._replace(person=msgspec.structs.replace(member.person, body_fat=None)))
    refusal = may_cut(unread).refusal
    assert refusal is not None
    assert refusal.action.id == table.BODY_FAT


def test_hold_waits_until_body_fat_has_fallen() -> None:
    season = asked(fat_fraction=0.16, weeks=156)
    sequence = modes(season, Policy(150.0, 0.17, 0.13, most_cuts=0.0))
    assert set(sequence) == {"G", "H"}
    for run in sequence.replace("G", " ").split():
        assert len(run) > 4 or sequence.endswith(run)


def test_life_may_differ_from_what_is_believed() -> None:
    """Somebody who burns more than believed loses at first, until the log has shown it."""
    season = asked(dose=0.0)
    model, state = start_body(season.member.body)
    more = model._replace(offset_kcal=model.offset_kcal + 300.0, maintenance_kcal=model.maintenance_kcal + 300.0)
    policy = Policy(0.0).without_cuts
    blind = live(
        Life(more, state, maintenance_error_kcal=300.0, error_share=1.0), policy, season.person(), season.calendar, 0.17
    )
    shown = live(
        Life(more, state, maintenance_error_kcal=300.0, error_share=0.0), policy, season.person(), season.calendar, 0.17
    )
    assert blind.fat_gained_kg < shown.fat_gained_kg - 3.0
    # Four weeks of 300 kcal/d are about a kilogram.
    assert -1.5 < shown.fat_gained_kg < -0.4


def test_modes_are_distinct() -> None:
    assert len({GAIN, CUT, BRIDGE, HOLD}) == 4
