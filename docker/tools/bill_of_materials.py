"""A bill of materials (CycloneDX 1.6) of an image's Python packages, read off its hashed requirements.

    python docker/tools/bill_of_materials.py service/requirements/image.txt > steelyard.cdx.json

Only what the image installs is in it: markers are read for its Python and for Linux. What the base image brings is in
the bill that the build itself attaches (`docker buildx build --sbom=true`).
"""

import re
import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path

from cyclonedx.model import ExternalReference, ExternalReferenceType, HashAlgorithm, HashType, XsUri
from cyclonedx.model.bom import Bom
from cyclonedx.model.component import Component, ComponentType
from cyclonedx.model.license import LicenseExpression
from cyclonedx.output.json import JsonV1Dot6
from packageurl import PackageURL
from pip_requirements_parser import InstallRequirement, RequirementsFile

ROOT = Path(__file__).resolve().parents[2]
_PYTHON = re.compile(r"^ARG PYTHON_IMAGE=python:(\d+\.\d+)", re.MULTILINE)


def bill(requirements: Path) -> Bom:
    """The bill of what the image installs of a file. Raises ``ValueError`` for a line without version or hash."""
    found = RequirementsFile.from_file(str(requirements))
    if found.invalid_lines:
        raise ValueError(f"{requirements.name}: {found.invalid_lines[0].line}")
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    service = Component(
        type=ComponentType.APPLICATION,
        name=project["name"],
        version=project["version"],
        bom_ref=project["name"],
        licenses=[LicenseExpression(project["license"])],
    )
    packages = sorted(map(_component, _installed(found.requirements)), key=lambda one: one.name)
    made = Bom(components=packages)
    made.metadata.component = service
    made.register_dependency(service, packages)
    return made


def _installed(requirements: list[InstallRequirement]) -> Iterator[InstallRequirement]:
    """Those that are for the image: its Python is the one that the Dockerfile names."""
    named = _PYTHON.search((ROOT / "docker" / "Dockerfile").read_text(encoding="utf-8"))
    if named is None:
        raise ValueError("the Dockerfile names no version of Python")
    machine = {
        "python_version": named[1],
        "python_full_version": f"{named[1]}.0",
        "implementation_name": "cpython",
        "platform_python_implementation": "CPython",
        "os_name": "posix",
        "sys_platform": "linux",
        "platform_system": "Linux",
    }
    for requirement in requirements:
        if requirement.marker is None or requirement.marker.evaluate(machine):
            yield requirement


def _component(requirement: InstallRequirement) -> Component:
    version = requirement.get_pinned_version
    hashes = [one.partition(":") for one in requirement.hash_options]
    if not version or not hashes:
        raise ValueError(f"{requirement.name} has no version or no hash")
    purl = PackageURL("pypi", name=requirement.name, version=version)
    # One of each file that may be installed: a package has a wheel for each machine.
    files = [
        ExternalReference(
            type=ExternalReferenceType.DISTRIBUTION,
            url=XsUri(str(purl)),
            hashes=[HashType(alg=HashAlgorithm.SHA_256, content=digest)],
        )
        for _, _, digest in hashes
    ]
    return Component(
        type=ComponentType.LIBRARY,
        name=requirement.name,
        version=version,
        purl=purl,
        bom_ref=str(purl),
        external_references=files,
    )


if __name__ == "__main__":
    print(JsonV1Dot6(bill(Path(sys.argv[1]))).output_as_string(indent=2))
