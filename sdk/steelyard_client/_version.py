"""The version of this distribution, which hatchling reads too."""

__version__ = "0.1.0"
