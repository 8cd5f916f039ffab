from enum import StrEnum


class SettlingTest(StrEnum):
    CLINICIAN = "clinician"
    CYCLE = "cycle"
    OIL_AND_ALCOHOL = "oil_and_alcohol"
    WATER = "water"
    WEIGH_FOOD = "weigh_food"

    def __str__(self) -> str:
        return str(self.value)
