from enum import StrEnum


class BodyFatMethod(StrEnum):
    AIR_DISPLACEMENT = "air_displacement"
    BIOIMPEDANCE = "bioimpedance"
    BMI_EQUATION = "bmi_equation"
    DXA = "dxa"
    FOUR_COMPARTMENT = "four_compartment"
    GIRTHS = "girths"
    HYDROSTATIC = "hydrostatic"
    SKINFOLDS = "skinfolds"
    VISUAL = "visual"

    def __str__(self) -> str:
        return str(self.value)
