"""Folders of files, on a disk or in an object store: what is written there is there whole or not at all."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any, NamedTuple
from uuid import uuid4

import pyarrow as pa
from pyarrow import fs

_UNFINISHED = ".unfinished-"


class Place(NamedTuple):
    """A folder: its file system, its path there, and the text that names both to another process."""

    filesystem: fs.FileSystem
    path: str
    name: str

    def at(self, relative: str) -> str:
        """The path of a file in it."""
        return f"{self.path}/{relative}"

    def files(self, suffix: str) -> Iterator[fs.FileInfo]:
        """The files in it and below with that ending, in the order of their paths.

        Those whose name or folder begins with a dot or an underscore are passed over, as readers of tables do.
        """
        found = self.filesystem.get_file_info(fs.FileSelector(self.path, recursive=True, allow_not_found=True))
        for info in sorted(found, key=lambda info: str(info.path)):
            parts = self.relative(info).split("/")
            if info.type == fs.FileType.File and info.path.endswith(suffix) and not any(p[0] in "._" for p in parts):
                yield info

    @property
    def is_there(self) -> bool:
        """Whether there is such a folder; of an object store, whether there is anything in it."""
        return bool(self.filesystem.get_file_info(self.path).type == fs.FileType.Directory)

    def relative(self, info: fs.FileInfo) -> str:
        """The path of a file as seen from the folder."""
        path: str = info.path
        return path[len(self.path) + 1 :]

    def size(self, relative: str) -> int | None:
        """How long a file is; None where there is none."""
        info = self.filesystem.get_file_info(self.at(relative))
        return info.size if info.type == fs.FileType.File else None

    def read(self, relative: str) -> bytes:
        """What is in a file."""
        with self.filesystem.open_input_stream(self.at(relative)) as stream:
            found: bytes = stream.read()
        return found

    def write(self, relative: str, content: bytes) -> None:
        """Put a file there, in place of one that is there."""
        with self.replacing(relative) as stream:
            stream.write(content)

    @contextmanager
    def replacing(self, relative: str) -> Iterator[Any]:
        """A stream to write; it becomes the file once all is written, and leaves nothing behind where that fails."""
        folder, _, name = self.at(relative).rpartition("/")
        self.filesystem.create_dir(folder, recursive=True)
        unfinished = f"{folder}/{_UNFINISHED}{uuid4().hex[:12]}-{name}"
        try:
            with self.filesystem.open_output_stream(unfinished) as stream:
                yield stream
            self.filesystem.move(unfinished, self.at(relative))
        except BaseException:
            if self.filesystem.get_file_info(unfinished).type == fs.FileType.File:
                self.filesystem.delete_file(unfinished)
            raise

    def remove(self, relative: str) -> None:
        """See that a file is not there."""
        if self.size(relative) is not None:
            self.filesystem.delete_file(self.at(relative))

    def tidy(self) -> None:
        """Remove what writers that were killed left unfinished."""
        selector = fs.FileSelector(self.path, recursive=True, allow_not_found=True)
        for info in self.filesystem.get_file_info(selector):
            if info.type == fs.FileType.File and info.base_name.startswith(_UNFINISHED):
                self.filesystem.delete_file(info.path)

    @property
    def is_local(self) -> bool:
        """Whether it is a folder of this machine."""
        return isinstance(self.filesystem, fs.LocalFileSystem)


class NoPlace(ValueError):  # noqa: N818 - named for what is missing
    """A text that names no folder which could be opened."""


def place_of(name: str) -> Place:
    """The folder of a path, or of a URI such as ``s3://bucket/members``. Raises ``NoPlace``."""
    if "://" not in name:
        path = os.path.abspath(name)
        return Place(fs.LocalFileSystem(), path, path)
    try:
        filesystem, path = fs.FileSystem.from_uri(name)
    except (pa.ArrowException, OSError, ValueError) as error:
        raise NoPlace(f"{name} cannot be opened: {error}") from None
    return Place(filesystem, path.rstrip("/"), name.rstrip("/"))
