"""A rig in an editor: a text with a mark where the cursor stands, and what is known there."""

from __future__ import annotations

from pathlib import Path

from cases import READER

from rigc.edit.starter import starter
from rigc.editor.completion.offer import Offer
from rigc.editor.completion.offers import offers
from rigc.editor.completion.spot import spot
from rigc.editor.draft import Draft
from rigc.editor.session import Session
from rigc.source import Source

CURSOR = "‸"
STARTER = starter("two-step", "Two Step", "2026-03-02", "board.rig")
LEADS = "\nleads {\n  A1 drive.out -> echo.in flat-angle to flat-angle of mini-coax\n}\n"


class Desk:
    """A session with one rig open, `board.rig` in a folder."""

    def __init__(self, folder: Path, text: str) -> None:
        (folder / "rig-root").touch()
        self.path = folder / "board.rig"
        self.session = Session(READER)
        self.put(text)

    def put(self, text: str) -> None:
        """Types a text; the cursor is where its mark stands, at the end without one."""
        self.offset = text.index(CURSOR) if CURSOR in text else len(text)
        self.session.put(self.path, text.replace(CURSOR, ""))

    def here(self) -> tuple[Draft, Source, int]:
        """What is known, and where the cursor stands."""
        return (*self.session.source(self.path), self.offset)

    def check(self) -> None:
        """Computes."""
        self.session.check(self.path)

    def offered(self) -> dict[str, Offer]:
        """What can be typed at the cursor."""
        draft, source, offset = self.here()
        found = offers(spot(source.text, offset), draft, self.session.computed(self.path), READER.grammar.follows)
        return {each.label: each for each in found}


def typed(line: str, behind: str, text: str = STARTER) -> str:
    """The text with one more line, which holds the cursor's mark, behind the one that is named."""
    assert text.count(behind) == 1, behind
    return text.replace(behind, f"{behind}\n{line}")
