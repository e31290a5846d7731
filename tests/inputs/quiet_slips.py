"""Slips that read well and mean nothing, or what nobody meant: words of other trades, facts that can't be together, edits left half done."""

from __future__ import annotations

from inputs.slip import Slip, also, swap

WIRED = "wired.rig"

READ_WELL = (
    Slip("501-amperes-for-watts", "amperes for watts", swap("ceiling 3.6 W", "ceiling 3.6 A")),
    Slip(
        "502-second-guitar",
        "a second guitar that no chain names",
        also("instrument second {\n  lead 6 m of stage-coax\n}"),
    ),
    Slip(
        "503-ten-centimetres",
        "a lead to the desk of 10 cm",
        swap("di.outl -> front.in1 made 10 m", "di.outl -> front.in1 made 10 cm"),
        WIRED,
    ),
    Slip(
        "504-bolted-and-on-strip",
        "bolted, and given a strip",
        swap("  all with mushroom\n", "  all with mushroom\n  tern with mushroom\n  tern bolted\n"),
    ),
    Slip("505-supply-that-nothing-holds", "the brackets of the supply forgotten", swap("  brook brackets\n", "")),
)
