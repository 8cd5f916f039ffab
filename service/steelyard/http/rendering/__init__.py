"""Answers in other media types: calendar, table, summary, picture."""
