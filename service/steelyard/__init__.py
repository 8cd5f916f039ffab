"""Steelyard: maintenance energy, training-diet phases and weight logs for people who lift."""

__version__ = "0.1.0"
