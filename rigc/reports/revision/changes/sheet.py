"""Changes -> a sheet: what has to be done and by how much, what the player meets, then thing by thing, and the findings."""

from __future__ import annotations

from rigc.analysis.revision.compared.aspect import PAPER, WORK
from rigc.analysis.revision.compared.changed import RENAMED, REPLACED
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.reports.content import Block, Cell, Column, Paragraph, Row, Sheet, Table
from rigc.reports.revision.changes.changes import Changes, Side
from rigc.reports.revision.changes.rows import brief_table, detail_table, held_table, player_table, work_table
from rigc.reports.revision.changes.words import CAUSES, MEANING, thing_words

NAMED = 12
"""So many things are named in the overview; more are counted."""


def changes_sheet(changes: Changes, brief: bool) -> Sheet:
    """The sheet; `brief`: one line a thing in place of the tables."""
    blocks: list[Block] = [Paragraph("revisions", _revisions(changes))]
    if not changes.empty:
        tables = _brief(changes) if brief else _whole(changes)
        blocks += [_overview(changes), *tables]
    if changes.cut:
        blocks.append(Paragraph("cut", (_cut(changes),), kind="caution"))
    if changes.held and not changes.whole:
        blocks.append(Paragraph("held", (_held(changes.held),)))
    return Sheet("changes", _title(changes.old, changes.new), "crew", tuple(blocks))


def _whole(changes: Changes) -> list[Block]:
    tables: list[Table] = [_stated(changes), player_table(changes)]
    tables += [work_table(changes, work) for work in WORK]
    tables += [_findings(changes), held_table(changes), detail_table(changes)]
    return [table for table in tables if table.rows]


def _brief(changes: Changes) -> list[Block]:
    return [table for table in (brief_table(changes), _findings(changes)) if table.rows]


def _revisions(changes: Changes) -> tuple[str, ...]:
    lines = [f"before: {_long(changes.old)}", f"now: {_long(changes.new)}"]
    for each in changes.all:
        if each.how == REPLACED and each.kind in ("unit", "supply"):
            why = f": a guess, since both are {each.why}" if each.why else ", as its block says"
            lines.append(f"{each.name} stands in for {each.was}{why}.")
        elif each.how == RENAMED:
            lines.append(f"{each.was} is called {each.name} now.")
    if changes.cause:
        lines.append(f"One cause for all of it: {CAUSES[changes.cause]}.")
    return (*lines, "Nothing differs.") if changes.empty else tuple(lines)


def _long(side: Side) -> str:
    text = f", {side.text}" if side.text else ""
    return f"{side.title}, revision {side.letter} of {side.date}{text} ({side.file})"


def _title(old: Side, new: Side) -> str:
    return f"Changes in {new.letter}" if old.letter == new.letter else f"Changes from {old.letter} to {new.letter}"


def _overview(changes: Changes) -> Table:
    """Counts hold for all things, whatever a limit leaves out; a thing that asks for several kinds of work counts for each."""
    columns = (Column("work"), Column("things", number=True), Column("what it is"), Column("which"))
    rows = []
    for work in WORK:
        names = changes.of_work(work)
        if names:
            more = f" and {len(names) - NAMED} more" if len(names) > NAMED else ""
            which = ", ".join(names[:NAMED]) + more
            rows.append(
                Row((Cell(work, strong=work != PAPER), Cell(str(len(names))), Cell(MEANING[work]), Cell(which)))
            )
    return Table("work", "What has to be done", columns, tuple(rows), "nothing has to be done")


def _stated(changes: Changes) -> Table:
    """What the rig block says of this revision, beside what it touches."""
    columns = (Column("change", number=True), Column("cause"), Column("what"), Column("because"), Column("touches"))
    rows = []
    for change in changes.stated:
        touched = ", ".join(thing_words(each) for each in changes.all if change.number in each.stated)
        texts = (str(change.number), change.cause, change.text, change.because, touched or "nothing that differs")
        rows.append(Row(tuple(map(Cell, texts))))
    return Table("stated", "Changes that the rig block states", columns, tuple(rows))


def _findings(changes: Changes) -> Table:
    columns = (Column("finding"), Column("level"), Column("rule"), Column("what it says"))
    found = changes.findings
    rows = [_finding("comes", each) for each in found.came] + [_finding("goes", each) for each in found.went]
    rows += [_finding("says now", now) for _, now in (*found.regrouped, *found.changed)]
    return Table("findings", "Findings that come and go", columns, tuple(rows))


def _finding(how: str, finding: Diagnostic) -> Row:
    level = finding.level.word + (", accepted" if finding.accepted else "")
    return Row(tuple(map(Cell, (how, level, finding.kind.name, finding.message))))


def _cut(changes: Changes) -> str:
    things = f"{changes.cut} of {len(changes.all)} things"
    return f"Cut off here: {things}, the findings and the stated changes; without a limit they are told too."


def _held(count: int) -> str:
    figures = "1 figure asks" if count == 1 else f"{count} figures ask"
    return f"{figures} for no work, since the lead that is there still does or only the rounding differs; --all tells."
