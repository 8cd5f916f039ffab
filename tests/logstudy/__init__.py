"""A study of the log reader on simulated people of worlds that differ."""
