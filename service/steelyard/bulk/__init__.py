"""Members by the million: Arrow tables of requests to Arrow tables of answers, and a runner over Parquet.

Needs the extra ``steelyard[bulk]``. Nothing else of the package imports it, but for the command line when it is asked.
"""

from .answering import OPERATIONS, Answerer, TableRefused, answer_schema, answer_table, request_schema
from .shapes import UnknownColumn

__all__ = [
    "OPERATIONS",
    "Answerer",
    "TableRefused",
    "UnknownColumn",
    "answer_schema",
    "answer_table",
    "request_schema",
]
