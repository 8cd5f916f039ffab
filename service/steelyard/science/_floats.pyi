from collections.abc import Callable, Mapping
from typing import Any

TWINS: Mapping[str, Callable[..., Any]]
CHECKSUM: int
PLACES: dict[str, dict[str, dict[str, int]]]

def json_array(column: Any) -> bytes | None: ...
