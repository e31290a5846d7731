"""The board's leads -> every plug that goes on them, by kind: those fitted here and those that come with their lead:
`flat-angle.to-fit`, `.ready`."""

from __future__ import annotations

from collections import Counter

from rigc.analysis.leads.lead_status import status
from rigc.analysis.leads.leads import Lead, Leads
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.given import mentioned
from rigc.traced.means import found
from rigc.traced.reason import ARITHMETIC
from rigc.traced.units import COUNT


class PlugUse(Record):
    """How many plugs of one kind go on the board's leads: `to_fit` at the bench, and `ready`, on leads that are there or bought."""

    kind: str
    to_fit: Figure
    ready: Figure


class PlugUses(Record):
    """The kinds that the board takes, in the order of the stock."""

    all: tuple[PlugUse, ...]


def plug_uses(rig: Rig, leads: Leads) -> PlugUses:
    """Counts the plugs of each kind."""
    plugs = plugs_on_leads(rig, leads)
    uses = []
    for kind in rig.stock.plugs:
        own = [(lead, status(rig, lead) == "make") for lead, plug in plugs if plug == kind]
        if own:
            fitted, ready = ([lead for lead, made in own if made is making] for making in (True, False))
            uses.append(
                PlugUse(
                    kind,
                    _ends(f"{kind}.to-fit", fitted, "ends of leads made at the bench"),
                    _ends(f"{kind}.ready", ready, "ends of leads that are there or bought"),
                )
            )
    return PlugUses(tuple(uses))


def plugs_on_leads(rig: Rig, leads: Leads) -> list[tuple[Lead, str]]:
    """Every plug on the board's leads; legs of a Y lead have the one at their outlet in common, soldered ends have none."""
    return [
        (lead, plug)
        for lead, ends in leads.plug_ends
        for _, plug in ends
        if plug is not None and not rig.stock.plugs[plug].soldered
    ]


def plugs_of_class(signal: str, plugs: list[tuple[Lead, str]]) -> Figure:
    """How many of these plugs are on leads of a class: `audio.plugs`."""
    own = [(lead, plug) for lead, plug in plugs if lead.signal == signal]
    return _counted(
        f"{signal}.plugs",
        [lead for lead, _ in own],
        [plug for _, plug in own],
        "two a lead; the legs of a Y lead have the one at their outlet in common; soldered and captive ends have none",
    )


def _ends(name: str, own: list[Lead], rule: str) -> Figure:
    return _counted(name, own, [f"on {lead.mark}" for lead in own], rule)


def _counted(name: str, own: list[Lead], words: list[str], rule: str) -> Figure:
    """How many ends of leads these are, a lead once for each of them, summed up by their words."""
    return known_figure(
        name,
        found(len(own), lambda: f"{' + '.join(f'{n} {word}' for word, n in Counter(words).items()) or 0} = {len(own)}"),
        COUNT,
        *(mentioned(each.mark, f"{each.start} -> {each.end}", each.span) for each in dict.fromkeys(own)),
        rule=rule,
        source=ARITHMETIC,
    )


COMPUTE = plug_uses
