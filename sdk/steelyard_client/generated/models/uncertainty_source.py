from enum import StrEnum


class UncertaintySource(StrEnum):
    ADAPTATION = "adaptation"
    ADHERENCE = "adherence"
    BODY_FAT = "body_fat"
    CARRIED_MASS = "carried_mass"
    DAILY_NOISE = "daily_noise"
    MAINTENANCE = "maintenance"
    PARTITION = "partition"
    TRAINING_RESPONSE = "training_response"

    def __str__(self) -> str:
        return str(self.value)
