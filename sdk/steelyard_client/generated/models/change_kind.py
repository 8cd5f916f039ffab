from enum import StrEnum


class ChangeKind(StrEnum):
    END = "end"
    INTAKE = "intake"
    PAUSE = "pause"

    def __str__(self) -> str:
        return str(self.value)
