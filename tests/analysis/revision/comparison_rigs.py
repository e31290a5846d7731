"""Two texts of one rig -> what is said otherwise; the texts are rigs of the project with some words changed."""

from __future__ import annotations

from pathlib import Path

import pytest
from cases import READER, ROOT, results_of

from rigc.analysis.previous import Previous
from rigc.analysis.results import Results
from rigc.analysis.revision.compared.changed import ChangedThing
from rigc.analysis.revision.comparison import Comparison
from rigc.files.disk import Disk
from rigc.gather import gather
from rigc.output.formats import document_renderer
from rigc.output.layout import STANDARD
from rigc.previous import earlier
from rigc.reports.content import Document, Paragraph, Sheet, TitleBlock
from rigc.reports.sheets.record import rework

TOURING = "examples/long-haul/board.rig"
TOURING_D = "examples/long-haul-d/board.rig"


def text_of(path: str, *changes: tuple[str, str]) -> str:
    """The text of a rig in which each first text is replaced by the second wherever it stands."""
    text = (ROOT / path).read_text("utf-8")
    for old, new in changes:
        assert old in text, f"{old!r} does not stand in {path}"
        text = text.replace(old, new)
    return text


def results_against(old: str, new: str, path: str = TOURING, stock: tuple[str, str] = ("", "")) -> Results:
    """What follows from the new text, with the old one as the revision before; both stand at `path`. With a `stock`
    the new side's uses have the first text replaced by the second."""
    file = ROOT / path
    before, after = Disk(file, ROOT, old.encode()), _Stocked(file, new.encode(), stock)
    gathered = gather(before, before.name, READER)
    results = results_of(after, after.name, against=lambda rig: earlier(gathered, rig, READER, None))
    assert results.get(Previous).results is not None
    return results


def compared(old: str, new: str, path: str = TOURING, stock: tuple[str, str] = ("", "")) -> tuple[ChangedThing, ...]:
    """All that differs, held back or not."""
    return results_against(old, new, path, stock).get(Comparison).things


def thing(things: tuple[ChangedThing, ...], kind: str, name: str) -> ChangedThing:
    """The one of that kind and name."""
    (found,) = [each for each in things if (each.kind, each.name) == (kind, name)]
    return found


def told_and_done(made: Results) -> str:
    """What differs and why, and what the sheet of the rework says but for the sheets to swap, for which both folders would be made."""
    lines = []
    for thing in made.get(Comparison).things:
        why, told = thing.why and f" ({thing.why})", "" if thing.told else " (not told)"
        lines.append(f"{thing.kind} {thing.name} {thing.how} {thing.was}: {', '.join(thing.work)}{why}{told}")
        lines += [
            f"  {each.field}: {each.before} -> {each.now} ({', '.join(each.causes)}{each.held and f'; held: {each.held}'})"
            for each in thing.differences
            if not each.detail
        ]
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(rework, "folder_lines", lambda *_: Paragraph("folder", ("not looked at",)))
        sheet = made.call(rework.rework)
    assert isinstance(sheet, Sheet)
    title = TitleBlock("", "", "", "", "", "", "", "", "", False)
    text = document_renderer("md")((Document(sheet, title, 1, 1),), STANDARD)
    return "\n".join((*lines, text.partition("\n- source:")[2].partition("\n")[2]))


class _Stocked(Disk):
    """A disk on which what the rig uses reads otherwise."""

    def __init__(self, named: Path, given: bytes, stock: tuple[str, str]) -> None:
        super().__init__(named, ROOT, given)
        self._change = stock

    def __call__(self, name: str):  # type: ignore[no-untyped-def]
        source = super().__call__(name)
        old, new = self._change
        if name == self.name or not old or old not in source.text:
            return source
        changed = Disk(Path(self.folder / name), ROOT, source.text.replace(old, new).encode())
        self._sources[name] = changed(changed.name)
        self._sources[name].name = name
        return self._sources[name]
