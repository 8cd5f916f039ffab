from enum import StrEnum


class PlanChoice(StrEnum):
    LEVERS = "levers"
    SIZES = "sizes"

    def __str__(self) -> str:
        return str(self.value)
