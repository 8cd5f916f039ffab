from enum import StrEnum


class PictureWidth(StrEnum):
    PAGE = "page"
    PHONE = "phone"

    def __str__(self) -> str:
        return str(self.value)
