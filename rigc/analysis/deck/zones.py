"""Points of the decks -> their zones: columns 1 to 8 from the left, rows A to F from the rear, as on the frame of a drawing (ISO 5457, from
memory). What stands on a deck is found by the zone of its middle."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.deck.placement import Outline, Placement
from rigc.model.deck import Deck
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record

COLUMNS, ROWS = "12345678", "ABCDEF"


class Zones(Record):
    """`C4` of each thing and jack on a deck, behind the deck's name where several are in use; a panel is found by its jacks."""

    by_thing: dict[str, str]
    by_jack: dict[Port, str]

    def thing(self, name: str) -> str:
        """Empty for what stands on no deck of known size."""
        jacks = (found for port, found in self.by_jack.items() if port.thing == name)
        return self.by_thing.get(name) or ", ".join(dict.fromkeys(filter(None, jacks)))

    def jack(self, port: Port) -> str:
        """That of its thing where its own place is not stated."""
        return self.by_jack.get(port) or self.thing(port.thing)

    def named(self, name: str) -> str:
        """That of a thing, or of a jack as `thing.jack`, by its name."""
        thing, dot, jack = name.partition(".")
        return self.jack(Port(thing, jack)) if dot else self.thing(thing)

    def ends(self, start: Port, end: Port) -> str:
        """`F7 → C2`, from jack to jack; the deck's end alone of what leaves the deck."""
        return " → ".join(dict.fromkeys(filter(None, (self.jack(start), self.jack(end)))))

    def feed(self, outlets: Iterable[Port], inlets: Iterable[Port]) -> str:
        """The same of an adaptor, from its outlets to the inlets of its units."""
        sides = self.all(map(str, outlets)), self.all(map(str, inlets))
        return " → ".join(dict.fromkeys(filter(None, sides)))

    def all(self, names: Iterable[str]) -> str:
        """`B5, D3`: where these things and jacks are, each zone once."""
        return ", ".join(sorted(set(filter(None, map(self.named, names)))))


def zone(deck: Deck | None, x_mm: float, y_mm: float) -> str:
    """`C4`; what lies beyond an edge belongs to the zone beside it; empty where the deck's size is not stated."""
    if deck is None or deck.width_mm is None or deck.depth_mm is None:
        return ""
    return (
        ROWS[_part(deck.depth_mm.value - y_mm, deck.depth_mm.value, len(ROWS))]
        + COLUMNS[_part(x_mm, deck.width_mm.value, len(COLUMNS))]
    )


def zone_of(deck: Deck | None, body: Outline) -> str:
    """The zone of a thing's middle."""
    return zone(deck, body.x_mm + body.width_mm / 2, body.y_mm + body.depth_mm / 2)


def zones(rig: Rig, placement: Placement) -> Zones:
    """Of all that is laid out."""
    several = len({place.deck or (rig.deck and rig.deck.name) for place in rig.places.values()}) > 1

    def named(deck: str | None, found: str) -> str:
        return f"{deck} {found}" if found and several else found

    things = {name: named(each.deck, zone_of(_deck(rig, each.deck), each)) for name, each in placement.outlines.items()}
    jacks = {
        port: named(each.deck, zone(_deck(rig, each.deck), each.x_mm, each.y_mm))
        for port, each in placement.points.items()
    }
    return Zones(things, jacks)


def _deck(rig: Rig, name: str | None) -> Deck | None:
    return None if name is None else rig.decks.get(name)


def _part(at_mm: float, whole_mm: float, parts: int) -> int:
    return max(0, min(parts - 1, int(at_mm / whole_mm * parts)))


COMPUTE = zones
