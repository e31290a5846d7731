"""The language reference, `grammar/README.md`, as tests walk it: its worked lines by block, and its table of sentences."""

from __future__ import annotations

import re
from pathlib import Path
from typing import NamedTuple

from rigc.resources import folder
from rigc.syntax.mistakes import BLOCK_OPENERS
from rigc.syntax.worked_lines import worked_lines as lines_by_block

TEXT = (folder("grammar") / "README.md").read_text("utf-8")
SENTENCES = Path(__file__).parent / "sentences"


class Row(NamedTuple):
    """One row of the table of sentences."""

    number: int
    sentence: str
    statements: tuple[str, ...]
    case: Path


class Line(NamedTuple):
    """A worked line, as a whole file that holds it in its block."""

    line: str
    text: str


def rows() -> list[Row]:
    """The table of sentences."""
    _, _, table = TEXT.partition("## What a rig must be able to say")
    found = re.findall(r"^\| (\d+) \| ([^|]*) \| ([^|]*) \| `([^`|]*)` \|$", table, re.MULTILINE)
    return [
        Row(int(number), sentence, tuple(re.findall(r"`([^`]*)`", statements)), SENTENCES / case)
        for number, sentence, statements, case in found
    ]


def worked_lines() -> list[Line]:
    """Every worked line of every block's table."""
    found = []
    for block, lines in lines_by_block().items():
        opener = f"{BLOCK_OPENERS[block]}\n" if block else ""
        found += [Line(line, f"{opener}{line}\n{'}' if block else ''}\n") for line in lines]
    return found
