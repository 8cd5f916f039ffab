"""What limits a deficit, as a code: a sentence of each language says it in words."""

from enum import StrEnum


class Why(StrEnum):
    """What it is that allows no more."""

    SHARE_OF_MAINTENANCE = "share_of_maintenance"
    FAT_RELEASE = "fat_release"
    FAT_RELEASE_LATER = "fat_release_later"
    ENERGY_AVAILABILITY = "energy_availability"
    PROTEIN_AND_FAT = "protein_and_fat"
    LEAST_INTAKE = "least_intake"
    RESTING_ENERGY = "resting_energy"
    HISTORY_UNKNOWN = "history_unknown"
    FAT_UNMEASURED = "fat_unmeasured"
    FAT_AT_END = "fat_at_end"
    BODY_MASS_INDEX_AT_END = "body_mass_index_at_end"
    WEEKLY_LOSS = "weekly_loss"
    AVAILABILITY_AT_END = "availability_at_end"
    LEAST_INTAKE_AT_END = "least_intake_at_end"
    LOGGED_LOSS = "logged_loss"
    THIS_PERSON = "this_person"
    WHOLE_PHASE = "whole_phase"
    BODY_OF_THAT_DAY = "body_of_that_day"
