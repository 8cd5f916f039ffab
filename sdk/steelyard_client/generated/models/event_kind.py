from enum import StrEnum


class EventKind(StrEnum):
    ALCOHOL = "alcohol"
    CREATINE_START = "creatine_start"
    CREATINE_STOP = "creatine_stop"
    FESTIVE_DAYS = "festive_days"
    ILLNESS = "illness"
    INJURY = "injury"
    MEDICINE = "medicine"
    NEW_PROGRAMME = "new_programme"
    SALTY_DAYS = "salty_days"
    TRAVEL = "travel"

    def __str__(self) -> str:
        return str(self.value)
