"""Rework -> leads that are not left as they are, with verdict and window; and the labels to print and to destroy.

Verdicts and what they mean stand with `analysis.revision.lead_plan`.
"""

from __future__ import annotations

from rigc.analysis.deck.zones import Zones
from rigc.analysis.revision.board import BoardLead
from rigc.analysis.revision.plan.leads.plan import KEEP, NEW, REMAKE, LeadPlan
from rigc.analysis.revision.rework import Rework
from rigc.diagnostics.figures import millimetres, plain
from rigc.facts.leads import LONGEST_MORE_MM, LONGEST_SHARE
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.deck.zone_column import ZONE
from rigc.reports.revision.rework.words import CHANGE, change_cell, first_cell, from_to, tidy

_LEADS = (
    Column("lead"),
    Column("what becomes of it", key="verdict"),
    Column("old → new end", key="ends"),
    ZONE,
    Column("has", "mm", number=True, key="length"),
    Column("may have", "mm", number=True, key="window"),
    Column("plugs"),
    CHANGE,
)
_LABELS = (
    Column("label"),
    Column("print, end A", key="print_a"),
    Column("print, end B", key="print_b"),
    Column("destroy"),
)


def leads_table(rework: Rework, old: Zones, new: Zones) -> Table:
    """A row for each lead that a hand touches, and how many stay as they are."""
    touched = [plan for plan in rework.leads if plan.touched]
    left = sum(not plan.touched for plan in rework.leads)
    share, more = plain(LONGEST_SHARE.value), plain(LONGEST_MORE_MM.value)
    window = f"kept from route + least slack to {share} × route + {more} mm"
    caption = f"Leads, {window}{f'; the other {left} stay as they are' if left else ''}"
    return tidy(
        Table(
            "leads",
            caption,
            _LEADS,
            tuple(_row(plan, old, new) for plan in touched),
            empty="every lead stays as it is",
            tick=True,
        ),
        2,
    )


def labels_table(rework: Rework) -> Table:
    """A row for each lead and adaptor with a label to print or to destroy; end A is where the lead starts."""
    by_mark: dict[str, list[str]] = {}
    pieces = {label.mark: label for label in rework.labels}
    for label in rework.labels:
        cells = by_mark.setdefault(label.mark, ["", "", ""])
        at = label.end or 0
        cells[at] = label.text or cells[at]
        if label.destroy:
            cells[2] = "both" if cells[2] else f"end {'AB'[at]}" if label.end is not None else "yes"
    rows = tuple(
        Row((first_cell(mark, pieces[mark]), *(Cell(text) for text in cells))) for mark, cells in by_mark.items()
    )
    count = sum(bool(label.text) for label in rework.labels)
    old = sum(bool(label.destroy) for label in rework.labels)
    caption = f"Labels: {count} to print, {old} old ones to destroy"
    return tidy(Table("labels", caption, _LABELS, rows, empty="no label changes", tick=True))


def advice(rework: Rework) -> tuple[str, ...]:
    """Where a lead that is there would serve under a number that it does not bear."""
    return tuple(
        f"{plan.before.mark} serves as {plan.mark}: state {plan.before.mark} in revision {rework.after}, "
        "then its number stays."
        for plan in rework.leads
        if plan.renumbered and plan.before is not None and plan.mark not in (rework.built.leads if rework.built else {})
    )


def verdict(plan: LeadPlan) -> str:
    """The verdict and the actions in words."""
    said = plan.verdict
    if plan.verdict == REMAKE and plan.after is not None and plan.after.signal == "mains":
        said = f"another lead set, certified ({plan.why})"
    elif plan.verdict == REMAKE:
        said = f"re-make: the old one is {plan.why}" if plan.why.startswith("too") else f"re-make ({plan.why})"
    elif plan.spare and plan.before is not None:
        said = f"take a spare, {plan.before.mark}"
    elif plan.renumbered and plan.before is not None:
        said = f"keep: {plan.before.mark} becomes {plan.mark}"
    elif plan.why:
        said = f"{plan.verdict}: {plan.why}"
    return ", ".join([said, *_actions(plan)])


def _actions(plan: LeadPlan) -> list[str]:
    if plan.after is None or plan.verdict in (NEW, REMAKE) or plan.spare:
        return []
    found = [_refitted(plan)] if plan.plugged else []
    found += [f"move end to {plan.after.via[end] or plan.after.ends[end]}" for end in plan.moved if plan.after.ends]
    found += [f"via {plan.after.via[end]}" if plan.after.via[end] else "take off its adaptor" for end in plan.adaptor]
    found += ["re-dress"] if plan.dressed else []
    return found + (["re-label"] if plan.labelled else [])


def _refitted(plan: LeadPlan) -> str:
    """Which end gets a plug; and what is cut off there, where the lead is shortened."""
    at = "both ends" if len(plan.plugged) == 2 else f"end {'AB'[plan.plugged[0]]}"
    return f"re-terminate {at}" + (f", {millimetres(plan.cut)} mm off with the old plug" if plan.cut else "")


def _row(plan: LeadPlan, old: Zones, new: Zones) -> Row:
    lead = plan.after or plan.before
    assert lead is not None
    is_made = plan.before is None
    length = plan.after.length if plan.after is not None else plan.before.length if plan.before else None
    window = "" if plan.least is None or plan.most is None else f"{millimetres(plan.least)}…{millimetres(plan.most)}"
    cells = (
        first_cell(plan.mark, plan),
        Cell(verdict(plan), strong=plan.verdict != KEEP),
        Cell("; ".join(_ends(plan))),
        Cell("" if lead.ends is None else (new if plan.after else old).ends(*lead.ends)),
        Cell("?" if length is None else millimetres(length), strong=is_made),
        Cell(window, mark="assumed" if plan.assumed else ""),
        Cell(_plugs(plan, lead)),
        change_cell(plan),
    )
    return Row(cells)


def _ends(plan: LeadPlan) -> list[str]:
    """The ends that change; both of a lead that comes or goes."""
    before, after = plan.before, plan.after
    if before is None or after is None or before.ends is None:
        lead = after or before
        return [] if lead is None or lead.ends is None else [" to ".join(map(str, lead.ends))]
    assert after.ends is not None
    return [
        from_to(str(before.ends[plan.ends[end]]), str(after.ends[end]))
        + (f" by {after.via[end]}" if after.via[end] else "")
        for end in sorted({*plan.moved, *plan.swapped, *plan.adaptor})
    ]


def _plugs(plan: LeadPlan, lead: BoardLead) -> str:
    if plan.before is None:
        kinds = [kind or ("captive" if lead.captive else "as bought" if lead.inlets else "?") for kind in lead.plugs]
        return f"2 × {kinds[0]}" if kinds[0] == kinds[1] else " / ".join(kinds)
    if plan.after is None:
        return ""
    return ", ".join(f"end {'AB'[end]}: {plan.after.plugs[end]}" for end in plan.plugged)
