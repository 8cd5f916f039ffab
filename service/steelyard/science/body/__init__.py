"""The body as a model: its state, its energy balance, the water it carries, and the forecast with its uncertainty."""

from .adherence import (
    COUNTS_UNDER,
    DEFICIT_FROM,
    OF_ANYBODY,
    OF_PEOPLE,
    Adherence,
    apart_from_people,
    as_followed,
    learned,
    unfollowed_share,
    usual_days,
    usual_share,
)
from .carried_mass import (
    expected_carried_kg,
)
from .constants import (
    ADAPTATION_DAYS,
    ADAPTATION_SHARE,
    BASELINE_CARBOHYDRATE_SHARE,
    BASELINE_GLYCOGEN_KG,
    CARRIED_SPREAD,
    EXPERIENCE_HALVING_YEARS,
    FAT_ENERGY,
    FAT_SUPPLY_LIMIT,
    FAT_UPKEEP,
    GLYCOGEN_ENERGY,
    GLYCOGEN_KG,
    KJ_PER_KCAL,
    LEAN_ENERGY,
    LEAN_UPKEEP,
    THERMIC_SHARE,
    TRAINING_GAIN,
)
from .daily_noise import (
    home_noise_variance,
)
from .energy_balance import (
    advance,
    walk,
)
from .forecasting import (
    Forecast,
    Moved,
    PathChange,
    PathPoint,
    Starts,
    Stretch,
    assemble,
    forecast,
    moved_run,
    path_kept,
)
from .lean_partition import (
    ceiling_kcal,
    deficit_factor,
    deficit_share,
    supply_of,
    surplus_factor,
    surplus_share,
)
from .linearised_balance import (
    linearise,
)
from .state import (
    BodyModel,
    BodyState,
    Diet,
    bodies_of,
    calibrate,
    current_maintenance_kcal,
    otherwise,
    still_saved_kcal,
)
from .targets import (
    BodyTarget,
    TargetQuantity,
    crossing,
    days_for_target,
    intake_for_target,
    nearest_day_for_target,
)
from .uncertainty import (
    ADAPTATION_SPREAD,
    ADHERENCE_SPREAD,
    ALL_SOURCES,
    PARTITION_SPREAD,
    SPARING_SPREAD,
    TRAINING_GAIN_SPREAD,
    Body,
    UncertaintySource,
    adapting,
    experience_years,
    settle_at,
    start_body,
    training_dose,
)
