"""The published equations of resting energy expenditure, as coefficients.

"Published" here means that the coefficients agree in at least one transcription of the paper that was read;
"from memory" that none was.
"""

from ..person import Sex
from ..register import (
    CUNNINGHAM_1980,
    CUNNINGHAM_1991,
    FAO_1985,
    FAO_2004,
    HENRY_2005,
    MCARDLE_TEXTBOOK,
    MIFFLIN_1990,
    MULLER_2004,
    OWEN_1986,
    OWEN_1987,
    ROZA_1984,
    SCHOFIELD_1985,
    TEN_HAAF_2014,
    TINSLEY_2019,
)
from .linear_equations import Audience, Cell, EnergyUnit, LinearEquation, Terms, by_sex, by_sex_and_age, define

# 80 y where a paper sets no upper age: beyond it few people were measured (our judgement).
_FEW_MEASURED_BEYOND = 80.0
_BANDS = (18.0, 30.0, 60.0)

MIFFLIN = define(
    LinearEquation(
        id="mifflin",
        summary="Resting energy from mass, height and age (Mifflin-St Jeor)",
        cells=by_sex(
            men=Terms(weight_kg=10, height_cm=6.25, age_years=-5, constant=5),
            women=Terms(weight_kg=10, height_cm=6.25, age_years=-5, constant=-161),
        ),
        sources=(MIFFLIN_1990,),
        age_from_years=19,
        age_to_years=78,
        population="498 healthy adults, normal weight to obese",
    )
)
HARRIS_BENEDICT = define(
    LinearEquation(
        id="harris_benedict_rev",
        summary="Resting energy from mass, height and age (Harris-Benedict as revised by Roza and Shizgal)",
        cells=by_sex(
            men=Terms(weight_kg=13.397, height_cm=4.799, age_years=-5.677, constant=88.362),
            women=Terms(weight_kg=9.247, height_cm=3.098, age_years=-4.330, constant=447.593),
        ),
        sources=(ROZA_1984,),
        age_from_years=18,
        age_to_years=_FEW_MEASURED_BEYOND,
        population="healthy adults",
    )
)
CUNNINGHAM_1980_EQUATION = define(
    LinearEquation(
        id="cunningham_1980",
        summary="Resting energy from fat-free mass (Cunningham 1980)",
        cells=(Cell(terms=Terms(ffm_kg=22, constant=500)),),
        sources=(CUNNINGHAM_1980,),
        age_from_years=18,
        age_to_years=_FEW_MEASURED_BEYOND,
        population="reanalysis of the Harris-Benedict adults; favoured for athletes",
        audience=Audience.TRAINED,
    )
)
CUNNINGHAM_1991_EQUATION = define(
    LinearEquation(
        id="cunningham_1991",
        summary="Resting energy from fat-free mass (Cunningham 1991)",
        cells=(Cell(terms=Terms(ffm_kg=21.6, constant=370)),),
        sources=(CUNNINGHAM_1991,),
        age_from_years=18,
        age_to_years=_FEW_MEASURED_BEYOND,
        population="adults, review of pooled data",
    )
)
KATCH_MCARDLE = define(
    LinearEquation(
        id="katch_mcardle",
        summary="The equation of Cunningham 1991 under its textbook name",
        cells=CUNNINGHAM_1991_EQUATION.cells,
        sources=(MCARDLE_TEXTBOOK, CUNNINGHAM_1991),
        age_from_years=CUNNINGHAM_1991_EQUATION.age_from_years,
        age_to_years=CUNNINGHAM_1991_EQUATION.age_to_years,
        population=CUNNINGHAM_1991_EQUATION.population,
    )
)
TEN_HAAF_WEIGHT = define(
    LinearEquation(
        id="ten_haaf_weight",
        summary="Resting energy of athletes from mass, height and age (ten Haaf and Weijs)",
        cells=(Cell(terms=Terms(weight_kg=11.936, height_m=587.728, age_years=-8.129, male=191.027, constant=29.279)),),
        sources=(TEN_HAAF_2014,),
        age_from_years=18,
        age_to_years=35,
        population="90 recreational athletes (53 men)",
        audience=Audience.TRAINED,
    )
)
TEN_HAAF_FFM = define(
    LinearEquation(
        id="ten_haaf_ffm",
        summary="Resting energy of athletes from fat-free mass (ten Haaf and Weijs)",
        cells=(Cell(terms=Terms(ffm_kg=22.771, constant=484.264)),),
        sources=(TEN_HAAF_2014,),
        age_from_years=18,
        age_to_years=35,
        population="90 recreational athletes (53 men)",
        audience=Audience.TRAINED,
    )
)
TINSLEY_WEIGHT = define(
    LinearEquation(
        id="tinsley_bm",
        summary="Resting energy of muscular athletes from body mass (Tinsley)",
        cells=(Cell(terms=Terms(weight_kg=24.8, constant=10)),),
        sources=(TINSLEY_2019,),
        age_from_years=18,
        age_to_years=_FEW_MEASURED_BEYOND,
        population="27 muscular physique athletes (17 men)",
        audience=Audience.EXPERIENCED,
    )
)
TINSLEY_FFM = define(
    LinearEquation(
        id="tinsley_ffm",
        summary="Resting energy of muscular athletes from fat-free mass (Tinsley)",
        cells=(Cell(terms=Terms(ffm_kg=25.9, constant=284)),),
        sources=(TINSLEY_2019,),
        age_from_years=18,
        age_to_years=_FEW_MEASURED_BEYOND,
        population="27 muscular physique athletes (17 men)",
        audience=Audience.EXPERIENCED,
    )
)
OWEN = define(
    LinearEquation(
        id="owen",
        summary="Resting energy from mass (Owen)",
        cells=by_sex(
            men=Terms(weight_kg=10.2, constant=879),
            women=Terms(weight_kg=7.18, constant=795),
        ),
        sources=(OWEN_1986, OWEN_1987),
        age_from_years=18,
        age_to_years=65,
        population="healthy adults who are not athletes (men to 82 y)",
        audience=Audience.UNTRAINED,
    )
)
OWEN_ATHLETE = define(
    LinearEquation(
        id="owen_athlete_f",
        summary="Resting energy of female athletes from mass (Owen)",
        cells=(Cell(sex=Sex.FEMALE, terms=Terms(weight_kg=21.1, constant=50.4)),),
        sources=(OWEN_1986,),
        age_from_years=18,
        age_to_years=65,
        population="8 female athletes",
        audience=Audience.TRAINED,
    )
)
MULLER_WEIGHT = define(
    LinearEquation(
        id="muller_weight",
        summary="Resting energy from mass, sex and age (Müller)",
        cells=(Cell(terms=Terms(weight_kg=0.047, male=1.009, age_years=-0.01452, constant=3.21)),),
        sources=(MULLER_2004,),
        age_from_years=18,
        age_to_years=_FEW_MEASURED_BEYOND,
        population="German adults, pooled",
        unit=EnergyUnit.MJ_PER_DAY,
    )
)
MULLER_FFM = define(
    LinearEquation(
        id="muller_ffm",
        summary="Resting energy from fat-free mass, fat mass, sex and age (Müller)",
        cells=(
            Cell(
                terms=Terms(ffm_kg=0.05192, fat_mass_kg=0.04036, male=0.869, age_years=-0.01181, constant=2.992),
            ),
        ),
        sources=(MULLER_2004,),
        age_from_years=18,
        age_to_years=_FEW_MEASURED_BEYOND,
        population="German adults, pooled",
        unit=EnergyUnit.MJ_PER_DAY,
    )
)
HENRY_WEIGHT = define(
    LinearEquation(
        id="henry_weight",
        summary="Basal energy from mass by sex and age band (Henry, the Oxford equations)",
        cells=by_sex_and_age(
            _BANDS,
            men=(
                Terms(weight_kg=16.0, constant=545),
                Terms(weight_kg=14.2, constant=593),
                Terms(weight_kg=13.5, constant=514),
            ),
            women=(
                Terms(weight_kg=13.1, constant=558),
                Terms(weight_kg=9.74, constant=694),
                Terms(weight_kg=10.1, constant=569),
            ),
        ),
        sources=(HENRY_2005,),
        age_from_years=18,
        age_to_years=_FEW_MEASURED_BEYOND,
        population="10552 basal values of healthy people of many countries",
    )
)
HENRY_WEIGHT_HEIGHT = define(
    LinearEquation(
        id="henry_weight_height",
        summary="Basal energy from mass and height by sex and age band (Henry, the Oxford equations)",
        cells=by_sex_and_age(
            _BANDS,
            men=(
                Terms(weight_kg=14.4, height_m=313, constant=113),
                Terms(weight_kg=11.4, height_m=541, constant=-137),
                Terms(weight_kg=11.4, height_m=541, constant=-256),
            ),
            women=(
                Terms(weight_kg=10.4, height_m=615, constant=-282),
                Terms(weight_kg=8.18, height_m=502, constant=-11.6),
                Terms(weight_kg=8.52, height_m=421, constant=10.7),
            ),
        ),
        sources=(HENRY_2005,),
        age_from_years=18,
        age_to_years=_FEW_MEASURED_BEYOND,
        population="10552 basal values of healthy people of many countries",
    )
)
SCHOFIELD = define(
    LinearEquation(
        id="schofield",
        summary="Basal energy from mass by sex and age band (Schofield, in the kcal form of FAO/WHO/UNU 2004)",
        cells=by_sex_and_age(
            _BANDS,
            men=(
                Terms(weight_kg=15.057, constant=692.2),
                Terms(weight_kg=11.472, constant=873.1),
                Terms(weight_kg=11.711, constant=587.7),
            ),
            women=(
                Terms(weight_kg=14.818, constant=486.6),
                Terms(weight_kg=8.126, constant=845.6),
                Terms(weight_kg=9.082, constant=658.5),
            ),
        ),
        sources=(SCHOFIELD_1985, FAO_2004),
        age_from_years=18,
        age_to_years=_FEW_MEASURED_BEYOND,
        population="healthy adults of many countries",
    )
)
FAO_1985_EQUATION = define(
    LinearEquation(
        id="fao_1985",
        summary="Basal energy from mass by sex and age band (rounded form of FAO/WHO/UNU 1985)",
        cells=by_sex_and_age(
            _BANDS,
            men=(
                Terms(weight_kg=15.3, constant=679),
                Terms(weight_kg=11.6, constant=879),
                Terms(weight_kg=13.5, constant=487),
            ),
            women=(
                Terms(weight_kg=14.7, constant=496),
                Terms(weight_kg=8.7, constant=829),
                Terms(weight_kg=10.5, constant=596),
            ),
        ),
        sources=(FAO_1985,),
        age_from_years=18,
        age_to_years=_FEW_MEASURED_BEYOND,
        population="healthy adults of many countries",
    )
)

RESTING_EQUATIONS: tuple[LinearEquation, ...] = (
    MIFFLIN,
    HARRIS_BENEDICT,
    CUNNINGHAM_1980_EQUATION,
    CUNNINGHAM_1991_EQUATION,
    KATCH_MCARDLE,
    TEN_HAAF_WEIGHT,
    TEN_HAAF_FFM,
    TINSLEY_WEIGHT,
    TINSLEY_FFM,
    OWEN,
    OWEN_ATHLETE,
    MULLER_WEIGHT,
    MULLER_FFM,
    HENRY_WEIGHT,
    HENRY_WEIGHT_HEIGHT,
    SCHOFIELD,
    FAO_1985_EQUATION,
)
