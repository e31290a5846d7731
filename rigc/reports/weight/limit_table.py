"""Mass and limits -> how far the rig, with its case, is from each limit; what to mind when it is lifted."""

from __future__ import annotations

from rigc.analysis.computations.case_loads import CaseLoad, CaseLoads, MassLimit
from rigc.analysis.computations.mass import Mass
from rigc.diagnostics.figures import kilograms, plain
from rigc.facts import weight
from rigc.reports.content import Cell, Column, Paragraph, Row, Table

_COLUMNS = (
    Column("limit"),
    Column("at most", "kg", number=True, key="most"),
    Column("weighs", "kg", number=True),
    Column("left", "kg", number=True),
    Column("source"),
)
_LOADS = (
    Column("case"),
    Column("decks"),
    Column("with all on them", "kg", number=True, key="board"),
    Column("empty case", "kg", number=True, key="empty"),
    Column("together", "kg", number=True),
)


def limit_table(loads: CaseLoads) -> Table:
    """For each case the limit of one lifter (the source's, else ours), and each other limit that the source states."""
    rows = []
    for load in loads.all:
        for limit in loads.limits:
            words = limit.whose if len(loads.all) == 1 else f"{limit.whose}: {load.name}"
            rows.append(_row(words, load, limit))
    return Table(
        "limits", "Limits, with the case", _COLUMNS, tuple(rows), empty="which case holds which deck is not stated"
    )


def load_table(loads: CaseLoads) -> tuple[Table, ...]:
    """What each case weighs with its decks, where there is more than one to lift."""
    if len(loads.all) < 2:
        return ()
    return (Table("loads", "Case by case", _LOADS, tuple(map(_load, loads.all))),)


def _load(load: CaseLoad) -> Row:
    mass = load.mass
    board, known = mass.total_kg, mass.known_kg - sum(case.kg or 0.0 for case in mass.cases)
    empty = next((case.kg for case in mass.cases), None)
    return Row(
        (
            Cell(load.case or "no case"),
            Cell(", ".join(load.decks)),
            Cell(kilograms(known), mark="at least" if board is None else ""),
            Cell("") if load.case is None else Cell("", mark="missing") if empty is None else Cell(kilograms(empty)),
            Cell(kilograms(mass.known_kg), mark="at least" if mass.missing else "", strong=not mass.missing),
        )
    )


def lifting(mass: Mass) -> Paragraph:
    """The cautions that belong to a heavy case, and what the sheet does not know."""
    unknown = f"Not weighed, and not in the sums: {', '.join(mass.missing)}."
    lines = (
        f"Write the mass on the case. Two people lift what is above about {plain(weight.ONE_LIFTER_KG.value)} to 25 kg "
        f"({weight.ONE_LIFTER_KG.source}; ISO 11228-1, from memory). Airline limits are the carrier's.",
        "Treadles are bolted or rest against a stop, and the board must not tip under a foot at its edge.",
        "Computed from the facts entered; verify by weighing before use; the builder is responsible for the rig as built.",
    )
    return Paragraph("cautions", (*((unknown,) if mass.missing else ()), *lines), heading="Take care", kind="caution")


def _row(words: str, load: CaseLoad, limit: MassLimit) -> Row:
    mass, stated = load.mass, limit.stated
    mark = "FAIL" if load.passes(limit) else "at most" if mass.missing else ""
    source = weight.ONE_LIFTER_KG.source if stated is None else stated.source or "stated"
    weighs = Cell(kilograms(mass.known_kg), mark="at least" if mass.missing else "")
    return Row(
        (Cell(words), Cell(plain(limit.most_kg)), weighs, Cell(kilograms(load.left_kg(limit)), mark=mark), Cell(source))
    )
