"""Client of the Steelyard service: maintenance energy, training-diet phases and weight logs of people who lift.

``Steelyard`` blocks, ``AsyncSteelyard`` is awaited; both have the same methods. Requests are made of keywords,
dictionaries (typed in ``request_types``) or ``models``; answers are ``models``.
"""

from . import errors, models, request_types, units
from ._version import __version__
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
    Season,
    Trend,
)
from .batch import Line, LineAnswer
from .client import AsyncSteelyard, Steelyard
from .dataframe import to_dataframe
from .errors import (
    BadRequest,
    BodyTooLarge,
    ConnectionFailed,
    Contradiction,
    Forbidden,
    GuardRailRefusal,
    InvalidRequest,
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
)
from .retry import RetryPolicy
from .units import feet_inches, inches, kilojoules, pounds, to_feet_inches, to_inches, to_kilojoules, to_pounds

__all__ = [
    "AsyncSteelyard",
    "BadRequest",
    "BodyComposition",
    "BodyTooLarge",
    "Comparison",
    "ConnectionFailed",
    "Contradiction",
    "Decision",
    "Forbidden",
    "Forecast",
    "GuardRailRefusal",
    "InvalidRequest",
    "Line",
    "LineAnswer",
    "Maintenance",
    "Methods",
    "NotConfigured",
    "NotFound",
    "Optimum",
    "OutOfDomain",
    "Plan",
    "ProblemError",
    "Refused",
    "RetryPolicy",
    "Review",
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
