"""Whatever bytes come, compiling gives findings and never raises anything but that a file can't be read."""

from __future__ import annotations

import pytest
from derivations import derived, rig_texts, token_soups
from grammars import Uncached, rules
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from rigc.compile import Compiled, compile_rig
from rigc.files.reading import decode
from rigc.loader import Unreadable
from rigc.source import Source

HEAD = 'language 1\nrig random "Random" {\n  revision A 2026-03-02\n}\n'

few = settings(max_examples=4, deadline=None, database=None, derandomize=True, suppress_health_check=list(HealthCheck))
many = settings(few, max_examples=60)


def compiled(source: Source) -> Compiled:
    """What compiling that one source gives, where no other file can be had."""

    def load(name: str) -> Source:
        if name != source.name:
            raise Unreadable(name, f"cannot read '{name}': there is no such file")
        return source

    return compile_rig(load, source.name, Uncached())


def lines_that_hold(source: Source, made: Compiled) -> bool:
    """Whether each finding lies in its file; what is missing at its end lies one sign behind it."""
    spans = [finding.span for finding in made.findings if finding.span is not None]
    return all(0 <= span.start <= span.end <= len(source.text) + 1 and span.source is source for span in spans)


@many
@given(st.binary(max_size=300) | st.binary(max_size=60).map(lambda data: HEAD.encode() + data))
def test_bytes(data: bytes) -> None:
    try:
        source = decode(data, "board.rig")
    except Unreadable as fault:
        assert str(fault).startswith("board.rig")
        return
    assert lines_that_hold(source, compiled(source))


@many
@given(st.text(max_size=200))
def test_any_signs(text: str) -> None:
    source = Source("board.rig", text)
    assert lines_that_hold(source, compiled(source))


@many
@given(token_soups())
def test_token_soup(text: str) -> None:
    source = Source("board.rig", HEAD + text)
    assert lines_that_hold(source, compiled(source))


@many
@given(rig_texts(), st.data())
def test_a_rig_with_a_piece_torn_out(text: str, data: st.DataObject) -> None:
    start = data.draw(st.integers(0, len(text)))
    end = data.draw(st.integers(start, len(text)))
    source = Source("board.rig", HEAD + text[:start] + text[end:])
    assert lines_that_hold(source, compiled(source))


@pytest.mark.parametrize("rule", [name for name in derived() if name in rules()])
def test_a_well_written_rig_that_makes_no_sense(rule: str) -> None:
    @few
    @given(rig_texts(rule))
    def one(text: str) -> None:
        source = Source("board.rig", HEAD + text)
        assert lines_that_hold(source, compiled(source))

    one()
