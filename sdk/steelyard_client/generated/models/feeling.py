from enum import StrEnum


class Feeling(StrEnum):
    CONTENT = "content"
    UNHAPPY = "unhappy"
    WOULD_LIKE_LEANER = "would_like_leaner"

    def __str__(self) -> str:
        return str(self.value)
