"""Kinds of things and of work, and what they are called in a list of changes."""

from __future__ import annotations

from rigc.analysis.revision.compared.aspect import PAPER, REDRILL, RELABEL, REPOWER, REWIRE
from rigc.analysis.revision.compared.changed import (
    ADDED,
    REMOVED,
    RENAMED,
    RENUMBERED,
    REPLACED,
    ChangedThing,
    Difference,
)

KINDS = (
    "unit", "supply", "mains strip", "place", "strips", "fixing", "bridge plate", "hole", "deck", "panel", "case", "lead", "special lead",
    "feed", "outlet", "loop", "blend", "chain", "bypass plan", "intent", "MIDI master", "MIDI channel", "preset", "song",
    "instrument", "scenario", "cable", "plug", "strip", "premade lengths", "limit", "test", "upkeep", "spare", "sum", "wish",
    "rig",
)  # fmt: skip
"""In the order in which they are told."""

MEANING = {
    REWIRE: "leads to make, to plug elsewhere or to pull",
    REPOWER: "outlets, voltages and mains settings to change",
    REDRILL: "things to take off, move or fasten, holes to drill",
    RELABEL: "labels to take off and to print",
    PAPER: "figures and texts to read; no tool is needed",
}
"""What each kind of work is."""

_OF = {
    "place": "place of", "strips": "strips of", "fixing": "fixing of", "bridge plate": "bridge plate of", "feed": "feed of",
    "MIDI channel": "MIDI channel of", "premade lengths": "premade lengths,", "wish": "wish:", "test": "test",
}  # fmt: skip
_BY_NAME = (
    "unit",
    "supply",
    "place",
    "strips",
    "fixing",
    "bridge plate",
    "lead",
    "special lead",
    "feed",
    "MIDI channel",
)
_WHOLE = {"rig": "every page", "MIDI master": "MIDI master"}
_LONE = {
    "place": "at", "feed": "from", "strips": "pieces", "fixing": "by", "bridge plate": "of", "hole": "diameter", "outlet": "feeds",
    "loop": "holds", "chain": "order", "bypass plan": "way", "intent": "says", "MIDI master": "is", "MIDI channel": "is",
    "premade lengths": "are", "limit": "is", "test": "expects", "upkeep": "due", "spare": "carried", "wish": "says",
}  # fmt: skip
_HOW = {ADDED: "new", REMOVED: "goes"}
_NAMED = {REPLACED: "stands in for", RENAMED: "renamed", RENUMBERED: "renumbered"}


def thing_words(thing: ChangedThing) -> str:
    """The thing as a list of changes calls it."""
    if thing.kind in _WHOLE:
        return _WHOLE[thing.kind]
    return thing.name if thing.kind == "sum" else f"{_OF.get(thing.kind, thing.kind)} {thing.name}"


def name_words(thing: ChangedThing) -> str:
    """What the crew calls it: a number, or the name of the thing whose place or feed it is."""
    return thing.name if thing.kind in _BY_NAME else thing_words(thing)


def field_words(thing: ChangedThing, difference: Difference) -> str:
    """What differs of it."""
    if difference.field == "name" and thing.how in _NAMED:
        return _NAMED[thing.how]
    if difference.field:
        return difference.field
    return _HOW.get(thing.how) or _LONE.get(thing.kind, "")


CAUSES = {
    "design": "the design was edited",
    "facts": "facts were corrected",
    "stock": "the stock changed",
    "rules": "the rules changed",
}


def cause_words(thing: ChangedThing, causes: tuple[str, ...]) -> str:
    """Why, and the numbers of the changes that the rig block states of the thing."""
    stated = f" (change {', '.join(map(str, thing.stated))})" if thing.stated else ""
    return " and ".join(causes) + stated
