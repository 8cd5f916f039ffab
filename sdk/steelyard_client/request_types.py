"""The typed dictionaries of requests: ``ProfileDict`` and so on, one per object in a request, and lines of batches."""

from .generated.request_types import *  # noqa: F403 - the generated module names what it exports
from .generated.request_types import __all__ as __all__
