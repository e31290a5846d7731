"""What `build` was told with -o and --to -> which text goes where."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import click

FORMS = ("md", "html", "svg")

Documents = tuple[Any, ...]
Render = Callable[[Documents, str], str]
"""Documents and the name of a format -> one text."""
Draw = Callable[[Any], tuple[tuple[str, str], ...]]
"""A document -> name and text of the file of each of its drawings."""


class Destination:
    """A folder with a file for each document and drawing, or one file or standard output for all of them."""

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

    def texts(self, rig_folder: Path, documents: Documents, render: Render, draw: Draw) -> dict[Path, str]:
        """Each path and its text, for the documents of one rig; the path `-` is standard output.

        Markdown only links to drawings, so their files are written beside it. Raises `click.UsageError` where one
        SVG file is asked for and there is not one drawing.
        """
        if not documents:
            return {}
        if self.is_stdout or self.is_file:
            return self._one(documents, render, draw)
        folder = rig_folder / "documents" if self.output is None else Path(self.output)
        texts: dict[Path, str] = {}
        for document in documents:
            texts |= {
                folder / f"{document.sheet.name}.{form}": render((document,), form)
                for form in self.forms
                if form != "svg"
            }
            if self.forms != ("html",):
                texts |= {folder / name: text for name, text in draw(document)}
        return texts

    def _one(self, documents: Documents, render: Render, draw: Draw) -> dict[Path, str]:
        target = Path(str(self.output))
        if self.forms == ("html",):
            return {target: render(documents, "html")}
        if self.forms == ("md",) and self.is_stdout:
            return {target: render(documents, "md")}
        files = [file for document in documents for file in draw(document)]
        if self.forms == ("md",):
            return {target: render(documents, "md")} | {target.parent / name: text for name, text in files}
        if len(files) != 1:
            names = ", ".join(name for name, _ in files) or "none"
            raise click.UsageError(f"one SVG file holds one drawing; these sheets have {names}")
        return {target: files[0][1]}
