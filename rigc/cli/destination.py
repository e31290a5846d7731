"""What `build` was told with -o and --to -> which text goes where."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import click

FORMS = ("md", "html", "svg")
"""What is written when nothing is asked for."""
ON_REQUEST = ("pdf", "csv", "json", "xlsx", "dxf")
WHOLE = ("md", "html", "pdf")
"""Formats in which one file holds a document, or several."""
PARTS = {"svg": "drawing", "csv": "table", "json": "sheet with tables", "xlsx": "sheet with tables", "dxf": "deck"}
"""Formats in which each file holds one part of a document, and what that is."""
FOLDER = "folder"
"""The name, without its ending, of the file that holds all sheets."""

Documents = tuple[Any, ...]
Text = str | bytes
Render = Callable[[Documents, str], Text]
"""Documents and the name of a format of `WHOLE` -> one text."""
Split = Callable[[Any, str], tuple[tuple[str, Text], ...]]
"""A document and a format of `PARTS` -> name and text of each of its files."""


class Destination:
    """A folder on disk with one file of all documents, or with a file for each document and drawing (`separate`), or a file of that
    name or standard output for all of them."""

    def __init__(self, output: str | None, forms: tuple[str, ...], rigs: int, *, separate: bool = True) -> None:
        self.output = output
        self.is_stdout = output == "-"
        ending = Path(output).suffix[1:] if output and not output.endswith("/") and not Path(output).is_dir() else ""
        self.is_file = ending in (*FORMS, *ON_REQUEST)
        self.separate = separate
        usual = FORMS if separate else ("html",)
        self.forms = forms or (("md",) if self.is_stdout else (ending,) if self.is_file else usual)
        if output is not None and rigs > 1:
            raise click.UsageError("-o is for one rig; without it each rig's documents go beside it")
        if (self.is_stdout or self.is_file) and len(self.forms) > 1:
            raise click.UsageError(f"-o {output} holds one format; name one with --to")
        if self.is_file and self.forms != (ending,):
            raise click.UsageError(f"'{output}' ends in .{ending}, but --to says {self.forms[0]}")

    @property
    def can_be_known(self) -> bool:
        """Whether the same sources give the same bytes, in files: not where other programs make them, as for PDF."""
        return not self.is_stdout and not {"pdf", "xlsx", "dxf"} & set(self.forms)

    def texts(self, rig_folder: Path, documents: Documents, render: Render, split: Split) -> dict[Path, Text]:
        """Each path and its text, for the documents of one rig; the path `-` is standard output.

        Markdown only links to drawings, so their files are written beside it. Raises `click.UsageError` where one file is
        asked for that holds one part, and there is not one.
        """
        if not documents:
            return {}
        if self.is_stdout or self.is_file:
            return self._one(documents, render, split)
        folder = rig_folder / "documents" if self.output is None else Path(self.output)
        texts: dict[Path, Text] = {}
        parts = tuple(form for form in PARTS if form in self.forms or (form == "svg" and "md" in self.forms))
        if not self.separate:
            texts |= {folder / f"{FOLDER}.{form}": render(documents, form) for form in self.forms if form in WHOLE}
        for document in documents:
            for form in self.forms:
                if form in WHOLE and self.separate:
                    texts[folder / f"{document.sheet.name}.{form}"] = render((document,), form)
            for form in parts:
                texts |= {folder / name: text for name, text in split(document, form)}
        return texts

    def _one(self, documents: Documents, render: Render, split: Split) -> dict[Path, Text]:
        target, (form,) = Path(str(self.output)), self.forms
        if form in WHOLE:
            beside = [file for document in documents for file in split(document, "svg")] if form == "md" else []
            drawn = {} if self.is_stdout else {target.parent / name: text for name, text in beside}
            return {target: render(documents, form), **drawn}
        files = [file for document in documents for file in split(document, form)]
        if len(files) != 1:
            names = ", ".join(name for name, _ in files) or "none"
            raise click.UsageError(f"one {form.upper()} file holds one {PARTS[form]}; these sheets have {names}")
        return {target: files[0][1]}
