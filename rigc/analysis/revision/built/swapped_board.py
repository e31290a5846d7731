"""The design of a built board and the swaps that are stated of it -> the design as the board stands now."""

from __future__ import annotations

from rigc.analysis.results import Results
from rigc.analysis.revision.built.as_it_stood import Standing, as_it_stood, with_lengths
from rigc.analysis.revision.built.unmade_swap import KIND
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.model.records import AsBuilt
from rigc.model.resolve import resolve
from rigc.model.resolve.exchange.exchange import exchanged
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Node
from rigc.syntax.parsed import Reader


class Swapped(Record):
    """A board as it stands, the statements that describe it, and what of its swaps could not be followed."""

    rig: Rig
    statements: tuple[Node, ...]
    findings: tuple[Diagnostic, ...]


def swapped_board(
    statements: tuple[Node, ...], stood: Rig, built: tuple[AsBuilt, ...], now: Rig, reader: Reader, end: Span
) -> Swapped:
    """The rig of these statements, placed as `stood`, with each swap of `built` made in turn; and what could not be made.

    A unit that only the rig of today (`now`) declares is taken over from its sources.
    """
    told: list[Diagnostic] = []
    swaps = {(out, into): block.span for block in built for out, into, _ in block.swaps}
    for (out, into), span in swaps.items():
        both = _declared(_declared(statements, out, now, reader), into, now, reader)
        change = exchanged(both, out, into, reader.reserved, end)
        found, wrong = (None, ()) if change.refused else resolve(change.statements, reader.reserved, end)
        errors = [each.message for each in wrong if each.level is Level.ERROR]
        if found is None or errors:
            told.append(_unmade(span, out, into, stood.head.letter, change.refused or errors[0]))
            continue
        standing = Standing(Results(stood), built, out, into, change.jacks)
        stood = with_lengths(standing, as_it_stood(standing, found))
        statements = change.statements
        if change.lines:
            told.append(_in_part(span, out, into, change.lines))
    return Swapped(stood, statements, tuple(told))


def _declared(statements: tuple[Node, ...], name: str, now: Rig, reader: Reader) -> tuple[Node, ...]:
    """The statements with a declaration of that unit, and of those that it is like, if today's sources have them."""
    thing = now.units.get(name)
    if thing is None or any(isinstance(each, nodes.Unit | nodes.Amp | nodes.Desk) and each.name.text == name
                            for each in statements):  # fmt: skip
        return statements
    for each in reader.parse(thing.declared.source).file.statements:
        if isinstance(each, nodes.Unit | nodes.Amp | nodes.Desk) and each.name.text == name:
            known = statements if each.like is None else _declared(statements, each.like.text, now, reader)
            return (*known, each)
    return statements


def _unmade(span: Span, out: str, into: str, letter: str, why: str) -> Diagnostic:
    return KIND.at(
        span,
        f"the swap of '{out}' for '{into}' can't be followed in revision {letter}: {why}",
        subject=(out, into),
        label="stated here",
        help=f"correct the line, or declare '{into}' where revision {letter} or this one can see it",
    )


def _in_part(span: Span, out: str, into: str, lines: tuple[str, ...]) -> Diagnostic:
    more = f" (and {len(lines) - 1} more)" if len(lines) > 1 else ""
    return KIND.at(
        span,
        f"with '{into}' in the place of '{out}' something fell away: {lines[0]}{more}",
        subject=(into, out),
        label="stated here",
        note="; ".join(lines[1:]),
        help="say in the field note what was done with those leads and settings",
        level=Level.REMARK,
    )
