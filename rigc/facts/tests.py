"""Tests: what is measured on a built board before it plays, how it is done, and what a fault points at."""

from __future__ import annotations

from rigc.facts import readings
from rigc.record import Record


class Test(Record):
    """A test by its number: name, how it is made, its limit in words, the units of a reading (the model's; `` for a plain
    number), one thing to do about a reading beyond it, and where the limit comes from."""

    number: int
    name: str
    how: str
    limit: str
    units: tuple[str, ...]
    mend: str
    source: str = "common practice, no source"


def _mend(what: str) -> str:
    return f"measure again; then {what}"


TESTS = {
    test.number: test
    for test in (
        Test(
            1,
            "mains earth bond",
            "by a competent person, before use: from the inlet's earth pin to each piece of earthed metal that can be touched",
            f"at most {readings.BOND_OHM.value:g} Ω, and the lead's own",
            ("ohm",),
            "keep it unplugged, and hand it to a competent person",
            readings.EARTH_CODES,
        ),
        Test(
            2,
            "mains insulation",
            "by a competent person, before use: 500 V DC from live parts to earth",
            f"at least {readings.INSULATION_MOHM.value:g} MΩ",
            ("ohm",),
            "keep it unplugged, and hand it to a competent person",
            readings.EARTH_CODES,
        ),
        Test(
            3,
            "audio lead, continuity",
            "ohmmeter, contact to contact as the row says; wiggle both ends: no jump",
            f"less than {readings.LEAD_OHM.value:g} Ω; at most {readings.LONG_LEAD_OHM.value:g} Ω over 1 m",
            ("ohm",),
            _mend("make its ends anew"),
        ),
        Test(
            4,
            "audio lead, insulation",
            "ohmmeter, from each contact to every other",
            f"more than {readings.LEAKAGE_MOHM.value:g} MΩ",
            ("ohm",),
            _mend("look for a whisker or molten core at its ends"),
        ),
        Test(
            5,
            "power plug, polarity and voltage without load",
            "voltmeter at the plug, before it goes into a unit; red on the pole that is marked +; an AC lead with the meter on AC",
            "polarity as marked; 9 V: 8.7 to 9.9 V; 12 V: 11.6 to 12.9 V; 18 V: 17.4 to 19.5 V; unregulated: up to 1.5 times",
            ("V",),
            "keep the plug out of its unit; look at the outlet's voltage switch and at the lead, and measure again",
        ),
        Test(
            6,
            "voltage under load",
            "voltmeter at the unit, all units on",
            f"at least {readings.ON_LOAD_PCT.value:g} % of nominal",
            ("V",),
            _mend("look at the outlet's load, at the lead and at its plugs"),
        ),
        Test(
            7,
            "DC ripple",
            "AC millivolts at the plug, under load",
            f"at most {readings.RIPPLE_MV['linear'].value:g} mV linear, {readings.RIPPLE_MV['switch-mode'].value:g} mV switch-mode",
            ("V",),
            _mend("try the unit on another outlet, or the outlet with another lead"),
        ),
        Test(
            8,
            "isolation between outlets",
            "ohmmeter, leads out of the units: from each outlet to all others",
            f"more than {readings.ISOLATION_MOHM.value:g} MΩ, but for outlets that are listed with one common",
            ("ohm",),
            _mend("find what joins the two outlets: a metal bushing, a rail, a plug that touches"),
        ),
        Test(
            9,
            "straight through, all units off",
            "1 kHz at −20 dBu into the board; read its outputs; then each unit in and out",
            f"±{readings.THROUGH_DB.value:g} dB; each bypassed unit at most {readings.BYPASS_DB.value:g} dB",
            ("dB", "dBu"),
            _mend("halve the chain to find the unit or lead that takes it"),
        ),
        Test(
            10,
            "treble through the bypassed board",
            "10 kHz against 1 kHz, from a source of 10 kΩ",
            f"at most {readings.TREBLE_DB.value:g} dB down",
            ("dB",),
            _mend("shorten what stands before the first buffer, or move the buffer"),
        ),
        Test(
            11,
            "unit on: unity and polarity",
            "1 kHz at −20 dBu, two traces or a saw; note the setting at unity, and whether it inverts",
            "noted, inverters too",
            ("dB", "dBu"),
            _mend("set its level anew"),
        ),
        Test(
            12,
            "noise floor",
            "10 kΩ dummy plug in the input, the amp's gain as played, against one plain lead; then work each switch",
            f"at most +{readings.NOISE_DB.value:g} dB; no pop more than {readings.POP_DB.value:g} dB over the floor",
            ("dB",),
            _mend("pull units out one by one, from the last"),
        ),
        Test(
            13,
            "hum",
            "lines at 50 and 100 Hz (60 and 120); switch the lift of each isolator to and fro, and leave it as the settings say",
            f"at most {readings.HUM_DB.value:g} dB of −20 dBu",
            ("dB", "dBu"),
            _mend("pull MIDI, USB and switch leads first, then work the isolator; never the mains earth"),
        ),
        Test(
            14,
            "mute",
            "tone into the board, muted",
            f"at least {readings.MUTE_DB.value:g} dB",
            ("dB",),
            _mend("look for a way round the mute"),
        ),
        Test(
            15,
            "MIDI",
            "every preset, upwards and downwards; no stuck note; once more after switching the power off and on",
            f"every unit follows within {readings.FOLLOW_MS.value:g} ms",
            ("ms",),
            _mend("look at channels, at the count from 0 or 1, and at thru stages"),
        ),
        Test(
            16,
            "expression sweep",
            "read the value at heel and toe; slowly to and fro: no jump",
            f"heel {readings.HEEL.value:g}, toe {readings.TOE.value:g}",
            ("",),
            _mend("calibrate the treadle, and look at how its plug is wired"),
        ),
        Test(
            17,
            "switching on, weak mains",
            f"supply off and on {readings.STARTS.value:g} times; where 100 V countries are played, {readings.LOW_MAINS_V.value:g} V on the primary",
            "every unit starts; the switcher's state is known",
            (),
            _mend("spread units with a high starting current"),
        ),
        Test(
            18,
            "mechanics",
            f"turn it over, shake it, tap each plug with a screwdriver's handle, stamp on each switch {readings.STOMPS.value:g} times",
            "no drop-out, nothing moves",
            (),
            _mend("fasten what moves"),
        ),
        Test(
            19,
            "heat",
            f"{readings.CLOSED_ROOM_H.value:g} h on in a closed room",
            f"supply below {readings.SUPPLY_C.value:g} °C, no unit above {readings.UNIT_C.value:g} °C",
            ("°C",),
            _mend("give it air, or move load to another supply"),
        ),
        Test(
            20,
            "control and MIDI leads, contact by contact",
            "ohmmeter, from end A to end B as the row says; then no other two contacts may be joined",
            f"less than {readings.LEAD_OHM.value:g} ohm; at most {readings.LONG_LEAD_OHM.value:g} ohm over 1 m",
            ("ohm",),
            _mend("make its ends anew: a crossed lead is no straight one"),
        ),
    )
}
