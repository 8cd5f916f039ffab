"""Why a number is what it is: coded messages, guard rails, and the ids of the methods used."""

from typing import Annotated

from msgspec import Meta

from .shared_fields import Response

MethodIds = Annotated[
    list[str],
    Meta(
        description="Ids of the equations, constants and rules used; each is in `/v1/methods`.",
        examples=[["mifflin", "energy_balance_model"]],
    ),
]


class Note(Response, frozen=True, kw_only=True):
    """A reason, caution or note: a stable code, its parameters, and the text made from both."""

    code: Annotated[
        str,
        Meta(
            description="Stable code, UPPER_SNAKE, as in `/v1/messages`. Extensible.", examples=["NOT_MEDICAL_ADVICE"]
        ),
    ]
    text: Annotated[str, Meta(description="The message in English.")]
    params: Annotated[
        dict[str, float | str],
        Meta(description="Every number of the text, units in the names.", examples=[{"deficit_kcal": 500}]),
    ]


class GuardRail(Response, frozen=True, kw_only=True):
    """A guard rail that did something: what it read, its limit, and what it did."""

    id: Annotated[str, Meta(description="Id of the rule, as in `/v1/methods`.", examples=["deficit_share"])]
    action: Annotated[str, Meta(description="`capped` or `warned`. Extensible.", examples=["capped"])]
    limit: Annotated[float | None, Meta(description="The limit applied.", examples=[0.3])]
    observed: Annotated[float | None, Meta(description="What was asked for or found.", examples=[0.34])]
    unit: Annotated[str, Meta(description="Unit of `limit` and `observed`.", examples=["of maintenance"])]
    code: Annotated[str, Meta(description="Code of the text, as in `/v1/messages`.", examples=["CAPPED_DEFICIT"])]
    text: Annotated[str, Meta(description="What was done and why.")]
    params: Annotated[dict[str, float | str], Meta(description="Parameters of the text, units in the names.")]


class Provenance(Response, frozen=True, kw_only=True):
    """What produced a computed answer: equal fingerprints mean byte-identical answers."""

    model_version: Annotated[str, Meta(description="Version of the science.", examples=["1.0.0"])]
    contract_version: Annotated[str, Meta(description="Version of the contract.", examples=["1.0.0"])]
    fingerprint: Annotated[
        str,
        Meta(description="Digest of the input, the contract and the model version.", examples=["b1946ac92492d234"]),
    ]
