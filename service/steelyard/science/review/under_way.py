"""What a phase under way may say of itself."""

from ..phase import FollowedPhase, PhaseKind
from ..register import Basis, Contradiction, constant

SIDE_SLACK = constant(
    "phase_side_slack", 0.02, unit="1", basis=Basis.JUDGEMENT,
    summary="A gain planned further under its maintenance than this share of it, or a cut over it, is a contradiction",
)  # fmt: skip


def check_side(phase: FollowedPhase) -> None:
    """Raises ``Contradiction`` for a gain that is planned under its maintenance, or a cut over it."""
    slack = SIDE_SLACK * phase.maintenance.mean
    for i, week in enumerate(phase.weeks):
        apart = week.intake_kcal - phase.maintenance.mean
        if week.is_break:
            continue
        if phase.kind is PhaseKind.GAIN and apart < -slack:
            detail = (
                f"A gain is not eaten under its maintenance: {week.intake_kcal:.0f} against "
                f"{phase.maintenance.mean:.0f} kcal a day. Send the weeks as first planned, or a `cut`."
            )
            raise Contradiction("GAIN_UNDER_MAINTENANCE", f"phase.weeks[{i}].intake_kcal", detail)
        if phase.kind.is_deficit and apart > slack:
            detail = (
                f"A cut is not eaten over its maintenance: {week.intake_kcal:.0f} against "
                f"{phase.maintenance.mean:.0f} kcal a day. Send the weeks as first planned, or a `gain`."
            )
            raise Contradiction("CUT_OVER_MAINTENANCE", f"phase.weeks[{i}].intake_kcal", detail)
