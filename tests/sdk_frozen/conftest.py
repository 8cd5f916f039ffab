"""The service that the frozen tests speak to, in a process of its own."""

from collections.abc import Iterator

import pytest
from examples.local_service import LocalService, local_service


@pytest.fixture(scope="package")
def live() -> Iterator[LocalService]:
    with local_service() as service:
        yield service
