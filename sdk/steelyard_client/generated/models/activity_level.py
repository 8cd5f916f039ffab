from enum import StrEnum


class ActivityLevel(StrEnum):
    ACTIVE = "active"
    LIGHT = "light"
    MODERATE = "moderate"
    SEDENTARY = "sedentary"
    VERY_ACTIVE = "very_active"

    def __str__(self) -> str:
        return str(self.value)
