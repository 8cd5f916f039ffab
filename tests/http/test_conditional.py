"""Documents and their validators; fingerprints and answers that repeat byte for byte."""

import gzip
import json
import os
import subprocess
import sys
import time
from pathlib import Path

import httpx
import pytest
from in_process import Running
from msgspec import to_builtins
from steelyard.http.app import OPERATIONS
from steelyard.http.languages import preferred
from steelyard.http.operation.operation import Operation
from steelyard.http.wire.conditional import compress, entity_tag, matches
from steelyard.http.wire.headers import accepts_gzip
from steelyard.http.wire.negotiation import negotiate

ROOT = Path(__file__).resolve().parents[2]
DOCUMENTS = ["/v1/methods", "/openapi.json", "/problems/guard-rail", "/", "/reference", "/site/site.css"]
COMPUTED = [
    o
    for o in OPERATIONS
    if "fingerprint" in o.answer_type.__struct_fields__ and o.media_type.endswith("/json") and not o.renders
]


async def got(service: Running, path: str, method: str = "GET", **headers: str) -> httpx.Response:
    given = {name.replace("_", "-"): value for name, value in headers.items()}
    return await service.client.request(method, path, headers={"accept-encoding": "identity"} | given)


@pytest.mark.parametrize("path", DOCUMENTS)
async def test_a_document_that_the_caller_has_is_not_sent_again(service: Running, path: str) -> None:
    first = await got(service, path)
    tag = first.headers["etag"]
    assert first.status_code == 200
    assert tag.startswith('"')  # a strong validator
    assert "max-age" in first.headers["cache-control"] or first.headers["cache-control"] == "private, no-cache"
    assert "accept-encoding" in first.headers["vary"]
    for condition in (tag, f"W/{tag}", f'"other", {tag}', "*"):
        again = await got(service, path, if_none_match=condition)
        assert (again.status_code, again.content) == (304, b""), condition
        for name in ("etag", "cache-control", "vary"):
            assert again.headers[name] == first.headers[name]
        assert not {"content-type", "content-encoding", "content-length"} & set(again.headers)
    for condition in ('"other"', tag.strip('"'), "", '"', f"{tag[:-1]}x{tag[-1]}"):
        assert (await got(service, path, if_none_match=condition)).status_code == 200, condition


@pytest.mark.parametrize("path", DOCUMENTS)
async def test_head_says_what_get_would(service: Running, path: str) -> None:
    for encoding in ("identity", "gzip"):
        whole = await got(service, path, accept_encoding=encoding)
        head = await got(service, path, "HEAD", accept_encoding=encoding)
        assert (head.status_code, head.content) == (200, b"")
        for name in ("etag", "content-length", "content-type", "cache-control", "vary"):
            assert head.headers[name] == whole.headers[name]
        assert head.headers.get("content-encoding") == whole.headers.get("content-encoding")
    assert (await got(service, path, "HEAD", if_none_match="*")).status_code == 304


async def test_each_encoding_has_its_own_tag(service: Running) -> None:
    plain = await got(service, "/openapi.json")
    short = await got(service, "/openapi.json", accept_encoding="gzip")
    assert short.headers["content-encoding"] == "gzip"
    assert short.content == plain.content
    assert int(short.headers["content-length"]) < len(plain.content) / 4
    assert short.headers["etag"] != plain.headers["etag"]
    crossed = await got(service, "/openapi.json", accept_encoding="gzip", if_none_match=plain.headers["etag"])
    assert crossed.status_code == 200


async def test_a_document_behind_a_key_stays_behind_it(service: Running) -> None:
    tag = (await got(service, "/v1/methods")).headers["etag"]
    assert (await got(service, "/v1/methods", if_none_match=tag, authorization="")).status_code == 401
    assert "authorization" in (await got(service, "/v1/methods")).headers["vary"]


async def test_conditions_mean_nothing_to_a_computation(service: Running) -> None:
    operation = COMPUTED[0]
    body = to_builtins(next(iter(operation.request_examples.values())))
    answer = await service.client.post(operation.path, json=body, headers={"if-none-match": "*"})
    assert answer.status_code == 200
    assert "etag" not in answer.headers


def test_tags_follow_the_bytes() -> None:
    assert entity_tag(b"a") != entity_tag(b"b")
    assert entity_tag(b"a") == entity_tag(b"a")
    assert matches(b'W/"x", "y"', b'"y"')
    assert not matches(b"y", b'"y"')


@pytest.mark.parametrize(
    ("header", "accepted"),
    [
        ("", False),
        ("identity", False),
        ("gzip", True),
        ("GZIP", True),
        ("x-gzip", True),
        ("br, gzip;q=0.1", True),
        ("gzip;q=0", False),
        ("gzip; q=0.0, *", False),
        ("*", True),
        ("*;q=0", False),
        ("br, deflate, zstd", False),
        ("gzipped", False),
        ("gzip;q=nonsense", True),
        ("\xff gzip", False),
    ],
)
def test_which_callers_take_gzip(header: str, accepted: bool) -> None:
    assert accepts_gzip(header.encode("latin-1")) is accepted


@pytest.mark.parametrize("sign", [",", ";"])
def test_lists_of_wishes_without_an_end_are_not_read_to_it(sign: str) -> None:
    """60 kB of commas took 40 ms each time, of whoever asked for a document without a key."""
    field = sign * 60_000
    before = time.process_time()
    for _ in range(100):
        assert not accepts_gzip(field.encode())
        assert negotiate(field.encode(), ("application/json",)) is None
        assert preferred(field) == "en"
    assert time.process_time() - before < 1.0, "0.1 s, against 10 s"
    assert accepts_gzip(b"br," * 20 + b"gzip")
    assert preferred("xx," * 20 + "de") == "de"


def test_compressed_bytes_repeat() -> None:
    """No time stamp inside, as gzip has one by default."""
    assert compress(b"a" * 5000, 1) == compress(b"a" * 5000, 1)
    assert compress(b"a" * 5000, 1)[4:8] == bytes(4)
    assert gzip.decompress(compress(b"a" * 5000, 9)) == b"a" * 5000


# Fingerprints


def test_every_computed_answer_has_a_fingerprint() -> None:
    without = {o.operation_id for o in OPERATIONS if o not in COMPUTED and not o.renders}
    assert without <= {"list_messages", "list_methods", "run_batch"}  # a batch has one on each of its lines


@pytest.mark.parametrize("operation", COMPUTED, ids=lambda o: o.operation_id)
async def test_the_same_request_gives_the_same_bytes(service: Running, operation: Operation) -> None:
    prints = set()
    for example in operation.request_examples.values():
        body = to_builtins(example)
        shuffled = json.dumps(dict(reversed(body.items())), indent=3)
        plain = {"content-type": "application/json", "accept-encoding": "identity"}
        first = await service.client.post(operation.path, json=body, headers={"accept-encoding": "identity"})
        second = await service.client.post(operation.path, content=shuffled, headers=plain)
        short = await service.client.post(operation.path, json=body, headers={"accept-encoding": "gzip"})
        assert first.status_code == 200
        assert first.content == second.content == short.content
        fingerprint = first.json()["fingerprint"]
        assert first.headers.get_list("steelyard-fingerprint") == [fingerprint]
        assert second.headers["steelyard-fingerprint"] == short.headers["steelyard-fingerprint"] == fingerprint
        prints.add(fingerprint)
    assert len(prints) == len(operation.request_examples)


ANSWERS_IN_A_FRESH_PROCESS = """
import hashlib, sys
from steelyard.http.wire.encoding import encode_finite
from steelyard.http.app import OPERATIONS
for operation in OPERATIONS:
    if operation.media_type == "application/json" and not operation.in_thread and not operation.renders:
        for name, example in operation.request_examples.items():
            body = encode_finite(operation.compute(example))
            print(operation.operation_id, name, hashlib.sha256(body).hexdigest())
"""


def test_another_process_gives_the_same_bytes() -> None:
    """Whatever the order in which it hashes: nothing in an answer hangs on the process."""
    runs = [
        subprocess.run(
            [sys.executable, "-c", ANSWERS_IN_A_FRESH_PROCESS],
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT / "service")},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    ]
    assert len(runs[0].splitlines()) > 5
    assert runs[0] == runs[1]
