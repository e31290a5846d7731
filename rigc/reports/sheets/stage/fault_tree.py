"""Fault tree: silent before the doors open; which lead to plug where, in the order that halves what is left, and what helps."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.zones import Zones
from rigc.analysis.faults.fault_tree import FaultTrees
from rigc.analysis.faults.hearing import Hearings
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.mains.fuses import Fuses
from rigc.model.rig import Rig
from rigc.reports.content import NoSheet, Paragraph, Sheet
from rigc.reports.faults.fault_tables import fault_tables
from rigc.reports.front.cautions import care
from rigc.reports.front.sheet_codes import see

_TOLD = (
    f"One thing is broken; loops are in, leads as on the {see('wiring-sheet')}. What stands in one cell sounds alike whatever is asked: look "
    "for a light that is out, wiggle the plug. What helps was tried in the model, and brings all back where nothing else is said."
)


def fault_tree(rig: Rig, power: PowerAssignment, trees: FaultTrees, zones: Zones, fuses: Fuses) -> Sheet | NoSheet:
    """The tables of each way in which the rig is wired, and what is taken for granted."""
    if not trees.all:
        return NoSheet(
            "fault-tree", "Fault tree", "No instrument of this rig reaches an amp, a desk or an open jack of a panel."
        )
    unsure = dict.fromkeys(
        unit
        for tree in trees.all
        for symptom in tree.symptoms
        for each in symptom.culprits
        for one in each.breaks
        for unit in one.unsure
        if any(unit == lead.start.thing for lead in tree.hookup.leads)
    )
    lines = (
        _TOLD,
        *((f"Not stated what they pass without power, taken to pass nothing: {', '.join(unsure)}.",) if unsure else ()),
    )
    return Sheet(
        "fault-tree",
        "Fault tree",
        "the crew, when it is silent",
        (
            care("fault-tree", rig, power),
            Paragraph("taken", lines),
            *fault_tables(trees.all, zones),
            *_fuses(fuses),
        ),
    )


def _is_heard(hearings: Hearings) -> bool:
    return bool(hearings.all)


def _fuses(fuses: Fuses) -> Iterator[Paragraph]:
    """Where a fuse is stated: which one, and the spares of it."""
    lines = [
        f"{each.thing}{each.at}: {each.fuse.words}; spares: {each.carried}"
        + "".join(f", {spare.bag}" for spare in each.spares if spare.bag)
        for each in fuses.all
    ]
    if lines:
        first = "Mains plug out first. Its fuse may be changed once, by its like, where the holder opens from outside."
        yield Paragraph("fuses", (first, *lines), heading="When all of a supply or an amp is dark")


PLACE = 8
SHEET = fault_tree
THERE = _is_heard
