"""Both designs -> presets, songs and MIDI channels to enter anew, and those that sound otherwise though nobody
touched them."""

from __future__ import annotations

from rigc.analysis.revision.board import Board
from rigc.analysis.revision.plan.plan_records import ChannelPlan, ProgramPlan, SparePlan
from rigc.model.rig import Rig
from rigc.model.ways.preset_loops import preset_loops

Contents = dict[tuple[str, int], tuple[str, ...]]


def program_plans(old: Rig, new: Rig, built: Board, board: Board) -> tuple[ProgramPlan, ...]:
    """Presets by number, then songs by title, in the order of the new design, then those that go."""
    changed = changed_loops(old, new)
    plans = []
    for number in {**board.presets, **built.presets}:
        about = tuple(
            f"loop {loop} of {switcher}" for switcher, loop in _named(new, number) if (switcher, loop) in changed
        )
        plans.append(ProgramPlan(number, "", built.presets.get(number), board.presets.get(number), about))
    for title in {**board.songs, **built.songs}:
        plans.append(ProgramPlan(None, title, built.songs.get(title), board.songs.get(title)))
    return tuple(plan for plan in plans if plan.before != plan.after or plan.about)


def channel_plans(built: Board, board: Board) -> tuple[ChannelPlan, ...]:
    """Units that stay or come and listen on another channel; of what goes nobody sets one."""
    plans = [
        ChannelPlan(unit, built.channels.get(unit), board.channels.get(unit))
        for unit in {**board.channels, **built.channels}
        if unit in board.units
    ]
    return tuple(plan for plan in plans if plan.before != plan.after)


def spare_plans(built: Board, board: Board) -> tuple[SparePlan, ...]:
    """Spares of which more or fewer are carried."""
    plans = [
        SparePlan(what, built.spares.get(what, 0), board.spares.get(what, 0))
        for what in {**board.spares, **built.spares}
    ]
    return tuple(plan for plan in plans if plan.before != plan.after)


def changed_loops(old: Rig, new: Rig) -> dict[tuple[str, int], tuple[tuple[str, ...], tuple[str, ...]]]:
    """The loops that hold other units, or the same in another order: before and after, by switcher and number."""
    before, after = _contents(old), _contents(new)
    return {
        loop: (before.get(loop, ()), after.get(loop, ()))
        for loop in {**after, **before}
        if before.get(loop, ()) != after.get(loop, ())
    }


def _contents(rig: Rig) -> Contents:
    return {(use.switcher, use.number): tuple(stop.thing for stop in use.stops) for use in rig.loops}


def _named(rig: Rig, number: int) -> list[tuple[str, int]]:
    preset = rig.presets.get(number)
    if preset is None:
        return []
    return [(switcher, loop) for switcher, loop, _ in preset_loops(rig, preset) if switcher is not None]
