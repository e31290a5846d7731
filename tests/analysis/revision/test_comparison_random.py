"""Real rigs with random words changed, lines gone or units renamed: what must hold of every comparison."""

from __future__ import annotations

import re

import pytest
from cases import READER, ROOT, results_if_sound
from comparison_rigs import text_of
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from rigc.analysis.previous import Previous
from rigc.analysis.revision.compared.changed import ADDED, REMOVED, ChangedThing
from rigc.analysis.revision.comparison import Comparison
from rigc.files.disk import Disk
from rigc.gather import gather
from rigc.previous import earlier

RIGS = ("examples/back-bedroom/board.rig", "examples/long-haul/board.rig", "examples/tide-line/board.rig")
TEXTS = {path: text_of(path) for path in RIGS}
_NUMBER = re.compile(r"(?<![\w.\"-])\d+(?:\.\d+)?(?= (?:mm|mA|kg|g|m|pF|kohm|Mohm)\b)")
_UNIT = re.compile(r"^unit ([\w-]+)(?: like [\w-]+)?(?: \"[^\"]*\")? \{$", re.MULTILINE)

rare = settings(max_examples=12, deadline=None, suppress_health_check=list(HealthCheck))


def compared(path: str, old: str, new: str) -> tuple[ChangedThing, ...] | None:
    """What differs; None where a side has errors in its names or quantities."""
    before, after = (Disk(ROOT / path, ROOT, text.encode()) for text in (old, new))
    gathered = gather(before, before.name, READER)
    results = results_if_sound(after, after.name, against=lambda rig: earlier(gathered, rig, READER, 0), effort=0)
    return None if results is None or results.get(Previous).results is None else results.get(Comparison).things


@st.composite
def mutated(draw: st.DrawFn) -> tuple[str, str]:
    """A rig's path, and its text with up to four slips: another number, or a line gone."""
    path = draw(st.sampled_from(RIGS))
    text = TEXTS[path]
    for _ in range(draw(st.integers(1, 4))):
        if draw(st.booleans()):
            spots = [found.span() for found in _NUMBER.finditer(text)]
            start, end = draw(st.sampled_from(spots))
            text = (
                text[:start] + str(round(float(text[start:end]) * draw(st.sampled_from((0.9, 1.1, 2))), 3)) + text[end:]
            )
        else:
            lines = text.splitlines(keepends=True)
            del lines[draw(st.integers(0, len(lines) - 1))]
            text = "".join(lines)
    return path, text


def _but_leads(things: set[tuple[str, str]]) -> set[tuple[str, str]]:
    return {(kind, name) for kind, name in things if kind != "lead"}


@pytest.mark.slow
@rare
@given(mutated())
def test_no_rig_differs_from_itself(case: tuple[str, str]) -> None:
    path, text = case
    assert compared(path, text, text) in ((), None)


@pytest.mark.slow
@rare
@given(mutated())
def test_what_comes_one_way_goes_the_other(case: tuple[str, str]) -> None:
    path, text = case
    there, back = compared(path, TEXTS[path], text), compared(path, text, TEXTS[path])
    if there is None or back is None:
        return
    came, went = _named(there, ADDED), _named(there, REMOVED)
    went_back, came_back = _named(back, REMOVED), _named(back, ADDED)
    assert _but_leads(came) == _but_leads(went_back) and _but_leads(went) == _but_leads(came_back)
    assert len(came) - len(went) == len(went_back) - len(came_back)  # a long lead is reused where a short one is not
    assert all(each.causes or each.held for one in (*there, *back) for each in one.differences)


@pytest.mark.slow
@rare
@given(mutated(), st.data())
def test_a_renamed_unit_neither_comes_nor_goes(case: tuple[str, str], data: st.DataObject) -> None:
    path, text = case
    names = _UNIT.findall(text)
    if not names:
        return
    name = data.draw(st.sampled_from(names))
    renamed = re.sub(rf"(?<![\w\"-]){re.escape(name)}(?![\w\"-])", "brand-new", text)
    head = re.search(r"^unit brand-new.*\{$", renamed, re.MULTILINE)
    assert head is not None
    renamed = f"{renamed[: head.end()]}\n  was {name}{renamed[head.end() :]}"
    things = compared(path, text, renamed)
    if things is not None:
        assert not _named(things, ADDED) and not _named(things, REMOVED)
        assert [each.was for each in things if each.kind == "unit" and each.how == "renamed"] == [name]


def _named(things: tuple[ChangedThing, ...], how: str) -> set[tuple[str, str]]:
    return {(each.kind, each.name) for each in things if each.how == how}
