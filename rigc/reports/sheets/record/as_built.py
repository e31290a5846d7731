"""The board as built: what was measured and changed on it, against the design."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.model.records import AsBuilt
from rigc.model.rig import Rig
from rigc.reports.content import Block, NoSheet, Paragraph, Sheet
from rigc.reports.revision.built_leads import lead_table, not_measured
from rigc.reports.revision.change_table import board_words, change_table
from rigc.reports.revision.swap_tables import swap_table

_READING = Paragraph(
    "reading",
    (
        "A lead may stay if it is long enough for its route with the least slack, and not so long that the rest becomes a coil: "
        "that window is what it may be. Plugs are those at its first and second end.",
        "The next revision is compared with this board, not with the drawing of it.",
        "Computed from the facts entered; verify by measurement; the builder is responsible for the rig as built.",
    ),
    heading="How to read it",
)


def as_built(rig: Rig, leads: Leads, lengths: CableLengths, power: PowerAssignment) -> Sheet | NoSheet:
    """One part for each as-built block; no sheet where nothing was built yet."""
    if not rig.as_built:
        return NoSheet(
            "as-built", "The board as built", "No as-built block says how the board differs from the design."
        )
    parts = [
        block
        for number, built in enumerate(rig.as_built, 1)
        for block in _part(rig, built, f"-{number}" if number > 1 else "", leads, lengths)
    ]
    swapped = swap_table(rig, leads, power)
    blocks = (
        *parts,
        *((change_table(rig),) if rig.head.changes else ()),
        *(() if swapped is None else (swapped,)),
        _READING,
    )
    return Sheet("as-built", "The board as built", "builder, bench and tech", blocks, landscape=True)


def _part(rig: Rig, built: AsBuilt, suffix: str, leads: Leads, lengths: CableLengths) -> tuple[Block, ...]:
    which = f"As-built block of revision {built.revision}; this sheet is of revision {rig.head.letter}."
    rest = not_measured(built, f"not-measured{suffix}", leads)
    return (
        Paragraph(f"state{suffix}", (board_words(rig.head, built),), heading=which),
        *((Paragraph(f"notes{suffix}", built.notes, kind="note"),) if built.notes else ()),
        lead_table(built, f"leads{suffix}", leads, lengths),
        *(() if rest is None else (rest,)),
    )


PLACE = 6
SHEET = as_built
