"""misused-name: a cable or a plug that is made for another signal than the leads that are said to have it."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Label
from rigc.model.resolve.context import Context
from rigc.model.scope import MISUSED, article
from rigc.model.stock import Cable, Stock
from rigc.model.things import Supply
from rigc.model.wishes import Connection, LeadFacts
from rigc.syntax import nodes
from rigc.syntax.nodes import Word

_SERVES = {"control": ("control", "audio", "midi"), "mains": ("ac",)}
"""What a cable may be declared to carry, by the lead's signal: a switch works over any screened cable (whether an expression
lead has conductors enough is two-conductor-expression's to judge), and mains flex carries a.c."""


def cable_signals(
    context: Context,
    leads: tuple[LeadFacts, ...],
    connections: tuple[Connection, ...],
    stock: Stock,
    supplies: dict[str, Supply],
) -> None:
    """Reports every cable that is named for a lead, for a signal or for an instrument's lead, and carries something else; and every plug
    that is chosen for all leads of a signal, and fits no jack of it."""
    cables = stock.cables
    joined = {(each.start, each.end): each.signal for each in connections}
    signals = {lead.mark: joined.get((lead.start, lead.end)) or _fed(lead, supplies) for lead in leads}
    for node in (item for block in context.of(nodes.LeadsBlock) for item in block.items):
        if isinstance(node, nodes.StockChoice):
            _judge(context, node.cable, node.signal.text, "", cables)
        elif isinstance(node, nodes.PlugChoice):
            _plug(context, node, stock)
        elif isinstance(node, nodes.Lead) and node.cable is not None and node.mark.text in signals:
            _judge(context, node.cable, signals[node.mark.text], node.mark.text, cables)
    sources: list[nodes.Instrument | nodes.SoundSource] = [
        *context.of(nodes.Instrument),
        *context.of(nodes.SoundSource),
    ]
    for block in sources:
        for item in block.items:
            fact = item.fact if isinstance(item, nodes.Sourced) else item
            if isinstance(fact, nodes.GuitarLead | nodes.PlainLead):
                _judge(context, fact.cable, "audio", block.name.text, cables)


_LOW_VOLTAGE = ("barrel", "mini-jack", "snap", "usb", "din")
_FITTED = {
    "audio": ("ts", "trs", "mini-trs", "xlr", "din"),
    "dc": _LOW_VOLTAGE,
    "ac": _LOW_VOLTAGE,
    "midi": ("din", "mini-trs", "trs", "ts"),
    "control": ("ts", "trs", "mini-trs", "xlr", "din"),
}
"""The kinds of jack that leads of a signal go into: those which the language has for it."""


def _plug(context: Context, node: nodes.PlugChoice, stock: Stock) -> None:
    plug, kinds = stock.plugs.get(node.plug.text), _FITTED.get(node.signal.text, ())
    if plug is None or not plug.fits or not kinds or any(each.kind in kinds for each in plug.fits):
        return
    fitting = next((each.name for each in stock.plugs.values() if any(it.kind in kinds for it in each.fits)), None)
    context.report(
        MISUSED.at(
            node.plug.span,
            f"'{plug.name}' fits {' and '.join(map(str, plug.fits))}, into which {article(node.signal.text)} lead does not go",
            subject=(plug.name,),
            label=f"a plug of {node.signal} leads goes here",
            also=(Label(plug.declared, "declared here"),),
            help=f"write '{fitting}'" if fitting else f"declare a plug for {node.signal} leads, and name it",
        )
    )


def _fed(lead: LeadFacts, supplies: dict[str, Supply]) -> str:
    """What the outlet gives from which a lead comes."""
    ends = (supplies[port.thing].outlet(port.jack) for port in (lead.start, lead.end) if port.thing in supplies)
    outlet = next((each for each in ends if each is not None), None)
    return outlet.ratings[0].current if outlet is not None and outlet.ratings else "dc"


def _judge(context: Context, name: Word, signal: str, of: str, cables: dict[str, Cable]) -> None:
    cable = cables.get(name.text)
    if cable is None or cable.signal is None or cable.signal in _SERVES.get(signal, (signal,)):
        return
    lead = f"the lead of '{of}'" if of[:1].islower() else of
    used = f"but {lead} carries {signal}" if of else f"and is chosen here for all {signal} leads"
    fitting = next((each.name for each in cables.values() if each.signal == signal), None)
    context.report(
        MISUSED.at(
            name.span,
            f"'{cable.name}' is {article(cable.signal)} cable, {used}",
            subject=(cable.name, *((of,) if of else ())),
            label=f"{article(signal)} cable goes here",
            also=(Label(cable.declared, f"declared here: carries {cable.signal}"),),
            help=f"write '{fitting}'" if fitting else f"declare a cable that carries {signal}, and name it",
        )
    )
