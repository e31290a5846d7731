"""What is asked of each unit and instrument before anything is designed: the facts, and the columns of the list in which a client states
them.

The intake sheet, the empty list that is handed out, what is read out of a filled one, and what is told to be missing all go by this.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from rigc.model.jacks import AUDIO_IN, AUDIO_OUT, Jack
from rigc.model.things import Unit
from rigc.record import Record


class AskedFact(Record):
    """A fact as it is asked for. `blank` is its statement with blanks to fill in; `needed` says whether checks stay without an answer
    where it is not known; `known` whether a unit, or an instrument, states it."""

    key: str
    blank: str
    needed: bool
    known: Callable[[Any], bool]


class AskedColumn(Record):
    """A column of the list. `fact` is the fact that it is a part of, empty where it only tells the row; `unit` the unit that is meant
    where it has one; `words` are all that may stand in it, or none; `others` are headings that are read as this one."""

    key: str
    heading: str
    how: str
    example: str
    fact: str = ""
    unit: str = ""
    words: tuple[str, ...] = ()
    others: tuple[str, ...] = ()
    handed_out: bool = True


SIDES = ("left", "right", "front", "rear")
_JACKS = ("ts", "trs", "mini-trs", "din", "xlr")


def _jack(unit: Unit, role: str) -> Jack | None:
    return next((jack for jack in unit.jacks if jack.role == role), None)


def _silent(unit: Unit) -> bool:
    """Whether its jacks are stated and none bears sound."""
    roles = {each.role for each in unit.jacks} - {"inlet"}
    return bool(roles) and not roles & {AUDIO_IN, AUDIO_OUT}


def _placed(unit: Unit, role: str) -> bool:
    """Of what comes through the air there is no place; a treadle or a MIDI splitter has no audio jack."""
    jack = _jack(unit, role)
    if jack is None:
        return role != "inlet" and _silent(unit)
    return jack.connector.kind == "wireless" or (jack.side is not None and jack.height_mm is not None)


def _level(unit: Unit, role: str, field: str) -> bool:
    """An output's nominal level too; that of an input follows from what feeds it."""
    jack = _jack(unit, role)
    if jack is None:
        return _placed(unit, role)
    nominal = role == AUDIO_IN or jack.levels.nominal_dbu is not None
    return nominal and getattr(jack.levels, field) is not None


def _unplugged(unit: Unit) -> bool:
    return "passive" in unit.flags


_PAPERS = (
    AskedFact("serial", 'serial "___"', False, lambda each: each.papers.serial is not None),
    AskedFact("owner", 'owner "___"', False, lambda each: each.papers.owner is not None),
    AskedFact("insured", "insured ___ EUR", False, lambda each: each.papers.insured is not None),
    AskedFact("price", "price ___ EUR", False, lambda each: each.papers.price is not None),
    AskedFact("origin", "origin ___", False, lambda each: each.papers.origin is not None),
)
FACTS = (
    AskedFact("body", "body ___ x ___ x ___ mm", True, lambda unit: unit.height_mm is not None),
    AskedFact("mass", "mass ___ g", True, lambda unit: unit.mass_kg is not None),
    AskedFact(
        "switch",
        "switch at ___, ___ mm",
        True,
        lambda unit: bool(unit.switches) or unit.treadle_mm is not None or "worked by hand" in unit.flags,
    ),
    AskedFact("bypass", "bypass ___", True, lambda unit: _unplugged(unit) or _silent(unit) or unit.bypass is not None),
    AskedFact("unpowered", "unpowered ___", True, lambda unit: _unplugged(unit) or unit.unpowered is not None),
    AskedFact("input", "input in ___ ___ Mohm ___ ___ mm up ___ mm", True, lambda unit: _placed(unit, AUDIO_IN)),
    AskedFact("output", "output out ___ ___ kohm ___ ___ mm up ___ mm", True, lambda unit: _placed(unit, AUDIO_OUT)),
    AskedFact(
        "inlet",
        "inlet dc barrel ___ x ___ mm ___ ___ mm up ___ mm",
        True,
        lambda unit: _unplugged(unit) or _placed(unit, "inlet"),
    ),
    AskedFact("needs", "needs ___ V ___", True, lambda unit: _unplugged(unit) or unit.volts is not None),
    AskedFact(
        "polarity",
        "polarity ___",
        True,
        lambda unit: _unplugged(unit) or unit.polarity is not None or unit.current == "ac",
    ),
    AskedFact("draws", "draws ___ mA", True, lambda unit: _unplugged(unit) or unit.draws_ma is not None),
    AskedFact("level in", "level in ___ dBu max ___ dBu", True, lambda unit: _level(unit, AUDIO_IN, "maximum_dbu")),
    AskedFact("level out", "level out ___ dBu peak ___ dBu", True, lambda unit: _level(unit, AUDIO_OUT, "peak_dbu")),
    AskedFact("feet", "feet ___", False, lambda unit: unit.feet is not None),
    AskedFact("base", "base ___", False, lambda unit: unit.base is not None),
    AskedFact("accepts", "accepts ___..___ V", False, lambda unit: _unplugged(unit) or unit.accepts_low_v is not None),
    AskedFact("starts", "starts ___ mA", False, lambda unit: _unplugged(unit) or unit.starts_ma is not None),
    AskedFact("ground", "ground ___", False, lambda unit: _unplugged(unit) or unit.ground is not None),
    AskedFact("latency", "latency ___ ms", False, lambda unit: unit.latency_ms is not None),
    AskedFact("traits", "digital, delay, reverb, high gain ...", False, lambda unit: bool(unit.flags)),
    AskedFact("version", 'version "___"', False, lambda unit: unit.papers.version is not None),
    AskedFact("firmware", 'firmware "___"', False, lambda unit: unit.papers.firmware is not None),
    *_PAPERS,
)
"""In the order in which a unit's block states them."""

OF_INSTRUMENTS = (
    AskedFact("lead", "lead ___ m of ___", True, lambda each: each.lead_mm is not None),
    AskedFact(
        "level out",
        "level out ___ dBu peak ___ dBu",
        True,
        lambda each: any(jack.levels.peak_dbu is not None for jack in each.jacks),
    ),
    AskedFact("inductance", "inductance ___ H", True, lambda each: each.active or each.inductance_h is not None),
    AskedFact("resistance", "resistance ___ kohm", True, lambda each: each.active or each.resistance_ohm is not None),
    AskedFact("capacitance", "capacitance ___ pF", True, lambda each: each.active or each.capacitance_pf is not None),
    AskedFact("volume", "volume ___ kohm at ___ %", True, lambda each: each.active or each.volume_ohm is not None),
    AskedFact("tone", "tone ___ kohm ___ nF at ___ %", True, lambda each: each.active or each.tone_ohm is not None),
    AskedFact("lowest note", "lowest note ___ Hz", False, lambda each: each.lowest_note_hz is not None),
    AskedFact("mass", "mass ___ kg", False, lambda each: each.mass_kg is not None),
    *_PAPERS,
)
"""What is asked of each instrument; of one that has a buffer of its own, or no pickup, nothing of the pickup."""


def _places(key: str, name: str, example: tuple[str, str, str]) -> tuple[AskedColumn, ...]:
    side, along, up = example
    return (
        AskedColumn(
            f"{key} side", f"{name} side", "the side it is on, its front towards the player", side, key, words=SIDES
        ),
        AskedColumn(
            f"{key} along",
            f"{name} along",
            "from the front edge (left, right) or the left edge (front, rear) to the middle of the jack",
            along,
            key,
            "mm",
            others=(f"{name.lower()} distance", f"{name.lower()} from edge"),
        ),
        AskedColumn(
            f"{key} up",
            f"{name} up",
            "from the base, without feet, to the middle of the jack",
            up,
            key,
            "mm",
            others=(f"{name.lower()} height",),
        ),
    )


COLUMNS = (
    AskedColumn(
        "name", "Name", "what it is called; each name once", "Tern",
        others=("unit", "units", "pedal", "pedals", "device", "item", "gear", "model", "effect", "unit name", "pedal name"),
    ),
    AskedColumn("what", "What it is", "its kind in plain words", "overdrive", others=("type", "kind", "description", "category", "what")),
    AskedColumn("quantity", "How many", "a whole number; blank is one", "1", others=("qty", "quantity", "count", "pcs")),
    AskedColumn("width", "Width", "left to right, without plugs", "70 mm", "body", "mm", others=("w", "breadth")),
    AskedColumn("depth", "Depth", "front to rear, without plugs", "120 mm", "body", "mm", others=("d",)),
    AskedColumn("height", "Height", "with knobs, without feet", "55 mm", "body", "mm", others=("h",)),
    AskedColumn(
        "size", "Size", "width x depth x height", "70 x 120 x 55 mm", "body", "mm",
        others=("dimensions", "dims", "body", "measurements", "w x d x h", "wxdxh", "w×d×h", "size w x d x h", "dimensions w x d x h"),
        handed_out=False,
    ),
    AskedColumn("mass", "Mass", "as it stands on the board, batteries in", "400 g", "mass", "g", others=("weight", "wt")),
    AskedColumn(
        "switch", "Foot switch at", "from the left edge, from the front edge", "35, 20 mm", "switch", "mm",
        others=("switch at", "foot switch", "footswitch", "footswitch at"),
    ),
    AskedColumn(
        "bypass", "Bypass", "what the signal goes through when it is off", "true", "bypass",
        words=("true", "buffered", "trails", "always-on", "unknown"), others=("bypass type",),
    ),
    AskedColumn(
        "unpowered", "Without power", "what it does to sound when its plug is pulled", "passes", "unpowered",
        words=("passes", "mutes", "latches"), others=("unpowered", "no power"),
    ),
    AskedColumn("input jack", "Input jack", "the kind of jack", "ts", "input", words=_JACKS, others=("input", "in", "input type")),
    AskedColumn(
        "input impedance", "Input impedance", "from its leaflet", "1 Mohm", "input", "ohm", others=("input z", "in z", "impedance in", "zin")
    ),
    *_places("input", "Input", ("right", "80 mm", "25 mm")),
    AskedColumn("level in", "Level in", "what it is made for", "-20 dBu", "level in", "dBu", others=("input level", "nominal level in")),
    AskedColumn("most in", "Most it takes", "before it distorts", "11 dBu", "level in", "dBu", others=("max level in", "max input level", "level in max")),
    AskedColumn("output jack", "Output jack", "the kind of jack", "ts", "output", words=_JACKS, others=("output", "out", "output type")),
    AskedColumn(
        "output impedance", "Output impedance", "from its leaflet", "1 kohm", "output", "ohm", others=("output z", "out z", "impedance out", "zout")
    ),
    *_places("output", "Output", ("left", "80 mm", "25 mm")),
    AskedColumn("level out", "Level out", "what it gives as it will be set", "-20 dBu", "level out", "dBu", others=("output level", "nominal level out")),
    AskedColumn("peak out", "Peak out", "the most it gives as it will be set", "4 dBu", "level out", "dBu", others=("max level out", "peak level out", "level out peak", "max output level")),
    AskedColumn(
        "inlet", "Power inlet", "its plug, outer x inner diameter", "barrel 5.5 x 2.1 mm", "inlet", "mm",
        others=("inlet", "power plug", "dc plug", "plug", "connector", "power connector", "dc jack", "power jack", "dc in"),
    ),
    *_places("inlet", "Inlet", ("rear", "35 mm", "33 mm")),
    AskedColumn(
        "needs", "Voltage", "what it is made for, dc or ac", "9 V dc", "needs", "V",
        others=("needs", "volts", "supply voltage", "power voltage", "v"),
    ),
    AskedColumn("accepts", "Works from, to", "the least and the most voltage", "8.7..9.9 V", "accepts", "V", others=("voltage range", "accepts")),
    AskedColumn(
        "polarity", "Polarity", "which pole is in the middle of the plug", "centre-negative", "polarity",
        words=("centre-negative", "centre-positive"), others=("power polarity", "dc polarity"),
    ),
    AskedColumn(
        "draws", "Current", "with everything on, at its worst setting", "8 mA", "draws", "mA",
        others=("draws", "current draw", "draw", "max current", "current max", "max current draw", "current draw max", "ma", "consumption", "current consumption", "power current", "amps"),
    ),
    AskedColumn("starts", "Current at switch-on", "the highest, in its first second", "20 mA", "starts", "mA", others=("starts", "inrush", "inrush current", "switch-on current")),
    AskedColumn(
        "power", "Power", "all of voltage, current, polarity and plug in one", "9 V dc 8 mA centre-negative",
        others=("power supply", "psu", "power requirements", "supply", "power needs"), handed_out=False,
    ),
    AskedColumn(
        "ground", "Audio ground", "the pole of its supply that is the ground of its jacks", "negative", "ground",
        words=("negative", "positive", "isolated"), others=("ground",),
    ),
    AskedColumn("latency", "Latency", "by which it delays the sound", "3 ms", "latency", "ms", others=("delay of sound",)),
    AskedColumn(
        "traits", "Traits", "any of: digital, analogue, passive, high gain, delay, reverb, tails, inverts, splitter", "digital, delay", "traits",
        others=("properties", "features"),
    ),
    AskedColumn("feet", "Feet", "what is under it when it is mounted", "removed", "feet", words=("none", "removed", "stay")),
    AskedColumn("base", "Base", "how strip sticks to it", "flat", "base", words=("flat", "textured", "screws")),
    AskedColumn("version", "Version", "the hardware version that the facts are of", "2", "version", others=("hardware version", "rev", "revision")),
    AskedColumn("firmware", "Firmware", "as it shows it", "1.42", "firmware"),
    AskedColumn("serial", "Serial", "as it stands on it", "HE-3107", "serial", others=("serial number", "serial no", "s/n", "sn")),
    AskedColumn("owner", "Owner", "whose it is", "player B", "owner", others=("belongs to",)),
    AskedColumn("insured", "Insured value", "with its currency", "640 EUR", "insured", "EUR", others=("insured", "insurance value", "value")),
    AskedColumn("price", "Price", "with its currency", "590 EUR", "price", "EUR", others=("cost",)),
    AskedColumn("origin", "Country of origin", "two letters of ISO 3166-1", "PL", "origin", others=("origin", "made in", "country")),
    AskedColumn("note", "Note", "printed for the crew", "knobs taped", others=("notes", "remark", "remarks", "comment", "comments")),
    AskedColumn(
        "source", "How known", "how the facts of this row are known; blank is assumed", "measured",
        words=("measured", "leaflet", "assumed"), others=("source", "provenance"),
    ),
    AskedColumn("date", "On", "the day on which they were measured or looked up, year-month-day", "2026-02-14", others=("date", "measured on", "as of")),
    AskedColumn("by", "By", "who measured or looked", "R.K.", others=("measured by", "who")),
)  # fmt: skip
"""In the order of the list. Those that are not handed out are read all the same, as lists of other makings have them."""
