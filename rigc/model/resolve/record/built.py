"""As-built blocks -> how the board that was built differs from the design, every name and number known."""

from __future__ import annotations

from typing import Any

from rigc.diagnostics.diagnostic import Level
from rigc.model.records import AsBuilt, BuiltLead
from rigc.model.resolve.context import Context
from rigc.model.resolve.wishes.leads import known_mark
from rigc.model.rig import Head
from rigc.model.scope import UNKNOWN
from rigc.model.things import UNITS
from rigc.model.units.measures import LEAD
from rigc.syntax import nodes
from rigc.syntax.nodes import Word

NEITHER = "neither this revision nor the one before"
"""How the place of a block is told that is of neither: where the wrong one is followed, it only follows from that."""


def as_built(
    context: Context, marks: dict[str, Word], changes: tuple[int, ...], head: Head | None
) -> tuple[AsBuilt, ...]:
    """What differs on the built board; `marks` are the stated leads, `changes` the numbers of the rig block, `head` tells which
    revisions are known."""
    for block in context.of(nodes.AsBuilt):
        if head is not None and head.letter:
            _letter(context, block.letter, head)
    return tuple(_block(context, block, marks, changes) for block in context.of(nodes.AsBuilt))


def _letter(context: Context, letter: Word, head: Head) -> None:
    """A finding where the block is of no revision that is looked at: neither this rig's nor the one that it follows."""
    before = head.follows[0] if head.follows is not None else ""
    if letter.text in (head.letter, before) or before == head.letter:  # which is told of `follows`
        return
    follows = f"and follows {before}" if before else "and follows none"
    known = f"{before} or {head.letter}" if before else head.letter
    otherwise = "delete the block" if before else f'state in the rig block: follows {letter} "FILE"'
    context.report(
        UNKNOWN.at(
            letter.span,
            f"this block tells what was built of revision {letter}, but this rig is revision {head.letter} {follows}: it is "
            f"compared with {'neither' if before else 'nothing'}",
            subject=(letter.text,),
            label=NEITHER if before else "not this revision",
            help=f"write {known}, if its board is meant, or {otherwise}",
            level=Level.WARNING,
        )
    )


def _block(context: Context, block: nodes.AsBuilt, marks: dict[str, Word], changes: tuple[int, ...]) -> AsBuilt:
    leads: list[BuiltLead] = []
    swaps: list[Any] = []
    done: list[int] = []
    notes: list[str] = []
    for node in block.items:
        if isinstance(node, nodes.BuiltLead):
            leads += _lead(context, node, marks)
        elif isinstance(node, nodes.Swap):
            swaps += _swap(context, node)
        elif isinstance(node, nodes.Done):
            done += [number for word in node.changes if (number := _change(context, word, changes)) is not None]
        elif isinstance(node, nodes.Note):
            notes.append(node.text.value)
    return AsBuilt(block.letter.text, tuple(leads), tuple(swaps), tuple(done), tuple(notes), block.span)


def _lead(context: Context, node: nodes.BuiltLead, marks: dict[str, Word]) -> list[BuiltLead]:
    length = context.amount(node.length, LEAD)
    plugs = None
    if node.plugs is not None:
        words = (node.plugs.first, node.plugs.second)
        found = [context.scopes["plug"].find(word, (), "a plug kind") for word in words]
        plugs = (found[0], found[1]) if found[0] and found[1] else None
    if not known_mark(context, node.mark, marks) or length is None:
        return []
    date, by = node.date.text if node.date else "", node.who.value if node.who else ""
    return [BuiltLead(node.mark.text, length, plugs, date, by, node.span)]


def _swap(context: Context, node: nodes.Swap) -> list[tuple[str, str, int | None]]:
    out = context.scopes["thing"].find(node.out, UNITS, "a unit")
    into = context.scopes["thing"].find(node.into, UNITS, "a unit")
    note = None if node.note is None else _note(context, node.note)
    return [(out, into, note)] if out is not None and into is not None else []


def _note(context: Context, word: Word) -> int | None:
    stated = [note.number.text for note in context.of(nodes.FieldNote)]
    return _stated(
        context, word, "field note", stated, f"correct the number, or state it: field-note {word.text} DATE TEXT by WHO"
    )


def _change(context: Context, word: Word, changes: tuple[int, ...]) -> int | None:
    help = f"state it in the rig block: change {word.text} design TEXT"
    return _stated(context, word, "change", [str(number) for number in changes], help)


def _stated(context: Context, word: Word, what: str, stated: list[str], help: str) -> int | None:
    """A number that is stated elsewhere, or None after a finding."""
    number = context.count(word, f"{what} number", 1, 9999)
    if number is None or number in [int(each) for each in stated if each.isdigit()]:
        return number
    where = "the rig block states no change" if what == "change" else "there is no field note"
    context.report(
        UNKNOWN.at(
            word.span,
            f"{where} {number}",
            subject=(f"{what} {number}",),
            label=f"stated are {', '.join(stated) or 'none'}",
            help=help,
        )
    )
    return None
