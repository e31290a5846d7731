"""No spread is lost: one behind every number of the small rigs that state everything; each is refused, or stands on a sheet."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from cases import READER, ROOT

from rigc.compile import Compiled, Read, compile_rig, read_rig
from rigc.files.disk import Disk
from rigc.source import Source
from rigc.syntax.nodes import Amount, Node

pytestmark = pytest.mark.usefixtures("names_anywhere")

RIGS = ("board", "hints", "rest", "revision", "sources", "wishes")
ELSEWHERE = {
    "Body": "printed in millimetres",
    "Location": "printed in millimetres",
    "PanelJack": "printed in millimetres",
    "PanelInlet": "printed in millimetres",
    "Conductor": "printed in mm²",
    "Cord": "printed in metres",
    "BuiltLead": "how a lead was made, from which the rework starts",
}
"""Statements whose spread does not stand on a sheet as it was typed."""


def test_each_spread_is_refused_or_printed() -> None:
    """Of each number of each statement: in one rig at least, for what a rig does not use stands on no sheet."""
    kept, printed = set(), set()
    for name in RIGS:
        for part, is_printed in _told(ROOT / "tests/reach" / f"{name}.rig"):
            kept.add(part)
            printed |= {part} if is_printed else set()
    assert {part for part in kept - printed if part.partition(".")[0] not in ELSEWHERE} == set()
    assert {"Draws.amount", "Inductance.amount", "PerLength.amount", "Rating.current", "Made.length"} <= printed


def _told(path: Path) -> Iterator[tuple[str, bool]]:
    """The numbers of a rig that may have a spread, and whether a sheet prints it."""
    source = Source(path.name, path.read_text("utf-8"))
    every = list(_amounts(READER.parse(source).file.statements, ""))
    spreads = {at: _spread(amount, at) for at, (_, amount) in enumerate(every)}
    refused = {
        finding.span.text
        for finding in _read(path, _with(source, every, spreads)).findings
        if finding.kind.name == "wrong-quantity" and finding.span is not None
    }
    kept = {at: text for at, text in spreads.items() if text not in refused}
    made = _compiled(path, _with(source, every, kept))
    assert made.results is not None, [each.message for each in made.findings if each.kind.name == "wrong-quantity"]
    sheets = repr([each.sheet.blocks for each in made.documents()])
    for at, text in kept.items():
        yield every[at][0], text.replace("+-", "±") in sheets


def _spread(amount: Amount, at: int) -> str:
    """One that occurs nowhere else."""
    return f"+- 1.{at:03} {'dB' if amount.own_unit is not None and 'dB' in amount.own_unit.text else '%'}"


def _with(source: Source, every: list[tuple[str, Amount]], spreads: dict[int, str]) -> str:
    text = source.text
    for at in sorted(spreads, key=lambda at: -every[at][1].span.end):
        end = every[at][1].span.end
        text = f"{text[:end]} {spreads[at]}{text[end:]}"
    return text


def _amounts(value: Any, rule: str) -> Iterator[tuple[str, Amount]]:
    """Every number with its own unit, with the statement it stands in."""
    if isinstance(value, tuple):
        for each in value:
            yield from _amounts(each, rule)
    elif isinstance(value, Amount):
        if value.spread is None and value.unit is not None:
            yield rule, value
    elif isinstance(value, Node):
        for field in value.FIELDS:
            yield from _amounts(getattr(value, field), f"{type(value).__name__}.{field}")


def _read(path: Path, text: str) -> Read:
    disk = Disk(path, root=ROOT, given=text.encode())
    return read_rig(disk, disk.name, READER)


def _compiled(path: Path, text: str) -> Compiled:
    disk = Disk(path, root=ROOT, given=text.encode())
    return compile_rig(disk, disk.name, READER, effort=300)
