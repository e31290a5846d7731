"""A path from an instrument to an output holds units that pass nothing without power, and no bypass plan goes round them.

Why it matters: one dead supply or one cut mains lead ends the show, although a single lead could carry on.
What to do: say which lead goes round the board when everything fails (`bypass guitar -> combo "lead in the lid"`), or use
units that pass without power.
Source: common practice, no source. Looked at with all units off and all loops out; where there is a way past a unit, that
way is taken. A unit that latches passes nothing if it was on. In each scenario a plan has to lead to an amp or desk that is used
there; one amp that still sounds is enough. Headphones count as no end, nor what a desk sends on: nobody in the hall hears it, and
no lead past the board drives it.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.silent_paths import SilentPath, SilentPaths
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Add, Mend
from rigc.diagnostics.wording import listed, listed_few
from rigc.model.jacks import AUDIO_IN, Port
from rigc.model.rig import Rig
from rigc.source import Span

KIND = Kind(
    "silent-without-power",
    Level.WARNING,
    __doc__,
    "a bypass plan goes round all units of a path that pass nothing without power",
    "common practice, no source",
)


def silent_without_power(rig: Rig, paths: SilentPaths) -> Iterator[Diagnostic]:
    """One finding for the ways of an instrument that are there at once, since one end that still sounds is enough; can't-check for each
    unit that does not say what it does."""
    at_once: dict[tuple[object, ...], list[SilentPath]] = {}
    for path in paths.all:
        if not path.planned:
            apart = path.units if len(path.at_once) > 1 else ()
            at_once.setdefault((path.instrument, path.where, apart), []).append(path)
    for together in at_once.values():
        yield _told(rig, _as_one(together))
    for name in paths.unsure:
        yield KIND.cant_check(
            rig.units[name].declared,
            f"'{name}' does not say whether it passes sound without power",
            subject=(name,),
            help=f"pull its plug and listen; write `unpowered passes` or `unpowered mutes` in '{name}'",
        )


def _as_one(paths: list[SilentPath]) -> SilentPath:
    """Paths of one instrument as one: all their ends, and all that stops the sound on the way to any of them."""
    if len(paths) == 1:
        return paths[0]
    short = {plan.span.start: (plan, left) for path in paths for plan, left in path.short}
    whole: SilentPath = paths[0].replace(
        ends=tuple(end for path in paths for end in path.ends),
        behind=tuple(port for path in paths for port in path.behind),
        at_once=(tuple(range(sum(len(path.ends) for path in paths))),),
        units=tuple(dict.fromkeys(name for path in paths for name in path.units)),
        short=tuple(short.values()),
        across=tuple(each for path in paths for each in path.across),
    )
    return whole


def _told(rig: Rig, path: SilentPath) -> Diagnostic:
    instrument = rig.instruments[path.instrument]
    ends = dict.fromkeys(port.thing for port in path.ends)
    does = "passes" if len(path.units) == 1 else "pass"
    where = f" in {', '.join(path.scenarios)}" if path.scenarios else ""
    return KIND.at(
        instrument.declared,
        f"without power{where} nothing goes from '{path.instrument}' to {listed(ends)}: {listed_few(path.units)} {does} nothing, "
        f"and no bypass plan goes round {'it' if len(path.units) == 1 else 'them'}",
        subject=(path.instrument, *sorted(path.units)),  # of the same units in another order it is the same finding
        label="is silent without power",
        also=(
            *_labels(rig, path.units),
            *(Label(plan.span, f"leaves {listed(left)} in the way") for plan, left in path.short),
        ),
        mends=(_carried(rig, path),),
    )


def _carried(rig: Rig, path: SilentPath) -> Mend:
    """A lead for each end that it takes to be heard in each scenario."""
    needed = _needed(rig, path)
    stretches = [each for at in needed for each in path.across[at]]
    if stretches:
        return _carried_across(rig, path, stretches)
    plans = [_plan_end(rig, path, at) for at in needed]
    whats = [_LEAD if goes_in else _DI for _, goes_in in plans]
    said = [
        f'bypass {path.instrument} -> {end} "{what} past the board"'
        for (end, _), what in zip(plans, whats, strict=True)
    ]
    one = f"a {whats[0]} that goes round"
    what = one if len(plans) == 1 else f"{' and '.join(f'a {each}' for each in dict.fromkeys(whats))} to each end"
    return Mend(f"carry {what}, and say so: {' and '.join(f'`{each}`' for each in said)}", tuple(map(Add, said)))


_LEAD, _DI = "lead", "lead with a passive DI"


def _carried_across(rig: Rig, path: SilentPath, stretches: list[tuple[Port, Port]]) -> Mend:
    """Where the board lies before an amp and in its loop: a lead for each of the two."""
    said = []
    for start, end in dict.fromkeys(stretches):
        begins = path.instrument if start.thing == path.instrument else str(start)
        what = _LEAD if "" in (kinds := (_kind(rig, start), _kind(rig, end))) or kinds[0] == kinds[1] else _DI
        where = f"across the loop of {end.thing}" if start.thing == end.thing else "past the board"
        said.append(f'bypass {begins} -> {end} "{what} {where}"')
    each = "a lead that goes round" if len(said) == 1 else "a lead for each of these"
    return Mend(f"carry {each}, and say so: {' and '.join(f'`{line}`' for line in said)}", tuple(map(Add, said)))


def _needed(rig: Rig, path: SilentPath) -> list[int]:
    """The ranks of as few ends as make a plan to each be heard in every scenario, first those that are there in most; a return of an amp's
    own loop only where there is nothing else."""
    shared = [sum(at in each for each in path.at_once) for at in range(len(path.ends))]
    found: list[int] = []
    for each in path.at_once:
        served = [str(path.behind[at]) for at in each]
        if not any(at in found for at in each) and not any(_plan_end(rig, path, at)[0] in served for at in found):
            found.append(min(each, key=lambda at: (_is_return(rig, path.ends[at]), -shared[at], at)))
    return found


def _plan_end(rig: Rig, path: SilentPath, at: int) -> tuple[str, bool]:
    """Where a plan to that end had best arrive, and whether the instrument's lead goes in there; where it doesn't, what passes sound before
    it, such as a DI."""
    end, behind = path.ends[at], path.behind[at]
    out = Port(path.instrument, "out")
    if _kind(rig, end) != _kind(rig, out) == _kind(rig, behind):
        return str(behind), True
    return _end(rig, end), _kind(rig, end) in ("", _kind(rig, out))


def _kind(rig: Rig, port: Port) -> str:
    jack = rig.jack(port)
    return "" if jack is None else {"trs": "ts"}.get(jack.connector.kind, jack.connector.kind)


def _end(rig: Rig, port: Port) -> str:
    """How a plan names it: by its jack where that is the return of an amp's own loop, or one of several inputs, else the thing alone."""
    unit = rig.units.get(port.thing)
    several = unit is not None and sum(jack.role == AUDIO_IN for jack in unit.jacks) > 1 and port.jack != "in"
    return str(port) if several or _is_return(rig, port) or port.thing in rig.panels else port.thing


def _is_return(rig: Rig, port: Port) -> bool:
    unit = rig.units.get(port.thing)
    return unit is not None and any(loop.back == port.jack for loop in unit.loops)


def _labels(rig: Rig, names: tuple[str, ...]) -> tuple[Label, ...]:
    """Where each says so; units that are like another say it at one place."""
    places: dict[tuple[str, int], tuple[Span, list[str]]] = {}
    for name in names:
        said = rig.units[name].unpowered
        if said is not None:
            places.setdefault((said.span.source.name, said.span.start), (said.span, []))[1].append(name)
    return tuple(Label(span, f"{listed_few(told)} {_does(rig, told)}") for span, told in places.values())


def _does(rig: Rig, names: list[str]) -> str:
    said, one = rig.units[names[0]].unpowered, len(names) == 1
    if said is not None and said.value == "latches":
        return f"{'stays as it was and passes' if one else 'stay as they were and pass'} nothing if on"
    return f"{'passes' if one else 'pass'} nothing"


CHECK = silent_without_power
