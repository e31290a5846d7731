"""All statements of a project and two names -> the files in which a declared thing bears the new name everywhere."""

from __future__ import annotations

import re
from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.near import nearest
from rigc.edit.change import Change, changed
from rigc.edit.was_clause import was_clause
from rigc.gather import Gathered
from rigc.loader import STOCK
from rigc.model.resolve import FAMILIES, mentions
from rigc.model.scope import MISUSED, RESERVED, TAKEN, UNKNOWN, article
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Word

_NAME = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")


def is_name(word: str) -> bool:
    """Whether the language takes a word as a name: lower case, digits and single hyphens, a letter first."""
    return _NAME.fullmatch(word) is not None


class Renamed(Record):
    """The texts of the files that change, by the names of their sources; or the finding that says why nothing does."""

    texts: dict[str, str]
    refused: Diagnostic | None = None


def rename(gathered: Gathered, reserved: frozenset[str], old: str, new: str, kind: str = "") -> Renamed:
    """Renames what is declared as `old` (where several things are, the one of that `kind`) in all sources that are read.

    The rig must have no errors of names, and `new` must be a name. A unit or supply keeps its name until now in a `was` clause. Texts in quotes,
    comments and jacks stay as they are.
    """
    blocks = [block for block in _declarations(gathered) if kind in ("", FAMILIES[type(block)][1])]
    mine = [block for block in blocks if block.name.text == old]
    end = Span(gathered.sources[0], 0, 0)
    if len(mine) != 1:
        return Renamed({}, _not_one(blocks, mine, old))
    (block,) = mine
    refused = _refused(gathered, reserved, block, new)
    if refused is not None:
        return Renamed({}, refused)
    family = FAMILIES[type(block)][0]
    words = [*_mentioned(gathered, reserved, family, block, end), block.name]
    by_source: dict[Source, list[Change]] = {}
    for span in {(word.span.start, word.span.source): word.span for word in words if word.text == old}.values():
        by_source.setdefault(span.source, []).append(Change(span.start, span.end, new))
    if isinstance(block, nodes.Unit | nodes.Supply):
        by_source[block.span.source] += was_clause(block, new)
    return Renamed({source.name: changed(source, changes) for source, changes in by_source.items()})


def _declarations(gathered: Gathered) -> list[Any]:
    return [statement for statement in gathered.statements if type(statement) in FAMILIES]


def _mentioned(gathered: Gathered, reserved: frozenset[str], family: str, block: Any, end: Span) -> list[Word]:
    """The places where the block's family is named; `like` and `accept` are told by their form."""
    found = list(mentions(gathered.statements, reserved, end)[family])
    alone = sum(each.name.text == block.name.text for each in _declarations(gathered)) == 1
    for statement in gathered.statements:
        like = getattr(statement, "like", None)
        if like is not None and type(statement) is type(block):
            found.append(like)
        if isinstance(statement, nodes.Accept) and isinstance(statement.target, nodes.Endpoint):
            found += [statement.target.thing] if alone or family == "thing" else []
    return found


def _not_one(blocks: list[Any], mine: list[Any], old: str) -> Diagnostic:
    if mine:
        kinds = " and ".join(article(FAMILIES[type(block)][1]) for block in mine)
        return MISUSED.at(
            mine[0].name.span,
            f"'{old}' is {kinds}; it is not said which to rename",
            subject=(old,),
            label="one of them",
            also=tuple(Label(block.name.span, "another") for block in mine[1:]),
            help=f"add --kind '{FAMILIES[type(mine[0])][1]}'",
        )
    near = nearest(old, [block.name.text for block in blocks])
    return UNKNOWN.at(
        None,
        f"nothing declares '{old}', so it can't be renamed",
        subject=(old,),
        help=f"did you mean '{near}'?" if near else "name a unit, a supply, a cable or another thing that has a block",
    )


def _refused(gathered: Gathered, reserved: frozenset[str], block: Any, new: str) -> Diagnostic | None:
    family, kind = FAMILIES[type(block)]
    old, span = block.name.text, block.name.span
    taken = next((b for b in _declarations(gathered) if FAMILIES[type(b)][0] == family and b.name.text == new), None)
    if span.source.name.startswith(STOCK):
        return MISUSED.at(
            span,
            f"'{old}' is declared in {span.source.name}, which ships with rigc and is not edited",
            subject=(old,),
            help=f"declare {article(kind)} of your own: {kind.split()[0]} {new} like {old} {{ }}",
        )
    if taken is not None:
        return TAKEN.at(
            taken.name.span,
            f"'{new}' is {article(FAMILIES[type(taken)][1])} already, so '{old}' can't be called that",
            subject=(new, old),
            label="declared here",
            help="choose a name that is free",
        )
    if new in reserved:
        message = f"'{new}' is a word of the language; '{old}' can't be called that"
        return RESERVED.at(span, message, subject=(old,), help="choose another name")
    return None
