"""No stated fact is lost: each part of each statement, changed alone, changes the sheets that the table of reach says, and no others;
and two revisions that differ in it alone differ in an aspect by which they are compared.

The small rigs under tests/reach/ state everything that the language can state (a test walks the grammar's classes); the examples are
sampled. A statement without a row in the table stands on the unit schedule alone; a row that no rig proves, and a fact that reaches
no sheet, fail.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

import pytest
from cases import READER, ROOT, results_if_sound
from reach_changes import Change, Fact, changes

from rigc.analysis.revision.aspects import Aspects
from rigc.analysis.revision.compared.aspect import Key
from rigc.compile import Compiled
from rigc.files.disk import Disk
from rigc.reports.reach import NO_FACTS, reach, reached
from rigc.source import Source
from rigc.syntax import nodes
from rigc.syntax.nodes import Node
from rigc.syntax.nodes.written import rule_of

pytestmark = pytest.mark.usefixtures("names_anywhere")

RIGS = tuple(
    ROOT / "tests/reach" / f"{name}.rig" for name in ("board", "hints", "rest", "revision", "sources", "wishes")
)
EXAMPLES = tuple(sorted((ROOT / "examples").glob("*/board.rig")))
SAMPLE = 10
BLOCKS = 2  # so many for each row every day, the others where there is time
HINTS = 300  # steps for places: enough for three units, and the same for every change
TITLE = ("rig", "code", "client", "date", "revision", "drawn", "checked")

REFUSED = {
    "revision": ("stated",),
    "change": ("number",),
    "swap": ("note",),
    "tier": ("stated",),
    "loop_jacks": ("first", "last"),
    "join": ("leads",),
    "blend_wet": ("number",),
    "midi_jack": ("stated",),
    "expression": ("stated", "direction", "name"),
    "control_jack": ("stated", "direction"),
    "inlet": ("stated",),
    "input": ("carries",),
    "output": ("carries",),
    "panel_jack": ("stated",),
    "panel_inlet": ("stated",),
    "stereo_pair": ("stated",),
    "loop_holds": ("stated", "number"),
}
"""Parts that other statements of the same rig name, so that the language refuses each change of them alone; where a block or a
rig allows one, it is made."""

NOT_COMPARED = {
    "accept": "a finding that was signed for, and no part of the design",
    "frozen": "the release of a revision",
    "change": "told beside the differences that it touches",
    "field_note": "what happened on the road",
    "reading": "what the built board read",
    "built_lead": "of the built board, from which the rework starts",
    "swap": "of the built board, from which the rework starts",
    "done": "of the built board, from which the rework starts",
    "adaptor": "the number that rigc would give, too; its kind and number are compared",
}
"""Statements that are no aspect of a design, and why."""

Sheets = dict[str, Any]


def compiled(path: Path, text: str) -> Compiled:
    """The rig without what checks find, which stands on the front page alone."""
    disk = Disk(path, root=ROOT, given=text.encode())
    return Compiled((), results_if_sound(disk, disk.name, effort=HINTS), ())


def sheets(made: Compiled) -> Sheets:
    """What each sheet says: its blocks, and of its title block what the source states."""
    return {
        each.sheet.name: (each.sheet.blocks, [getattr(each.title, field) for field in TITLE])
        for each in made.documents()
    }


@cache
def before(path: Path) -> Sheets:
    return sheets(compiled(path, path.read_text("utf-8")))


@cache
def facts(path: Path) -> tuple[Change, ...]:
    source = Source(path.name, path.read_text("utf-8"))
    return tuple(each for each in changes(source, READER.parse(source).file) if each.fact.statement not in NO_FACTS)


@cache
def said_before(path: Path) -> dict[Key, Any]:
    return said(compiled(path, path.read_text("utf-8")))


def said(made: Compiled) -> dict[Key, Any]:
    """What a comparison knows of it, by kind, name and field."""
    assert made.results is not None
    return {key: each.value for key, each in made.results.get(Aspects).by_key.items()}


def changed(path: Path, change: Change) -> Compiled | None:
    """What follows from the change; None where the language refuses each other text."""
    tried = (compiled(path, text) for text in change.texts)
    return next((made for made in tried if made.results is not None), None)


def differing(path: Path, made: Compiled) -> set[str]:
    """The sheets that differ."""
    now, was = sheets(made), before(path)
    return {name for name in {*now, *was} if now.get(name) != was.get(name)}


def fault(path: Path, change: Change, *, all_bear: bool) -> str | None:
    """What is wrong with the reach of a fact, empty if nothing is; None where it can't be changed."""
    made, known = changed(path, change), reached(change.fact.statement, change.fact.block, change.fact.part)
    where = f"{path.name}:{change.span.line} {change.fact}"
    if made is None:
        return None
    if all_bear and change.fact.statement not in NOT_COMPARED and said(made) == said_before(path):
        return f"{where}: is silent in a comparison"
    differ = differing(path, made)
    if known is None:
        return f"{where}: has no row; it would be | {' '.join(sorted(differ))} |"
    if not differ:
        return f"{where}: reaches no sheet" if all_bear else ""
    lost = set(known.bears) - differ if all_bear else set()
    more = differ - set(known.bears) - set(known.follows)
    told = (f"not on {', '.join(sorted(lost))}" if lost else "", f"also on {', '.join(sorted(more))}" if more else "")
    return f"{where}: {'; '.join(filter(None, told))}" if lost or more else ""


@cache
def alike() -> tuple[tuple[tuple[Path, Change], ...], ...]:
    """The facts of the small rigs, together those that state the same part of the same statement in the same kind of block."""
    found: dict[Fact, list[tuple[Path, Change]]] = {}
    for path in RIGS:
        for change in facts(path):
            found.setdefault(change.fact, []).append((path, change))
    return tuple(map(tuple, found.values()))


def first_fault(found: tuple[tuple[Path, Change], ...]) -> str:
    """What is wrong with the first of some facts that the language lets be changed; a fact that others hang on can't be."""
    for path, change in found:
        told = fault(path, change, all_bear=True)
        if told is not None:
            return told
    fact = found[0][1].fact
    return "" if fact.part in REFUSED.get(fact.statement, ()) else f"{fact}: no rig lets it be changed"


def classes() -> list[type[Node]]:
    every = [each for each in vars(nodes).values() if isinstance(each, type) and issubclass(each, Node)]
    return [each for each in every if each is not Node]


def kinds(statement: str) -> list[list[tuple[tuple[Path, Change], ...]]]:
    """The kinds of facts that a statement states, together those of one row of the table, which lie in different blocks."""
    found: dict[Any, list[tuple[tuple[Path, Change], ...]]] = {}
    for each in alike():
        fact = each[0][1].fact
        if fact.statement == statement:
            found.setdefault((fact.part, reached(statement, fact.block, fact.part)), []).append(each)
    return [*found.values()]


@pytest.mark.parametrize("statement", sorted(rule_of(each) for each in classes()))
def test_a_stated_fact_reaches_its_sheets(statement: str) -> None:
    """Every row of the table in two blocks of the small rigs, by the rule of the grammar that states it: `-k firmware` tries one."""
    mine = (each for row in kinds(statement) for each in row[:BLOCKS])
    assert list(filter(None, map(first_fault, mine))) == []


@pytest.mark.long
@pytest.mark.parametrize("statement", sorted(rule_of(each) for each in classes()))
def test_it_does_so_in_whatever_block(statement: str) -> None:
    mine = (each for row in kinds(statement) for each in row[BLOCKS:])
    assert list(filter(None, map(first_fault, mine))) == []


@pytest.mark.slow
@pytest.mark.parametrize(
    "path",
    [
        pytest.param(path, marks=pytest.mark.long) if path.parent.name.startswith("long-haul") else path
        for path in EXAMPLES
    ],
    ids=lambda path: path.parent.name,
)
def test_facts_of_the_examples_reach_no_other_sheet(path: Path) -> None:
    """A dealt sample of an example's facts; some of them say what its other facts outweigh, and change nothing."""
    sample = Random(path.parent.name).sample(facts(path), SAMPLE)
    assert list(filter(None, (fault(path, change, all_bear=False) for change in sample))) == []


def test_every_row_of_the_table_is_proved_by_a_small_rig() -> None:
    told = {(change.fact.block, change.fact.statement, change.fact.part) for path in RIGS for change in facts(path)}
    names = {(statement, part) for _, statement, part in told} | {(f"{s}@{b}", p) for b, s, p in told}
    assert set(reach()) - names == set()


def test_every_row_names_a_sheet_that_bears_it() -> None:
    from rigc.reports.folder import sheet_names

    assert [row.statement for row in reach().values() if not row.bears] == []
    assert {sheet for row in reach().values() for sheet in (*row.bears, *row.follows)} <= set(sheet_names())


def test_the_small_rigs_state_every_part_of_every_statement() -> None:
    told: set[tuple[str, str]] = set()
    for path in RIGS:
        source = Source(path.name, path.read_text("utf-8"))
        told |= set(stated(READER.parse(source).file))
    every = {(rule_of(each), field) for each in classes() for field in each.FIELDS if field != "span"}
    assert every - told == set()


def stated(value: Any) -> Iterator[tuple[str, str]]:
    if isinstance(value, Node):
        for field in value.FIELDS:
            within = getattr(value, field)
            if within is not None and within != ():
                yield rule_of(type(value)), field
            yield from stated(within)
    elif isinstance(value, tuple):
        for each in value:
            yield from stated(each)
