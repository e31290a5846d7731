"""The highest level that reaches an input leaves less than {levels.LEAST_MARGIN_DB} to what the input takes.

Why it matters: the input clips on the loudest notes, in a way that no knob behind it can mend.
What to do: put a pad of at least the stated number of dB before it, lower the unit before it, or run the input's unit at
a higher voltage where it allows that.
Source: common practice, no source, for the {levels.LEAST_MARGIN_DB}; the sum is arithmetic on stated levels and gains. A
nominal level that is stated above the peak that is reckoned counts as the highest. What is more than an input takes clips there, and
goes on as what it takes.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.levels.levels import NO_LEAD, LevelEdge, Levels
from rigc.analysis.signal.levels.unknown_levels import unknown_levels
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.wording import joined, listed
from rigc.facts.levels import LEAST_MARGIN_DB
from rigc.model.jacks import Jack
from rigc.model.rig import Rig

KIND = Kind(
    "too-hot",
    Level.WARNING,
    __doc__,
    f"peak level <= what the input takes - {LEAST_MARGIN_DB}",
    "common practice, no source",
    about=1,
)


def too_hot(rig: Rig, levels: Levels) -> Iterator[Diagnostic]:
    """One finding for each thing with such inputs, and for what passes the same level on; can't-check for each that leaves a level unknown."""
    found: dict[str, list[LevelEdge]] = {}
    for edge in levels.edges:
        if edge.pad_db > 0:
            found.setdefault(edge.end.thing, []).append(edge)
    behind = _behind(rig, found)
    for name, edges in found.items():
        if name not in behind:
            yield _told(rig, name, edges, [each for each in behind if _first(behind, each) == name])
    for name, lacking in unknown_levels(rig, levels).items():
        yield KIND.cant_check(
            rig.things[name].declared,
            f"'{name}' does not say {lacking.words}; {lacking.follows} can't be checked",
            subject=(name,),
            help=f"measure it and write it in '{name}': {lacking.example}",
        )


def _behind(rig: Rig, found: dict[str, list[LevelEdge]]) -> dict[str, str]:
    """By name of a thing that is fed too hot, the one before it whose pad mends both: nothing between them gives so much itself."""
    before: dict[str, str] = {}
    for name, edges in found.items():
        causes = {_cause(rig, found, edge) for edge in edges}
        if len(causes) == 1 and (cause := causes.pop()) is not None and _first(before, cause) != name:
            before[name] = cause
    return before


def _cause(rig: Rig, found: dict[str, list[LevelEdge]], edge: LevelEdge) -> str | None:
    """The thing that the lead comes from, if it only passes on what comes in too hot."""
    jack, name = rig.jack(edge.start), edge.start.thing
    if name not in found or jack is None or _gives_it(jack, edge):
        return None
    return name if max(each.pad_db for each in found[name]) >= edge.pad_db - 1e-9 else None


def _gives_it(jack: Jack, edge: LevelEdge) -> bool:
    """Whether the jack states a level as high as what arrives; a unit in bypass may pass on more than that."""
    own = [level.value for level in (jack.levels.nominal_dbu, jack.levels.peak_dbu) if level is not None]
    return bool(own) and (edge.highest_dbu is None or max(own) >= edge.highest_dbu - 1e-9)


def _first(before: dict[str, str], name: str) -> str:
    while name in before:
        name = before[name]
    return name


def _told(rig: Rig, name: str, edges: list[LevelEdge], behind: list[str]) -> Diagnostic:
    worst = max(edges, key=lambda edge: edge.pad_db)
    assert worst.maximum is not None and worst.margin_db is not None and worst.highest_dbu is not None
    parts = dict.fromkeys(_part(edge) for edge in edges)
    return KIND.at(
        worst.span,
        "; ".join(parts),
        subject=(name, worst.start.thing, *(str(edge.end) for edge in edges)),
        label="too much arrives here",
        also=(Label(worst.maximum.span, "all that it takes"),),
        numbers=(
            Number("peak" if worst.by_peak else "nominal", worst.highest_dbu, "dBu"),
            Number("input takes", worst.maximum.value, "dBu"),
            Number("margin", worst.margin_db, "dB"),
            Number("wanted", LEAST_MARGIN_DB.value, "dB"),
        ),
        note=f"passed on, it is too much for {listed(behind)}, too" if behind else "",
        help=_way_out(rig, name, edges),
    )


def _way_out(rig: Rig, name: str, edges: list[LevelEdge]) -> str:
    """A pad for each input, as much in each of a stereo pair; none before what wants the pickup, which a pad would hide."""
    pads: dict[str, float] = {}
    for edge in edges:
        pads[str(edge.end)] = max(edge.pad_db, pads.get(str(edge.end), 0.0))
    sources = joined(_source(rig, each) for each in dict.fromkeys(edge.start.thing for edge in edges))
    unit, most = rig.units.get(name), decimals(max(pads.values()))
    if unit is not None and "wants pickup" in unit.flags:
        return f"turn {sources} down by at least {most} dB: a pad before '{name}' would hide the pickup from it"
    if len({decimals(each) for each in pads.values()}) == 1:
        return f"put a pad of at least {most} dB before {'each of ' * (len(pads) > 1)}{listed(pads)}, or turn {sources} down by as much"
    parts = joined(f"one of at least {decimals(pad)} dB before '{end}'" for end, pad in pads.items())
    return f"put pads, {parts}; or turn {sources} down by {most} dB"


def _source(rig: Rig, name: str) -> str:
    """What can be turned down: a switcher has no knob for it, and gives what it gets."""
    unit = rig.units.get(name)
    mixes = any(blend.unit == name for blend in rig.blends)
    passes = unit is not None and unit.kind == "unit" and unit.loops and not mixes and unit.gain_db is None
    return f"what plays into '{name}'" if passes else f"'{name}'"


def _part(edge: LevelEdge) -> str:
    assert edge.maximum is not None and edge.margin_db is not None and edge.highest_dbu is not None
    over = edge.margin_db
    verdict = f"{decimals(-over)} dB too much" if over < 0 else f"only {decimals(over)} dB are left"
    lead = "" if edge.mark == NO_LEAD else f" by {edge.mark}"
    where = edge.when
    word = "peaks of" if edge.by_peak else "a nominal level of"
    return (
        f"'{edge.end}' takes {decimals(edge.maximum.value)} dBu and gets {word} {decimals(edge.highest_dbu)} dBu "
        f"from '{edge.start}'{lead}{where}: {verdict}"
    )


CHECK = too_hot
