"""A cable that is cut -> how many ends get heat-shrink, how much of it, and how small it must shrink: `mini-coax.jacket`, `.shrunk`,
`.shrink-pieces`, `.shrink`."""

from __future__ import annotations

from rigc.analysis.leads.leads import Lead
from rigc.analysis.stores.reel_uses import ReelUse, ReelUses, stock_name, up_to_centimetre
from rigc.facts.bench import SHRINK_SHARE, SHRINK_TO_MM
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import AnyFigure, Figure, figure, known_figure
from rigc.traced.given import mentioned, ours, stated
from rigc.traced.means import found
from rigc.traced.reason import ARITHMETIC, AS_STATED, STATED
from rigc.traced.units import COUNT, METRES_TAKEN, MILLIMETRES


class CableShrink(Record):
    """The heat-shrink of one cable, None where no cable is stated: the diameter of its `jacket` in mm, below what the `shrunk` inside
    must be to grip it, how many `pieces`, and how much in m they take at most."""

    cable: str | None
    jacket: AnyFigure
    shrunk: AnyFigure
    pieces: Figure
    taken: Figure


class HeatShrink(Record):
    """Each cable that is cut, in the order of the stock."""

    all: tuple[CableShrink, ...]


def heat_shrink(rig: Rig, uses: ReelUses) -> HeatShrink:
    """A piece for each end that is made here."""
    return HeatShrink(tuple(_shrink(rig, use) for use in uses.all))


def _shrink(rig: Rig, use: ReelUse) -> CableShrink:
    name = stock_name(use.cable)
    cable = rig.stock.cables.get(use.cable or "")
    jacket = figure(
        f"{name}.jacket",
        stated(f"the diameter of {name}", None if cable is None else cable.outer_mm),
        MILLIMETRES,
        rule=AS_STATED,
        source=STATED,
        label="jacket",
    )
    pieces = _pieces(name, use.leads)
    return CableShrink(
        use.cable,
        jacket,
        figure(
            f"{name}.shrunk",
            ours(SHRINK_SHARE) * jacket,
            MILLIMETRES,
            rule="the shrunk inside must be below this to grip the jacket",
            source=SHRINK_SHARE.source,
        ),
        pieces,
        known_figure(
            f"{name}.shrink",
            up_to_centimetre(pieces * ours(SHRINK_TO_MM) / 1000),
            METRES_TAKEN,
            rule="each at its longest",
            source=SHRINK_TO_MM.source,
        ),
    )


def _pieces(name: str, leads: tuple[Lead, ...]) -> Figure:
    count = sum(port != lead.captive for lead in leads for port in (lead.start, lead.end))
    marks = ", ".join(lead.mark for lead in leads)
    return known_figure(
        f"{name}.shrink-pieces",
        found(count, lambda: f"the ends of {marks}: {count}"),
        COUNT,
        *(mentioned(lead.mark, f"{lead.start} -> {lead.end}", lead.span) for lead in leads),
        rule="a piece at each end that is made here",
        source=ARITHMETIC,
        label="pieces",
    )


COMPUTE = heat_shrink
