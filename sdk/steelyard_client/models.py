"""The generated models, of requests and of answers."""

from .generated.models import *  # noqa: F403 - the generated package names what it exports
from .generated.models import __all__ as __all__
