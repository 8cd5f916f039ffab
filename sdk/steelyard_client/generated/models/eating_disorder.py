from enum import StrEnum


class EatingDisorder(StrEnum):
    CURRENT = "current"
    NONE = "none"
    PAST = "past"
    UNSURE = "unsure"

    def __str__(self) -> str:
        return str(self.value)
