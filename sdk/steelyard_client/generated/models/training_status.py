from enum import StrEnum


class TrainingStatus(StrEnum):
    ADVANCED = "advanced"
    INTERMEDIATE = "intermediate"
    NOVICE = "novice"
    UNTRAINED = "untrained"

    def __str__(self) -> str:
        return str(self.value)
