"""Blocks of cable, plugs and strips -> the stock."""

from __future__ import annotations

from math import pi
from typing import Any

from rigc.diagnostics.diagnostic import Label
from rigc.facts.conductors import COPPER_DENSITY
from rigc.model.jacks import Connector
from rigc.model.resolve.context import Context, Item
from rigc.model.resolve.things.jacks import connector_of
from rigc.model.resolve.things.known_things import KnownThings
from rigc.model.resolve.things.premade import premade
from rigc.model.resolve.things.things import Laid, inherited, made_of_blocks
from rigc.model.scope import UNKNOWN
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.stock import Cable, Plug, Stock, Strip
from rigc.model.units.measures import (
    AREA,
    GAUGE,
    MASS,
    MASS_PER_LENGTH,
    OUTER,
    PER_LENGTH,
    PLUG,
    PULL,
    ROLL,
    THIN,
    Measure,
)
from rigc.model.units.quantities import money
from rigc.syntax import nodes
from rigc.syntax.nodes import Node, Word

COLOURS = ("BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK", "GD", "TQ", "SR")
"""Codes of IEC 60757, from memory; of two colours both stand one behind the other, as GNYE."""

AMOUNTS: dict[type[Node], tuple[str, Measure]] = {
    nodes.StandsOut: ("stand_out_mm", THIN),
    nodes.Bend: ("bend_mm", THIN),
    nodes.Leaves: ("exit_mm", THIN),
    nodes.Wide: ("width_mm", PLUG),
    nodes.Tall: ("height_mm", PLUG),
    nodes.CutIn: ("cut_in_mm", THIN),
    nodes.PerLength: ("capacitance_pf_per_m", PER_LENGTH),
    nodes.Outer: ("outer_mm", OUTER),
    nodes.Pull: ("pull_kpa", PULL),
    nodes.Roll: ("roll_mm", ROLL),
}


def stock(context: Context, known: KnownThings) -> Stock:
    """All stock of the sources. What is `known` is not made again."""
    return Stock(
        _family(context, known, nodes.Cable, Cable),
        _family(context, known, nodes.Plug, Plug),
        _family(context, known, nodes.Strip, Strip),
        *premade(context),
    )


def _family(context: Context, known: KnownThings, kind: type[Any], made: type[Any]) -> dict[str, Any]:
    blocks = {node.name.text: node for node in context.of(kind)}
    found = {}
    laid = Laid()
    for name, block in blocks.items():
        made_of = made_of_blocks(block, blocks)
        thing = known.of(made_of)
        if thing is None:
            before = context.said
            thing = _made(context, block, made, inherited(context, block, blocks, laid=laid))
            if context.said == before:
                known.keep(made_of, thing)
        found[name] = thing
    return found


def _made(context: Context, block: Any, made: type[Any], items: list[Item]) -> Any:
    name, fields = block.name.text, dict[str, Any]()
    for item in items:
        _fact(context, item, made, fields)
    if made is Plug:
        _stands_out(context, name, fields)
        _leaves(context, name, fields)
    elif made is Cable:
        _conductors_inside(context, name, fields)
        _copper_weighs(context, name, fields)
        _no_heavier_than_copper(context, name, fields)
    return made(name, block.title.value if block.title else "", block.name.span, **fields)


def _stands_out(context: Context, name: str, fields: dict[str, Any]) -> None:
    """A finding where a plug ends with the side of the unit, as only a soldered end does."""
    out = fields.get("stand_out_mm")
    if out is not None and out.value == 0 and not fields.get("soldered"):
        context.report(
            WRONG_QUANTITY.at(
                out.span,
                f"'{name}' is a plug and stands out {out.typed}",
                label="only a soldered end does not stand out",
                help="measure how far it stands out from the side of the unit, or say that the end is `soldered`",
            )
        )


def _leaves(context: Context, name: str, fields: dict[str, Any]) -> None:
    """A finding where the cable leaves a plug beyond its end, or a soldered end stands out as a plug does."""
    out, leaves = fields.get("stand_out_mm"), fields.get("exit_mm")
    if out is not None and leaves is not None and leaves.value > out.value:
        message = f"the cable leaves '{name}' {leaves.typed} from the unit, and the plug stands out {out.typed}"
        _can_not_be(context, leaves, out, message, "measure both from the side of the unit")
    if out is not None and out.value > 0 and fields.get("soldered"):
        message = f"'{name}' is soldered and stands out {out.typed}; where an end is soldered there is no plug"
        _can_not_be(context, out, out, message, "delete `soldered`, or what only a plug has")


def _conductors_inside(context: Context, name: str, fields: dict[str, Any]) -> None:
    """A finding where a cable's conductors are more copper than its outer size holds (arithmetic: n · A at most π/4 · d²)."""
    area, outer, count = fields.get("area_mm2"), fields.get("outer_mm"), fields.get("conductors") or 1
    if area is not None and outer is not None and count * area.value > pi / 4 * outer.value**2:
        message = f"{count} × {area.typed} of copper is more than a cable of {outer.typed} holds: '{name}'"
        help = "measure both again; a gauge is written so: conductor 24 awg"
        _can_not_be(context, area, outer, message, help)


def _copper_weighs(context: Context, name: str, fields: dict[str, Any]) -> None:
    """A finding where a metre of cable weighs less than the copper in it (arithmetic: n · A of 8.89 g/cm³)."""
    area, mass, count = fields.get("area_mm2"), fields.get("mass_g_per_m"), fields.get("conductors") or 1
    if area is not None and mass is not None and mass.value < (copper := count * area.value * COPPER_DENSITY.value):
        message = f"a metre of '{name}' weighs {mass.typed}, and {count} × {area.typed} of copper alone {copper:.4g} g"
        _can_not_be(context, mass, area, message, "weigh a metre again, or correct the size of its conductors")


def _no_heavier_than_copper(context: Context, name: str, fields: dict[str, Any]) -> None:
    """A finding where a metre of cable weighs more than a bar of copper as thick (arithmetic: π/4 · d² of 8.89 g/cm³)."""
    mass, outer = fields.get("mass_g_per_m"), fields.get("outer_mm")
    if mass is None or outer is None:
        return
    bar = pi / 4 * outer.value**2 * COPPER_DENSITY.value
    if mass.value > bar:
        message = f"a metre of '{name}' weighs {mass.typed}, and a bar of copper of {outer.typed} {bar:.4g} g"
        _can_not_be(context, mass, outer, message, "weigh a metre again, or measure how thick the cable is")


def _can_not_be(context: Context, here: Any, other: Any, message: str, help: str) -> None:
    if any(each.span is here.span for each in context.findings):  # of what it is like
        return
    also = (Label(other.span, "with this"),) if other is not here else ()
    context.report(WRONG_QUANTITY.at(here.span, message, label="this can't be", also=also, help=help))


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
        fields["strip_back_mm"] = _strip_back(context, fact)
    elif isinstance(fact, nodes.Carries):
        fields["signal"] = fact.signal.text
    elif isinstance(fact, nodes.Colour):
        fields["colour"] = _colour(context, fact.code)
    elif isinstance(fact, nodes.Conductors | nodes.Poles):
        field = "conductors" if isinstance(fact, nodes.Conductors) else "poles"
        fields[field] = context.count(fact.number, f"number of {field}", 1, 50)
    elif isinstance(fact, nodes.Mating):
        fields["mates"] = fact.kind.text
    elif isinstance(fact, nodes.Cycles):
        fields["cycles"] = context.count(fact.number, "number of cycles", 1, 10_000_000)
    elif isinstance(fact, nodes.Price):
        fields["price"] = money(fact.amount, context.report, known)
    elif isinstance(fact, nodes.AtPanel):
        fields["soldered"] = True


def _colour(context: Context, code: Word) -> str:
    """The code of one or more colours; a finding where a pair of its letters is none."""
    pairs = [code.text[at : at + 2] for at in range(0, len(code.text), 2)]
    if not set(pairs) <= {*COLOURS}:
        context.report(
            UNKNOWN.at(
                code.span,
                f"no colour has the code '{code.text}'",
                subject=(code.text,),
                label="two capital letters for each colour (IEC 60757)",
                help=f"write one of {', '.join(COLOURS)}",
            )
        )
    return code.text


def _strip_back(context: Context, fact: nodes.StripBack) -> tuple[float, ...]:
    """Jacket, screen and core; a finding where more of an inner layer is bared than of the jacket around it."""
    jacket, screen, core = found = tuple(context.shared_values(THIN, fact.jacket, fact.screen, fact.core))
    if core == 0 or jacket < max(screen, core):
        context.report(
            WRONG_QUANTITY.at(
                fact.span,
                f"jacket {jacket:g} mm, screen {screen:g} mm, core {core:g} mm: each layer ends no farther back than the one around it",
                label="all are measured from the end of the cable",
                help="measure each from the end of the cable: jacket ___ mm screen ___ mm core ___ mm",
            )
        )
    return found


def _area(context: Context, fact: nodes.Conductor, known: Any) -> Any:
    """A conductor's copper in mm²; a gauge by d = 0.127 mm × 92^((36 − n)/39) (ASTM B258, from memory)."""
    if fact.amount.unit is None or fact.amount.unit.text.lower() != "awg":
        return context.amount(fact.amount, AREA, known)
    gauge = context.amount(fact.amount, GAUGE, known)
    if gauge is None:
        return None
    diameter = 0.127 * 92 ** ((36 - gauge.value) / 39)
    return gauge.replace(value=3.141592653589793 / 4 * diameter**2)
