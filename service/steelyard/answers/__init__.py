"""The layer of answers: one module a question, from what was asked to what is answered.

Plain values in and out: no web framework, no JSON, no pointers into a request. An answer says its value, its messages,
what the guard rails did and what it was computed with. Endpoints, batches, examples and the checks against trials all
come this way, so that what is tested is what is served.
"""

from .answered import Answered
from .maintenance import Maintenance, MaintenanceAsked, estimate_maintenance

__all__ = ["Answered", "Maintenance", "MaintenanceAsked", "estimate_maintenance"]
