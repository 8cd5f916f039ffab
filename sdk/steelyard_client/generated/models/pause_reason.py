from enum import StrEnum


class PauseReason(StrEnum):
    ILLNESS = "illness"
    INJURY = "injury"
    OTHER = "other"
    TRAVEL = "travel"

    def __str__(self) -> str:
        return str(self.value)
