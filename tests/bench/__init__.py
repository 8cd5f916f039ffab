"""Speed, measured as ratios within one run on one machine: ``make bench``."""
