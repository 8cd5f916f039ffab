"""Writes ``report.md`` and its picture: ``make validate``; of another file of trials, its tables to the screen."""

import re
import shutil
import sys
from pathlib import Path

import numpy as np
from steelyard.science.numbers.estimate import Z80
from steelyard.science.register.version import MODEL_VERSION

from . import (
    as_served,
    carried_studies,
    comparison,
    continuous_model,
    energy_audit,
    first_weeks,
    held_out,
    long_horizon,
    picture,
)
from .cohorts import CLASS_BIAS, COHORTS, class_bias, estimated
from .comparison import Row, closes, compare, summarise
from .integrator_cases import CASES as INTEGRATED
from .integrator_cases import served_ends
from .leave_one_out import REFITTED, held, leave_one_out, salt_left
from .trials import Case, TrialError, read

REPORT = Path(__file__).with_name("report.md")
PICTURE = Path(__file__).with_name("forecast_against_measured.svg")
SERVED = Path(__file__).resolve().parents[2] / "service" / "steelyard" / "http" / "pages" / "science"


def table(head: list[str], rows: list[list[str]]) -> str:
    """A Markdown table."""
    lines = [head, ["---"] * len(head), *rows]
    return "\n".join("| " + " | ".join(cells) + " |" for cells in lines)


def kg(value: float | None) -> str:
    """A signed change."""
    return "" if value is None else f"{value:+.2f}".replace("-", "−")


def _measured(row: Row) -> str:
    error = row.measured.standard_error_kg
    return kg(row.measured.change_kg) + (f" (SE {error:.2f})" if error else "")


def _verdict(row: Row) -> str:
    return {True: "yes", False: "**no**", None: "does not close"}[row.is_accepted]


def _inside(row: Row) -> str:
    return "" if row.coverage is None else f"{row.coverage:.0%}"


def _cases(rows: list[Row]) -> str:
    body = [
        [
            row.case.id,
            row.quantity,
            _measured(row),
            kg(row.forecast_kg),
            f"{row.sd_kg:.2f}",
            kg(row.bias_kg),
            row.limit,
            _verdict(row),
            _inside(row),
        ]
        for row in rows
    ]
    head = ["case", "quantity", "measured, kg", "forecast, kg", "SD for one person", "bias", "accepted if", "accepted"]
    head.append("participants inside")
    return table(head, body)


def _outside(rows: list[Row]) -> str:
    lines = [
        f"- {row.case.trial.title}, {row.quantity}: measured {kg(row.measured.change_kg)}, "
        f"forecast {kg(row.forecast_kg)}, bias {kg(row.bias_kg)} kg ({row.limit})."
        for row in rows
        if row.is_accepted is False
    ]
    lines += [
        f"- {row.case.trial.title}, {row.quantity}: the 80 % interval holds {row.coverage:.0%} of the participants "
        f"({_span(row)} over the uncertainty of their SD)."
        for row in rows
        if row.is_coverage_accepted is False
    ]
    return "\n".join(lines) if lines else "None."


def _span(row: Row) -> str:
    return "" if row.coverage_range is None else f"{row.coverage_range[0]:.0%} to {row.coverage_range[1]:.0%}"


def _coverage(rows: list[Row]) -> str:
    body = [
        [
            row.case.id,
            row.quantity,
            f"{row.measured.sd_kg:.2f}",
            f"{row.sd_kg:.2f}",
            f"{row.coverage:.0%}",
            _span(row),
            "yes" if row.is_coverage_accepted else "**no**",
        ]
        for row in rows
        if row.measured.sd_kg is not None
    ]
    head = ["case", "quantity", "SD measured", "SD forecast", "covered", "over the uncertainty of the SD", "holds 80 %"]
    return table(head, body)


def _summary(rows: list[Row]) -> str:
    body = [
        [
            of.quantity,
            str(of.arms),
            f"{of.rmse_kg:.2f}",
            f"{kg(of.bias_kg)} (SE {of.bias_error_kg:.2f})",
            "" if of.inside is None else f"{of.inside:.0%} of {of.participants}",
        ]
        for of in summarise(rows)
    ]
    return table(["quantity", "arms", "root mean square, kg", "mean bias, kg", "participants inside"], body)


def _closing(cases: tuple[Case, ...]) -> str:
    body = []
    for case in cases:
        share, verdict = case.tissue_share, closes(case)
        told = {True: "yes", False: "**no**", None: "not judged"}[verdict]
        body.append([case.id, "" if share is None else f"{share:.0%}", told])
    return table(["case", "tissue energy over change of intake told", "closes"], body)


def _left_out(cases: tuple[Case, ...]) -> str:
    found = leave_one_out(cases)
    body = []
    for out in found:
        constants = ", ".join(f"{value:.2f}" for value in out.constants)
        for case, biases in out.biases:
            body.append([case.id, constants, *(kg(biases.get(quantity)) for quantity in comparison.QUANTITIES)])
    head = ["case", "constants refitted without its study", *(f"bias of {of}, kg" for of in comparison.QUANTITIES)]
    whole = [
        [of.quantity, str(of.arms), f"{of.rmse_kg:.2f}", f"{kg(of.bias_kg)} (SE {of.bias_error_kg:.2f})"]
        for of in held(found)
    ]
    return "\n\n".join((table(head, body), table(["quantity", "arms", "root mean square, kg", "mean bias, kg"], whole)))


def _inputs(cases: tuple[Case, ...]) -> str:
    body = []
    for case in cases:
        eaten = "; ".join(f"{part.intake_kcal:.0f} for {part.days:g} d" for part in case.periods)
        trial = case.trial
        body.append(
            [
                case.id,
                trial.title,
                f"{trial.person.weight_kg:.1f}, {case.fat_kg:.1f}",
                f"{case.maintenance_kcal:.0f}",
                eaten,
                f"{case.periods[0].protein_g_per_kg:.1f}",
                trial.intake_from,
                trial.assumed,
                ", ".join(f"`{id}`" for id in trial.in_sample),
            ]
        )
    head = [
        "case", "study", "mass, fat [kg]", "maintenance [kcal/d]", "intake [kcal/d]", "protein [g/kg]", "intake from",
        "assumed", "in-sample: constants set on it",
    ]  # fmt: skip
    return table(head, body)


def _horizon() -> str:
    body = []
    for adult in (long_horizon.OVERWEIGHT, long_horizon.SEDENTARY, long_horizon.LEAN):
        found = long_horizon.course(adult)
        body.append(
            [
                adult.title,
                kg(found.one_year_kg),
                kg(found.three_years_kg),
                kg(found.eventual_kg),
                f"{long_horizon.kcal_per_lb(adult, found):.1f}",
                f"{found.first_year_share:.0%}",
                f"{found.three_year_share:.0%}",
            ]
        )
    lifter = long_horizon.course(long_horizon.LIFTER)
    body.append([long_horizon.LIFTER.title, kg(lifter.one_year_kg), kg(lifter.three_years_kg), "-", "-", "-", "-"])
    head = ["at −100 kcal/d for good", "1 year, kg", "3 years, kg", "eventually, kg", "kcal/d per lb", "in 1 year"]
    head.append("in 3 years")
    return table(head, body)


def _first_weeks() -> str:
    body = []
    for start in first_weeks.STARTS:
        found = first_weeks.first_weeks(start)
        body.append(
            [
                start.title,
                f"{kg(found.deepest)} on day {found.day}",
                kg(found.after_one_week),
                kg(found.after_six_weeks),
                f"{found.returned:.0%}",
                kg(found.back_after_a_week),
                kg(found.back_after_two),
            ]
        )
    head = ["into a deficit of 500 kcal/d", "deepest, kg", "after a week", "after six", "returned within the phase"]
    head += ["a week at maintenance after it", "two weeks"]
    return table(head, body)


def _figure(value: float, unit: str) -> str:
    return kg(value) if unit == "kg" else f"{value:,.0f}"


def _carried_studies() -> str:
    as_it_is, *_, nothing, _ = carried_studies.READINGS
    body = [
        [
            check.study,
            f"{check.what}, {check.unit}",
            check.measured,
            _figure(check.found(as_it_is), check.unit),
            "yes" if check.is_met() else "**no**",
            _figure(check.found(nothing), check.unit) + ("" if check.is_met(nothing) else " (no)"),
            ", ".join(f"`{id}`" for id in check.set_on) or "-",
            check.assumed or "-",
        ]
        for check in carried_studies.CHECKS
    ]
    head = ["study", "what", "measured", "model", "met", "were nothing taken back", "in-sample: constants set on it"]
    return table([*head, "assumed"], body)


def _readings(cases: tuple[Case, ...]) -> str:
    body = []
    for salt in carried_studies.READINGS:
        found = carried_studies.weighed(salt, cases)
        body.append(
            [
                salt.title,
                f"{salt.water_kg:g}",
                f"{salt.recovery:.0%}",
                f"{found.accepted} of {found.judged}",
                f"{found.mass_kg:.2f}",
                f"{found.fat_free_kg:.2f}",
                f"{found.met} of {len(carried_studies.CHECKS)}",
                f"{found.goes_kg:.2f}",
            ]
        )
    head = ["reading", "salt water at most, kg", "taken back", "published cases accepted"]
    head += ["root mean square of body mass, kg", "of fat-free mass, kg", "figures above met"]
    return table([*head, "goes from a surplus of 250 into a deficit of 500, kg"], body)


def _salt_left(cases: tuple[Case, ...]) -> str:
    found, held_as = salt_left(cases), carried_studies.AS_IT_IS
    water, recovery, stays = found
    return (
        "Refitted to all published cases, beside what is known apart from them, "
        f"{water.mean:.2f} ± {water.sd:.2f} kg of salt water go,\n"
        f"{100 * recovery.mean:.0f} ± {100 * recovery.sd:.0f} % are taken back, and {stays.mean:.2f} ± {stays.sd:.2f} "
        f"kg stay off; in the model {held_as.water_kg * (1.0 - held_as.recovery):.2f} kg do."
    )


def _phases() -> str:
    body = []
    for deficit in carried_studies.DEFICITS_KCAL:
        for weeks in carried_studies.WEEKS:
            found = carried_studies.phase(deficit, weeks)
            back = [kg(of) for of in (*found.at_maintenance, *found.at_old_surplus)]
            body.append([f"{deficit:,.0f}", str(weeks), kg(found.after_one_week), kg(found.on_last_day), *back])
    head = ["deficit, kcal/d", "weeks", "after a week", "on the last day"]
    diets = ("maintenance", "the old surplus")
    head += [f"back at {diet}, {days} d" for diet in diets for days in carried_studies.BACK_DAYS]
    return table(head, body)


def _cohorts() -> str:
    body = []
    for cohort in COHORTS:
        said = estimated(cohort)
        body.append(
            [
                cohort.title,
                str(cohort.level),
                f"{cohort.total_kcal:.0f}",
                f"{said.mean:.0f} ({said.lower:.0f} to {said.upper:.0f})",
                f"{said.mean / cohort.total_kcal - 1.0:+.1%}".replace("-", "−"),
                cohort.assumed,
            ]
        )
    head = ["group", "activity level", "measured, kcal/d", "estimated, 80 % of people", "off by", "assumed"]
    by_level = ", ".join(f"{level} {off:+.1%}".replace("-", "−") for level, off in class_bias().items())
    return f"{table(head, body)}\n\nMean by level: {by_level}."


def _energy() -> str:
    body = [
        [
            name.replace("_", " "),
            _power(max(map(abs, energy_audit.step_residuals(name, 7.0)))),
            _power(abs(energy_audit.path_residual(name))),
        ]
        for name in energy_audit.PATHS
    ]
    return table(["path", "largest residual of a 7-day step", "residual of the path, independent quadrature"], body)


def _power(value: float) -> str:
    """Order of magnitude only: the last digits of a residual are rounding, which differs between machines."""
    if value < 1e-9:
        return "under 1e-9"
    return f"under 1e{int(np.ceil(np.log10(value)))}"


def _integrator() -> str:
    body = []
    for name, case in INTEGRATED.items():
        exact = continuous_model.solve(case.subject, case.meals)[-1]
        cells = [name.replace("_", " ")]
        for step in (7.0, 1.0):
            served = served_ends(case, step)[-1]
            cells.append(f"{1000 * np.abs(served[:2] - exact[:2]).max():.1f}")
        body.append(cells)
    return table(["path", "7-day steps: largest error of fat or lean, g", "1-day steps, g"], body)


def _published(cases: tuple[Case, ...], rows: list[Row]) -> str:
    judged = [row for row in rows if row.is_accepted is not None]
    accepted = sum(bool(row.is_accepted) for row in judged)
    return f"""Of {len(judged)} judged figures {accepted} are accepted.

The mean participant, eating what was measured where that is known. Fat-free mass is body mass less fat mass, so that it
holds glycogen, water and gut content, as scans, impedance and densitometry count them. Acceptance: bias of body mass
within {comparison.BODY_MASS_BIAS_KG:g} kg up to 8 weeks and within {comparison.BODY_MASS_BIAS_SHARE:.0%} of the change
in longer studies; of fat mass within {comparison.FAT_MASS_BIAS_KG:g} kg; of fat-free mass, by its size and not
its sign, within {comparison.FAT_FREE_MASS_BIAS_KG:g} kg.

{_cases(rows)}

{_summary(rows)}

### Outside the acceptance

{_outside(rows)}

### Do the trials' own numbers close?

Energy of the measured tissue (9,441 kcal/kg of fat, 1,816 of fat-free mass) over what was eaten more or less than
maintenance before the trial. Under {comparison.CLOSES[0]:.0%} or over {comparison.CLOSES[1]:.0%} intake, maintenance or
the readings must be off: such a trial is shown, marked, and judged by nothing. Beyond
{comparison.CLOSING_DAYS:.0f} days expenditure has followed the body, and the share says nothing.

{_closing(cases)}

### Share of participants in the 80 % interval

A normal with the measured mean and SD of change, against the interval for one person whose maintenance is known to
{comparison.MAINTENANCE_SD_KCAL:.0f} kcal/d. Both SDs hold the noise of two weighings, or of two readings of body
composition. The SD of a small study is itself uncertain: 80 % should lie in the range that its 95 % confidence interval
gives. In a trial intake was supervised or corrected for, so that participants may well vary less than people left to
themselves.

{_coverage(rows)}

### How each was simulated

Resting energy as measured, else by Mifflin 1990. Maintenance, where not measured, is what the service says of such
people at the activity level told. Constants of the model that were set with an eye on a case are named beside it: for
these the case is in-sample. What the model does on trials it has not seen, the next section says.

{_inputs(cases)}
"""


def _held_back(cases: tuple[Case, ...]) -> str:
    names = ", ".join(f"`{of.id}`" for of in REFITTED)
    priors = ", ".join(f"{of.prior.mean:g} ± {of.prior.sd:g}" for of in REFITTED)
    return f"""## Each study predicted without it

{names}, refitted to all other studies by least squares, held near what is known of them apart from these trials
({priors}); then the study left out is predicted. The form of the model was chosen with all of them in view.

{_left_out(cases)}
"""


def _held_out_rows(rows: list[Row]) -> str:
    body = []
    for row in rows:
        reach = Z80 * row.sd_kg
        spread = "" if row.measured.sd_kg is None else f" ± {row.measured.sd_kg:.2f}"
        body.append(
            [
                row.case.id,
                row.quantity,
                kg(row.measured.change_kg) + spread,
                kg(row.forecast_kg),
                f"{kg(row.forecast_kg - reach)} to {kg(row.forecast_kg + reach)}",
                "yes" if held_out.is_inside(row) else "**no**",
                kg(held_out.score(row)),
                "does not close" if closes(row.case) is False else "",
            ]
        )
    head = ["case", "quantity", "measured mean ± SD, kg", "forecast, kg", "80 % of people, kg", "mean inside", "z", ""]
    return table(head, body)


def _held_out_groups(rows: list[Row]) -> str:
    body = []
    for title, belongs in held_out.GROUPS:
        cells = [title]
        for quantity in comparison.QUANTITIES:
            found = held_out.bias_of(rows, belongs, quantity)
            if found is None:
                cells.append("")
            else:
                error = "" if np.isnan(found.error_kg) else f", SE {found.error_kg:.2f}"
                told = f"{kg(found.mean_kg)} ({found.arms}{error})"
                cells.append(f"**{told}**" if found.is_systematic else told)
        body.append(cells)
    return table(["arms", *(f"bias of {of}, kg (arms)" for of in comparison.QUANTITIES)], body)


def _held_out() -> str:
    cases = held_out.cases()
    rows = held_out.rows(cases)
    refused = sum(as_served.served(case).refused is not None for case in cases)
    counts = ", ".join(f"{of.inside} of {of.means} of {of.quantity}" for of in held_out.inside_by_quantity(rows))
    sources = "; ".join(dict.fromkeys(case.trial.source for case in cases))
    return f"""## Held-out trials

{len(cases)} arms of {len({case.study for case in cases})} studies on which no constant of the model was set, written
down before they were simulated; nothing is fitted to them. Hunter 2008 alone was mended after that: its abstract says
that people were measured at balance again. z is the measured mean less the forecast, in SDs of the
forecast for one person. Measured means inside the 80 % interval, of arms whose numbers do not fail to close: {counts}.
Most of these diets are for no member: asked for a forecast of them as they were eaten, the service refuses {refused} of
{len(cases)}.

{_held_out_rows(rows)}

Mean bias by kind of arm, forecast less measured, of arms that do not fail to close; bold where it is more than twice
its standard error.

{_held_out_groups(rows)}

{HELD_OUT_READING}

### How each of them was simulated

{_inputs(cases)}

Sources: {sources}.
"""


# What the tables show; the figures that it rests on are asserted in ``test_held_out.py``.
HELD_OUT_READING = """What is systematic, and why nothing was changed for it:

- **In people who do not lift, too much of a loss is taken to be lean.** The model's lean tissue follows Forbes, whose
  curve counts all fat-free mass, and carried mass comes on top. A smaller share would serve these arms and CALERIE-2,
  but put the long-horizon rule below out of its range: at nine tenths of it, 87 % of the change would come within three
  years. What lifting adds is met: in the two studies with and without it, it kept 1.3 and 1.8 kg of fat-free mass, and
  the forecast says 1.1 and 2.0. The fat lost is told too small, which errs to the cautious side.
- **Body mass falls faster in the forecast than in most trials whose intake was prescribed**, of which not all is kept.
- **Two weeks of a large surplus show less weight than forecast**, in people eating at home more than on wards.
- **Semi-starvation of lean men to 5 % of fat took less weight than forecast**: they hardly moved any more. Expenditure
  followed so far that the trial does not close by the rule above.
- In Garthe 2011, Friedl 1994 and Walberg 1988 the tissue lost holds more energy than the deficit told. Of supplements
  and diets that were logged and said to come on top the tissue gained holds less than a tenth. None of them closes."""


def report(cases: tuple[Case, ...], rows: list[Row]) -> str:
    """The page."""
    (low, high), (first, most), three = long_horizon.KCAL_PER_LB, long_horizon.FIRST_YEAR, long_horizon.THREE_YEARS
    sources = "; ".join(dict.fromkeys(case.trial.source for case in cases))
    text = f"""# Validation of the forecast

Model version {MODEL_VERSION}. Written by `make validate`; the tests in this directory assert what this page shows. What
falls outside the acceptance is listed, not hidden. `make validate TRIALS=path` puts other trials to the same tables;
`trials.md` in `tests/validation` describes the file.

![Forecast against measurement]({PICTURE.name})

## Published cases

{_published(cases, rows)}
Sources: {sources}.

{_held_back(cases)}
{_held_out()}
## Carried mass

A man of 80 kg with 14 kg of fat who lifts. Carried mass is glycogen with its water, salt water and gut content, here
against the day before. From a surplus of 250 kcal/d {first_weeks.FROM_SURPLUS[0]:g} to {first_weeks.FROM_SURPLUS[1]:g}
kg should go at its deepest, from maintenance {first_weeks.FROM_MAINTENANCE[0]:g} to
{first_weeks.FROM_MAINTENANCE[1]:g}. What of it returns while the deficit lasts is salt water, taken back as the body
restores its balance.

{_first_weeks()}

From a surplus of {carried_studies.SURPLUS_KCAL:g} kcal/d, carbohydrate in proportion, by size and length of the deficit
[kg]:

{_phases()}

Studies of the first weeks, none of them a case above. Met: body mass within {comparison.BODY_MASS_BIAS_KG:g} kg, energy
within two standard errors, else the range told. In-sample are the figures that a constant was set on.

{_carried_studies()}

Would it rather stay off for as long as less is eaten? The same with less of the salt water taken back, all other
constants as they are:

{_readings(cases)}

A body that takes nothing back has more off on the last day than trials saw, of body mass and of fat-free mass: the
model takes back what it does. With less salt water and none of it taken back the last day fits, and the first week does
not: less goes than the {first_weeks.FROM_SURPLUS[0]:g} to {first_weeks.FROM_SURPLUS[1]:g} kg that people see go. The
one figure that asks for more to stay off is the energy of a kilogram lost in the first four weeks (Heymsfield 2012).
{_salt_left(cases)}

After a year of gain (30 weeks), cut (8) and hold (14) carried mass is {kg(first_weeks.year_of_phases()[-1])} kg from
where it began.

## Maintenance before a log

Groups whose expenditure was measured, and that the estimate does not rest on, against resting energy times activity
combined with the reference equations. Accepted: each mean inside the interval, no level off by more than
{CLASS_BIAS:.0%}.

{_cohorts()}

## Long horizon

Hall KD et al. Lancet 2011;378:826-37, for the average overweight adult: in the end about 10 kcal/d per pound, half of
the change in about a year and 95 % in about three. Accepted: {low:g} to {high:g} kcal/d per pound, {first:.0%} to
{most:.0%} in the first year, at least {three:.0%} in three, at an average activity level. Change is against the same
adult who goes on eating at maintenance.

{_horizon()}

A sedentary adult spends less on carrying mass, so that more must change before a new balance. A lean body settles
sooner and on less: its kilograms hold more lean tissue, which holds less energy and costs more to keep. Lifting with
ample protein spares that lean tissue, so that more of the change is fat and the scale moves more slowly; and training
goes on trading fat for lean, so that no final weight is given.

## Energy

Intake less expenditure, recomputed term by term with the cost of building both tissues, against energy stored in fat,
lean tissue and glycogen; relative, accepted under 1e-6.

{_energy()}

## Integration

Against scipy (DOP853, relative tolerance 1e-10) on the continuous equations, written independently of the service.

{_integrator()}
"""
    return re.sub(r" +\n", "\n", text)


def main(path: str | None = None) -> None:
    """Write page and picture; or, of the trials in the file at ``path``, print the tables."""
    if path is not None:
        try:
            cases = read(Path(path))
        except (TrialError, OSError) as error:
            sys.exit(str(error))
        print(f"# Trials of {Path(path).name}\n\n{_published(cases, [row for case in cases for row in compare(case)])}")
        if len({case.study for case in cases if closes(case) is not False}) > 2:
            print(_held_back(cases))
        return
    cases = read()
    rows = [row for case in cases for row in compare(case)]
    picture.draw(rows, PICTURE)
    REPORT.write_text(report(cases, rows), encoding="utf-8")
    shutil.copy(REPORT, SERVED / "validation.md")  # the service shows both
    shutil.copy(PICTURE, SERVED)
    print(f"{REPORT.name} and {PICTURE.name} written")


if __name__ == "__main__":
    main(*sys.argv[1:2])
