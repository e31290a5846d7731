"""Control connections and leads -> the table of expression and switch leads: what each contact carries."""

from __future__ import annotations

from rigc.analysis.control.control_wiring import ControlLink, control_links, is_expression, wiring
from rigc.analysis.leads.conductors_of_lead import lead_conductors
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.diagnostics.decimals import decimals
from rigc.facts.leads import EXPRESSION_POLES
from rigc.model.rig import Rig
from rigc.model.ways.conductors import conducting_paths, named
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.traced.figure import Lacking

_COLUMNS = (
    Column("lead"),
    Column("from"),
    Column("to"),
    Column("kind"),
    Column("jacks"),
    Column("wired"),
    Column("tip of end B", key="tip"),
    Column("ring of end B", key="ring"),
    Column("sleeve"),
    Column("track", "kΩ", key="track"),
    Column("conductors"),
    Column("length", "mm", number=True),
)


def control_leads_table(rig: Rig, leads: Leads, lengths: CableLengths) -> Table:
    """A row for each expression and switch lead, in the order of the source."""
    marks = {frozenset((lead.start, lead.end)): lead for lead in leads.all if lead.signal == "control"}
    rows = tuple(_row(rig, link, marks.get(frozenset((link.start, link.end))), lengths) for link in control_links(rig))
    return Table("control_leads", "Expression and switch leads", _COLUMNS, rows, empty="", tick=bool(rows))


def _row(rig: Rig, link: ControlLink, lead: Lead | None, lengths: CableLengths) -> Row:
    expression = is_expression(link.there)
    contacts = (contact for contact in (link.here.contact, link.there.contact) if contact)
    switch = ", ".join(("switch line", *dict.fromkeys(contacts)))
    mark = "ENDS DIFFER" if link.differences else ""
    return Row(
        (
            Cell("" if lead is None else lead.mark, strong=True),
            Cell(str(link.start)),
            Cell(str(link.end)),
            Cell(f"expression, {link.there.wiper}" if expression else switch, mark=mark),
            Cell(f"{named(link.here.connector)} to {named(link.there.connector)}"),
            _wired(rig, lead),
            *map(Cell, wiring(link.there)),
            _track(link),
            _conductors(rig, lead, expression),
            _length(lead, lengths),
        )
    )


def _wired(rig: Rig, lead: Lead | None) -> Cell:
    return Cell("") if lead is None else Cell(lead_conductors(rig, lead), strong=lead.make.special)


def _track(link: ControlLink) -> Cell:
    facts = [fact for fact in (link.here.track_ohm, link.there.track_ohm) if fact is not None]
    told = " to ".join(dict.fromkeys(decimals(fact.value / 1000) for fact in facts))
    tapers = dict.fromkeys(jack.taper for jack in (link.here, link.there) if jack.taper is not None)
    told = " ".join(filter(None, (told, " to ".join(tapers))))
    return Cell(told, mark="assumed" if any(fact.assumed for fact in facts) else "")


def _conductors(rig: Rig, lead: Lead | None, expression: bool) -> Cell:
    """How many the cable has, a screen counted; how many are needed beside it where that is more or not known."""
    cable = None if lead is None else rig.stock.cables.get(lead.cable or "")
    have = None if cable is None else conducting_paths(cable)
    need = EXPRESSION_POLES.value if expression else 0
    short = f"{need:g} needed" if expression and (have is None or have < need) else ""
    return Cell("" if have is None else str(have), mark=short or ("not known" if have is None else ""))


def _length(lead: Lead | None, lengths: CableLengths) -> Cell:
    if lead is None:
        return Cell("no lead")
    supplied = lengths.as_supplied[lead.mark]
    if isinstance(supplied, Lacking):
        return Cell("", mark="not known")
    return figure_cell(supplied)
