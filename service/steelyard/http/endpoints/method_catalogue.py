"""GET /v1/methods."""

from steelyard.science import catalogue
from steelyard.store.keys import Scope

from ..operation.operation import constant_document
from ..schemas.methods import MethodCatalogue, method_entry, method_source
from ..wire.request_id import CONTRACT_VERSION


@constant_document(
    "/v1/methods",
    operation_id="list_methods",
    tag="methods",
    summary="List every constant, equation, model and rule in use",
    scope=Scope.METHODS,
)
def list_methods() -> MethodCatalogue:
    """The catalogue that answers cite: each entry with its formula, its basis and its sources.

    The computations read the very same register, so that the catalogue cannot differ from them.
    """
    entries, sources = catalogue.entries(), catalogue.sources()
    return MethodCatalogue(
        contract_version=CONTRACT_VERSION,
        entries=tuple(method_entry(entries[id_]) for id_ in sorted(entries)),
        sources=tuple(method_source(sources[id_]) for id_ in sorted(sources)),
    )
