"""Rig and open ends -> loops that presets switch in and nobody settled, and the units that stand nowhere and may be meant for them."""

from __future__ import annotations

from collections.abc import Sequence

from rigc.analysis.signal.open_ends import OpenEnds
from rigc.diagnostics.mend import Add, Mend
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.jack_use import with_audio
from rigc.model.ways.preset_loops import preset_loops
from rigc.record import Record
from rigc.source import Span


class LoopsToFill(Record):
    """By switcher and number the place where a loop that nobody settled is first switched in; `loose` are the units in no chain."""

    loops: dict[str, dict[int, Span]]
    loose: tuple[str, ...]

    @property
    def told_together(self) -> bool:
        """Whether the loops are what the units lack: one cause, told of the loops."""
        return bool(self.loose) and len(self.loops) == 1


def loops_to_fill(rig: Rig, ends: OpenEnds) -> LoopsToFill:
    """In the order of the presets, and of the units' declarations. An amp is meant for no loop."""
    settled = {(use.switcher, use.number) for use in rig.loops}
    wired = with_audio(rig)
    loops: dict[str, dict[int, Span]] = {}
    for preset in rig.presets.values():
        for switcher, number, span in preset_loops(rig, preset):
            loop = rig.units[switcher].loop(number) if switcher in rig.units else None
            if switcher is None or loop is None or (switcher, number) in settled:
                continue
            if not {Port(switcher, loop.send), Port(switcher, loop.back)} <= wired:
                loops.setdefault(switcher, {}).setdefault(number, span)
    standing = {port.thing for port in wired}
    loose = [name for name in rig.units if name in ends.unreached and name in ends.stuck and name not in standing]
    return LoopsToFill(loops, tuple(name for name in loose if rig.units[name].kind == "unit" and name not in loops))


def into_loops(held: Sequence[tuple[tuple[str, int], Sequence[str]]]) -> Mend:
    """The statements that put these units into these loops."""
    said = [f"loop {number} of {switcher} holds {' -> '.join(names)}" for (switcher, number), names in held]
    each = f"a free loop{' each' if len(said) > 1 else ''}"
    what = "them" if len(said) > 1 or len(held[0][1]) > 1 else "it"
    return Mend(f"put {what} into {each}: {', '.join(f'`{line}`' for line in said)}", tuple(map(Add, said)))


COMPUTE = loops_to_fill
