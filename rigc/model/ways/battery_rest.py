"""How a battery is spared between shows: a plug in its jack keeps a pedal and an active guitar on, all else has a switch."""

from __future__ import annotations

from rigc.model.rig import Rig


def has_switch(rig: Rig, name: str) -> bool:
    """Whether the thing that holds a battery is switched off: an amp, a microphone, an instrument that plays through the air (its
    body-pack). Of a pedal, and of a guitar on a lead, the plug is pulled."""
    source = rig.instruments.get(name)
    if source is None:
        return rig.units[name].ends
    return source.kind == "source" or has_pack(rig, name)


def has_pack(rig: Rig, name: str) -> bool:
    """Whether what an instrument or a source gives may go through the air, so that a body-pack or a transmitter hangs on it: no lead is
    said to go from it to a jack."""
    ends = (each.end for each in rig.connections if each.start.thing == name)
    return all(jack.connector.kind == "wireless" for end in ends if (jack := rig.jack(end)) is not None)
