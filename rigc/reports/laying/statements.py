"""Chosen places -> the statements that would keep them, to be pasted into the source."""

from __future__ import annotations

from rigc.analysis.laying.place_statement import place_statement
from rigc.model.rig import Rig


def chosen_statements(rig: Rig) -> tuple[str, ...]:
    """A whole `place { ... }` block, line by line; a comment where every place is stated."""
    lines = [f"  {place_statement(place)}" for place in rig.places.values() if place.chosen]
    for room in rig.reserved_rooms:
        if room.chosen:
            what = "" if room.what == "reserved" else f' "{room.what}"'
            size, at = f"{room.width_mm:g} x {room.depth_mm:g} mm", f"{room.x_mm:g}, {room.y_mm:g} mm"
            lines += ["  # in place of the line that reserves it without a place", f"  reserve {size} at {at}{what}"]
    return ("place {", *lines, "}") if lines else ("# every place is stated",)
