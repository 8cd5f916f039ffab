from enum import StrEnum


class Pace(StrEnum):
    BRISK = "brisk"
    GENTLE = "gentle"
    STEADY = "steady"

    def __str__(self) -> str:
        return str(self.value)
