"""One person, with everything that is computed of them once."""

from .known import (
    LEAST_FAT_SD,
    adherence_on,
    body_at,
    fat_known,
    readings_of,
)
from .member import (
    Member,
)
from .told import (
    FatRead,
    Known,
    StartingBody,
    Steered,
    Told,
    ToldBefore,
)
