"""The cable before the first active input -> what of it guesses drive near its limit."""

from __future__ import annotations

from rigc.analysis.findings.near_limit import Guess, NearLimit, driven, guessed
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section_leads import SectionLead
from rigc.facts.loading import CABLE_LIMIT
from rigc.model.rig import Rig
from rigc.traced.given import limit
from rigc.traced.means import total_known


def cables_near(rig: Rig, leads: Leads, loading: Loading) -> list[NearLimit]:
    """The most cable that each passive instrument drives in any state, against the limit."""
    most = float(limit(rig, "capacitance", CABLE_LIMIT))
    by_mark = {lead.mark: lead for lead in leads.all}
    found = []
    for name in rig.instruments:
        mine = [section for section in loading.played if section.from_pickup and section.source.thing == name]
        worst = max(mine, key=lambda section: section.known_pf, default=None)
        if worst is None:
            continue
        guesses = {lead.mark: _behind(rig, name, lead, by_mark.get(lead.mark)) for lead in worst.leads}
        part = total_known(lead.pf for lead in worst.leads if guesses[lead.mark])
        if driven(worst.known_pf, most, part):
            each_once = {guess.fact.span: guess for several in guesses.values() for guess in several}
            what = f"the cable that '{name}' drives"
            found += [NearLimit(guess, what, worst.known_pf, most, "pF") for guess in each_once.values()]
    return found


def _behind(rig: Rig, instrument: str, lead: SectionLead, stated: Lead | None) -> list[Guess]:
    """The guesses behind a lead's capacitance: its length, where it exists, and that of a metre of its cable."""
    own = rig.instruments[instrument]
    length = own.lead_mm if stated is None or stated.existing_mm is None else stated.existing_mm
    found = []
    if guessed(length) and length is not None and length.value == lead.length:
        found.append(Guess(lead.mark if stated else instrument, f"the length of {lead.mark}", length))
    cable = rig.stock.cables.get((stated.cable if stated is not None else own.lead_cable) or "")
    per_m = None if cable is None else cable.capacitance_pf_per_m
    if cable is not None and per_m is not None and guessed(per_m):
        found.append(Guess(cable.name, f"the capacitance of '{cable.name}'", per_m))
    return found
