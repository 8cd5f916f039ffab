from enum import StrEnum


class PhaseKind(StrEnum):
    CUT = "cut"
    GAIN = "gain"
    MAINTENANCE = "maintenance"
    MINI_CUT = "mini_cut"

    def __str__(self) -> str:
        return str(self.value)
