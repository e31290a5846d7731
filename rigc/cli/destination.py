"""What `build` was told with -o and --to -> which text goes where."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import click

FORMS = ("md", "html")

Documents = tuple[Any, ...]
Render = Callable[[Documents, str], str]
"""Documents and the name of a format -> one text."""


class Destination:
    """A folder with a file for each document, or one file or standard output for all of them."""

    def __init__(self, output: str | None, forms: tuple[str, ...], rigs: int) -> None:
        self.output = output
        self.is_stdout = output == "-"
        ending = Path(output).suffix[1:] if output and not output.endswith("/") and not Path(output).is_dir() else ""
        self.is_file = ending in FORMS
        self.forms = forms or (("md",) if self.is_stdout else (ending,) if self.is_file else FORMS)
        if output is not None and rigs > 1:
            raise click.UsageError("-o is for one rig; without it each rig's documents go beside it")
        if (self.is_stdout or self.is_file) and len(self.forms) > 1:
            raise click.UsageError(f"-o {output} holds one format; name one with --to")
        if self.is_file and self.forms != (ending,):
            raise click.UsageError(f"'{output}' ends in .{ending}, but --to says {self.forms[0]}")

    def texts(self, rig_folder: Path, documents: Documents, render: Render) -> dict[Path, str]:
        """Each path and its text, for the documents of one rig; the path `-` is standard output."""
        if not documents:
            return {}
        if self.is_stdout or self.is_file:
            return {Path(str(self.output)): render(documents, self.forms[0])}
        folder = rig_folder / "documents" if self.output is None else Path(self.output)
        return {
            folder / f"{document.sheet.name}.{form}": render((document,), form)
            for document in documents
            for form in self.forms
        }
