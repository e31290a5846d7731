"""What a unit is to the leads around it. Rigs are invented."""

from __future__ import annotations

import pytest
from small_rigs import block, results_of, unit

from rigc.analysis.signal.loading.section_walk import Kept, Walker
from rigc.analysis.signal.unit_mode import Mode, is_treadle
from rigc.model.jacks import Port
from rigc.model.ways.audio_state import AudioState
from rigc.model.wishes import When

ENDS = block("instrument", "guitar", "inductance 4 H") + block("amp", "combo", "input in ts")
STEREO = ("input inl ts", "input inr ts", "output outl ts", "output outr ts", "pair inl, inr", "pair outl, outr")


def mode(text: str, name: str, *on: str, kind: str = "preset") -> Mode:
    rig = results_of(ENDS + text).rig
    state = AudioState("", kind, frozenset(on), frozenset(), When())
    return Walker(rig, state, Kept()).mode(name, state)


def wipers(found: Mode) -> dict[str, tuple[str, ...]]:
    """The outputs that each input feeds through a track."""
    return {
        port.jack: tuple(out.jack for out, how in outs if how == "track")
        for port, outs in found.feeds.items()
        if any(how == "track" for _, how in outs)
    }


@pytest.mark.parametrize(
    ("facts", "fed"),
    [
        (("input in ts", "output out ts"), {"in": ("out",)}),
        (("input in ts", "output out ts", "output tun ts"), {"in": ("out",)}),
        (("input in ts", "output a ts", "output b ts"), {"in": ("a", "b")}),
        (("input in ts", "output a ts", "output b ts", "path in -> a straight", "path in -> b buffer"), {}),
        (STEREO, {"inl": ("outl", "outr"), "inr": ("outl", "outr")}),
    ],
)
def test_which_jacks_a_treadles_wiper_feeds(facts: tuple[str, ...], fed: dict[str, tuple[str, ...]]) -> None:
    found = mode(block("unit", "slipway", "passive", "track 25 kohm", *facts), "slipway")
    assert wipers(found) == fed


def test_a_wired_stereo_treadle_keeps_its_sides_apart() -> None:
    text = block("unit", "front", *STEREO, "bypass buffered") + block(
        "unit", "slipway", *STEREO, "passive", "track 25 kohm"
    )
    found = mode(text + "chain guitar -> front => slipway -> combo\n", "slipway")
    assert wipers(found) == {"inl": ("outl",), "inr": ("outr",)}


def test_what_is_a_treadle() -> None:
    rig = results_of(
        unit("a", "passive", "track 25 kohm") + unit("b", "passive", "treadle 60..85 mm") + unit("c", "passive")
        + unit("wah", "bypass true", "treadle 60..85 mm")
    ).rig  # fmt: skip
    assert [name for name, thing in rig.units.items() if is_treadle(thing)] == ["a", "b"]


@pytest.mark.parametrize(
    ("facts", "on", "end"),
    [
        (("bypass true",), (), "dead end"),
        (("bypass true",), ("plumb",), "stage"),
        (("bypass buffered",), (), "stage"),
        ((), (), "unknown"),
    ],
)
def test_a_tuner_without_an_output(facts: tuple[str, ...], on: tuple[str, ...], end: str) -> None:
    found = mode(block("unit", "plumb", "input in ts", *facts), "plumb", *on)
    assert found.ends == {Port("plumb", "in"): (end,)}


@pytest.mark.parametrize(("kind", "end"), [("preset", "stage"), ("unpowered", "blocked")])
def test_what_comes_through_the_air_ends_in_a_receiver_that_has_power(kind: str, end: str) -> None:
    found = mode(block("unit", "heron", "input air wireless", "output out ts", "unpowered mutes"), "heron", kind=kind)
    assert found.ends == {Port("heron", "air"): (end,)}


@pytest.mark.parametrize(("on", "end"), [(("fork",), "stage"), ((), "bypassed stage")])
def test_a_splitters_input_is_one_load_whatever_is_behind_it(on: tuple[str, ...], end: str) -> None:
    facts = ("input in ts 1 Mohm", "impedance in 2 Mohm bypassed", "output dry ts", "output wet ts", "bypass buffered")
    paths = ("path in -> dry transformer lifted", "path in -> wet buffer")
    found = mode(block("unit", "fork", *facts, *paths), "fork", *on)
    assert found.ends == {Port("fork", "in"): (end,)}
    assert [out.jack for out, _ in found.feeds[Port("fork", "in")]] == ["dry", "wet"]
