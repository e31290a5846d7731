"""Blocks of cable, plugs and strips -> the stock."""

from __future__ import annotations

from typing import Any

from rigc.model.jacks import Connector
from rigc.model.resolve.context import Context, Item
from rigc.model.resolve.things.jacks import connector_of
from rigc.model.resolve.things.premade import premade
from rigc.model.resolve.things.things import inherited
from rigc.model.stock import Cable, Plug, Stock, Strip
from rigc.model.units.measures import AREA, GAUGE, MASS, MASS_PER_LENGTH, OUTER, PER_LENGTH, PULL, ROLL, THIN, Measure
from rigc.model.units.quantities import money
from rigc.syntax import nodes
from rigc.syntax.nodes import Node

AMOUNTS: dict[type[Node], tuple[str, Measure]] = {
    nodes.StandsOut: ("stand_out_mm", THIN),
    nodes.Bend: ("bend_mm", THIN),
    nodes.Leaves: ("exit_mm", THIN),
    nodes.Wide: ("width_mm", THIN),
    nodes.Tall: ("height_mm", THIN),
    nodes.CutIn: ("cut_in_mm", THIN),
    nodes.PerLength: ("capacitance_pf_per_m", PER_LENGTH),
    nodes.Outer: ("outer_mm", OUTER),
    nodes.Pull: ("pull_kpa", PULL),
    nodes.Roll: ("roll_mm", ROLL),
}


def stock(context: Context) -> Stock:
    """All stock of the sources."""
    return Stock(
        _family(context, nodes.Cable, Cable),
        _family(context, nodes.Plug, Plug),
        _family(context, nodes.Strip, Strip),
        *premade(context),
    )


def _family(context: Context, kind: type[Any], made: type[Any]) -> dict[str, Any]:
    blocks = {node.name.text: node for node in context.of(kind)}
    found = {}
    for name, block in blocks.items():
        fields: dict[str, Any] = {}
        for item in inherited(context, block, blocks):
            _fact(context, item, made, fields)
        title = block.title.value if block.title else ""
        found[name] = made(name, title, block.name.span, **fields)
    return found


def _fact(context: Context, item: Item, made: type[Any], fields: dict[str, Any]) -> None:
    fact, known = item.fact, item.provenance
    if type(fact) in AMOUNTS:
        field, measure = AMOUNTS[type(fact)]
        fields[field] = context.amount(fact.amount, measure, known)
    elif isinstance(fact, nodes.Mass):
        field, measure = ("mass_kg", MASS) if made is Plug else ("mass_g_per_m", MASS_PER_LENGTH)
        fields[field] = context.amount(fact.amount, measure, known)
    elif isinstance(fact, nodes.Conductor):
        fields["area_mm2"] = _area(context, fact, known)
        fields["strand"] = fact.strand.text if fact.strand else None
    elif isinstance(fact, nodes.Fits):
        node = fact.connector
        fits = connector_of(context, node) if isinstance(node, nodes.Barrel) else Connector(node.text)
        fields["fits"] = (*fields.get("fits", ()), fits)
    elif isinstance(fact, nodes.StripBack):
        fields["strip_back_mm"] = tuple(context.shared_values(THIN, fact.jacket, fact.screen, fact.core))
    elif isinstance(fact, nodes.Carries):
        fields["signal"] = fact.signal.text
    elif isinstance(fact, nodes.Colour):
        fields["colour"] = fact.code.text
    elif isinstance(fact, nodes.Conductors | nodes.Poles):
        field = "conductors" if isinstance(fact, nodes.Conductors) else "poles"
        fields[field] = context.count(fact.number, "number of conductors", 1, 50)
    elif isinstance(fact, nodes.Mating):
        fields["mates"] = fact.kind.text
    elif isinstance(fact, nodes.Cycles):
        fields["cycles"] = context.count(fact.number, "number of cycles", 1, 10_000_000)
    elif isinstance(fact, nodes.Price):
        fields["price"] = money(fact.amount, context.report, known)
    elif isinstance(fact, nodes.AtPanel):
        fields["soldered"] = True


def _area(context: Context, fact: nodes.Conductor, known: Any) -> Any:
    """A conductor's copper in mm²; a gauge by d = 0.127 mm × 92^((36 − n)/39) (ASTM B258, from memory)."""
    if fact.amount.unit is None or fact.amount.unit.text.lower() != "awg":
        return context.amount(fact.amount, AREA, known)
    gauge = context.amount(fact.amount, GAUGE, known)
    if gauge is None:
        return None
    diameter = 0.127 * 92 ** ((36 - gauge.value) / 39)
    return gauge.replace(value=3.141592653589793 / 4 * diameter**2)
