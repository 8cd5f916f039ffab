from enum import StrEnum


class Sex(StrEnum):
    FEMALE = "female"
    MALE = "male"
    UNSPECIFIED = "unspecified"

    def __str__(self) -> str:
        return str(self.value)
