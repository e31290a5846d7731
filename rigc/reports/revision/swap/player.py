"""A trial -> what the player and the programmer notice: what differs between the two units, and the presets and songs concerned."""

from __future__ import annotations

from collections.abc import Callable

from rigc.analysis.revision.substitute.trial import Trial
from rigc.diagnostics.figures import ohms
from rigc.model.fact import Fact
from rigc.model.jacks import AUDIO_IN, AUDIO_OUT, Jack
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.reports.content import Cell, Column, Row, Table

COLUMNS = (Column("what"), Column("before"), Column("with the substitute", key="after"))


def notice_table(trial: Trial) -> Table:
    """Differences between the units, then what falls away, then the presets, channels and songs that reach the unit."""
    rows = [(what, say(trial.out), say(trial.into)) for what, say in _FACTS.items()]
    rows = [row for row in rows if row[1] != row[2]]
    fallen = (line.rpartition(": ") for line in trial.lines)
    rows += [("falls away", statement, why) for statement, _, why in fallen]
    channel = next((each.number for each in trial.plugged.rig.channels if each.unit == trial.into.name), None)
    rows += [] if channel is None else [("MIDI channel", f"{channel}", "the same: set it")]
    rows += touched(trial.standing.results.rig, trial.out.name)
    return Table(
        "notice",
        "What the player notices, and what is set",
        COLUMNS,
        tuple(Row(tuple(map(Cell, row))) for row in rows),
        empty="nothing: both units are stated alike, and no preset or song names them",
    )


def touched(rig: Rig, unit: str) -> list[tuple[str, str, str]]:
    """Presets and songs in which the unit sounds or is set."""
    loops = {(use.switcher, use.number) for use in rig.loops if any(stop.thing == unit for stop in use.stops)}
    numbers = {number for _, number in loops}
    presets = []
    for preset in rig.presets.values():
        named = {name for name, _ in (*preset.on, *preset.off)} | {name for name, _, _ in preset.programs}
        looped = any((host, number) in loops or (host is None and number in numbers) or host == unit
                     for host, number, _ in preset.loops)  # fmt: skip
        if looped or unit in named | {name for name, _ in preset.floors}:
            presets.append(preset)
    numbered = {preset.number for preset in presets}
    songs = [song for song in rig.songs if song.preset in numbered or any(name == unit for name, _, _ in song.settings)]
    rows = []
    if presets:
        rows.append(
            ("presets", ", ".join(f"{each.number} {each.title}".strip() for each in presets), "try each, set it anew")
        )
    if songs:
        rows.append(("songs", ", ".join(song.title for song in songs), "set knobs and levels for them"))
    return rows


def _choice(field: str) -> Callable[[Unit], str]:
    def say(unit: Unit) -> str:
        fact = getattr(unit, field)
        return "not stated" if fact is None else str(fact.value)

    return say


def _figure(field: str, unit_of: str) -> Callable[[Unit], str]:
    def say(unit: Unit) -> str:
        fact: Fact[float] | None = getattr(unit, field)
        return "not stated" if fact is None else f"{fact.value:g} {unit_of}"

    return say


def _flags(*words: str) -> Callable[[Unit], str]:
    return lambda unit: ", ".join(word for word in words if word in unit.flags) or "no"


def _at_jack(role: str, read: Callable[[Jack], Fact[float] | None], unit_of: str) -> Callable[[Unit], str]:
    """The figure at the first jack of a role that is in no loop."""

    def say(unit: Unit) -> str:
        looped = {name for loop in unit.loops for name in (loop.send, loop.back)}
        jack = next((each for each in unit.jacks if each.role == role and each.name not in looped), None)
        fact = None if jack is None else read(jack)
        if fact is None:
            return "not stated"
        return ohms(fact.value) if unit_of == "ohm" else f"{fact.value:g} {unit_of}"

    return say


def _switches(unit: Unit) -> str:
    return (
        ", ".join(f"{spot.x_mm:g}, {spot.y_mm:g} mm {spot.action or ''}".strip() for spot in unit.switches)
        or "not stated"
    )


def _sides(unit: Unit) -> str:
    ways = {AUDIO_IN: "in", AUDIO_OUT: "out"}
    paired = {role for pair in unit.pairs for name in pair if (jack := unit.jack(name)) for role in (jack.role,)}
    return ", ".join(f"{'stereo' if role in paired else 'mono'} {word}" for role, word in ways.items())


_FACTS: dict[str, Callable[[Unit], str]] = {
    "bypass": _choice("bypass"),
    "without power": _choice("unpowered"),
    "gain": _figure("gain_db", "dB"),
    "output level": _at_jack(AUDIO_OUT, lambda jack: jack.levels.nominal_dbu, "dBu"),
    "most at its input": _at_jack(AUDIO_IN, lambda jack: jack.levels.maximum_dbu, "dBu"),
    "input impedance": _at_jack(AUDIO_IN, lambda jack: jack.impedance_ohm, "ohm"),
    "output impedance": _at_jack(AUDIO_OUT, lambda jack: jack.impedance_ohm, "ohm"),
    "sides": _sides,
    "inverts": _flags("inverts", "inverts unknown"),
    "tails": _flags("tails"),
    "latency": _figure("latency_ms", "ms"),
    "foot switch at": _switches,
}
