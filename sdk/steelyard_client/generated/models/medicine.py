from enum import StrEnum


class Medicine(StrEnum):
    DIURETIC = "diuretic"
    GLP1_AGONIST = "glp1_agonist"
    INSULIN_OR_SECRETAGOGUE = "insulin_or_secretagogue"
    LITHIUM = "lithium"
    SGLT2_INHIBITOR = "sglt2_inhibitor"
    WARFARIN = "warfarin"

    def __str__(self) -> str:
        return str(self.value)
