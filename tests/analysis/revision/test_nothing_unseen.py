"""Whatever is stated otherwise is seen by a comparison: each line of every sentence of the language left out, each word left
out or made another, each number made one more. What the design does not consist of (readings, as-built, notes, former names) is no part of it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from cases import READER, ROOT, cases

from rigc.analysis.laying.placed import placed
from rigc.analysis.results import Results
from rigc.analysis.revision.aspects import Aspects
from rigc.diagnostics.diagnostic import Level
from rigc.files.disk import Disk
from rigc.gather import gather
from rigc.model.resolve import resolve
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Span

SENTENCES = ROOT / "tests" / "syntax" / "sentences"


def rig_of(case: Path, text: str) -> Rig | None:
    """The rig of a text, without what is no design; None where it has errors."""
    disk = Disk(case, ROOT, text.encode())
    gathered = gather(disk, disk.name, READER)
    rig, told = resolve(gathered.statements, READER.reserved, Span(gathered.sources[0], 0, 0))
    if gathered.findings or rig is None or any(each.level is Level.ERROR for each in told):
        return None
    head = rig.head.replace(frozen=None, follows=None, changes=())
    units = {name: unit.replace(was=None) for name, unit in rig.units.items()}
    bare: Rig = rig.replace(readings=(), as_built=(), field_notes=(), accepts=(), head=head, units=units)
    return bare


def stated(value: Any) -> Any:
    """A value without its places in the text, wherever they stand."""
    if isinstance(value, Record):
        return type(value).__name__, [stated(getattr(value, field)) for field in value.FIELDS]
    if isinstance(value, dict):
        return [(key, stated(each)) for key, each in value.items()]
    if isinstance(value, tuple):
        return [stated(each) for each in value]
    return None if isinstance(value, Span) else value


def said(rig: Rig) -> Any:
    """All that a comparison compares."""
    return {key: each.value for key, each in Results(placed(rig, 0)[0]).get(Aspects).by_key.items()}


def otherwise(text: str) -> Iterator[str]:
    """The text with one thing said otherwise."""
    lines = text.split("\n")
    for number, line in enumerate(lines):
        if line.strip() and not line.startswith("}"):
            last = next(at for at in range(number, len(lines)) if lines[at] == "}") if line.endswith("{") else number
            yield "\n".join((*lines[:number], *lines[last + 1 :]))
    for word in re.finditer(r'"[^"\n]*"|[^\s,{}]+', text):
        before, after = text[: word.start()], text[word.end() :]
        yield before + after
        yield before + re.sub(r"\d+", lambda found: str(int(found[0]) + 1), word[0], count=1) + after
        if word[0].startswith('"'):
            yield before + word[0][:-1] + ' too"' + after


@pytest.mark.slow
@pytest.mark.parametrize("case", cases(SENTENCES))
def test_whatever_is_stated_otherwise_is_seen(case: Path) -> None:
    text = case.read_text("utf-8")
    rig = rig_of(case, text)
    assert rig is not None
    before = said(rig)
    unseen = []
    for other in dict.fromkeys(otherwise(text)):
        changed = rig_of(case, other)
        if changed is not None and stated(changed) != stated(rig) and said(changed) == before:
            unseen.append([line for line in text.split("\n") if line not in other.split("\n")])
    assert not unseen
