"""Blocks of jack panels -> panels, their jacks at points of a deck."""

from __future__ import annotations

from rigc.model.jacks import Connector
from rigc.model.resolve.context import Context, Item, items_of
from rigc.model.resolve.things.contradictions import check_contacts
from rigc.model.resolve.things.jacks import appliance_inlet, lay_levels, pairs_of
from rigc.model.resolve.things.things import papers_of
from rigc.model.things import Panel, PanelJack
from rigc.model.units.measures import MASS, PANEL_AT, UP
from rigc.syntax import nodes


def panels(context: Context) -> dict[str, Panel]:
    """All jack panels by name."""
    found: dict[str, Panel] = {}
    for block in context.of(nodes.Panel):
        items = items_of(
            context, tuple(i for i in block.items if not isinstance(i, nodes.PanelJack | nodes.PanelInlet)), []
        )
        made = [
            _panel_jack(context, node) for node in block.items if isinstance(node, nodes.PanelJack | nodes.PanelInlet)
        ]
        jacks = _levelled(context, items, made)
        masses = [context.amount(i.fact.amount, MASS, i.provenance) for i in items if isinstance(i.fact, nodes.Mass)]
        found[block.name.text] = Panel(
            block.name.text,
            block.title.value if block.title else "",
            block.name.span,
            context.scopes["deck"].find(block.deck, (), "a deck") if block.deck else None,
            jacks,
            pairs_of(context, items, jacks),
            masses[0] if masses else None,
            papers_of(context, items),
            notes=tuple(i.fact.text.value for i in items if isinstance(i.fact, nodes.Note)),
        )
        context.unsure_if_lost(block.name.text)
    return found


def _levelled(context: Context, items: list[Item], made: list[PanelJack]) -> tuple[PanelJack, ...]:
    """The jacks with their stated levels."""
    by_name = {jack.name: jack for jack in made}
    lay_levels(context, items, by_name)
    return tuple(by_name[jack.name] for jack in made)


def _panel_jack(context: Context, node: nodes.PanelJack | nodes.PanelInlet) -> PanelJack:
    x, y = context.shared_values(PANEL_AT, node.x, node.y)
    audio = isinstance(node, nodes.PanelJack)
    if isinstance(node, nodes.PanelJack):
        check_contacts(context, node)
    return PanelJack(
        node.name.text,
        "panel" if audio else "inlet",
        Connector(node.jack.text) if isinstance(node, nodes.PanelJack) else appliance_inlet(context, node.kind),
        node.name.span,
        height_mm=context.amount(node.height, UP),
        carries=node.carries.text if isinstance(node, nodes.PanelJack) and node.carries else None,
        bushing=node.bushing.text if isinstance(node, nodes.PanelJack) and node.bushing else None,
        x_mm=x,
        y_mm=y,
    )
