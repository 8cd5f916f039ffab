"""Tests, and the commands that write their reports (``python -m tests.<name>`` from the root of the tree)."""
