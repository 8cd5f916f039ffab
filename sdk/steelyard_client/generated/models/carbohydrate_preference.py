from enum import StrEnum


class CarbohydratePreference(StrEnum):
    BALANCED = "balanced"
    HIGHER = "higher"
    LOWER = "lower"

    def __str__(self) -> str:
        return str(self.value)
