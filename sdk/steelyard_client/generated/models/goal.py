from enum import StrEnum


class Goal(StrEnum):
    EVENT = "event"
    HOLD = "hold"
    LEANNESS = "leanness"
    MUSCLE = "muscle"

    def __str__(self) -> str:
        return str(self.value)
