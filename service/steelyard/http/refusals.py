"""The core's refusals as problem documents."""

from steelyard.science.rails import Refused
from steelyard.science.register import OutOfDomain

from . import accepted
from .problems import OUT_OF_DOMAIN, GuardRailRefusal, ProblemError, Unprocessable, fault

CORE_REFUSALS = (OutOfDomain, Refused)


def refusal(error: OutOfDomain | Refused, body_type: type) -> ProblemError:
    """The 422 for a refusal of the core. A bare field name is looked up in ``body_type``."""
    pointer = f"#{error.field}" if error.field.startswith("/") else accepted.find_pointer(body_type, error.field)
    if isinstance(error, Refused):
        message = error.action.message
        faults = [fault(pointer, message.code, message.text, **message.params)]
        return GuardRailRefusal(error.action.id, message.text, faults)
    return Unprocessable(OUT_OF_DOMAIN, error.detail, [fault(pointer, error.code, error.detail)])
