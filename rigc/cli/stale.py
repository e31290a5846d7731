"""The documents that sources give, and a folder of those that were built -> what is stale, missing or left over."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from rigc.cli.destination import FOLDER, FORMS, Destination, Documents, Render, Split, Text


def stale_documents(beside: Path, made: Sequence[tuple[Documents, Render, Split]]) -> list[tuple[str, Path, str, str]]:
    """What is the matter, the path, the text there, and the text that is given, in the order of the paths.

    Only the formats that the folder holds are looked at. Files of other kinds are no documents.
    """
    folder = beside / "documents"
    kept = {path for path in folder.iterdir() if path.suffix[1:] in FORMS and path.is_file()}
    whole = {path for path in kept if path.stem == FOLDER}
    given = _given(beside, made, _forms(kept - whole), separate=True)
    given |= _given(beside, made, _forms(whole), separate=False)
    found = []
    for path in sorted(kept | set(given)):
        old = path.read_bytes() if path in kept else b""
        new = given.get(path, "").encode("utf-8", "backslashreplace")
        if path not in kept:
            found.append(("missing", path, "", given[path]))
        elif path not in given:
            found.append(("left over", path, old.decode("utf-8", "replace"), ""))
        elif old != new:
            found.append(("stale", path, old.decode("utf-8", "replace"), given[path]))
    return found


def _forms(paths: set[Path]) -> tuple[str, ...]:
    return tuple(form for form in FORMS if any(path.suffix == f".{form}" for path in paths))


def _given(
    beside: Path, made: Sequence[tuple[Documents, Render, Split]], forms: tuple[str, ...], *, separate: bool
) -> dict[Path, str]:
    if not forms:
        return {}
    target = Destination(None, forms, len(made), separate=separate)
    texts: dict[Path, Text] = {}
    for documents, render, split in made:
        texts |= target.texts(beside, documents, render, split)
    return {path: text for path, text in texts.items() if isinstance(text, str)}
