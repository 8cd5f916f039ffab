"""Work done in forks of one process that has loaded the libraries, but not the service: a fresh service in no time."""

import gc
import importlib
import json
import math
import os
import resource
import sys
import time
from collections.abc import Callable
from typing import Any

_INSTALLED = (sys.prefix, sys.base_prefix)
# A fork takes no thread along, nor what one of them holds: of numpy's threads a fork may wait for ever.
os.environ["OPENBLAS_NUM_THREADS"] = os.environ["OMP_NUM_THREADS"] = "1"


def in_fork(work: Callable[[], Any], processor_seconds: float | None = None) -> Any:
    """What ``work`` returns in a fork of this process, by way of JSON; None where it raises, dies or takes too long.

    It may take so many seconds of a processor: how busy the machine is makes no difference.
    """
    reads, writes = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            if processor_seconds is not None:
                most = math.ceil(time.process_time() + processor_seconds)
                resource.setrlimit(resource.RLIMIT_CPU, (most, most + 1))
            os.close(reads)
            text = json.dumps(work())
            with os.fdopen(writes, "w") as stream:
                stream.write(text)
            os._exit(0)
        except BaseException as error:
            print(f"{error!r}", file=sys.stderr, flush=True)
            os._exit(1)
    os.close(writes)
    with os.fdopen(reads) as stream:
        text = stream.read()
    os.waitpid(child, 0)
    return json.loads(text) if text else None


def load_libraries(work: Callable[[], Any]) -> None:
    """Load the libraries that ``work`` loads, and nothing of ours."""

    def loaded() -> list[str]:
        work()
        files = {name: getattr(module, "__file__", None) or "" for name, module in sys.modules.items()}
        return [name for name, file in files.items() if file.startswith(_INSTALLED)]

    for name in in_fork(loaded) or ():
        try:
            importlib.import_module(name)
        except Exception:  # what cannot be loaded alone is loaded with what needs it
            continue
    gc.freeze()
