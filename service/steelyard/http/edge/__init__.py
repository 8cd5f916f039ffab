"""The outermost layer: what every response carries, time, log, metrics and probes."""
