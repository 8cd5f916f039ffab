"""Take the addresses out of npm's lock file: it then says versions and hashes, and no host."""

import json
import sys
from pathlib import Path

_ADDRESSES = ("deprecated", "funding", "resolved")


def without_addresses(text: str) -> str:
    """The lock file's text with no address in it. Versions and hashes stay, which is all that `npm ci` goes by."""
    lock = json.loads(text)
    for package in lock["packages"].values():
        for name in _ADDRESSES:
            package.pop(name, None)
    return json.dumps(lock, indent=2) + "\n"


if __name__ == "__main__":
    path = Path(sys.argv[1])
    path.write_text(without_addresses(path.read_text(encoding="utf-8")), encoding="utf-8")
