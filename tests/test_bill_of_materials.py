"""What an image is made of: the bill of its packages, and the digests of what it stands on."""

import os
import re
import subprocess
import sys
from pathlib import Path

import bill_of_materials
import image_digests
import pytest
from cyclonedx.output.json import JsonV1Dot6
from cyclonedx.schema import SchemaVersion
from cyclonedx.validation.json import JsonStrictValidator

ROOT = Path(__file__).resolve().parents[1]
IMAGE = ROOT / "service" / "requirements" / "image.txt"
DIGEST = "sha256:" + "ab" * 32


@pytest.mark.parametrize("name", ["image.txt", "bulk.txt"])
def test_the_bill_is_whole_and_fits_its_standard(name: str) -> None:
    path = IMAGE.with_name(name)
    made = bill_of_materials.bill(path)
    assert JsonStrictValidator(SchemaVersion.V1_6).validate_str(JsonV1Dot6(made).output_as_string()) is None
    pinned = dict(re.findall(r"^([\w.-]+)==([\w.]+)", path.read_text(encoding="utf-8"), re.MULTILINE))
    listed = {component.name: component.version for component in made.components}
    assert listed.items() <= pinned.items()
    digests = {hash_.content for one in made.components for file in one.external_references for hash_ in file.hashes}
    assert all(f"sha256:{digest}" in path.read_text(encoding="utf-8") for digest in digests)
    assert {"litestar", "msgspec", "sqlalchemy", "opentelemetry-sdk"} <= listed.keys()


def test_what_the_image_does_not_install_is_not_in_its_bill() -> None:
    listed = {component.name for component in bill_of_materials.bill(IMAGE).components}
    text = IMAGE.read_text(encoding="utf-8")
    elsewhere = set(
        re.findall(r"^([\w.-]+)==\S+ ; (?:sys_platform == 'win32'|python_full_version < '3.1[123])", text, re.M)
    )
    assert elsewhere, "there is nothing of the kind any more: the markers need no reading"
    assert not elsewhere & listed


def test_a_line_without_hash_is_refused(tmp_path: Path) -> None:
    loose = tmp_path / "loose.txt"
    loose.write_text("msgspec==0.22.0\n")
    with pytest.raises(ValueError, match="no hash"):
        bill_of_materials.bill(loose)


def engine(directory: Path, says: str) -> dict[str, str]:
    """An environment whose container engine is a script."""
    program = directory / "docker"
    program.write_text(f"#!/bin/sh\n{says}\n")
    program.chmod(0o755)
    return {**os.environ, "PATH": f"{directory}:{os.environ['PATH']}"}


def asked(environment: dict[str, str]) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, image_digests.__file__]
    return subprocess.run(command, env=environment, capture_output=True, text=True, check=False)


def test_every_image_that_is_not_ours_is_pinned_on_request(tmp_path: Path) -> None:
    done = asked(engine(tmp_path, f'echo "$@" >> {tmp_path}/asked; echo {DIGEST}'))
    assert done.returncode == 0, done.stderr
    pinned = dict(line.split("=", 1) for line in done.stdout.splitlines())
    assert pinned.keys() == {"PYTHON_IMAGE", "PROXY_IMAGE", "POSTGRES_IMAGE", "VALKEY_IMAGE"}
    assert all(re.fullmatch(rf"[\w./-]+:[\w.-]+@{DIGEST}", image) for image in pinned.values())
    calls = (tmp_path / "asked").read_text().splitlines()
    assert [call.rpartition(" ")[2] for call in calls] == [image.partition("@")[0] for image in pinned.values()]


@pytest.mark.parametrize("says", ["echo no such image >&2; exit 1", "echo latest", "true"])
def test_without_a_digest_nothing_is_written(tmp_path: Path, says: str) -> None:
    done = asked(engine(tmp_path, says))
    assert done.returncode == 1
    assert done.stdout == ""
    assert "image_digests: python:3.13-slim" in done.stderr


def test_no_image_is_named_beside_the_settings() -> None:
    """What is not a setting would not be pinned."""
    for path in (ROOT / "docker").glob("compose*.yaml"):
        named = re.findall(r"^ +image: (\S+)", path.read_text(encoding="utf-8"), re.MULTILINE)
        assert all(image == "steelyard" or re.match(r"\$\{\w+_IMAGE:-", image) for image in named), path.name
    dockerfile = (ROOT / "docker" / "Dockerfile").read_text(encoding="utf-8")
    assert set(re.findall(r"^FROM (\S+)", dockerfile, re.MULTILINE)) == {"${PYTHON_IMAGE}"}
