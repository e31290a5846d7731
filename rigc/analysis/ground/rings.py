"""Links around a ring -> the ring as a builder names it: its kind, and its grounds and leads in a telling order."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.model.ways.ground_link import EARTH, METAL, GroundLink, Pole
from rigc.record import Record

PAIR, SHARED, EARTHS, DESK, PANEL, PLATE, CONTROL, MIDI, SIGNAL = (
    "pair",
    "shared supply",
    "two earths",
    "two earths, through the desk",
    "panel",
    "metal deck",
    "control lead",
    "MIDI shield",
    "audio leads",
)


class Ring(Record):
    """A ring of grounds. `links[n]` joins `poles[n]` and the next pole; the last link closes it to the first pole.

    `kind`: `PAIR` (two leads between two things: silent), `SHARED` (through a supply's common), `EARTHS`, `DESK`,
    `PANEL` (through a panel's metal), `PLATE` (through a deck's), `CONTROL`, `MIDI`, or `SIGNAL` (audio leads round
    several units).
    """

    kind: str
    poles: tuple[Pole, ...]
    links: tuple[GroundLink, ...]

    @property
    def marks(self) -> tuple[str, ...]:
        """Its leads, in order."""
        return tuple(mark for link in self.links for mark in link.marks)

    @property
    def things(self) -> tuple[str, ...]:
        """The things whose grounds it joins, in order, the earth left out."""
        return tuple(dict.fromkeys(pole[0] for pole in self.poles if pole != EARTH))

    @property
    def through_earth(self) -> bool:
        """Whether the mains earth is part of it."""
        return EARTH in self.poles

    @property
    def unsure(self) -> tuple[str, str] | None:
        """A fact that is missing, and how to state it: without it the ring may be none."""
        return next((link.unsure for link in self.links if link.unsure is not None), None)

    @property
    def matters(self) -> bool:
        """Whether it encloses more than the room between two leads of one bundle."""
        return self.kind != PAIR


def named_ring(rig: Rig, links: list[GroundLink], order: dict[Pole, int]) -> Ring:
    """The ring from its links: one through the mains earth ends there, one through a common begins there, any other
    begins with the ground that comes first in `order`; the way round is that of the lower neighbour."""
    poles = _around(links)
    first = min(poles, key=lambda pole: (pole != EARTH, pole[0] in rig.things, order[pole]))
    at = poles.index(first)
    poles, links = [*poles[at:], *poles[:at]], [*links[at:], *links[:at]]
    if len(poles) > 2 and order[poles[-1]] < order[poles[1]]:
        poles, links = [first, *poles[:0:-1]], links[::-1]
    if first == EARTH:
        poles, links = [*poles[1:], EARTH], [*links[1:], links[0]]
    links = [_along(link, pole) for link, pole in zip(links, poles, strict=True)]
    return Ring(_kind(rig, poles, links), tuple(poles), tuple(links))


def _around(links: list[GroundLink]) -> list[Pole]:
    """The poles in turn: each link leads from its own to the next."""
    if len(links) < 3:
        return list(dict.fromkeys(links[0].ends))
    first = next(pole for pole in links[0].ends if pole in links[-1].ends)
    poles = [first]
    for link in links[:-1]:
        poles.append(link.other(poles[-1]))
    return poles


def _along(link: GroundLink, start: Pole) -> GroundLink:
    """The link as it is walked from a pole: its leads in that order."""
    if link.ends[0] == start:
        return link
    turned: GroundLink = link.replace(ends=link.ends[::-1], marks=link.marks[::-1])
    return turned


def _kind(rig: Rig, poles: list[Pole], links: list[GroundLink]) -> str:
    if EARTH in poles:
        desk = any(pole[0] in rig.units and rig.units[pole[0]].kind == "desk" for pole in poles)
        return DESK if desk else EARTHS
    kinds = {link.kind for link in links}
    if len(poles) < 3 and len(kinds) == 1:
        return PAIR
    if kinds & {"control", "expression", "usb"}:
        return CONTROL
    if "midi" in kinds:
        return MIDI
    if "common" in kinds:
        return SHARED
    if "metal" in kinds:
        return PLATE
    return PANEL if any(part == METAL for _, part in poles) else SIGNAL
