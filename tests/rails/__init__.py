"""The guard rails, judged from outside: JSON in, JSON out, with limits typed anew from the requirement."""
