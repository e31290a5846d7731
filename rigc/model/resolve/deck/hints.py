"""Wishes for places, rooms kept free and weights of the objective as stated -> names and millimetres."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from typing import Any

from rigc.diagnostics.mend import Delete, Mend
from rigc.diagnostics.near import nearest
from rigc.diagnostics.wording import listed
from rigc.model.deck import Deck, Hint, LaterRoom, Weight, deck_meant
from rigc.model.resolve.context import Context
from rigc.model.resolve.deck.deck import PLACEABLE, area
from rigc.model.scope import MISUSED, UNKNOWN, stated_twice
from rigc.model.things import Area
from rigc.model.units.measures import APART, GAP, PATCH, TERM
from rigc.syntax import nodes
from rigc.syntax.nodes import Node, Word
from rigc.syntax.nodes.written import rule_of

_WORD = {
    nodes.Beside: "side",
    nodes.Row: "row",
    nodes.OnSide: "side",
    nodes.NearEdge: "edge",
    nodes.Reach: "foot",
    nodes.JacksLook: "side",
    nodes.Stands: "how",
}
_OTHERS = {nodes.Beside: "other", nodes.Reach: "other", nodes.Away: "others"}
_AMOUNT = {nodes.Beside: "gap", nodes.Clear: "distance", nodes.Away: "distance"}
_ALONE = (nodes.OnSide, nodes.NearEdge, nodes.Row, nodes.Clear, nodes.KnobsFree, nodes.JacksLook, nodes.Stands)
_SEVERAL = (nodes.Stepped, nodes.Together)
_KINDS = (*_ALONE, *_SEVERAL, nodes.Beside, nodes.Reach, nodes.Away, nodes.Symmetric)


def hints(context: Context, decks: dict[str, Deck], off_board: Collection[str]) -> tuple[Hint, ...]:
    """All wishes, as written; without those that name what there is not, what is off the board, or a thing beside itself. A finding for
    those by which a place is wished on a deck on which none are chosen."""
    _only_on_the_first(context, decks)
    return tuple(hint for node in _items(context) if (hint := _hint(context, node, decks, off_board)) is not None)


def _only_on_the_first(context: Context, decks: dict[str, Deck]) -> None:
    """One finding for each other deck that things shall stand on which have no place."""
    meant = deck_meant(decks)
    placed = {node.thing.text for node in _items(context) if isinstance(node, nodes.At | nodes.Under)}
    open_ones: dict[str, list[Word]] = {}
    for block in context.of(nodes.PlaceBlock):
        for node in block.items:
            if isinstance(node, _KINDS):
                ground = node.ground if isinstance(node, nodes.Stands) else block.deck
                words = node.things if hasattr(node, "things") else (node.thing,)
                if ground is not None and decks.get(ground.text, meant) is not meant:
                    open_ones.setdefault(ground.text, []).extend(word for word in words if word.text not in placed)
    for deck, words in open_ones.items():
        if words and meant is not None:
            _elsewhere(context, deck, meant.name, {word.text: word for word in reversed(words)})


def _elsewhere(context: Context, deck: str, meant: str, words: dict[str, Word]) -> None:
    names = list(reversed(words))
    has = "has no place" if len(names) == 1 else "have no places"
    context.report(
        MISUSED.at(
            words[names[0]].span,
            f"{listed(names)} on '{deck}' {has}: they are chosen on '{meant}' only, the first deck",
            subject=(deck, *names),
            label="a wish does not do here",
            help=f"write where each stands in `place on {deck} {{ ... }}`: {names[0]} at ___, ___ mm",
        )
    )


def rooms(context: Context) -> tuple[tuple[Area, ...], tuple[LaterRoom, ...]]:
    """The rooms kept free: those with a stated place, and those for which one is to be found."""
    stated, later = [], []
    for block in context.of(nodes.PlaceBlock):
        for node in block.items:
            if isinstance(node, nodes.ReserveRoom) and node.at is not None:
                room = area(context, node, node.at, "reserved")
                stated.append(room.replace(deck=block.deck.text if block.deck else None))
            elif isinstance(node, nodes.ReserveRoom):
                width, depth = context.shared_values(PATCH, node.width, node.depth)
                later.append(LaterRoom(node.text.value if node.text else "reserved", width, depth, node.span))
    return tuple(stated), tuple(later)


def weights(context: Context) -> tuple[Weight, ...]:
    """What counts otherwise than usual in the choice of places."""
    found: dict[str, Weight] = {}
    for node in _items(context):
        if not isinstance(node, nodes.Weigh):
            continue
        share = context.chosen(node.share, TERM)
        if node.what.text in found:
            first = Word(node.what.text, found[node.what.text].span)
            context.report(stated_twice(f"the weight of {node.what.text}", node.what, first))
        elif share is not None:
            found[node.what.text] = Weight(node.what.text, share, node.span)
    return tuple(found.values())


def _items(context: Context) -> Iterator[Node]:
    return (node for block in context.of(nodes.PlaceBlock) for node in block.items)


def _hint(context: Context, node: Any, decks: dict[str, Deck], off_board: Collection[str]) -> Hint | None:
    if not isinstance(node, _KINDS):
        return None
    words = node.things if hasattr(node, "things") else (node.thing,)
    named: Any = getattr(node, _OTHERS.get(type(node), ""), None) or ()
    others = named if isinstance(named, tuple) else (named,)
    unknown = [word for word in (*words, *others) if not _is_placeable(context, word)]
    if unknown:
        return None
    if not _sensible(context, node, (*words, *others)):
        return None
    off = next((word for word in (*words, *others) if word.text in off_board), None)
    if off is not None:
        _drop(context, node, off, f"'{off.text}' is off the board and has no place on it")
        return None
    on = (node.ground.text,) if isinstance(node, nodes.Stands) else tuple(word.text for word in others)
    if isinstance(node, nodes.Stands) and not _is_ground(context, node.ground, decks):
        return None
    typed = getattr(node, _AMOUNT.get(type(node), ""), None)
    amount = context.amount(typed, GAP if isinstance(node, nodes.Beside) else APART)
    word = getattr(node, _WORD[type(node)]).text if type(node) in _WORD else ""
    value = None if amount is None else amount.value
    at = None if typed is None else typed.span
    return Hint(tuple(each.text for each in words), rule_of(type(node)), word, on, value, node.span, at)


def _is_placeable(context: Context, word: Word) -> bool:
    return context.scopes["thing"].find(word, PLACEABLE, "a unit or a supply") is not None


def _sensible(context: Context, node: Any, words: tuple[Word, ...]) -> bool:
    """Whether no thing is named twice, and at least two where one alone says nothing."""
    seen: set[str] = set()
    for word in words:
        if word.text in seen:
            twice_named = (
                "can't stand beside itself" if isinstance(node, nodes.Beside) else "is named twice in this wish"
            )
            _drop(context, node, word, f"'{word.text}' {twice_named}")
            return False
        seen.add(word.text)
    if isinstance(node, _SEVERAL) and len(words) == 1:
        said = "has no order by itself" if isinstance(node, nodes.Stepped) else "is together with nothing"
        _drop(context, node, words[0], f"'{words[0].text}' alone {said}")
        return False
    return True


def _drop(context: Context, node: Node, word: Word, message: str) -> None:
    context.report(
        MISUSED.at(
            word.span,
            message,
            subject=(word.text,),
            label="another thing goes here",
            mends=(Mend("drop the wish", (Delete(node.span),)),),
        )
    )


def _is_ground(context: Context, word: Word, decks: dict[str, Deck]) -> bool:
    """Whether a deck or one of its tiers has that name; a finding where not."""
    if word.text in decks:
        return context.scopes["deck"].find(word, (), "a deck") is not None
    names = [*decks, *(tier.name for deck in decks.values() for tier in deck.tiers)]
    if word.text in names:
        return True
    near = nearest(word.text, names)
    context.report(
        UNKNOWN.at(
            word.span,
            f"no deck and no tier is called '{word.text}'",
            subject=(word.text,),
            label=f"did you mean '{near}'?" if near else "a deck or a tier goes here",
            help=f"write '{near}'" if near else "name the deck, or a tier of it",
        )
    )
    return False
