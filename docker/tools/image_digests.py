"""Pin the images that are not ours by the digest of what the tag stands for today.

    python docker/tools/image_digests.py > docker/images.env

asks the container engine of this machine, which asks the registry that it is set up with, and prints a setting for each
image, for `docker compose --env-file docker/images.env ...`. What was pinned before is what a build gets until this is
run again.
"""

import re
import shutil
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path

DOCKER = Path(__file__).resolve().parents[1]
_DEFAULTS = (
    re.compile(r"\$\{(\w+_IMAGE):-([\w./-]+:[\w.-]+)\}"),  # as compose has them
    re.compile(r"^ARG (\w+_IMAGE)=([\w./-]+:[\w.-]+)$", re.MULTILINE),  # as the Dockerfile has them
)
_DIGEST = re.compile(r"sha256:[0-9a-f]{64}")


def images() -> Mapping[str, str]:
    """Each image by the setting that names it. Raises ``ValueError`` where one setting stands for two."""
    found: dict[str, str] = {}
    for path in (DOCKER / "Dockerfile", *sorted(DOCKER.glob("compose*.yaml"))):
        text = path.read_text(encoding="utf-8")
        for name, image in [pair for pattern in _DEFAULTS for pair in pattern.findall(text)]:
            if found.setdefault(name, image) != image:
                raise ValueError(f"{path.name}: {name} is {image}, and {found[name]} elsewhere")
    return found


def digest(image: str, engine: str) -> str:
    """What the tag stands for, for all machines. Raises ``ValueError`` where the engine does not say."""
    command = [engine, "buildx", "imagetools", "inspect", "--format", "{{.Manifest.Digest}}", image]
    asked = subprocess.run(command, capture_output=True, text=True, check=False, stdin=subprocess.DEVNULL)  # noqa: S603
    said = asked.stdout.strip()
    if asked.returncode or not _DIGEST.fullmatch(said):
        raise ValueError(f"{image}: {asked.stderr.strip() or said or 'no digest'}")
    return said


def main() -> None:
    """Print the settings, all or none."""
    engine = shutil.which("docker")
    if engine is None:
        sys.exit("image_digests: needs docker with buildx")
    try:
        lines = [f"{name}={image}@{digest(image, engine)}" for name, image in images().items()]
    except ValueError as error:
        sys.exit(f"image_digests: {error}")
    print("\n".join(lines))


if __name__ == "__main__":
    main()
