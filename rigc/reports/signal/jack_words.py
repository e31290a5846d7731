"""Units and jacks -> the words of the wiring sheet: level class, mono or stereo, what a unit does when bypassed."""

from __future__ import annotations

from rigc.facts.loading import LINE_FROM
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit

_BYPASS = {
    "true": "true bypass",
    "buffered": "buffered",
    "trails": "buffered, tails ring on",
    "always-on": "always on",
    "unknown": "unknown",
}


def level_class(rig: Rig, port: Port, reckoned: dict[str, float | None]) -> str:
    """`instrument`, `microphone`, `line` or `speaker`, by the nominal level that is stated, else by the highest that is reckoned (in dBu, by
    port); `not said` where there is neither."""
    jack = rig.jack(port)
    if jack is not None and jack.carries == "speaker":
        return "speaker"
    stated = None if jack is None else jack.levels.nominal_dbu
    nominal = reckoned.get(str(port)) if stated is None else stated.value
    if nominal is None:
        return "not said"
    instrument = rig.instruments.get(port.thing)
    if instrument is not None and "microphone" in instrument.flags:
        return "microphone"
    return "line" if nominal >= LINE_FROM.value else "instrument"


def width(rig: Rig, thing: str, ins: tuple[str, ...], outs: tuple[str, ...]) -> str:
    """Mono or stereo, from the jacks that are used at both sides (none where the way begins or ends): a stereo jack is both sides."""
    words = {1: "mono", 2: "stereo"}
    here, there = (words.get(sum(_sides(rig, Port(thing, jack)) for jack in jacks), "") for jacks in (ins, outs))
    if here and there and here != there:
        return f"{here} in, {there} out"
    return there or here


def _sides(rig: Rig, port: Port) -> int:
    jack = rig.jack(port)
    return 2 if jack is not None and jack.carries == "stereo" else 1


def when_bypassed(unit: Unit) -> str:
    """What a unit does when it is bypassed, and without power; empty for amps and desks."""
    if unit.kind != "unit":
        return ""
    if unit.bypass is not None:
        said = _BYPASS[unit.bypass.value]
    else:
        said = "passive" if "passive" in unit.flags else "not said"
    return said if unit.unpowered is None else f"{said}; without power: {unit.unpowered.value}"
