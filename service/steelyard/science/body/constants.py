"""The constants of the body model: energies, costs, carried mass, and what lifting and protein change."""

from ..register import (
    ALPERT_2005,
    BALLOR_1994,
    BENITO_2020,
    BOUCHARD_1990,
    BRAY_2012,
    CAMPBELL_2020,
    CHASTON_2007,
    CONVERTINO_1991,
    DIAZ_1992,
    FORBES_1986,
    FORBES_1987,
    GARTHE_2013,
    HALL_2007,
    HALL_2008,
    HALL_2010,
    HALL_2011,
    HALL_2015,
    HALL_2016,
    HEER_2000,
    HEYMSFIELD_2011,
    IOM_2005,
    JAGER_2017,
    LEVINE_1999,
    LONGLAND_2016,
    METTLER_2010,
    MORTON_2018,
    MULLER_2015,
    ROBERTS_2020,
    SAGAYAMA_2014,
    TRANSIT_2011,
    WEINHEIMER_2010,
    WYCHERLEY_2012,
    Basis,
    constant,
)

KJ_PER_KCAL = constant(
    "kilojoules_per_kilocalorie", 4.184, unit="kJ/kcal", summary="Thermochemical calorie, exact by definition"
)
HALL = (HALL_2011, HALL_2010)


def _from_kj(id: str, kj: float, unit: str, summary: str) -> float:
    """A constant printed in kJ, registered and returned in kcal."""
    return constant(id, kj / KJ_PER_KCAL, unit=unit, summary=f"{summary} ({kj:g} kJ in the source)", sources=HALL)


FAT_ENERGY = constant(
    "energy_density_fat_mass", 9441.0, unit="kcal/kg", summary="Energy density of fat mass (39.5 MJ/kg)",
    sources=(HALL_2008,),
)  # fmt: skip
LEAN_ENERGY = constant(
    "energy_density_lean_tissue", 1816.0, unit="kcal/kg", summary="Energy density of lean tissue (7.6 MJ/kg)",
    sources=(HALL_2008,),
)  # fmt: skip
GLYCOGEN_ENERGY = constant(
    "energy_density_glycogen", 4206.0, unit="kcal/kg", summary="Energy density of glycogen (17.6 MJ/kg)",
    sources=(HALL_2008,),
)  # fmt: skip
FORBES_KG = constant(
    "forbes_slope", 10.4, unit="kg", summary="Slope of fat-free mass on ln(fat mass)",
    sources=(FORBES_1987, HALL_2007),
)  # fmt: skip
# Share of ENERGY to lean is C / (C + fat mass) with C in kg.
PARTITION_KG = FORBES_KG * LEAN_ENERGY / FAT_ENERGY

FAT_UPKEEP = _from_kj("resting_cost_fat_mass", 13.0, "kcal/kg/d", "Resting cost of a kilogram of fat mass")
LEAN_UPKEEP = _from_kj("resting_cost_lean", 92.0, "kcal/kg/d", "Resting cost of a kilogram of lean tissue")
FAT_SYNTHESIS = _from_kj("synthesis_cost_fat_mass", 750.0, "kcal/kg", "Cost of building a kilogram of fat")
LEAN_SYNTHESIS = _from_kj("synthesis_cost_lean", 960.0, "kcal/kg", "Cost of building a kilogram of lean tissue")

THERMIC_SHARE = constant(
    "thermic_effect_of_feeding", 0.10, unit="kcal/kcal", summary="Thermic effect per change of intake",
    sources=HALL,
)  # fmt: skip
ADAPTATION_SHARE = constant(
    "adaptive_thermogenesis_share", 0.14, unit="kcal/kcal", standard_deviation=0.10,
    summary="Adaptive change of expenditure per change of intake, spontaneous activity included; the spread "
    "between people under overfeeding is large (Levine 1999)",
    sources=(*HALL, LEVINE_1999),
)  # fmt: skip
SURPLUS_ACTIVITY_SHARE = constant(
    "spontaneous_activity_share", 0.10, unit="kcal/kcal", standard_deviation=0.15, basis=Basis.JUDGEMENT,
    summary="Further share of a surplus that is spent in moving more: between the two thirds of the rise of "
    "expenditure in overfed people (Levine 1999) and the trials that show no more than size and food "
    "cost. Set on Bouchard 1990, Bray 2012 and Levine 1999 (in-sample): more than 0.10 leaves too little "
    "fat in the first",
    sources=(LEVINE_1999, BRAY_2012, BOUCHARD_1990),
)  # fmt: skip
ADAPTATION_DAYS = constant(
    "adaptive_thermogenesis_time", 14.0, unit="d", summary="Time constant of adaptation", sources=HALL
)
GLYCOGEN_KG = constant("glycogen_baseline", 0.5, unit="kg", summary="Body glycogen at energy balance", sources=HALL)
GLYCOGEN_WATER = constant(
    "glycogen_water", 2.7, unit="kg/kg", summary="Water stored with each kilogram of glycogen", sources=HALL
)
SODIUM_PER_LITRE = constant(
    "sodium_extracellular", 3220.0, unit="mg/L", summary="Sodium in extracellular water", sources=HALL
)
SODIUM_EXCRETION = constant(
    "sodium_excretion", 3000.0, unit="mg/L/d", summary="Sodium excretion per litre of excess extracellular water",
    sources=HALL,
)  # fmt: skip
SODIUM_BY_CARBOHYDRATE = constant(
    "sodium_excretion_carbohydrate", 1000.0, unit="mg/d", basis=Basis.JUDGEMENT,
    summary="Sodium retained or lost with carbohydrate. 4000 in Hall 2011, with which taking out nearly all "
    "carbohydrate at equal energy costs 2.5 kg; 1.6 kg was seen (Hall 2016) and 0.6 kg between diets that "
    "cut carbohydrate or fat by 800 kcal/d (Hall 2015). The rest of the first water follows energy: see "
    "salt_water",
    sources=(HALL_2011, HALL_2015, HALL_2016),
)  # fmt: skip
SALT_WATER_KG = constant(
    "salt_water", 1.0, unit="kg", standard_deviation=0.3, basis=Basis.JUDGEMENT,
    summary="Salt water that a large cut of intake takes at most; a smaller one takes less, by a falling "
    "exponential. With it six days of 30 % less fat cost 1.1 kg of weight (1.3 seen) and of less carbohydrate 1.9 kg "
    "(1.85; Hall 2015), and three weeks of half the food after a week of half as much again 6.3 kg (6.0; Muller "
    "2015): none of them a trial here",
    sources=(HALL_2015, MULLER_2015),
)  # fmt: skip
SALT_WATER_SCALE = constant(
    "salt_water_scale", 0.15, unit="kcal/kcal", basis=Basis.JUDGEMENT,
    summary="Cut of intake, as a share of maintenance, at which 63 % of salt water has gone: from a surplus of "
    "250 into a deficit of 500 kcal/d about 1 kg of carried mass goes, from maintenance 0.75 kg",
    sources=(MULLER_2015,),
)  # fmt: skip
SALT_WATER_SURPLUS = constant(
    "salt_water_surplus", 0.4, unit="1", basis=Basis.JUDGEMENT,
    summary="Answer of salt water to a surplus over that to a deficit: three days of much food added 0.7 kg of "
    "water with its glycogen (Sagayama 2014), a week 1.8 kg with its tissue (Muller 2015), and added salt "
    "by itself nothing (Heer 2000)",
    sources=(SAGAYAMA_2014, MULLER_2015, HEER_2000),
)  # fmt: skip
SALT_RECOVERY = constant(
    "salt_water_recovery", 0.85, unit="1", standard_deviation=0.2, basis=Basis.JUDGEMENT,
    summary="Share of the salt water lost to a deficit that the body takes back while the deficit lasts, as "
    "sodium balance is restored. Set on Mettler 2010, Huovinen 2015 and Campbell 2020 (in-sample), in "
    "which fat-free mass fell less than water that follows intake alone would have it",
)  # fmt: skip
SALT_RECOVERY_DAYS = constant(
    "salt_water_recovery_time", 9.0, unit="d", basis=Basis.JUDGEMENT,
    summary="Time constant of taking it back: the first phase of weight loss has a half-time under a week and is "
    "over in four to six (Heymsfield 2011)",
    sources=(HEYMSFIELD_2011,),
)  # fmt: skip
GUT_CONTENT_KG = constant(
    "gut_content", 0.5, unit="kg", standard_deviation=0.3, basis=Basis.JUDGEMENT,
    summary="Gut content of a fasting morning at the usual intake, taken as proportional to intake: half of what fills "
    "the gut through the day, since the fat-free mass of six pooled restriction arms fell less than the larger figure "
    "says",
)  # fmt: skip
GUT_DAYS = constant(
    "gut_transit_time", 1.5, unit="d", summary="Mean transit time through the gut (36 h in 26 healthy men)",
    sources=(TRANSIT_2011,),
)  # fmt: skip
BASELINE_CARBOHYDRATE_SHARE = constant(
    "carbohydrate_share_baseline", 0.5, unit="kcal/kcal",
    summary="Share of intake from carbohydrate at the usual diet, where it was not given", sources=HALL,
)  # fmt: skip

CARRIED_SPREAD = constant(
    "carried_mass_spread",
    0.5,
    unit="1",
    summary="Between-person SD of carried mass for a given change of diet, as a share of its mean: salt, gut content "
    "and how settled the diet was; and of what of it comes back while a deficit lasts, where trials of lifters and a "
    "model in which nothing does (Hall 2011) lie two of these apart",
    sources=(HALL_2011,),
    basis=Basis.JUDGEMENT,
)

# --- what lifting and protein change -------------------------------------------------------------------------
PROTEIN_ORDINARY = constant(
    "protein_ordinary", 0.8, unit="g/kg/d", summary="Protein allowance at which the base partition applies",
    sources=(IOM_2005,),
)  # fmt: skip
PROTEIN_ENOUGH_GAIN = constant(
    "protein_breakpoint", 1.62, unit="g/kg/d", summary="Protein beyond which lean gain no longer rises",
    sources=(MORTON_2018,),
)  # fmt: skip
PROTEIN_GAIN_BOOST = constant(
    "protein_gain_boost", 0.27, unit="1", summary="Added lean gain with enough protein (27 %)",
    basis=Basis.FROM_MEMORY, sources=(MORTON_2018,),
)  # fmt: skip
PROTEIN_ENOUGH_DEFICIT = constant(
    "protein_enough_deficit", 2.0, unit="g/kg/d",
    summary="Protein at which sparing of lean tissue in a deficit is taken as complete (between the 1.6-2.2 of "
    "the trade and the 2.3 g/kg of Mettler 2010)",
    basis=Basis.JUDGEMENT, sources=(METTLER_2010, JAGER_2017),
)  # fmt: skip
TRAINING_SPARING = constant(
    "training_sparing", 0.5, unit="1", standard_deviation=0.15,
    summary="Share of the lean loss of a deficit that training prevents (exercise halved the lean share of the "
    "loss in the pooled studies: 28 to 13 % in men, 24 to 11 % in women)",
    sources=(BALLOR_1994, WEINHEIMER_2010),
)  # fmt: skip
PROTEIN_SPARING = constant(
    "protein_sparing", 0.25, unit="1",
    summary="Share of the remaining lean loss that protein prevents without training (0.43 kg of about 1.7 kg)",
    basis=Basis.FROM_MEMORY, sources=(WYCHERLEY_2012,),
)  # fmt: skip
PROTEIN_SPARING_TRAINED = constant(
    "protein_sparing_trained", 0.8, unit="1", standard_deviation=0.2,
    summary="Share of the remaining lean loss that protein prevents in people who lift (low- against "
    "high-protein arms of trained people, in-sample; refitted without one study at a time 0.66 to 0.83)",
    basis=Basis.JUDGEMENT, sources=(METTLER_2010, CAMPBELL_2020),
)  # fmt: skip
TRAINING_NEEDS_PROTEIN = constant(
    "training_sparing_needs_protein", 0.5, unit="1", basis=Basis.JUDGEMENT,
    summary="Share of the sparing by training that is lost at the protein allowance: Mettler 2010 (in-sample) "
    "lost 1.6 kg of lean mass in two weeks on 1.0 g/kg, 0.3 kg on 2.3, both lifting",
    sources=(METTLER_2010,),
)  # fmt: skip
DEFICIT_RATE_EFFECT = constant(
    "deficit_rate_effect", 0.3, unit="1", basis=Basis.JUDGEMENT,
    summary="How far the lean share of a loss depends on the size of the deficit: from 1 - half of this for a small "
    "one to 1 + half for one that fat cannot supply. The share rises with restriction over trials (r2 0.31, from "
    "memory). CALERIE-2 asks for more (in-sample), the long-horizon rule of Hall 2011 for less",
    sources=(CHASTON_2007,),
)  # fmt: skip
LEVEL_PARTITION = constant(
    "surplus_partition_level", 0.5, unit="1", basis=Basis.JUDGEMENT,
    summary="How far the lean share of a surplus is the same for every body instead of following its fat: fat-free "
    "mass, water included, rose by 0.19, 0.30 and 0.36-0.40 kg a week in overfed people with 7, 15 and 20 kg of fat "
    "(Bouchard 1990, Levine 1999, Bray 2012 on ordinary and more protein; in-sample), where the base partition has it "
    "the other way round",
    sources=(BOUCHARD_1990, LEVINE_1999, BRAY_2012),
)  # fmt: skip
LEVEL_SHARE = constant(
    "surplus_partition_share", 0.12, unit="1", basis=Basis.JUDGEMENT,
    summary="That share of energy, as 38-44 % of the mass of sedentary people who gained was lean (Forbes 1986)",
    sources=(FORBES_1986,),
)  # fmt: skip
SURPLUS_WITHOUT_PROTEIN = constant(
    "surplus_lean_without_protein", 0.0, unit="1", basis=Basis.JUDGEMENT,
    summary="Share of the lean gain of a surplus that is left at the protein allowance: overfed on 0.7 g/kg "
    "people gained fat and no lean mass at all (Bray 2012, in-sample)",
    sources=(BRAY_2012,),
)  # fmt: skip
SURPLUS_TRAINED_BOOST = constant(
    "surplus_lean_trained", 0.5, unit="1", basis=Basis.JUDGEMENT,
    summary="Added to the lean share of a surplus by training: lifters who ate 500 kcal/d over their need put on "
    "lean mass for half of their gain or more (Garthe 2013)",
    sources=(GARTHE_2013,),
)  # fmt: skip
SURPLUS_LEAN_FACTOR = constant(
    "surplus_lean_factor", 1.1, unit="1", standard_deviation=0.3, basis=Basis.JUDGEMENT,
    summary="Factor on the lean share of a surplus before it saturates. Set on Bouchard 1990, Bray 2012 and Levine "
    "1999 (in-sample); without one of them the others ask for 1.0 to 1.6",
    sources=(BOUCHARD_1990, BRAY_2012, LEVINE_1999),
)  # fmt: skip
TRAINING_WATER_KG = constant(
    "training_water", 0.5, unit="kg", standard_deviation=0.3, basis=Basis.FROM_MEMORY, sources=(CONVERTINO_1991,),
    summary="Water that new or clearly increased training adds within days: plasma volume (about 0.4 L) and glycogen",
)  # fmt: skip
BEGINNER_GAIN_KG = constant(
    "beginner_lean_gain", 1.53, unit="kg", sources=(BENITO_2020,),
    summary="Fat-free mass gained by healthy men through resistance training, water included: 158 groups (mostly "
    "untrained, in about 10.4 weeks: from memory)",
)  # fmt: skip
# The men of those trials had about so much fat-free mass; relative gain is equal in women.
_TRIALS_FREE_KG, _TRIALS_DAYS = 64.0, 10.4 * 7.0
TRAINING_GAIN = constant(
    "training_lean_gain", (BEGINNER_GAIN_KG - TRAINING_WATER_KG) / _TRIALS_FREE_KG / _TRIALS_DAYS, unit="kg/kg/d",
    standard_deviation=0.5 * (BEGINNER_GAIN_KG - TRAINING_WATER_KG) / _TRIALS_FREE_KG / _TRIALS_DAYS,
    basis=Basis.FROM_MEMORY,
    summary="Lean tissue that training adds a day in beginners, per kilogram of fat-free mass (about 64 kg in the "
    "trials); relative gain taken equal in women",
    sources=(BENITO_2020, ROBERTS_2020),
)  # fmt: skip
SURPLUS_LEAN_CEILING = constant(
    "surplus_lean_ceiling", 0.42 / _TRIALS_FREE_KG / 7.0, unit="kg/kg/d", basis=Basis.JUDGEMENT,
    summary="Ceiling of lean tissue that a surplus alone adds a day in people new to training, per kilogram of fat-"
    "free mass (0.42 kg a week at 64 kg): fat-free mass of overfed people rose by 0.19 to 0.40 kg a week, water "
    "included (in-sample), the smaller a share of the surplus the larger it was",
    sources=(BOUCHARD_1990, BRAY_2012, LEVINE_1999, DIAZ_1992),
)  # fmt: skip
GROWTH_KEPT_BY_PROTEIN = constant(
    "training_growth_kept_by_protein", 0.5, unit="1", basis=Basis.JUDGEMENT,
    summary="Share of the fade of training-driven gain with the deficit that ample protein prevents: on 2.4 g/kg "
    "beginners gained lean mass at 40 % less than their need, on 1.2 g/kg hardly (Longland 2016)",
    sources=(LONGLAND_2016,),
)  # fmt: skip
EXPERIENCE_HALVING_YEARS = constant(
    "training_gain_halving", 1.0, unit="y", basis=Basis.JUDGEMENT,
    summary="Years of training after which the beginner's rate of lean gain has halved: rate = 1 / (1 + years)",
)  # fmt: skip
LEAN_CEILING_FLOOR = constant(
    "lean_ceiling_floor", 0.24, unit="1", basis=Basis.JUDGEMENT,
    summary="Least share of the beginner's ceiling on surplus-driven lean, for supporting (non-muscle) tissue",
)  # fmt: skip
FULL_DOSE_SESSIONS = constant(
    "training_full_dose", 2.0, unit="sessions/week", basis=Basis.JUDGEMENT,
    summary="Resistance sessions a week from which the training effect counts in full",
)  # fmt: skip
FAT_SUPPLY_LIMIT = constant(
    "fat_supply_limit", 290.0 / KJ_PER_KCAL, unit="kcal/kg/d",
    summary="Most energy that fat mass can release (290 kJ/kg/d in the source)", sources=(ALPERT_2005,),
)  # fmt: skip

# Glycogen with its water at energy balance [kg].
BASELINE_GLYCOGEN_KG = GLYCOGEN_KG * (1.0 + GLYCOGEN_WATER)
