"""Crossing list: which leads of unlike classes meet, what lies together, what could be shorter."""

from __future__ import annotations

from rigc.analysis.leads.lengths.cable_routes import CableRoutes
from rigc.analysis.routes.bundles import Bundles
from rigc.analysis.routes.crossings import Crossings
from rigc.analysis.routes.joint_savings import JointSavings
from rigc.model.rig import Rig
from rigc.reports.content import Paragraph, Sheet
from rigc.reports.leads.crossing_tables import bundle_table, crossing_table, joint_table

_READING = Paragraph(
    "reading",
    (
        "At pedal voltages this is good habit, not law: cross at 60 to 90°, run beside a DC lead for at most 200 mm "
        "within 25 mm, and beside an AC lead not at all within 50 mm.",
        "It matters most before the first buffer and before high gain. Only leads on one side of the deck are compared.",
        "What is to be looked at stands first. Leads that cross an audio lead at one angle, and run nowhere beside it, share a row.",
        "Parallel: all runs nearer than that, added up. Distance: the nearest of them. An angle of 0 says that one lead lies on the other.",
        "Ways are reckoned along x and y from the places entered; look at the board before you tie anything.",
    ),
    heading="How to read it",
)
_LACING = Paragraph(
    "lacing",
    (
        "Wrap bundles each 80 to 120 mm, the first wrap at most 50 mm behind a plug; never pull ties tight on low-loss cable.",
        "Bend no lead tighter than 4 times its outer diameter, 8 times where it moves.",
        "Keep mains leads out of all bundles; what is wired to the mains is a competent person's work, to the local code.",
    ),
    heading="Lacing",
)


def crossing_list(
    rig: Rig, crossings: Crossings, bundles: Bundles, savings: JointSavings, routes: CableRoutes
) -> Sheet:
    """The sheet for the bench."""
    blocks = (
        _READING,
        crossing_table(crossings),
        bundle_table(rig, bundles),
        _LACING,
        joint_table(savings, routes),
    )
    return Sheet("crossing-list", "Crossing and separation list", "builder and bench", blocks)


PLACE = 4
SHEET = crossing_list
