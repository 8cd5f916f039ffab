"""The refusals of science and answers as problem documents."""

from steelyard.science.rails import RATIO_DECIDES, Refused
from steelyard.science.register import Contradiction, OutOfDomain

from ..languages import as_told, english
from . import body_schema
from .problems import CONTRADICTION, OUT_OF_DOMAIN, GuardRailRefusal, ProblemError, Unprocessable, fault

REFUSALS = (OutOfDomain, Refused)


def refusal(error: OutOfDomain | Refused, body_type: type) -> ProblemError:
    """The 422 for a refusal, with the place in a request of ``body_type`` of what it names."""
    if isinstance(error, Refused):
        faults = []
        for action, field in error.all:
            message = as_told(action.message)
            faults.append(fault(pointer_to(field, body_type), message.code, english(message), **message.params))
        for doubt in map(as_told, error.doubts):
            where = pointer_to("log" if doubt.code == RATIO_DECIDES else "weight_kg", body_type)
            faults.append(fault(where, doubt.code, english(doubt), **doubt.params))
        # Each referral once, and what is asked about.
        said = " ".join(dict.fromkeys(english(message) for message in (*error.messages, *error.doubts)))
        return GuardRailRefusal(error.action.id, said, faults)
    pointer = pointer_to(error.field, body_type)
    kind = CONTRADICTION if isinstance(error, Contradiction) else OUT_OF_DOMAIN
    return Unprocessable(kind, error.detail, [fault(pointer, error.code, error.detail)])


def pointer_to(name: str, body_type: type) -> str:
    """The JSON Pointer of an input called ``name``, such as ``log.weights[3].date``."""
    first, *rest = name.replace("[", ".").replace("]", "").split(".")
    return "/".join([body_schema.find_pointer(body_type, first), *rest])
