"""A page that a browser is to show -> its file, in a folder of this run alone that nobody else can read."""

from __future__ import annotations

import tempfile
from functools import cached_property
from pathlib import Path

from rigc.files.writing import write_all


class PagesToShow:
    """The pages of one run; they stay for the browser that has them open, until the system clears its temporary files."""

    @cached_property
    def folder(self) -> Path:
        """Made when the first page is shown."""
        return Path(tempfile.mkdtemp(prefix="rigc-"))

    def put(self, name: str, page: str) -> Path:
        """Writes a page in place of the one of that name. Raises `NotWritable`."""
        path = self.folder / f"{name}.html"
        write_all({path: page})
        return path
