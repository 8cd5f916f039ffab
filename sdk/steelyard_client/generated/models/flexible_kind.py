from enum import StrEnum


class FlexibleKind(StrEnum):
    EATING_OUT = "eating_out"
    HIGHER_DAY = "higher_day"
    OTHER = "other"
    PARTY = "party"

    def __str__(self) -> str:
        return str(self.value)
