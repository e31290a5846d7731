"""Mass and balance: what each part weighs, where the board balances, and how far it is from the limits."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.weight.case_loads import CaseLoads
from rigc.analysis.weight.mass import Mass
from rigc.model.rig import Rig
from rigc.reports.content import Block, Paragraph, Sheet
from rigc.reports.deck.chosen_places import chosen_note
from rigc.reports.front.cautions import care
from rigc.reports.weight.item_table import balance_table, item_table
from rigc.reports.weight.limit_table import limit_table, load_table

_READING = Paragraph(
    "reading",
    (
        "x and y count from the deck's front-left corner, z from its top face upwards, all to the middle of a body. "
        "Feet of units and the thickness of strips are not counted.",
        "Leads that stay on the board, panels and strips as laid are in the sum; they are spread, and have no middle. "
        "Stage leads, spares and what stands beside the board are not counted: what of them goes into a case comes on top.",
        "That a body balances in its middle is taken for granted (common practice, no source): tilt the board to verify.",
    ),
    heading="How to read it",
)


def mass_and_balance(rig: Rig, power: PowerAssignment, mass: Mass, loads: CaseLoads) -> Sheet:
    """Limits first, because they decide; centre of gravity, items, sums."""
    chosen = chosen_note(rig, (item.name for item in mass.items))
    blocks: tuple[Block, ...] = (
        *_not_weighed(mass),
        care("mass-and-balance", rig, power, name="cautions"),
        limit_table(loads),
        *load_table(loads),
        balance_table(mass),
        item_table(rig, mass),
        *chosen,
        _READING,
    )
    return Sheet("mass-and-balance", "Mass and balance", "the builder, the crew", blocks)


def _not_weighed(mass: Mass) -> tuple[Paragraph, ...]:
    if not mass.missing:
        return ()
    return (Paragraph("not-weighed", (f"Not weighed, and not in the sums: {', '.join(mass.missing)}.",)),)


PLACE = 5
SHEET = mass_and_balance
