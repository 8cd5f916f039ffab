"""The catalogue of methods on the wire, and the mapping from the register of evidence."""

from typing import Annotated

import msgspec
from msgspec import Meta

from steelyard.science.register import Basis, Entry, Kind, Source


class MethodEntry(msgspec.Struct, frozen=True, kw_only=True):
    """One constant, equation, model or rule that answers can rest on."""

    id: Annotated[str, Meta(description="The id that answers cite.", examples=["normal_quantile_90"])]
    kind: Annotated[
        str, Meta(description=f"What it is. Extensible; now {', '.join(Kind)}.", examples=[k.value for k in Kind])
    ]
    summary: Annotated[str, Meta(description="What it is for, in one sentence.")]
    formula: Annotated[str, Meta(description="The computation in words and symbols; of a constant, its value.")]
    basis: Annotated[
        str,
        Meta(
            description=f"How well it is supported. Extensible; now {'; '.join(Basis)}.",
            examples=[b.value for b in Basis],
        ),
    ]
    source_ids: Annotated[tuple[str, ...], Meta(description="Ids of the sources it rests on.")]
    valid_range: Annotated[str | None, Meta(description="For whom, or in which range, the source holds.")] = None
    value: Annotated[float | None, Meta(description="The value of a constant or a limit, in `unit`.")] = None
    unit: Annotated[str | None, Meta(description="The unit of `value`.")] = None
    standard_deviation: Annotated[
        float | None, Meta(description="Spread of `value` between people, or its error, in `unit`.")
    ] = None


class MethodSource(msgspec.Struct, frozen=True, kw_only=True):
    """A publication, standard or table."""

    id: Annotated[str, Meta(description="The id that entries cite.")]
    citation: Annotated[str, Meta(description="Authors, title, journal or publisher, year.")]
    doi: Annotated[str | None, Meta(description="Digital object identifier, where there is one.")] = None


class MethodCatalogue(msgspec.Struct, frozen=True, kw_only=True):
    """Everything the service computes with, and where it comes from."""

    contract_version: Annotated[str, Meta(description="Version of this contract.", examples=["1.0.0"])]
    entries: Annotated[tuple[MethodEntry, ...], Meta(description="Sorted by id.")]
    sources: Annotated[tuple[MethodSource, ...], Meta(description="Sorted by id.")]


def method_entry(entry: Entry) -> MethodEntry:
    """An entry of the register, as on the wire."""
    return MethodEntry(
        id=entry.id,
        kind=entry.kind.value,
        summary=entry.summary,
        formula=entry.formula,
        basis=entry.basis.value,
        source_ids=entry.source_ids,
        valid_range=entry.valid_range,
        value=entry.value,
        unit=entry.unit,
        standard_deviation=entry.standard_deviation,
    )


def method_source(source: Source) -> MethodSource:
    """A source of the register, as on the wire."""
    return MethodSource(id=source.id, citation=source.citation, doi=source.doi)
