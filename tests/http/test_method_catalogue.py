"""The catalogue of methods is the register, whole."""

from in_process import Running
from steelyard.http.schemas.methods import MethodEntry, MethodSource
from steelyard.science import catalogue
from steelyard.science.register.evidence import Entry, Source


def test_no_field_of_the_register_is_dropped() -> None:
    registered = tuple("source_ids" if field == "sources" else field for field in Entry.__struct_fields__)
    assert MethodEntry.__struct_fields__ == registered
    assert MethodSource.__struct_fields__ == Source.__struct_fields__


async def test_catalogue_is_served_whole(service: Running) -> None:
    answer = (await service.client.get("/v1/methods")).json()
    assert [e["id"] for e in answer["entries"]] == sorted(catalogue.entries())
    assert [s["id"] for s in answer["sources"]] == sorted(catalogue.sources())
    for served in answer["entries"]:
        entry = catalogue.entries()[served["id"]]
        assert served["value"] == entry.value
        assert served["formula"] == entry.formula
        assert served["source_ids"] == list(entry.source_ids)


async def test_every_cited_source_is_listed(service: Running) -> None:
    answer = (await service.client.get("/v1/methods")).json()
    listed = {source["id"] for source in answer["sources"]}
    assert {id_ for entry in answer["entries"] for id_ in entry["source_ids"]} <= listed
