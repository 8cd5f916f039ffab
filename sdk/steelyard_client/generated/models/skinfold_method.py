from enum import StrEnum


class SkinfoldMethod(StrEnum):
    DURNIN_WOMERSLEY_4 = "durnin_womersley_4"
    JACKSON_POLLOCK_3 = "jackson_pollock_3"
    JACKSON_POLLOCK_7 = "jackson_pollock_7"

    def __str__(self) -> str:
        return str(self.value)
