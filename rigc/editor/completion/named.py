"""Where a name goes -> the names that the statement wants there."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from rigc.analysis.deck.used_units import used_units
from rigc.diagnostics.explain import all_kinds
from rigc.editor.completion.jacks import described, rating
from rigc.editor.completion.offer import Offer
from rigc.editor.completion.outlets import outlet_offers
from rigc.editor.completion.spot import Spot
from rigc.editor.completion.stock import cables, plugs, strips
from rigc.editor.draft import Draft
from rigc.model.resolve import FAMILIES
from rigc.model.rig import Rig
from rigc.model.things import UNITS
from rigc.syntax.nodes.written import opening

_JACK_WORDS = ("pair", "level", "impedance", "phantom", "lift", "send", "return", "path")
_THINGS = (*UNITS, "instrument", "source", "supply", "mains-strip", "panel")
_UNITS = ("unit",)
_STOPS = (*UNITS, "instrument", "source", "panel")


def named(spot: Spot, draft: Draft) -> Iterator[Offer]:
    """Names that are declared and fit. A place where a new name is given has none."""
    words, last = spot.words, spot.last
    if last == "like":
        yield from _like(spot, draft)
    elif draft.rig is None or words[:1] == ("use",) or (not spot.block and len(words) == 1 and last in _OPENERS):
        return
    else:
        yield from _of_block(spot, draft.rig)


def _of_block(spot: Spot, rig: Rig) -> Iterator[Offer]:
    words, last, block = spot.words, spot.last, spot.block
    first = words[0] if words else ""
    if block in _THINGS:
        if last == "of":
            yield from cables(rig, "audio")
        elif last == "for":
            yield from _things(rig, _UNITS)
        elif first in _JACK_WORDS:
            yield from _own_jacks(spot, rig)
    elif block == "power":
        yield from _power(spot, rig)
    elif block == "leads":
        yield from _leads(spot, rig)
    elif block == "mounting":
        yield from strips(rig) if last == "with" else _things(rig, (*_UNITS, "supply", "panel"))
    elif block == "scenario":
        kinds = (
            ("amp",)
            if first == "amps"
            else ("supply", "amp", "desk", "listener")
            if first in ("selector", "transformer")
            else _STOPS
        )
        yield from _things(rig, kinds)
    elif block == "place":
        yield from _place(spot, rig)
    elif block in ("midi", "control"):
        yield from _things(rig, _UNITS if block == "midi" else _STOPS)
    elif block in ("preset", "song", "blend", "as-built"):
        yield from _things(rig, _STOPS if block == "blend" else _UNITS)
    elif block == "deck":
        yield from strips(rig) if last == "of" else ()
    elif block == "case":
        yield from _things(rig, (*_UNITS, "supply"))
        yield from _decks(rig)
    elif block == "spares":
        yield from plugs(rig, None) if last == "plug" else _on_the_shelf(rig) if not words else ()
    elif not block:
        yield from _top(first, last, words, rig)


def _top(first: str, last: str, words: tuple[str, ...], rig: Rig) -> Iterator[Offer]:
    if first == "accept" and len(words) == 1:
        yield from (Offer(kind.name, "word", kind.rule) for kind in all_kinds())
    elif first in ("join", "place", "panel"):
        yield from _decks(rig)
    elif first == "chain" and "for" in words and ":" not in words and "with" not in words:
        yield from (Offer(each.name, "thing", f"scenario {each.title}") for each in rig.scenarios.values())
    elif first == "chain" and last == "with":
        yield from _things(rig, ("instrument", "source"))
    else:
        yield from _things(
            rig, _UNITS if first in ("order", "mute", "feedback", "blend", "loop") and last != "holds" else _STOPS
        )


def _power(spot: Spot, rig: Rig) -> Iterator[Offer]:
    words, last = spot.words, spot.last
    if last == "into":
        yield from _things(rig, ("mains-strip",))
    elif words[:1] == ("others",) or (words[:1] == ("spare",) and last == "of"):
        yield from _things(rig, ("supply",))
    elif "from" in words:
        yield from outlet_offers(spot, rig)
    else:
        fed = {unit for feed in rig.power.feeds for unit in feed.units}
        for offer in _things(rig, (*UNITS, "supply")):
            unit = rig.units.get(offer.label)
            rank = 0 if unit is not None and unit.powered and unit.name not in fed else 3
            yield offer.replace(rank=rank)


def _leads(spot: Spot, rig: Rig) -> Iterator[Offer]:
    words, last = spot.words, spot.last
    if last == "cable" and len(words) == 2:
        yield from cables(rig, words[0])
    elif last == "plug" and len(words) == 2:
        yield from plugs(rig, None)
    elif last == "for":
        yield from _things(rig, _UNITS)
    elif "->" in words:
        arrow = words.index("->")
        if arrow == len(words) - 1:
            yield from _things(rig, _THINGS)
        elif last == "of":
            yield from cables(rig, _signal(words, rig))
        else:
            yield from plugs(rig, _connector(words, arrow, rig))
    elif len(words) == 1:
        yield from _things(rig, _THINGS)


def _end(words: tuple[str, ...], rig: Rig) -> Any:
    """The jack or outlet that `heron . in` names; None if there is none."""
    if len(words) < 3 or words[1] != "." or words[0] not in rig.things:
        return None
    thing: Any = rig.things[words[0]]
    found = [each for each in (*thing.jacks, *getattr(thing, "outlets", ())) if each.name == words[2]]
    return found[0] if found else None


def _connector(words: tuple[str, ...], arrow: int, rig: Rig) -> Any:
    """What the plug that is asked for goes into: the first at the start, the one behind `to` at the end."""
    end = _end(words[arrow + 1 :], rig) if words[-1] == "to" else _end(words[1:arrow], rig)
    return None if end is None else end.connector


def _signal(words: tuple[str, ...], rig: Rig) -> str:
    end = _end(words[1:], rig)
    role = getattr(end, "role", "dc")
    if role in ("input", "output", "panel"):
        return "audio"
    return "midi" if role.startswith("midi") else "control" if role.startswith(("control", "expression")) else "dc"


def _place(spot: Spot, rig: Rig) -> Iterator[Offer]:
    if spot.last == "beneath" or (spot.last == "on" and spot.words[-2:] != ("while", "on")):
        yield from _decks(rig)
        yield from (
            Offer(tier.name, "thing", f"tier of {deck.name}") for deck in rig.decks.values() for tier in deck.tiers
        )
    elif spot.last == "of" or spot.words:
        yield from _things(rig, (*_UNITS, "supply"))
    else:
        for offer in _things(rig, (*_UNITS, "supply", "mains-strip")):
            yield offer.replace(rank=3 if offer.label in rig.places else 0)


def _own_jacks(spot: Spot, rig: Rig) -> Iterator[Offer]:
    thing: Any = rig.things.get(spot.name)
    for jack in () if thing is None else thing.jacks:
        yield Offer(jack.name, "jack", described(jack), rank=0)
    for outlet in () if thing is None else getattr(thing, "outlets", ()):
        yield Offer(outlet.name, "outlet", rating(outlet), rank=1)


def _things(rig: Rig, kinds: Iterable[str]) -> Iterator[Offer]:
    wanted = {kind.replace("-", " ") for kind in kinds} | set(kinds)
    for thing in rig.things.values():
        if thing.kind in wanted:
            yield Offer(thing.name, "thing", f"{thing.kind} {thing.title}".rstrip())


def _on_the_shelf(rig: Rig) -> Iterator[Offer]:
    """Units that the rig does not use: one of them may travel as a spare."""
    used = {unit.name for unit in used_units(rig)} | {spare.thing for spare in rig.spares}
    yield from (offer for offer in _things(rig, _UNITS) if offer.label not in used)


def _decks(rig: Rig) -> Iterator[Offer]:
    yield from (Offer(name, "thing", "deck") for name in rig.decks)


def _like(spot: Spot, draft: Draft) -> Iterator[Offer]:
    """What is declared by the same word, itself apart."""
    for statement in draft.read.gathered.statements:
        if type(statement) in FAMILIES and opening(type(statement)) == spot.words[0]:
            whole: Any = statement
            if whole.name.text != (spot.words[1] if len(spot.words) > 1 else ""):
                title = whole.title.value if whole.title is not None else ""
                yield Offer(whole.name.text, "thing", f"{spot.words[0]} {title}".rstrip(), rank=0)


_OPENERS = frozenset(opening(kind) for kind in FAMILIES)
