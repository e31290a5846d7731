"""Plugs in jacks -> flags: the numbers of the leads and the name of the jack, with the places where each may stand."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from rigc.analysis.deck.placement import Placement
from rigc.analysis.leads.leads import Lead
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.reports.drawings.deck.view import View
from rigc.reports.drawings.means.choosing import Choice
from rigc.reports.drawings.means.label_choices import around
from rigc.reports.drawings.means.wish import Wish
from rigc.reports.drawings.shapes import Point


class Flag(Record):
    """A jack with the leads in it: its point and the way it looks on paper ((0, 0) for a jack of a panel), how far its plug
    stands out there, and on which side of its thing the jack is, empty where it has none."""

    port: Port
    text: str
    at: Point
    way: tuple[int, int]
    reach: float
    side: str = ""

    @property
    def told(self) -> str:
        """What is told of it where there is no room for it at its jack: `marl (left): A02 in`."""
        return f"{self.port.thing}{f' ({self.side})' if self.side else ''}: {self.text}"

    @property
    def middle(self) -> Point:
        """The middle of its plug."""
        return self.at[0] + self.way[0] * self.reach / 2, self.at[1] + self.way[1] * self.reach / 2


def flag_text(port: Port, leads: tuple[Lead, ...]) -> str:
    """`A02 s1`; of two leads in one jack `A27, A30 l`; signs of how a lead is made stand behind its number, those that
    neighbours share once."""
    shown: dict[str, list[str]] = {}
    for lead in leads:
        shown.setdefault(lead.make.signs, []).append(lead.mark)
    texts = [f"{', '.join(dict.fromkeys(marks))} {signs}".rstrip() for signs, marks in shown.items()]
    return f"{', '.join(texts)} {port.jack}".lstrip()


def flags(
    rig: Rig, placement: Placement, view: View, reaches: dict[Port, float], wanted: dict[Port, tuple[Lead, ...]]
) -> tuple[Flag, ...]:
    """A flag for each of the wanted jacks that has a point, in their order; `reaches` is how far their plugs stand out, in mm."""
    return tuple(
        Flag(
            port,
            flag_text(port, plugged),
            view.point(point.x_mm, point.y_mm),
            view.direction(point.dx, point.dy),
            reaches.get(port, 0.0) / view.scale,
            _side(rig, port),
        )
        for port, plugged in wanted.items()
        if (point := placement.points.get(port)) is not None
    )


def _side(rig: Rig, port: Port) -> str:
    jack = rig.jack(port)
    supply = rig.supplies.get(port.thing)
    outlet = None if supply is None else supply.outlet(port.jack)
    return (jack.side if jack is not None else outlet.side if outlet is not None else None) or ""


def wish(flag: Flag) -> Wish:
    """Behind the jack within its body, before the plug, beside it; else at the end of a leader from the plug."""
    side = f", {flag.side} side" if flag.side else ""
    return Wish(partial(_choices, flag), f"{flag.text}: {flag.port}{side}")


def _choices(flag: Flag) -> Iterator[Choice]:
    x, y = flag.at
    dx, dy = flag.way
    if dy:
        yield from _upright(flag, x, y, dy)
    elif dx:
        yield from _level(flag, x, y, dx)
    else:
        yield from _open(flag, x, y)
    if dx or dy:
        yield from around((x - 0.7 * dx, y - 0.7 * dy), flag.text, cost=3, within=11)
    yield from around(flag.middle, flag.text)


def _upright(flag: Flag, x: float, y: float, dy: int) -> Iterator[Choice]:
    """A jack that looks up or down the paper: the flag reads upwards."""
    inward, outward = ("start", "end") if dy > 0 else ("end", "start")
    for aside in (0.0, 1.2, -1.2):
        yield Choice(x + aside, y - 0.8 * dy, flag.text, abs(aside), anchor=inward, rotation=-90)
    for aside in (0.0, 1.2, -1.2):
        beyond = y + (flag.reach + 0.8) * dy
        yield Choice(x + aside, beyond, flag.text, 2 + abs(aside), anchor=outward, rotation=-90)


def _level(flag: Flag, x: float, y: float, dx: int) -> Iterator[Choice]:
    """A jack that looks to a side."""
    inward, outward = ("end", "start") if dx > 0 else ("start", "end")
    for aside in (0.0, 1.2, -1.2):
        yield Choice(x - 0.8 * dx, y + aside, flag.text, abs(aside), anchor=inward)
    for aside in (0.0, 1.2, -1.2):
        yield Choice(x + (flag.reach + 0.8) * dx, y + aside, flag.text, 2 + abs(aside), anchor=outward)


def _open(flag: Flag, x: float, y: float) -> Iterator[Choice]:
    """A jack of a panel: around its ring."""
    for side in (1, -1):
        yield Choice(x + 2.2 * side, y, flag.text, 0, anchor=_ANCHOR[side])
        yield Choice(x, y - 2.2 * side, flag.text, 0, anchor="middle", level=_LEVEL[side])
        yield Choice(x, y - 2.2 * side, flag.text, 1, anchor=_ANCHOR[side], rotation=-90)


_ANCHOR = {1: "start", -1: "end"}
_LEVEL = {1: "baseline", -1: "top"}
