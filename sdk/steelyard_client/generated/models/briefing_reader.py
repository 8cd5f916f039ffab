from enum import StrEnum


class BriefingReader(StrEnum):
    COACH = "coach"
    COACH_SHORT = "coach_short"
    MEMBER = "member"
    MEMBER_SHORT = "member_short"

    def __str__(self) -> str:
        return str(self.value)
