"""`POST /v1/body-composition`: fat and fat-free mass from whatever was measured."""

from steelyard import answers
from steelyard.science.measures import Bounds, MeasuredPerson, Position, Standing

from ..operation.operation import computation
from ..schemas.body_composition import BodyCompositionRequest, BodyCompositionResponse, HealthyRange, MeasurementRow
from ..schemas.shared_fields import Interval
from . import mapping
from .examples.examples import BODY_COMPOSITION_EXAMPLES
from .mapping import FRACTION, KG

_INDEX = 2  # digits of an index in kg/m²
_PROBABILITY = 3


@computation(
    "/v1/body-composition",
    operation_id="estimate_body_composition",
    tag="body-composition",
    summary="Estimate body composition",
    request_examples=BODY_COMPOSITION_EXAMPLES,
)
def estimate_body_composition(body: BodyCompositionRequest) -> BodyCompositionResponse:
    """Estimate body fat and fat-free mass from girths, skinfolds, readings, or height and weight.

    Several measurements are combined, each weighted by its precision; errors that methods have in common are counted
    once, and repeats shrink only the part of an error that differs from day to day. Measurements that disagree widen
    the interval and are named. The answer says where the body fat stands against the healthy range for age and sex.
    """
    person = MeasuredPerson(
        sex=body.sex,
        age_years=body.age_years,
        height_cm=body.height_cm,
        weight_kg=body.weight_kg,
        training=body.training_status,
    )
    measured = tuple(mapping.measurement(m) for m in body.measurements)
    answer = answers.estimate_composition(answers.CompositionAsked(person, measured))
    result = answer.value
    return BodyCompositionResponse(
        **mapping.provenance("estimate_body_composition", body),
        fat_fraction=_interval(result.fat_fraction, FRACTION),
        fat_kg=_interval(result.fat_kg, KG),
        fat_free_kg=_interval(result.fat_free_kg, KG),
        ffmi=_interval(result.ffmi, _INDEX),
        normalised_ffmi=_interval(result.ffmi_normalised, _INDEX),
        is_measured=result.fat.is_measured,
        healthy_range=_healthy_range(result.position) if result.position else None,
        measurements=[
            MeasurementRow(
                kind=str(wire.__struct_config__.tag),
                fat_fraction=round(row.fat.mean, FRACTION),
                standard_deviation=round(row.fat.sd, FRACTION),
                weight=round(row.weight, _PROBABILITY),
                notes=mapping.notes(row.notes),
                methods=sorted(row.methods),
            )
            for wire, row in zip(body.measurements, result.rows, strict=True)
        ],
        notes=mapping.notes(result.notes),
        cautions=mapping.notes(answer.cautions),
        methods=answer.methods,
    )


def _interval(bounds: Bounds, digits: int) -> Interval:
    return Interval(
        lower=round(bounds.lower, digits), mean=round(bounds.mean, digits), upper=round(bounds.upper, digits)
    )


def _healthy_range(position: Position) -> HealthyRange:
    below, above = (round(position.probability[s], _PROBABILITY) for s in (Standing.BELOW, Standing.ABOVE))
    return HealthyRange(
        lower_fraction=position.range.lower,
        upper_fraction=position.range.upper,
        standing=position.standing.value,
        below_probability=below,
        within_probability=round(1.0 - below - above, _PROBABILITY),
        above_probability=above,
    )
