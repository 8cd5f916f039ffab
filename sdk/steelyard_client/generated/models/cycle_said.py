from enum import StrEnum


class CycleSaid(StrEnum):
    LATE = "late"
    MISSED = "missed"
    NONE = "none"
    REGULAR = "regular"

    def __str__(self) -> str:
        return str(self.value)
