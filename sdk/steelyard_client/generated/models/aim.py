from enum import StrEnum


class Aim(StrEnum):
    GAIN = "gain"
    HOLD = "hold"
    LOSE = "lose"

    def __str__(self) -> str:
        return str(self.value)
