"""Figures with their error, between the wire and the layer of answers.

What is answered keeps to the bounds that the schemas set to what is sent, so that every state is taken back.
"""

from datetime import date

from msgspec import UNSET, UnsetType

from steelyard.science.body import Adherence
from steelyard.science.member import Steered
from steelyard.science.numbers import Estimate

from ..schemas.shared_fields import AdherenceFigure, EnergyFigure, MassFigure, RatioFigure
from ..schemas.states import SteeredFigure


def estimate(figure: MassFigure | EnergyFigure | RatioFigure) -> Estimate:
    """A figure as it was told."""
    return Estimate(figure.mean, figure.standard_deviation)


def adherence(figure: AdherenceFigure | UnsetType) -> Adherence | None:
    """How well deficits are kept to, where that was told."""
    if isinstance(figure, UnsetType):
        return None
    return Adherence(Estimate(figure.mean, figure.standard_deviation), figure.weeks)


def steered(figure: SteeredFigure | UnsetType) -> Steered | None:
    """The maintenance that intakes were steered to, where that was told."""
    if isinstance(figure, UnsetType):
        return None
    return Steered(figure.date.toordinal(), Estimate(figure.mean_kcal, figure.standard_deviation_kcal))


def mass_figure(found: Estimate, least: float = -30.0) -> MassFigure:
    """A mass with its error, no less than ``least`` [kg]."""
    mean, sd = min(max(least, found.mean), 350.0), min(found.sd, 100.0)
    return MassFigure(mean=round(mean, 4), standard_deviation=round(sd, 4))


def energy_figure(found: Estimate) -> EnergyFigure:
    """An energy with its error."""
    mean, sd = min(max(found.mean, -5000.0), 30000.0), min(found.sd, 15000.0)
    return EnergyFigure(mean=round(mean, 2), standard_deviation=round(sd, 2))


def ratio_figure(found: Estimate) -> RatioFigure:
    """A logging ratio with its error."""
    mean, sd = min(max(found.mean, 0.2), 1.5), min(found.sd, 1.0)
    return RatioFigure(mean=round(mean, 4), standard_deviation=round(sd, 4))


def adherence_figure(found: Adherence | None) -> AdherenceFigure | UnsetType:
    """How well deficits are kept to, where that was seen."""
    if found is None:
        return UNSET
    mean, sd = found.share.mean, found.share.sd
    return AdherenceFigure(
        mean=round(min(max(mean, 0.2), 1.5), 4),
        standard_deviation=round(min(max(sd, 0.01), 1.0), 4),
        weeks=round(min(found.weeks, 520.0), 1),
    )


def steered_figure(found: Steered | None) -> SteeredFigure | UnsetType:
    """The maintenance that intakes were steered to, where that was seen."""
    if found is None:
        return UNSET
    mean, sd = found.maintenance.mean, found.maintenance.sd
    return SteeredFigure(
        date=date.fromordinal(found.day),
        mean_kcal=round(min(max(mean, 101.0), 30000.0), 2),
        standard_deviation_kcal=round(min(max(sd, 1.0), 15000.0), 2),
    )
