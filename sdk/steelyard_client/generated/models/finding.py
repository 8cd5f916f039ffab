from enum import StrEnum


class Finding(StrEnum):
    AS_LOGGED = "as_logged"
    MORE_THAN_LOGGED = "more_than_logged"
    NOT_DONE = "not_done"
    NOT_WATER = "not_water"
    WATER = "water"

    def __str__(self) -> str:
        return str(self.value)
