"""The sheets of a folder -> their codes: the letter of the subject, and a number that counts only the sheets that this rig has."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from rigc.diagnostics.wording import runs_of
from rigc.reports.content import Block, Drawing, Paragraph, Sheet, Table

LETTERS = {"stage": "S", "power": "P", "deck": "D", "bench": "B", "ear": "E", "record": "R"}
"""The rooms of the sheets in the order of work, each with its letter."""

FRONT = "F"
"""The code of the front page."""

_CODE = re.compile(r"([A-Z])(\d+)")
_REFERENCE = re.compile("\x02([a-z-]+)\x03")


def codes(there: Iterable[tuple[str, str]]) -> dict[str, str]:
    """Name -> code, of the room and the name of each sheet that the rig has, in the order of the folder."""
    found: dict[str, str] = {}
    counts = dict.fromkeys(LETTERS, 0)
    for room, name in there:
        counts[room] += 1
        found[name] = f"{LETTERS[room]}{counts[room]}"
    return found


def is_code(word: str) -> bool:
    """Whether a word has the form of a code."""
    return word == FRONT or _CODE.fullmatch(word) is not None


def in_runs(told: Iterable[str]) -> str:
    """Codes, or numbers of leads, with runs drawn together: `S1 to S3, P2`. Other words stand alone."""
    runs = runs_of(told, _follows)
    return ", ".join(f"{run[0]} to {run[-1]}" if len(run) > 2 else ", ".join(run) for run in runs)


def _follows(before: str, word: str) -> bool:
    one, other = _CODE.fullmatch(before), _CODE.fullmatch(word)
    return one is not None and other is not None and one[1] == other[1] and int(other[2]) == int(one[2]) + 1


def see(sheet: str) -> str:
    """A mention of another sheet by its name, to stand in a text: the folder writes it out with the code that the sheet has there."""
    return f"\x02{sheet}\x03"


def in_words(sheet: str) -> str:
    """A sheet's name as it is said within a sentence: `stage hook-up`, `de-rig list`."""
    return re.sub(r"-(?!up\b|rig\b|built\b)", " ", sheet)


def written_out(sheet: Sheet, found: Mapping[str, str]) -> Sheet:
    """The sheet with each mention of another one in words, and its code where the folder has it."""
    blocks = tuple(_block(block, found) for block in sheet.blocks)
    return sheet if blocks == sheet.blocks else sheet.replace(blocks=blocks)


def _block(block: Block, found: Mapping[str, str]) -> Block:
    if isinstance(block, Paragraph):
        lines = tuple(_text(line, found) for line in block.lines)
        return block if lines == block.lines else block.replace(lines=lines)
    if isinstance(block, Drawing):
        return block.replace(caption=_text(block.caption, found)) if "\x02" in block.caption else block
    return _table(block, found)


def _table(table: Table, found: Mapping[str, str]) -> Table:
    if not any("\x02" in cell.text for row in table.rows for cell in row.cells):
        return table
    rows = tuple(
        row.replace(cells=tuple(cell.replace(text=_text(cell.text, found)) for cell in row.cells)) for row in table.rows
    )
    told: Table = table.replace(rows=rows)
    return told


def _text(text: str, found: Mapping[str, str]) -> str:
    def written(each: re.Match[str]) -> str:
        return f"{in_words(each[1])} {found.get(each[1], '')}".rstrip()

    return _REFERENCE.sub(written, text)
