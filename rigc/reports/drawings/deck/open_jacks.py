"""Jacks without a lead -> small squares where they are, so that nobody looks for a plug there."""

from __future__ import annotations

from collections.abc import Collection

from rigc.analysis.deck.placement import Placement
from rigc.analysis.leads.leads import Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.reports.drawings.deck.view import View
from rigc.reports.drawings.shapes import Box, Symbol

_SIDE = 1.5  # of the sign, in mm on paper


def open_sign(x: float, y: float) -> Box:
    """A small empty square: rings are knobs, holes and jacks of panels."""
    return Box(x - _SIDE / 2, y - _SIDE / 2, _SIDE, _SIDE, fill="white")


class OpenJack(Record):
    """A jack without a lead: what it is for, and where it is on paper."""

    port: Port
    group: str
    drawn: Box

    @property
    def sign(self) -> Symbol:
        """Its square, which says its name to who points at it."""
        return Symbol(f"{self.port}, no plug", (self.drawn,))


def open_jacks(
    rig: Rig, placement: Placement, leads: Leads, view: View, things: Collection[str]
) -> tuple[OpenJack, ...]:
    """Those of these things; a wireless input is no jack, and what feeds a supply from the mains is not drawn here."""
    return tuple(
        OpenJack(port, group, open_sign(*view.point(point.x_mm, point.y_mm)))
        for port, point in placement.points.items()
        if port.thing in things and not leads.at(port) and (group := _group(rig, port)) is not None
    )


def _group(rig: Rig, port: Port) -> str | None:
    """Which view from below shows it."""
    jack = rig.jack(port)
    if jack is None:
        return "power"
    if jack.connector.kind == "wireless" or port.thing in rig.supplies:
        return None
    if jack.role == "inlet":
        return "power"
    return "audio" if jack.audio else "control"
