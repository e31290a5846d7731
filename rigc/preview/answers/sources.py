"""The rig's own files, line by line, with the names on each line that can be lit."""

from __future__ import annotations

from typing import Any

from rigc.editor.names import LEAD
from rigc.loader import STOCK
from rigc.preview.look import Look
from rigc.source import Source


def sources(look: Look) -> list[dict[str, Any]]:
    """In the order in which they were read, the rig's own file first; without the stock that ships with rigc."""
    return [_file(look, each) for each in look.read.gathered.sources if not each.name.startswith(STOCK)]


def _file(look: Look, source: Source) -> dict[str, Any]:
    names: dict[int, list[str]] = {}
    for each in look.draft.names.by_source.get(source, ()):
        if each.family in ("thing", LEAD):
            held = names.setdefault(each.span.line, [])
            if each.name not in held:
                held.append(each.name)
    return {"name": source.name, "lines": source.text.removesuffix("\n").split("\n"), "names": names}
