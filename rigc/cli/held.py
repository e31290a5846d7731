"""A folder of documents, or one document -> which revision of which rig it holds, as its title blocks say."""

from __future__ import annotations

import html
import re
from pathlib import Path
from typing import NamedTuple

_MARKDOWN = (re.compile(r"^- code: (.+)$", re.MULTILINE), re.compile(r"^- revision: (.+)$", re.MULTILINE))
_HTML = (
    re.compile(r"<dt>code</dt>\s*<dd[^>]*>([^<]+)</dd>"),
    re.compile(r"<dt>revision</dt>\s*<dd[^>]*>([^<]+)</dd>"),
)


class Held(NamedTuple):
    """A rig by its name in the source, and a revision by its letter."""

    rig: str
    revision: str

    def __str__(self) -> str:
        return f"revision {self.revision} of '{self.rig}'"


def held_in(folder: Path) -> dict[Path, Held]:
    """The documents of a folder that say what they are of; none where there is no such folder."""
    if not folder.is_dir():
        return {}
    found = {path: held(path) for path in sorted(folder.iterdir()) if path.suffix in (".md", ".html")}
    return {path: each for path, each in found.items() if each is not None}


def held(path: Path) -> Held | None:
    """What one document is of; None where it is not there, or bears no title block that can be read."""
    try:
        text = path.read_text("utf-8", "replace")
    except OSError:
        return None
    code, revision = (each.search(text) for each in (_HTML if path.suffix == ".html" else _MARKDOWN))
    if code is None or revision is None:
        return None
    return Held(html.unescape(code[1]).strip(), html.unescape(revision[1]).strip())
