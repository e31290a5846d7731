"""Mass and limits -> how far the rig, with its case, is from each limit; what to mind when it is lifted."""

from __future__ import annotations

from rigc.analysis.computations.mass import Mass
from rigc.diagnostics.figures import kilograms, plain
from rigc.facts import weight
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Paragraph, Row, Table

_COLUMNS = (
    Column("limit"),
    Column("at most", "kg", number=True, key="most"),
    Column("weighs", "kg", number=True),
    Column("left", "kg", number=True),
    Column("source"),
)
_NAMES = {"lift": "one lifter", "airline": "one airline piece", "case": "the case"}


def limit_table(rig: Rig, mass: Mass) -> Table:
    """The limit of one lifter (the source's, else ours), and each other limit that the source states."""
    rows = []
    for name, words in _NAMES.items():
        own = rig.limit(name)
        if own is not None:
            rows.append(_row(words, own.amount.value, own.source or "stated", mass))
        elif name == "lift":
            rows.append(_row(words, weight.ONE_LIFTER_KG.value, weight.ONE_LIFTER_KG.source, mass))
    return Table("limits", "Limits, with the case", _COLUMNS, tuple(rows))


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


def _row(words: str, most: float, source: str, mass: Mass) -> Row:
    left = most - mass.known_kg
    over = left < -1e-9
    mark = "FAIL" if over else "at most" if mass.missing else ""
    weighs = Cell(kilograms(mass.known_kg), mark="at least" if mass.missing else "")
    return Row((Cell(words), Cell(plain(most)), weighs, Cell(kilograms(left), mark=mark), Cell(source)))
