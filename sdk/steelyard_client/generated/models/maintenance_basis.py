from enum import StrEnum


class MaintenanceBasis(StrEnum):
    EQUATIONS = "equations"
    LOG = "log"
    TOLD = "told"

    def __str__(self) -> str:
        return str(self.value)
