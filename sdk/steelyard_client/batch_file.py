"""A file of answers to lines, so that a run that broke off goes on where it stopped."""

import json
from collections.abc import Mapping
from os import PathLike
from types import TracebackType
from typing import Any, Self

_HEADER = b'{"steelyard_answers":1}\n'


class AnswerFile:
    """One JSON object a line, under a first line that marks the file as ours.

    Only where each answer stands is held in memory. A last line that was cut off, as a crash leaves it, is dropped.
    Raises ``ValueError`` for a file that is not of this kind, which is left as it is.
    """

    def __init__(self, path: str | PathLike[str]) -> None:
        self._path = path
        self._file = open(path, "a+b")  # noqa: SIM115 - closed by the context
        self._places: dict[str, tuple[str, int]] = {}
        try:
            self._index()
        except BaseException:
            self._file.close()
            raise

    def find(self, reference: str, digest: str) -> Mapping[str, Any] | None:
        """The answer to the line of this reference, if it is kept and the line is still the same."""
        known, place = self._places.get(reference, ("", 0))
        if known != digest:
            return None
        self._file.seek(place)
        stored: dict[str, Any] = json.loads(self._file.readline())
        return stored

    def add(self, reference: str, digest: str, answer: Mapping[str, Any]) -> None:
        """Keep an answer; it is with the operating system when this returns."""
        place = self._file.seek(0, 2)
        line = {"reference": reference, "digest": digest, **answer}
        self._file.write(json.dumps(line, separators=(",", ":")).encode("ascii") + b"\n")
        self._file.flush()
        self._places[reference] = (digest, place)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._file.close()

    def _index(self) -> None:
        self._file.seek(0)
        first = self._file.readline(len(_HEADER))
        if first != _HEADER:
            if not _HEADER.startswith(first) or self._file.read(1):
                raise ValueError(f"{self._path} is no file of answers, and is left as it is")
            self._file.truncate(0)
            self._file.write(_HEADER)
            self._file.flush()
            return
        place = self._file.tell()
        while line := self._file.readline():
            if not line.endswith(b"\n"):
                self._file.truncate(place)
                return
            try:
                stored = json.loads(line)
                self._places[stored["reference"]] = (stored["digest"], place)
            except (ValueError, KeyError, TypeError) as error:
                raise ValueError(f"{self._path} is damaged at byte {place}, and is left as it is") from error
            place = self._file.tell()
