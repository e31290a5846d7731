"""Names that nothing declares but the generic stock does -> one finding for each of its files, with the `use` line that is missing."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.near import nearest
from rigc.loader import STOCK, STOCK_FILES, Loader, Unreadable
from rigc.model.scope import UNKNOWN
from rigc.model.slips.unknown_names import AGAIN
from rigc.model.slips.use_line import use_line
from rigc.source import Source
from rigc.syntax import nodes
from rigc.syntax.parsed import Reader

DECLARED = nodes.Cable | nodes.Plug | nodes.Strip | nodes.Deck


def with_use_lines(
    findings: Iterable[Diagnostic], load: Loader, reader: Reader, used: tuple[Source, ...]
) -> tuple[Diagnostic, ...]:
    """The findings; an unknown name that a file of the stock declares says so, and all names of one file are one finding."""
    told = tuple(findings)
    if not any(_open(finding) for finding in told):
        return told
    homes = _homes(load, reader, {source.name for source in used})
    kept: list[Diagnostic] = []
    first: dict[str, int] = {}
    for finding in told:
        name = finding.subject[0] if _open(finding) else ""
        home = homes.get(name, "")
        if not home:
            near = nearest(name, homes) if name else ""
            kept.append(finding.replace(label=f"did you mean '{near}' of {homes[near]}?") if near else finding)
        elif home in first:
            kept[first[home]] = _and(kept[first[home]], finding)
        else:
            first[home] = len(kept)
            kept.append(_lacking(finding, name, home))
    return tuple(kept)


def _open(finding: Diagnostic) -> bool:
    """Whether it is of a name to which nothing declared is near."""
    return finding.kind is UNKNOWN and not finding.mends and len(finding.subject) == 1


def _homes(load: Loader, reader: Reader, used: set[str]) -> dict[str, str]:
    """Each name of the stock whose file is not used, and that file."""
    homes: dict[str, str] = {}
    for file in (f"{STOCK}{name}.rig" for name in STOCK_FILES):
        if file in used:
            continue
        try:
            statements = reader.parse(load(file)).file.statements
        except Unreadable:
            continue
        homes.update({each.name.text: file for each in statements if isinstance(each, DECLARED)})
    return homes


def _lacking(finding: Diagnostic, name: str, home: str) -> Diagnostic:
    told: Diagnostic = finding.replace(
        message=f"'{name}' is in {home}, which this rig does not use",
        label="declared there",
        help="",
        mends=(use_line(home),),
    )
    return told


def _and(told: Diagnostic, again: Diagnostic) -> Diagnostic:
    both: Diagnostic = told.replace(
        also=(*told.also, *((Label(again.span, AGAIN), *again.also) if again.span else again.also))
    )
    return both
