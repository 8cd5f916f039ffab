"""`POST /v1/maintenance`: the intake at which tissue energy is stable."""

from steelyard import answers
from steelyard.science.phase import FollowedPhase
from steelyard.science.register import Contradiction

from ..languages import english
from ..operation.operation import computation
from ..schemas.maintenance import Contribution, EquationRow, MaintenanceRequest, MaintenanceResponse
from ..schemas.states import State
from . import mapping, phases
from .examples.examples import MAINTENANCE_EXAMPLES
from .mapping import KCAL, amount, fat_share


@computation(
    "/v1/maintenance",
    operation_id="estimate_maintenance",
    tag="maintenance",
    summary="Estimate maintenance energy",
    request_examples=MAINTENANCE_EXAMPLES,
)
def estimate_maintenance(body: MaintenanceRequest) -> MaintenanceResponse:
    """Estimate maintenance from prediction equations, activity and, where there is one, a log.

    The equations are the prior, the log of weights and intakes the likelihood; the answer is on the person's own
    logging scale and says how much each counted. Every equation is listed with whether it applies.
    """
    answer = answers.estimate_maintenance(
        answers.MaintenanceAsked(
            mapping.told(body.profile, screened=body.screening, entries=body.log, state=body.state),
            body.as_of_date,
            _plan_of(body.state),
        )
    )
    found = answer.value
    return MaintenanceResponse(
        **mapping.provenance("estimate_maintenance", body),
        as_of_date=found.as_of,
        maintenance_kcal=amount(found.settled, KCAL),
        physical_maintenance_kcal=None if found.physical is None else amount(found.physical, KCAL),
        resting_kcal=amount(found.resting, KCAL),
        activity_level=round(found.activity_level, 2),
        body_fat_fraction=fat_share(found.fat_fraction),
        equations=_rows(found),
        contribution=Contribution(
            prior_kcal=amount(found.prior, KCAL),
            prior_share=round(found.prior_share, 3),
            log_share=round(found.log_share, 3),
        ),
        state=None if answer.state is None else mapping.state_on(answer.state, body.state),
        reasons=mapping.notes(answer.reasons),
        cautions=mapping.notes(answer.cautions),
        methods=answer.methods,
    )


def _plan_of(state: State | None) -> FollowedPhase | None:
    """The phase of a state; None of one whose weeks contradict each other, which a review names."""
    if state is None or state.phase is None:
        return None
    try:
        return phases.followed(state.phase, "state.phase")
    except Contradiction:
        return None


def _rows(found: answers.Maintenance) -> list[EquationRow]:
    resting = found.resting
    rows = [
        EquationRow(
            id,
            "resting",
            round(value),
            is_applicable,
            weight > 0.0,
            round(weight, 3) if weight else 0.0,
            [] if why_not is None else [english(why_not)],
        )
        for (id, _, is_applicable, weight, why_not), value in zip(resting.lines, resting.values, strict=True)
    ]
    rows += [
        EquationRow(
            row.id,
            "total",
            round(row.kcal_per_day),
            is_applicable=row.is_applicable,
            is_used=row.weight > 0.0,
            weight=round(row.weight, 3),
            notes=[] if row.note is None else [english(row.note)],
        )
        for row in found.totals
    ]
    return rows
