"""`POST /v1/body-composition`."""

from typing import Annotated

from msgspec import Meta

from steelyard.science.measures import DensityConversion, SkinfoldMethod
from steelyard.science.person import BodyFatMethod, Sex, TrainingStatus

from .explanation import MethodIds, Note, Provenance
from .shared_fields import AgeYears, FatFraction, HeightCm, Interval, Request, Response, WeightKg

Skinfold = Annotated[float, Meta(ge=1, le=100, description="Skinfold at this site, millimetres.", examples=[14.5])]


class GirthMeasurement(Request, frozen=True, kw_only=True, tag_field="kind", tag="girths"):
    """Girths by tape. Men: neck and abdomen. Women: neck, waist and hip. Unspecified sex: all four."""

    neck_cm: Annotated[
        float, Meta(ge=20, le=80, description="Neck just under the larynx, centimetres.", examples=[38.5])
    ]
    abdomen_cm: (
        Annotated[
            float, Meta(ge=40, le=250, description="Abdomen at the navel, centimetres; for men.", examples=[88.0])
        ]
        | None
    ) = None
    waist_cm: (
        Annotated[
            float,
            Meta(ge=40, le=250, description="Waist at its narrowest, centimetres; for women.", examples=[71.5]),
        ]
        | None
    ) = None
    hip_cm: (
        Annotated[float, Meta(ge=40, le=250, description="Hip at its widest, centimetres; for women.", examples=[98.0])]
        | None
    ) = None


class SkinfoldMeasurement(Request, frozen=True, kw_only=True, tag_field="kind", tag="skinfolds"):
    """Skinfolds by caliper at the sites that the equation needs.

    `jackson_pollock_3`: chest, abdomen, thigh (men), triceps, suprailiac, thigh (women). `jackson_pollock_7`: chest,
    midaxillary, triceps, subscapular, abdomen, suprailiac, thigh. `durnin_womersley_4`: biceps, triceps,
    subscapular, suprailiac.
    """

    equation: Annotated[
        SkinfoldMethod,
        Meta(description="Which equation, hence which sites.", examples=["jackson_pollock_3"]),
    ]
    conversion: Annotated[
        DensityConversion, Meta(description="How body density becomes body fat.", examples=["siri"])
    ] = DensityConversion.SIRI
    abdomen_mm: Skinfold | None = None
    biceps_mm: Skinfold | None = None
    chest_mm: Skinfold | None = None
    midaxillary_mm: Skinfold | None = None
    subscapular_mm: Skinfold | None = None
    suprailiac_mm: Skinfold | None = None
    thigh_mm: Skinfold | None = None
    triceps_mm: Skinfold | None = None


class ReadingMeasurement(Request, frozen=True, kw_only=True, tag_field="kind", tag="reading"):
    """Body fat as a device or a person gave it, and how (the method sets its error)."""

    fat_fraction: FatFraction
    method: Annotated[BodyFatMethod, Meta(description="How the reading was taken.", examples=["dxa"])]


class BmiMeasurement(Request, frozen=True, kw_only=True, tag_field="kind", tag="bmi"):
    """Body fat from the height and weight of the request: the last resort."""


Measurement = GirthMeasurement | SkinfoldMeasurement | ReadingMeasurement | BmiMeasurement


class BodyCompositionRequest(Request, frozen=True, kw_only=True):
    """A person and what was measured. Repeats of a kind are welcome: they average out the day-to-day error."""

    sex: Annotated[
        Sex,
        Meta(description="Which equations apply. `unspecified` gives both as a range.", examples=["male"]),
    ]
    age_years: AgeYears
    height_cm: HeightCm
    weight_kg: WeightKg
    training_status: Annotated[
        TrainingStatus,
        Meta(
            description="Experience in resistance training. Body fat from BMI has a larger error in those who train.",
            examples=["intermediate"],
        ),
    ]
    measurements: Annotated[
        list[Measurement], Meta(min_length=1, max_length=60, description="What was measured, in any order.")
    ]


class MeasurementRow(Response, frozen=True, kw_only=True):
    """One measurement: what it says alone, and how much it counts."""

    kind: Annotated[str, Meta(description="As in the request. Extensible.", examples=["girths"])]
    fat_fraction: Annotated[float, Meta(description="Its value, 0 to 1.", examples=[0.172])]
    standard_deviation: Annotated[
        float, Meta(description="Error of this one value, 1 SD, as a fraction of body mass.", examples=[0.042])
    ]
    weight: Annotated[float, Meta(description="Its share in the answer; all sum to 1.", examples=[0.35])]
    notes: Annotated[list[Note], Meta(description="Ranges exceeded, measures not used.")]
    methods: MethodIds


class HealthyRange(Response, frozen=True, kw_only=True):
    """The healthy range for age and sex, and where this body fat stands. For an unspecified sex it spans both."""

    lower_fraction: Annotated[float, Meta(description="Lower end, 0 to 1.", examples=[0.08])]
    upper_fraction: Annotated[float, Meta(description="Upper end, 0 to 1.", examples=[0.2])]
    standing: Annotated[
        str, Meta(description="Of the mean: `below`, `within` or `above`. Extensible.", examples=["within"])
    ]
    below_probability: Annotated[float, Meta(description="Probability of less than the range.", examples=[0.02])]
    within_probability: Annotated[float, Meta(description="Probability of the range.", examples=[0.75])]
    above_probability: Annotated[float, Meta(description="Probability of more than the range.", examples=[0.23])]


class BodyCompositionResponse(Provenance, frozen=True, kw_only=True):
    """Fat and fat-free mass with their intervals, and what they rest on."""

    fat_fraction: Annotated[Interval, Meta(description="Body fat, 0 to 1.")]
    fat_kg: Annotated[Interval, Meta(description="Fat mass, kilograms.")]
    fat_free_kg: Annotated[Interval, Meta(description="Fat-free mass, kilograms.")]
    ffmi: Annotated[Interval, Meta(description="Fat-free mass index, kg/m².")]
    normalised_ffmi: Annotated[Interval, Meta(description="Fat-free mass index at a height of 1.80 m, kg/m².")]
    is_measured: Annotated[
        bool, Meta(description="False where nothing but height and weight is behind it.", examples=[True])
    ]
    healthy_range: Annotated[
        HealthyRange | None, Meta(description="Null under 18 years: the ranges of adults do not apply.")
    ]
    measurements: Annotated[list[MeasurementRow], Meta(description="One row a measurement, in the request's order.")]
    notes: Annotated[list[Note], Meta(description="Measurements that disagree, figures worth a second look.")]
    cautions: list[Note]
    methods: MethodIds
