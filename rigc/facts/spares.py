"""Spares: how many leads each class of rig carries."""

from __future__ import annotations

from rigc.facts.fact import Fact

_PRACTICE = "common practice, no source"


def _carried(number: int, what: str) -> Fact:
    return Fact(number, "", f"spare leads, each at least as long as the longest of the rig: {what}", _PRACTICE)


AUDIO = {
    "gigging": _carried(1, "audio, gigging"),
    "touring": _carried(2, "audio, touring"),
    "fly": _carried(2, "audio, fly"),
}
DC = {"gigging": _carried(1, "dc and ac, gigging")}
DC_PER_PLUG = {
    "touring": _carried(1, "dc and ac, per kind of plug, touring"),
    "fly": _carried(1, "dc and ac, per kind of plug, fly"),
}
MIDI = {"touring": _carried(1, "midi, touring"), "fly": _carried(1, "midi, fly")}
