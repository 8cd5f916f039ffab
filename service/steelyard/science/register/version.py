"""The version of the science: it moves when any number moves."""

MODEL_VERSION = "1.2.0"
