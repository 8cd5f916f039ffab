"""Client of the Steelyard service: maintenance energy, training-diet phases and weight logs of people who lift.

``Steelyard`` blocks, ``AsyncSteelyard`` is awaited; both have the same methods. Requests are made of keywords,
dictionaries (typed in ``request_types``) or ``models``; answers are ``models``.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

from . import errors, units
from ._version import __version__
from .batch import LineAnswer
from .client import AsyncSteelyard, Steelyard
from .errors import (
    BadRequest,
    BodyTooLarge,
    BodyTooSlow,
    ConnectionFailed,
    Contradiction,
    Forbidden,
    GuardRailRefusal,
    HeadTooLarge,
    InvalidRequest,
    MethodNotAllowed,
    NotAcceptable,
    NotConfigured,
    NotFound,
    OutOfDomain,
    ProblemError,
    Refused,
    ServiceFault,
    ServiceUnavailable,
    SteelyardError,
    TimedOut,
    TooManyRequests,
    Unauthorized,
    UnreadableAnswer,
    UnsupportedMediaType,
)
from .received import Exchange, Limit, Received
from .retry import RetryPolicy
from .units import feet_inches, inches, kilojoules, pounds, to_feet_inches, to_inches, to_kilojoules, to_pounds

if TYPE_CHECKING:
    from . import models as models
    from . import request_types as request_types
    from .answers import (
        BodyComposition,
        Comparison,
        Decision,
        Forecast,
        Maintenance,
        Methods,
        Optimum,
        Plan,
        Review,
        Roster,
        Season,
        Trend,
    )
    from .dataframe import to_dataframe
    from .generated.request_types import Line
    from .messages import Messages

# Loaded when they are first asked for: the models take longer than all the rest.
_LATER = {
    "BodyComposition": "answers",
    "Comparison": "answers",
    "Decision": "answers",
    "Forecast": "answers",
    "Maintenance": "answers",
    "Methods": "answers",
    "Optimum": "answers",
    "Plan": "answers",
    "Review": "answers",
    "Roster": "answers",
    "Season": "answers",
    "Trend": "answers",
    "to_dataframe": "dataframe",
    "Line": "generated.request_types",
    "Messages": "messages",
}
_MODULES = ("models", "request_types")


def __getattr__(name: str) -> Any:
    if name in _MODULES:
        return import_module(f".{name}", __name__)
    if name not in _LATER:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    found = globals()[name] = getattr(import_module(f".{_LATER[name]}", __name__), name)
    return found


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})


__all__ = [
    "AsyncSteelyard",
    "BadRequest",
    "BodyComposition",
    "BodyTooLarge",
    "BodyTooSlow",
    "Comparison",
    "ConnectionFailed",
    "Contradiction",
    "Decision",
    "Exchange",
    "Forbidden",
    "Forecast",
    "GuardRailRefusal",
    "HeadTooLarge",
    "InvalidRequest",
    "Limit",
    "Line",
    "LineAnswer",
    "Maintenance",
    "Messages",
    "MethodNotAllowed",
    "Methods",
    "NotAcceptable",
    "NotConfigured",
    "NotFound",
    "Optimum",
    "OutOfDomain",
    "Plan",
    "ProblemError",
    "Received",
    "Refused",
    "RetryPolicy",
    "Review",
    "Roster",
    "Season",
    "ServiceFault",
    "ServiceUnavailable",
    "Steelyard",
    "SteelyardError",
    "TimedOut",
    "TooManyRequests",
    "Trend",
    "Unauthorized",
    "UnreadableAnswer",
    "UnsupportedMediaType",
    "__version__",
    "errors",
    "feet_inches",
    "inches",
    "kilojoules",
    "models",
    "pounds",
    "request_types",
    "to_dataframe",
    "to_feet_inches",
    "to_inches",
    "to_kilojoules",
    "to_pounds",
    "units",
]
