"""The phases of a rework, in the order in which a board is put together; a step's `phase` is its rank here. The order is
common practice, no source."""

from __future__ import annotations

(BEFORE, OFF, OUT, SUPPLIES, STRIPS, SEATS, POWER, AUDIO, MOUNT, CONTROL, LABELS, TIES, PROGRAMS, TESTS, BAG) = range(
    15
)
DEAD = frozenset((OUT, SUPPLIES, STRIPS, SEATS, POWER, AUDIO, MOUNT, CONTROL, TIES))
"""The phases in which the mains lead is out; in `SEATS` supplies are set down, before what hangs on them is measured."""
OF_SIGNAL = {
    "dc": POWER,
    "ac": POWER,
    "mains": POWER,
    "audio": AUDIO,
    "midi": CONTROL,
    "control": CONTROL,
    "usb": CONTROL,
}
"""The phase in which a lead of each signal is laid."""
