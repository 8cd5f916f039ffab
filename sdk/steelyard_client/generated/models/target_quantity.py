from enum import StrEnum


class TargetQuantity(StrEnum):
    FAT_FRACTION = "fat_fraction"
    FAT_KG = "fat_kg"
    WEIGHT_KG = "weight_kg"

    def __str__(self) -> str:
        return str(self.value)
