"""GroundLink: one conductor that joins two grounds, with where its ends land."""

from __future__ import annotations

from rigc.model.jacks import Port
from rigc.record import Record
from rigc.source import Span

Pole = tuple[str, str]
"""A ground: a thing or deck and its part (`GROUND`, `METAL`, `far out` beyond an isolating path, a pole of a supply's common)."""

GROUND, METAL, FAR = "ground", "metal", "far"
EARTH: Pole = ("earth", "")
"""The mains earth, which all earthed things share."""


def far_side(port: Port) -> Pole:
    """The ground beyond the isolating path that ends at a jack."""
    return port.thing, f"{FAR} {port.jack}"


class GroundLink(Record):
    """What joins two grounds: the leads `marks`, in order from the first end; `kind` is audio, control, expression, midi, usb,
    common, metal (what touches a bare metal deck) or earth.

    `lifts` are the jacks whose ground lift is closed and so lets it join; `isolators` those of them that a transformer
    would isolate if the lift were open. `unsure` tells which fact is missing to be
    sure that it joins at all, and how to state it.
    """

    ends: tuple[Pole, Pole]
    kind: str
    marks: tuple[str, ...] = ()
    lifts: tuple[Port, ...] = ()
    isolators: tuple[Port, ...] = ()
    unsure: tuple[str, str] | None = None
    span: Span | None = None

    def other(self, pole: Pole) -> Pole:
        """The end that is not this one."""
        return self.ends[1] if self.ends[0] == pole else self.ends[0]
