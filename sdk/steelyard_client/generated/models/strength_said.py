from enum import StrEnum


class StrengthSaid(StrEnum):
    DOWN = "down"
    DOWN_MUCH = "down_much"
    STEADY = "steady"
    UP = "up"

    def __str__(self) -> str:
        return str(self.value)
