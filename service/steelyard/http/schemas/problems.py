"""The problem document on the wire (RFC 9457)."""

from typing import Annotated

import msgspec
from msgspec import Meta


class FieldProblem(msgspec.Struct, frozen=True, kw_only=True):
    """One fault, and the place in the request body where it is."""

    pointer: Annotated[
        str,
        Meta(
            description="JSON Pointer (RFC 6901) to the field, as a URI fragment; `#` is the whole body.",
            examples=["#/profile/height_cm"],
        ),
    ]
    code: Annotated[
        str, Meta(description="Stable reason in capitals. Extensible.", examples=["OUT_OF_RANGE", "MISSING_FIELD"])
    ]
    detail: Annotated[str, Meta(description="What is wrong and what would be accepted, in English.")]
    params: Annotated[
        dict[str, str | int | float],
        Meta(description="The dynamic parts of `detail`; quantities carry their unit in the name."),
    ] = {}


class Problem(msgspec.Struct, frozen=True, kw_only=True):
    """An error, as an RFC 9457 problem document. Branch on `type` or `code`; never parse `detail`."""

    type: Annotated[
        str,
        Meta(
            description="URI reference of the kind of problem; GET it for its documentation. Extensible.",
            examples=["/problems/schema-violation"],
        ),
    ]
    title: Annotated[str, Meta(description="The kind of problem in words; the same for every occurrence.")]
    status: Annotated[int, Meta(ge=400, le=599, description="The HTTP status code.", examples=[400])]
    detail: Annotated[str, Meta(description="What happened in this request, and how to mend it.")]
    instance: Annotated[
        str,
        Meta(
            description="The request id as a URI reference, to quote to the operator: a URN where it is a UUID.",
            examples=["urn:uuid:6f1c1f3a-43f5-4d0c-9a52-0a3f1f0f6b1e"],
        ),
    ]
    code: Annotated[
        str, Meta(description="The kind of problem in capitals. Extensible.", examples=["SCHEMA_VIOLATION"])
    ]
    errors: Annotated[tuple[FieldProblem, ...], Meta(description="The faults, each with its place. May be empty.")] = ()
