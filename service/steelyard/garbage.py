"""How often a process that answers requests looks for garbage."""

import gc
from functools import cache

# Objects made before the youngest are looked through, and rounds of that before the older ones are.
_COLLECT_AFTER = (20_000, 50, 100)


@cache  # of what is left out once, nothing is to be left out again
def collect_seldom() -> None:
    """Leave what was made for the start out of the rounds of the garbage collector, and let it look seldom.

    What a request makes goes by counting references; a round of the collector looks through the whole application and
    finds next to nothing, at about a tenth of what an answer costs.
    """
    gc.collect()
    gc.freeze()
    gc.set_threshold(*_COLLECT_AFTER)
