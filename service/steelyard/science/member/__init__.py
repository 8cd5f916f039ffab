"""A member as one thing: what was told, and what follows from it."""

from .member import (
    Member,
    Told,
)

__all__ = [
    "Member",
    "Told",
]
