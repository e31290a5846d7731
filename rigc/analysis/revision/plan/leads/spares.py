"""Spares that the new design carries no longer -> leads that can be put in."""

from __future__ import annotations

from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.analysis.revision.board import Board, BoardLead
from rigc.model.rig import Rig
from rigc.model.stock import Plug


def spare_leads(old: Rig, built: Board, new: Board) -> tuple[BoardLead, ...]:
    """As many of each length as the new design carries fewer. What a source says of a spare is its signal and length:
    its plugs and cable are those that all leads of that signal on the old board have; where these differ, nobody
    can tell."""
    found: list[BoardLead] = []
    for spare in old.spares:
        signal, _, rest = spare.what.partition(" ")
        kinds = _kinds(built, signal, old.stock.plugs)
        if rest != "lead" or spare.length_mm is None or len(kinds) != 1:
            continue
        name = f"{spare.what} {spare.length_mm.value:g} mm"
        free = built.spares.get(name, 0) - new.spares.get(name, 0) - sum(lead.mark == name for lead in found)
        plugs, cable = next(iter(kinds))
        one = BoardLead(name, signal, None, plugs, cable, tenths(spare.length_mm.value), ("", ""))
        found += [one] * max(0, min(spare.count, free))
    return tuple(found)


def _kinds(built: Board, signal: str, plugs: dict[str, Plug]) -> set[tuple[tuple[str | None, str | None], str | None]]:
    """The plugs and cables of a signal's leads that are loose at both ends."""
    return {
        (lead.plugs, lead.cable)
        for lead in built.leads.values()
        if lead.signal == signal
        and not lead.stage
        and not lead.captive
        and not any(plug in plugs and plugs[plug].soldered for plug in lead.plugs)
    }
