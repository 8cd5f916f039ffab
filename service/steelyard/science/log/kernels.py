"""The kernel in its two sizes: with the states of every log, and with those of a told cycle besides.

It is one text. How many states it has is written into its loops as it is compiled, so that a log without a cycle pays
nothing for those that it does not have.
"""

import sys
from types import ModuleType

from . import kernel

WITH_CYCLE = "kernel_with_cycle"


def _run_anew(name: str, states: int) -> ModuleType:
    """The text of the kernel as a module with so many states."""
    found = ModuleType(f"{__package__}.{name}", kernel.__doc__)
    vars(found)["STATES"] = states
    sys.modules[found.__name__] = found
    exec(kernel.__loader__.get_code(kernel.__name__), vars(found))  # type: ignore[union-attr]  # noqa: S102 - our own
    return found


PLAIN: ModuleType = kernel
CYCLIC = _run_anew(WITH_CYCLE, kernel.MOST_STATES)


def kernel_of(numbers: int) -> ModuleType:
    """The kernel whose explanations have so many numbers: a record's, or those of a mean."""
    return CYCLIC if numbers in (CYCLIC.RECORD, CYCLIC.STATES) else PLAIN
