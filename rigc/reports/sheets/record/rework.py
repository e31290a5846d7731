"""Rework: what the crew does to make the board of the revision before into this one, on one page."""

from __future__ import annotations

from rigc.analysis.deck.zones import Zones
from rigc.analysis.power.joint_loads import JointLoads
from rigc.analysis.previous import Previous, follows
from rigc.analysis.results import Results
from rigc.analysis.revision.plan.bench_phases import DEAD
from rigc.analysis.revision.plan.leads.plan import BIN
from rigc.analysis.revision.rework import Rework
from rigc.facts.rework import KEPT_SHOWS
from rigc.model.rig import Rig
from rigc.reports.content import Block, NoSheet, Paragraph, Sheet
from rigc.reports.revision.rework.bring import bring_table, strip_need
from rigc.reports.revision.rework.folder import folder_lines
from rigc.reports.revision.rework.leads import advice, labels_table, leads_table
from rigc.reports.revision.rework.outlets import outlets_table, strips_table
from rigc.reports.revision.rework.player import mass_line, player_notes
from rigc.reports.revision.rework.programs import programs_table
from rigc.reports.revision.rework.steps import MAINS_PART, POWER_OFF, steps_table, times, waits
from rigc.reports.revision.rework.tests import not_needed, tests_table

NAME, TITLE = "rework", "Rework"


def rework(results: Results, previous: Previous, plan: Rework, loads: JointLoads, zones: Zones) -> Sheet | NoSheet:
    """What the player notices, parts, time, steps in bench order; leads, outlets, strips, labels, presets; what
    to test again; the way back, the sheets to swap, and a line to sign."""
    if previous.results is None:
        return NoSheet(NAME, TITLE, _why_not(results.rig))
    old = previous.results.get(Zones)
    blocks: list[Block] = [
        player_notes(previous, previous.results, results, plan),
        _time(plan, results.rig),
        bring_table(plan),
        _power(plan),
        steps_table(plan, old, zones),
        leads_table(plan, old, zones),
        outlets_table(plan, loads, zones),
        strips_table(plan, strip_need(plan), old, zones),
        labels_table(plan),
        programs_table(plan),
        tests_table(plan, results.rig),
        not_needed(plan),
        _way_back(plan),
        folder_lines(previous.results, results, previous),
        _signed(),
    ]
    return Sheet(NAME, TITLE, "the crew", tuple(blocks))


def _why_not(rig: Rig) -> str:
    if rig.head.follows is None:
        return "This revision states none that it follows, so there is nothing to rework."
    return f"Revision {rig.head.follows[0]}, which this one follows, can't be compared with: the findings say why."


def _time(plan: Rework, rig: Rig) -> Paragraph:
    lines = [*_changes(plan, rig), times(plan), waits(plan), mass_line(plan)]
    if not plan.programs and not plan.channels:
        lines.append("No preset, song or channel is to be entered.")
    lines += advice(plan)
    heading = f"From {plan.before} as built to {plan.after}"
    return Paragraph("time", tuple(line for line in lines if line), heading=heading)


def _changes(plan: Rework, rig: Rig) -> list[str]:
    """The changes of the rig block by the numbers (`ch.`) that stand in the tables, and which of them the board has
    already."""
    done = {piece.change for piece in plan.steps if piece.done}
    return [
        f"Change {each.number} ({each.cause}){' DONE' if each.number in done else ''}: {each.text}."
        for each in rig.head.changes
    ]


def _way_back(plan: Rework) -> Paragraph:
    away = [unit.name for unit in plan.units if unit.there_before and not unit.there_after]
    binned = [lead.mark for lead in plan.leads if lead.after is None and lead.verdict == BIN]
    away += [lead.mark for lead in plan.leads if lead.after is None and lead.verdict != BIN]
    away += [a.mark for a in plan.adaptors if a.after is None]
    away += [f"deck {each.name}, {each.before} mm" for each in plan.fittings if each.kind == "deck" and each.before]
    away += [each.name for each in plan.fittings if each.kind == "jack" and each.before and not each.after]
    away += ["the old labels"] if any(label.destroy for label in plan.labels) else []
    if not away and not any(step.phase in DEAD for step in plan.steps):
        return Paragraph("way-back", ("Nothing came off: there is nothing to keep.",), heading=_back(plan))
    what = " and ".join(filter(None, (", ".join(away[:-1]), *away[-1:])))
    return Paragraph(
        "way-back",
        (
            f"Keep {what} in one bag, {KEPT_SHOWS.value:g} shows long." if what else "Nothing is left over to keep.",
            f"Back to {plan.before}: the steps from last to first, by the sheets of {plan.before}.",
            *([_binned(binned)] if binned else ()),
        ),
        heading=_back(plan),
    )


def _binned(marks: list[str]) -> str:
    many = len(marks) > 1
    listed = f"{', '.join(marks[:-1])} and {marks[-1]}" if many else marks[0]
    return f"Binned, as {'they' if many else 'it'} would serve nowhere on this board: {listed}. For the way back, make anew."


def _back(plan: Rework) -> str:
    return f"The way back to {plan.before}"


def _power(plan: Rework) -> Paragraph:
    """The caution at the head of the steps, where anything is unplugged."""
    mains = any(fitting.mains for fitting in plan.fittings)
    if not any(step.phase in DEAD for step in plan.steps):
        return Paragraph("power-off", ("Nothing is unplugged: the power may stay on.",))
    if not mains:
        return POWER_OFF
    paragraph: Paragraph = POWER_OFF.replace(lines=(*POWER_OFF.lines, MAINS_PART))
    return paragraph


def _signed() -> Paragraph:
    line = f"{'_' * 26}, date {'_' * 12}"
    return Paragraph("signed", (f"done by {line}; tested by {line}",))


PLACE = 12
SHEET = rework
THERE = follows
