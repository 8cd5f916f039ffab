"""Writes ``report.md`` and its picture: ``make validate``."""

import re
import shutil
from pathlib import Path

import numpy as np
from steelyard.science.register.version import MODEL_VERSION

from . import comparison, continuous_model, energy_audit, long_horizon, picture
from .cases import CASES, SENSITIVITY, with_activity_level
from .comparison import Row, compare
from .integrator_cases import CASES as INTEGRATED
from .integrator_cases import served_ends

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
    return {True: "yes", False: "**no**", None: "not judged"}[row.is_accepted]


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
        ]
        for row in rows
    ]
    head = ["case", "quantity", "measured, kg", "forecast, kg", "SD for one person", "bias", "accepted if", "accepted"]
    return table(head, body)


def _outside(rows: list[Row]) -> str:
    lines = [
        f"- {row.case.title}, {row.quantity}: measured {kg(row.measured.change_kg)}, forecast {kg(row.forecast_kg)}, "
        f"bias {kg(row.bias_kg)} kg ({row.limit})."
        for row in rows
        if row.is_accepted is False
    ]
    lines += [
        f"- {row.case.title}, {row.quantity}: the 80 % interval holds {row.coverage:.0%} of the participants "
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


def _inputs() -> str:
    body = []
    for case in CASES:
        eaten = "; ".join(f"{part.intake_kcal:.0f} for {part.days:g} d" for part in case.eaten)
        body.append(
            [
                case.id,
                case.title,
                f"{case.weight_kg:.1f}, {case.fat_kg:.1f}",
                f"{case.maintenance_kcal:.0f}",
                eaten,
                f"{case.protein_g_per_kg:.1f}",
                case.intake_from,
                case.assumed,
            ]
        )
    head = [
        "case", "study", "mass, fat [kg]", "maintenance [kcal/d]", "intake [kcal/d]", "protein [g/kg]", "intake from",
        "assumed",
    ]  # fmt: skip
    return table(head, body)


def _sensitivity() -> str:
    body = []
    for case in CASES:
        if case.id not in SENSITIVITY:
            continue
        cells = [case.id]
        for level in (1.575, 1.775, 1.925):
            rows = compare(with_activity_level(case, level))
            cells += [f"{kg(rows[0].bias_kg)}, {kg(rows[1].bias_kg)}"]
        body.append(cells)
    return table(["case", "bias of body mass, fat mass at 1.575", "at 1.775 (as above)", "at 1.925"], body)


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


def report(rows: list[Row]) -> str:
    """The page."""
    judged = [row for row in rows if row.is_accepted is not None]
    accepted = sum(bool(row.is_accepted) for row in judged)
    (low, high), (first, most), three = long_horizon.KCAL_PER_LB, long_horizon.FIRST_YEAR, long_horizon.THREE_YEARS
    text = f"""# Validation of the forecast

Model version {MODEL_VERSION}. Written by `make validate`; the tests in this directory assert what this page shows. The
model is not fitted to these studies one by one, and what falls outside the acceptance is listed, not hidden.

Of {len(judged)} judged figures {accepted} are accepted.

![Forecast against measurement]({PICTURE.name})

## Published cases

The mean participant, eating what was measured where that is known. Fat-free mass is body mass less fat mass, so that it
holds glycogen, water and gut content, as scans, impedance and densitometry count them. Acceptance: bias of body mass
within {comparison.BODY_MASS_BIAS_KG:g} kg up to 8 weeks and within {comparison.BODY_MASS_BIAS_SHARE:.0%} of the change
in longer studies; of fat mass within {comparison.FAT_MASS_BIAS_KG:g} kg; sign of the change of fat-free mass where it
exceeds its standard error.

{_cases(rows)}

### Outside the acceptance

{_outside(rows)}

### Share of participants in the 80 % interval

A normal with the measured mean and SD of change, against the interval for one person whose maintenance is known to
{comparison.MAINTENANCE_SD_KCAL:.0f} kcal/d. Both SDs hold the noise of two weighings, or of two readings of body
composition. The SD of a small study is itself uncertain: 80 % should lie in the range that its 95 % confidence interval
gives. In a trial intake was supervised or corrected for, so that participants may well vary less than people left to
themselves.

{_coverage(rows)}

### How each was simulated

Resting energy as measured, else by Mifflin 1990. Maintenance, where not reported, is resting energy times the middle of
the service's activity band: 1.475 sedentary, 1.775 for people who lift, 1.925 for track athletes.

{_inputs()}

Where maintenance was not reported the activity level matters:

{_sensitivity()}

Sources: {"; ".join(dict.fromkeys(case.source for case in CASES))}.

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


def main() -> None:
    """Write page and picture."""
    rows = [row for case in CASES for row in compare(case)]
    picture.draw(rows, PICTURE)
    REPORT.write_text(report(rows), encoding="utf-8")
    shutil.copy(REPORT, SERVED / "validation.md")  # the service shows both
    shutil.copy(PICTURE, SERVED)
    print(f"{REPORT.name} and {PICTURE.name} written")


if __name__ == "__main__":
    main()
