"""Findings of every sort, made by hand, in a file, in another one, in the stock that ships, and without a place."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Acceptance, Kind, Label, Level, Number
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.source import Source, Span

BOARD = Source(
    "board.rig",
    'supply mäin "one" {\n  ceiling 100 mA\n  note "a, b: 100 %"\n}\naccept x "fine" by "R.K." until 2026-12-31\n',
)
UNITS = Source("my units/tern.rig", "unit tern {\n  draws 80 mA\n}\n")
STOCK = Source("stock/plugs.rig", "plug flat {\n}\n")


def at(source: Source, words: str) -> Span:
    """Where the words stand."""
    start = source.text.index(words)
    return Span(source, start, start + len(words))


LOAD = Kind("overloaded-supply", Level.ERROR, None, "load ≤ ceiling", "arithmetic")
TASTE = Kind("a-matter-of-taste", Level.REMARK, None, "", "common practice, no source")
SWITCH = Kind("moved-switch", Level.WARNING, None, "left at its first voltage", "common practice, no source")

TO_MEND = LOAD.at(
    at(BOARD, "ceiling 100 mA"),
    "'mäin' gives 170 mA, 100 mA at most",
    subject=("mäin",),
    label="this",
    also=(Label(at(UNITS, "draws 80 mA"), "this asks most"),),
    numbers=(Number("load", 170.0, "mA"), Number("ceiling", 100.0, "mA")),
    note="two units hang on it",
    help="feed 'tern' elsewhere",
    mends=(
        Mend(
            "state 200 mA, and less in 'tern'",
            (Replace(at(BOARD, "100 mA"), "200 mA"), Replace(at(UNITS, "80 mA"), "60 mA")),
        ),
        Mend("drop the note", (Delete(at(BOARD, 'note "a, b: 100 %"')),)),
    ),
)
FINDINGS = (
    TO_MEND,
    SWITCH.at(Span(BOARD, 0, len(BOARD.text) - 45), "a block of\nseveral lines"),
    SWITCH.at(at(STOCK, "flat"), "what ships is odd"),
    TASTE.at(None, "has no place: 100 %, so it is"),
    LOAD.cant_check(at(UNITS, "tern"), "'tern' states no peak", help="measure it"),
    LOAD.at(at(BOARD, "mäin"), "it was signed for").replace(
        accepted=Acceptance("fine", "R.K.", "2026-12-31", at(BOARD, "accept x"))
    ),
)
