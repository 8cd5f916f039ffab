"""What equations say of a person today: resting and total energy, body fat from whatever was measured."""

from .activity_energy import (
    ACTIVITY_ERROR,
    bout_kcal,
    kept_kcal,
    session_kcal,
    step_kcal,
)
from .assessment import (
    Assessment,
    assess,
    body_of,
    general_cautions,
)
from .body_composition import (
    FatEstimate,
    FatRange,
    MethodError,
    Standing,
    fat_by_size,
    healthy_range,
    males,
    method_error,
)
from .body_density import (
    FAT_FRACTION_FROM,
    FAT_FRACTION_TO,
)
from .body_mass_index import (
    bmi,
)
from .composition_estimate import (
    Bounds,
    Composition,
    Position,
    estimate_composition,
)
from .fat_combination import (
    FatValue,
)
from .fat_measurements import (
    DensityConversion,
    Girths,
    HeightAndWeight,
    MeasuredPerson,
    Measurement,
    Skinfolds,
    read,
)
from .plausible import (
    EXPENDITURE_BELIEVED,
    EXPENDITURE_REFUSED,
    EXPENDITURE_SURELY_BELIEVED,
    check_expenditure,
    doubts_about_body,
    doubts_about_expenditure,
)
from .resting_energy import (
    RestingEnergy,
)
from .skinfolds import (
    SkinfoldMethod,
)
from .total_energy import (
    TotalRow,
)
