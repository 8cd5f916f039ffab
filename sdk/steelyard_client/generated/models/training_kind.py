from enum import StrEnum


class TrainingKind(StrEnum):
    CYCLING = "cycling"
    OTHER = "other"
    RESISTANCE = "resistance"
    RUNNING = "running"
    WALKING = "walking"

    def __str__(self) -> str:
        return str(self.value)
