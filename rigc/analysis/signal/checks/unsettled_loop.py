"""A loop of a switcher is referred to but holds no unit, has no leads of chains and is not declared empty, or a unit sits in two loops.

Why it matters: an open loop can cut the sound when it is switched in, depending on its jacks; and a unit has one input, so
it cannot be in two loops.
What to do: say what the loop holds, or `loop N of NAME empty`; leave the unit in one loop.
Source: arithmetic on the stated loops; common practice, no source, for empty loops.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.loops_to_fill import LoopsToFill, into_loops
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Add, Mend, Replace
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig
from rigc.model.ways.jack_use import in_several_loops
from rigc.model.wishes import LoopUse
from rigc.source import Span

KIND = Kind(
    "unsettled-loop",
    Level.ERROR,
    __doc__,
    "a loop that is used holds units, is wired by chains or is declared empty; a unit sits in one loop",
    "arithmetic on the stated loops",
)


def unsettled_loop(rig: Rig, fill: LoopsToFill) -> Iterator[Diagnostic]:
    """One finding for each switcher with loops that nobody settled, units that stand in no chain named with them; and one for each
    unit in two loops."""
    for switcher, loops in fill.loops.items():
        yield _unsettled(switcher, loops, fill.loose if fill.told_together else ())
    for name, uses in in_several_loops(rig).items():
        yield _in_two(name, uses)


def _unsettled(switcher: str, loops: dict[int, Span], loose: tuple[str, ...]) -> Diagnostic:
    numbers = sorted(loops)
    one = len(numbers) == 1
    spoken = f"loop {numbers[0]}" if one else f"loops {', '.join(map(str, numbers[:-1]))} and {numbers[-1]}"
    nowhere = (
        f"; {listed(loose)} {'stands' if len(loose) == 1 else 'stand'} in no chain and in no loop" if loose else ""
    )
    return KIND.at(
        loops[numbers[0]],
        f"{spoken} of '{switcher}' {'is' if one else 'are'} used, but nothing says what {'it holds' if one else 'they hold'}{nowhere}",
        subject=(switcher, *(f"loop {number}" for number in numbers), *loose),
        label="used here",
        also=tuple(Label(loops[number], "and here") for number in numbers[1:]),
        mends=(*_held(switcher, numbers, loose), _empty(switcher, numbers)),
        help=f"say what {'it holds' if one else 'each holds'}: `loop {numbers[0]} of {switcher} holds ...`",
    )


def _held(switcher: str, numbers: list[int], loose: tuple[str, ...]) -> tuple[Mend, ...]:
    """What stands nowhere: all of it in the one loop, or one in each."""
    if loose and len(numbers) == 1:
        return (into_loops([((switcher, numbers[0]), loose)]),)
    if loose and len(numbers) == len(loose):
        return (into_loops([((switcher, number), (name,)) for number, name in zip(numbers, loose, strict=True)]),)
    return ()


def _empty(switcher: str, numbers: list[int]) -> Mend:
    lines = [f"loop {number} of {switcher} empty" for number in numbers]
    said = " and ".join(f"`{line}`" for line in lines)
    return Mend(f"say that nothing stands there, on purpose: {said}", tuple(Add(line) for line in lines))


def _in_two(name: str, uses: list[LoopUse]) -> Diagnostic:
    stops = [stop for use in uses for stop in use.stops if stop.thing == name]
    loops = [f"loop {use.number} of {use.switcher}" for use in uses]
    return KIND.at(
        stops[-1].span,
        f"'{name}' sits in {' and in '.join(loops)}",
        subject=(name, *loops),
        label="here too",
        also=tuple(Label(stop.span, "and here") for stop in stops[:-1]),
        mends=tuple(_taken_out(use, name) for use in uses),
    )


def _taken_out(use: LoopUse, name: str) -> Mend:
    """The loop without a unit; empty where it held nothing else."""
    rest = [stop.span.text for stop in use.stops if stop.thing != name]
    said = f"loop {use.number} of {use.switcher} " + (f"holds {' -> '.join(rest)}" if rest else "empty")
    return Mend(f"take '{name}' out of loop {use.number} of '{use.switcher}'", (Replace(use.span, said),))


CHECK = unsettled_loop
