"""Power table: by outlet, supply, unit and lead, with a one-line drawing."""

from __future__ import annotations

from rigc.analysis.deck.zones import Zones
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import outlet_at
from rigc.analysis.leads.labels import Labels
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.analysis.mains.fuses import Fuses
from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.analysis.power.battery_lives import BatteryLives
from rigc.analysis.power.lead_drops import LeadDrops
from rigc.analysis.power.pack_lives import PackLives
from rigc.analysis.power.power_network import PowerNetwork
from rigc.analysis.power.shared_returns import SharedReturns
from rigc.analysis.power.supply_intakes import SupplyIntakes
from rigc.analysis.power.supply_totals import SupplyTotals
from rigc.analysis.power.unit_powers import UnitPowers
from rigc.analysis.revision.rework import Rework
from rigc.model.rig import Rig
from rigc.reports.content import Paragraph, Sheet
from rigc.reports.drawings.power.one_line import one_lines
from rigc.reports.front.cautions import care
from rigc.reports.power.batteries import battery_table
from rigc.reports.power.by_outlet import by_outlet
from rigc.reports.power.by_supply import by_supply
from rigc.reports.power.by_unit import by_unit
from rigc.reports.power.choice_words import choice_words
from rigc.reports.power.lead_drops import conductor_notes, drop_table, network_table, return_table, shield_notes
from rigc.reports.power.packs import pack_table
from rigc.reports.power.power_wishes import power_wishes
from rigc.reports.power.special_leads import special_table
from rigc.reports.revision.changed_rows import changed, marked


def power_table(
    rig: Rig,
    power: PowerAssignment,
    powers: UnitPowers,
    totals: SupplyTotals,
    mains: MainsLoads,
    fuses: Fuses,
    leads: Leads,
    drops: LeadDrops,
    network: PowerNetwork,
    returns: SharedReturns,
    special: SpecialLeads,
    labels: Labels,
    lives: BatteryLives,
    packs: PackLives,
    intakes: SupplyIntakes,
    zones: Zones,
    rework: Rework,
) -> Sheet:
    """The sheet; what is not known is left as `?`, a figure that leans on an assumed current is marked."""
    new = changed(rework)
    blocks = (
        *one_lines(rig, power, totals, mains, leads),
        marked(by_outlet(rig, power, leads, zones), {"supply.outlet": new.outlets}),
        by_supply(totals, intakes, fuses),
        marked(by_unit(powers, leads, drops, zones), {"unit": new.feeds}),
        *_notes(rig, power),
        power_wishes(rig.power),
        choice_words(power),
        special_table(special, labels),
        drop_table(drops),
        conductor_notes(drops),
        network_table(network),
        shield_notes(network),
        return_table(returns),
        battery_table(rig, lives),
        pack_table(packs),
        care("power-table", rig, power, "before you plug in", "cautions"),
    )
    shown = tuple(block for block in blocks if block is not None)
    return Sheet("power-table", "Power table", "tech", shown, landscape=True)


def _notes(rig: Rig, power: PowerAssignment) -> tuple[Paragraph, ...]:
    turned = [feed.unit for feed in power.feeds if feed.reversed]
    joined = [feed for feed in power.feeds if feed.how in ("series", "parallel")]
    lines = [f"{name}: reversing lead; mark both of its ends." for name in turned]
    lines += [f"{feed.unit}: {feed.how} lead; only as the supply's maker allows, labelled as such." for feed in joined]
    lines += [
        f"{port}: leaves its maker at {outlet.ratings[0].volts.value:g} V; set it to {load.volts:g} V and tape the switch."
        for port, load in power.loads.items()
        if load.units and (outlet := outlet_at(rig, port)) is not None and outlet.ratings[0].volts.value != load.volts
    ]
    return (Paragraph("settings", tuple(lines), heading="Before plugging in"),) if lines else ()


PLACE = 1
SHEET = power_table
