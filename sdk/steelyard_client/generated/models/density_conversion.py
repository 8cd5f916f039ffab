from enum import StrEnum


class DensityConversion(StrEnum):
    BROZEK = "brozek"
    SIRI = "siri"

    def __str__(self) -> str:
        return str(self.value)
