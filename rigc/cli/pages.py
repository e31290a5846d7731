"""The pages of one run: which sheets there are, and how they are rendered, by our templates or with the user's own."""

from __future__ import annotations

from contextlib import AbstractContextManager, nullcontext
from hashlib import sha256
from pathlib import Path
from typing import Any

from rigc.cli import seam
from rigc.cli.destination import Documents, Text


class Pages:
    """With our templates alone."""

    mark = ""
    """What stands for all that pages hang on beside a rig and our own code."""

    @property
    def sheet_names(self) -> tuple[str, ...]:
        """The name of every sheet."""
        return seam.sheet_names()

    def documents(self, result: Any, names: tuple[str, ...], draft: bool) -> Documents:
        """The sheets of these names of a compiled rig, all if empty."""
        return seam.documents(result, names, draft)

    def render(self, documents: Documents, form: str, paper: str, result: Any) -> Text:
        """The documents of a compiled rig as one text. Raises `TemplateMistake` and `MissingExtra`."""
        if form == "pdf":
            return seam.printed(self._rendered(documents, "html", paper, result))
        return self._rendered(documents, form, paper, result)

    def _rendered(self, documents: Documents, form: str, paper: str, result: Any) -> str:  # noqa: ARG002
        return seam.rendered(documents, form, paper)


class OwnPages(Pages):
    """With the user's templates over ours. Whatever of them runs, runs in a process of its own."""

    def __init__(self, folder: Path) -> None:
        from rigc.files.confined import Confined
        from rigc.files.template_folder import read_templates

        own = read_templates(folder)
        self.files = tuple(name for name, _ in own.files)
        self.mark = sha256(repr(own.files).encode("utf-8", "surrogatepass")).hexdigest()
        self._confined = Confined(own)
        self._wholes: dict[int, Any] = {}
        self._added = self._confined.added(seam.sheet_names())

    def __enter__(self) -> OwnPages:
        return self

    def __exit__(self, *_fault: object) -> None:
        self._confined.end()

    @property
    def sheet_names(self) -> tuple[str, ...]:
        return (*seam.sheet_names(), *(each.name for each in self._added))

    def documents(self, result: Any, names: tuple[str, ...], draft: bool) -> Documents:
        from rigc.reports.content import Document, Sheet

        theirs = {each.name for each in self._added}
        ours = tuple(name for name in names if name not in theirs)
        made = seam.documents(result, ours, draft) if ours or not names else ()
        every = made if made and not names else seam.documents(result, (), draft)
        self._wholes[id(result)] = seam.whole(result, every)
        first = [each for each in self._added if each.first]
        last = [each for each in self._added if not each.first]
        count, title = every[0].count + len(self._added), every[0].title
        numbered = [
            *((each, number) for number, each in enumerate(first, 1)),
            *((each, every[0].count + len(first) + number) for number, each in enumerate(last, 1)),
        ]
        added = [
            Document(
                Sheet(each.name, each.title, each.reader, (), each.landscape),
                title.replace(sheet=each.title),
                at,
                count,
                f"A{order}",
            )
            for order, (each, at) in enumerate(numbered, 1)
            if not names or each.name in names
        ]
        shifted = [each.replace(number=each.number + len(first), count=count) for each in made]
        return tuple(sorted((*added, *shifted), key=lambda document: int(document.number)))

    def _rendered(self, documents: Documents, form: str, paper: str, result: Any) -> str:
        return self._confined.render(form, documents, paper, self._wholes[id(result)])


def pages(folder: Path | None) -> AbstractContextManager[Pages]:
    """The pages of a run with the user's folder of templates, if any. Raises `TemplateMistake`."""
    return nullcontext(Pages()) if folder is None else OwnPages(folder)
