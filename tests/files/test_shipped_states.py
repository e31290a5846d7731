"""What an installed rigc reads by: used only if it was made of this grammar and code."""

from __future__ import annotations

from pathlib import Path

import pytest

from rigc.files import reader
from rigc.files.reader import CachedReader

AS_MADE = CachedReader()
RESERVED, AUTOMATON, TABLES = AS_MADE.reserved, AS_MADE.grammar.automaton, AS_MADE._tables


@pytest.fixture
def states(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    file = tmp_path / "states.txt"
    monkeypatch.setattr(reader, "STATES", file)
    monkeypatch.setattr(reader, "_made_of", lambda text: f"of {len(text)}")
    return file


def test_what_is_of_this_grammar_is_read_by(states: Path) -> None:
    states.write_text(f"of {len(AS_MADE._text)}\nplank raft\n{TABLES.automaton}\n", "ascii")
    other = CachedReader()
    assert other.reserved == {"plank", "raft"}
    assert len(other.grammar.automaton._states) == len(AUTOMATON._states)


@pytest.mark.parametrize("kept", ["of 3\nplank\n{}\n", "of 3", "", "\x80", None])
def test_what_is_not_is_as_none(states: Path, kept: str | None) -> None:
    if kept is not None:
        states.write_text(kept, "latin-1")
    assert CachedReader().reserved == RESERVED
