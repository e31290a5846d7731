"""LeadDrops and SharedReturns -> what each power lead loses, and what shared returns may bring."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.power.lead_drops import LeadDrop, LeadDrops
from rigc.analysis.power.power_network import PowerNetwork, ShieldFlow
from rigc.analysis.power.shared_returns import SharedReturn, SharedReturns
from rigc.diagnostics.figures import number
from rigc.facts.conductors import SHIELD_OHM, WARM_CELSIUS
from rigc.reports.content import Cell, Column, Paragraph, Row, Table
from rigc.reports.figure_cell import figure_cell

_DROPS = (
    Column("lead"),
    Column("from"),
    Column("unit"),
    Column("conductor", folds="{}"),
    Column("length", "mm", number=True),
    Column("there and back", "mΩ", number=True),
    Column("current", "mA", number=True),
    Column("shared with other legs, at most", "mV", number=True, key="shared", folds="shared with other legs {}"),
    Column("drop", "mV", number=True),
    Column("drop", "%", number=True, key="drop_percent"),
    Column(f"drop at {WARM_CELSIUS.value:g} °C", "mV", number=True),
)
_RETURNS = (
    Column("outlet"),
    Column("units"),
    Column("leads"),
    Column("current", "mA", number=True),
    Column("shared, at most", "mm", number=True),
    Column("one conductor", "mΩ", number=True),
    Column("noise, at most", "mV", number=True),
)


_LEAST_MA = 0.1  # through a shield, to be told


def drop_table(drops: LeadDrops) -> Table:
    """A row for every lead from an outlet to a unit."""
    return Table(
        "lead_drops",
        "Drop of each power lead",
        _DROPS,
        tuple(_row(drop) for drop in drops.all.values()),
        landscape=True,
    )


def network_table(network: PowerNetwork) -> Table | None:
    """A row for each inlet, with what comes back through its leads; None where nothing is fed with DC."""
    if not network.inlets:
        return None
    columns = (
        Column("unit"),
        Column("most at its inlet", "V", number=True, folds="at most {} at the inlet"),
        Column("least", "V", number=True),
        Column("through its return", "mA", number=True),
    )
    return Table("network", "Volts at each inlet, current in each return", columns, tuple(_inlets(network)))


def _inlets(network: PowerNetwork) -> Iterator[Row]:
    for inlet in network.inlets:
        yield Row(
            (
                Cell(inlet.unit),
                figure_cell(inlet.most_v),
                figure_cell(inlet.least_v)
                if inlet.known
                else Cell(inlet.least_v.text, mark="a cable, length or current is not known"),
                figure_cell(inlet.returned),
            )
        )


def shield_notes(network: PowerNetwork) -> Paragraph | None:
    """The shields that carry supply current; None where none does."""
    most: dict[tuple[str, ...], ShieldFlow] = {}
    for state in network.states:
        for flow in state.shields:
            if flow.marks not in most or abs(flow.ma) > abs(most[flow.marks].ma):
                most[flow.marks] = flow
    lines = [
        f"{', '.join(flow.marks)} ({' and '.join(flow.things)}): {number(abs(flow.ma), 1)} mA."
        for flow in most.values()
        if abs(flow.ma) >= _LEAST_MA
    ]
    if not lines:
        return None
    assumed = (
        f"Each shield is reckoned as {SHIELD_OHM.value * 1000:g} mΩ a lead ({SHIELD_OHM.source}), outlets as ideal."
    )
    return Paragraph("shields", (*lines, assumed), heading="Supply current through shields")


def conductor_notes(drops: LeadDrops) -> Paragraph | None:
    """Which table or rule each conductor is reckoned by; None where none is known."""
    wires = dict.fromkeys(drop.wire for drop in drops.all.values() if drop.wire is not None)
    lines = [f"{wire.typed}: {wire.ohm_per_km.text} {wire.ohm_per_km.unit} at 20 °C ({wire.source})." for wire in wires]
    return Paragraph("conductors", tuple(lines), heading="Conductors") if lines else None


def return_table(returns: SharedReturns) -> Table | None:
    """A row for each outlet whose leads share a return; None if there are none."""
    rows = tuple(_return(each) for each in returns.all)
    return Table("shared_returns", "Shared returns: current × resistance", _RETURNS, rows) if rows else None


def _row(drop: LeadDrop) -> Row:
    return Row(
        (
            Cell(drop.mark, strong=True),
            Cell(str(drop.outlet)),
            Cell(drop.unit),
            Cell("?" if drop.wire is None else drop.wire.typed),
            figure_cell(drop.length),
            figure_cell(drop.loop),
            figure_cell(drop.current),
            Cell("") if drop.others is None else figure_cell(drop.others),
            figure_cell(drop.lost),
            figure_cell(drop.share),
            figure_cell(drop.warm),
        )
    )


def _return(each: SharedReturn) -> Row:
    return Row(
        (
            Cell(str(each.outlet)),
            Cell(", ".join(each.units)),
            Cell(", ".join(each.marks)),
            figure_cell(each.current),
            figure_cell(each.length),
            figure_cell(each.mohm),
            figure_cell(each.noise),
        )
    )
