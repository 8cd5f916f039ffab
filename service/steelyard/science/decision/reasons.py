"""The words of a decision: one text for each situation, for what would change it, and for the pattern."""

from ..register import say

__all__ = ["say"]  # from here, so that whoever says the words has them
