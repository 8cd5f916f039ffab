"""Answers in other media types than JSON."""

from ..negotiation import Format
from .plan_calendar import calendar
from .plan_summary import summary
from .plan_table import table

PLAN_FORMATS = {
    "text/calendar": Format(content_type="text/calendar; charset=utf-8", encode=calendar),
    "text/csv": Format(content_type="text/csv; charset=utf-8; header=present", encode=table),
    "text/markdown": Format(content_type="text/markdown; charset=utf-8", encode=summary),
}
