"""The kernel in its two sizes: with the states of every log, and with those of a told cycle besides.

It is one text. How many states it has is written into its loops as it is compiled, so that a log without a cycle pays
nothing for those that it does not have.
"""

import sys
from importlib.util import module_from_spec, spec_from_file_location
from types import ModuleType

from . import kernel

WITH_CYCLE = "kernel_with_cycle"


def _loaded_anew(name: str, states: int) -> ModuleType:
    """The text of the kernel as another module, with so many states."""
    spec = spec_from_file_location(f"{__package__}.{name}", kernel.__file__)
    assert spec is not None
    assert spec.loader is not None
    found = module_from_spec(spec)
    vars(found)["STATES"] = states
    sys.modules[spec.name] = found
    spec.loader.exec_module(found)
    return found


PLAIN: ModuleType = kernel
CYCLIC = _loaded_anew(WITH_CYCLE, kernel.MOST_STATES)
