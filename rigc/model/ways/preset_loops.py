"""Preset -> the loops that it switches in, each with the switcher that it belongs to."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.model.rig import Rig
from rigc.model.wishes import Preset
from rigc.source import Span


def preset_loops(rig: Rig, preset: Preset) -> Iterator[tuple[str | None, int, Span]]:
    """Switcher, number and place of each loop; a preset that names no switcher means the only unit with loops.

    The switcher is None where the rig has none, or several.
    """
    hosts = [unit.name for unit in rig.units.values() if unit.loops and unit.kind == "unit"]
    only = hosts[0] if len(hosts) == 1 else None
    for switcher, number, span in preset.loops:
        yield switcher or only, number, span
