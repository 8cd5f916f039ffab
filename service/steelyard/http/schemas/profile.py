"""The person, as a caller describes them, and the screening answers a deficit needs."""

from typing import Annotated

from msgspec import Meta

from steelyard.science.person import (
    ActivityLevel,
    BodyFatMethod,
    Condition,
    EatingDisorder,
    Medicine,
    Sex,
    TrainingStatus,
)

from .shared_fields import AgeYears, FatFraction, HeightCm, Request, WeightKg


class BodyFat(Request, frozen=True, kw_only=True):
    """A body-fat reading and how it was taken (the method sets its error)."""

    fat_fraction: FatFraction
    method: Annotated[BodyFatMethod, Meta(description="How the reading was taken.", examples=["skinfolds"])]


class TrainingSession(Request, frozen=True, kw_only=True):
    """A bout repeated every week."""

    met: Annotated[
        float,
        Meta(ge=1, le=20, description="Intensity in METs (vigorous resistance training is 6).", examples=[6.0]),
    ]
    minutes: Annotated[float, Meta(ge=1, le=600, description="Minutes a bout.", examples=[60])]
    times_per_week: Annotated[float, Meta(gt=0, le=21, description="Bouts a week.", examples=[4])]


class ActivityByLevel(Request, frozen=True, kw_only=True, tag_field="kind", tag="level"):
    """Whole-day activity as a band of the physical activity level (PAL). Training is included: do not add it again."""

    level: Annotated[
        ActivityLevel,
        Meta(
            description="`sedentary` (PAL 1.40-1.55; a quarter of adults by labelled water): seated nearly all day, "
            "hardly any walking, no training. `light` (1.55-1.70; the next quarter): an ordinary seated day with some "
            "walking, or desk work and three to five hours of lifting a week. `moderate` (1.70-1.85): on the feet for "
            "much of the day, or an ordinary day and training on most days. `active` (1.85-2.00; the most active "
            "quarter): physical work, or hard training of a competing athlete. `very_active` (2.00-2.40): heavy "
            "physical work or many hours of training.",
            examples=["light"],
        ),
    ]


class ActivityByWeek(Request, frozen=True, kw_only=True, tag_field="kind", tag="week"):
    """Activity composed of steps and sessions. Steps exclude those made in sessions."""

    steps_per_day: Annotated[
        float, Meta(ge=0, le=60000, description="Steps a day outside the sessions.", examples=[8000])
    ]
    sessions: Annotated[list[TrainingSession], Meta(max_length=30, description="All training of the week.")] = []


class Training(Request, frozen=True, kw_only=True):
    """Resistance training."""

    status: Annotated[
        TrainingStatus,
        Meta(
            description="Experience: untrained, novice (under a year), intermediate (one to four), advanced.",
            examples=["intermediate"],
        ),
    ]
    resistance_sessions_per_week: Annotated[
        float, Meta(ge=0, le=14, description="Resistance sessions a week.", examples=[4])
    ]
    is_new_programme: Annotated[
        bool,
        Meta(description="Whether training started or clearly increased in the last weeks.", examples=[False]),
    ] = False


class Profile(Request, frozen=True, kw_only=True):
    """The person. Nothing of it is kept."""

    sex: Annotated[
        Sex,
        Meta(
            description="Which equations apply. `unspecified` gives both as a wider range, and the stricter rails.",
            examples=["male"],
        ),
    ]
    age_years: AgeYears
    height_cm: HeightCm
    weight_kg: WeightKg
    activity: Annotated[
        ActivityByLevel | ActivityByWeek, Meta(description="A whole-day level, or a week of steps and sessions.")
    ]
    training: Training
    body_fat: Annotated[BodyFat | None, Meta(description="A body-fat reading, where there is one.")] = None


class ClinicalClearance(Request, frozen=True, kw_only=True):
    """A supervising professional's clearance. Echoed in the answer."""

    given_by: Annotated[
        str, Meta(min_length=3, max_length=80, description="The professional's role.", examples=["physician"])
    ]
    reason: Annotated[str, Meta(min_length=10, max_length=300, description="Why a deficit is acceptable here.")]


class Screening(Request, frozen=True, kw_only=True):
    """Safety questions. A deficit is planned only when they are answered: unknown is never clear."""

    is_pregnant: Annotated[bool, Meta(description="Pregnant now.", examples=[False])]
    is_breastfeeding: Annotated[bool, Meta(description="Breastfeeding now.", examples=[False])]
    eating_disorder: Annotated[EatingDisorder, Meta(description="Eating disorder, now or before.", examples=["none"])]
    conditions: Annotated[
        list[Condition], Meta(max_length=20, description="Conditions that apply; empty for none.", examples=[[]])
    ]
    medicines: Annotated[
        list[Medicine], Meta(max_length=20, description="Medicines taken; empty for none.", examples=[[]])
    ]
    clinical_clearance: Annotated[
        ClinicalClearance | None, Meta(description="A professional's clearance, where one was given.")
    ] = None
