"""What a unit is from jack to jack in a state. Rigs are invented."""

from __future__ import annotations

import pytest
from every_way import every_way
from small_rigs import block, results_of, unit

from rigc.model.rig import Rig
from rigc.model.ways.audio_state import AudioState
from rigc.model.ways.state_ways import leads_in
from rigc.model.wishes import When

ENDS = block("instrument", "guitar", "inductance 4 H") + block("amp", "combo", "input in ts")


def rig_of(text: str) -> Rig:
    return results_of(ENDS + text).rig


def inner(rig: Rig, name: str, *on: str, kind: str = "preset", loops: tuple[int, ...] = ()) -> dict[str, str]:
    """The ways inside a thing as `in out`, and what each is."""
    state = AudioState("", kind, frozenset(on), frozenset(("box", number) for number in loops), When())
    return {f"{way.start.jack} {way.end.jack}": way.how for way in every_way(rig, state) if way.start.thing == name}


@pytest.mark.parametrize(
    ("facts", "off", "on"),
    [
        (("bypass true",), "cable", "active"),
        (("bypass buffered",), "buffer", "active"),
        (("bypass trails",), "buffer", "active"),
        (("bypass always-on",), "active", "active"),
        (("bypass unknown",), "unknown", "active"),
        ((), "unknown", "active"),
        (("passive",), "cable", "cable"),
        (("passive", "path in -> out transformer lifted"), "transformer", "transformer"),
        (("bypass true", "path in -> out transformer"), "transformer", "transformer"),
        (("bypass true", "path in -> out buffer"), "buffer", "active"),
        (("path in -> out straight",), "cable", "cable"),
        (("bypass true", "path in -> out straight"), "cable", "active"),
    ],
)
def test_off_and_on(facts: tuple[str, ...], off: str, on: str) -> None:
    rig = rig_of(unit("marl", *facts) + "chain guitar -> marl -> combo\n")
    assert inner(rig, "marl") == {"in out": off}
    assert inner(rig, "marl", "marl") == {"in out": on}


@pytest.mark.parametrize(
    ("facts", "how"),
    [
        (("bypass true", "unpowered passes"), "cable"),
        (("bypass true", "unpowered mutes"), "blocked"),
        (("bypass buffered", "unpowered mutes"), "blocked"),
        (("bypass true", "unpowered latches"), "unknown"),
        (("bypass true",), "unknown"),
        (("passive",), "cable"),
        (("bypass true", 'battery "9 V block" only'), "cable"),
        (("bypass always-on", "unpowered mutes", "path in -> out straight"), "cable"),
        (("bypass true", "unpowered passes", "path in -> out buffer"), "cable"),
    ],
)
def test_without_power(facts: tuple[str, ...], how: str) -> None:
    rig = rig_of(unit("marl", *facts) + "chain guitar -> marl -> combo\n")
    assert inner(rig, "marl", kind="unpowered") == {"in out": how}


def test_an_amp_keeps_its_mains() -> None:
    text = block(
        "amp", "stack", "input in ts", "output send ts", "input back ts", "loop 1 send send return back mix series"
    )
    text = text.replace(" mix series", " series") + unit("lant", "bypass true")
    rig = rig_of(text + "chain guitar -> stack\nchain stack.send -> lant -> stack.back\n")
    assert inner(rig, "stack", kind="unpowered") == {"in send": "active"}


BOX = ("output s1..s2 ts", "input r1..r2 ts", "loop 1..2 send s1..s2 return r1..r2")
LOOPS = unit("marl", "bypass true") + unit("lant", "bypass true") + "chain guitar -> box -> combo\n"
LOOPS += "loop 1 of box holds marl\nloop 2 of box holds lant\n"


@pytest.mark.parametrize(("bypass", "how"), [("buffered", "buffer"), ("true", "cable"), ("unknown", "unknown")])
def test_a_switcher_goes_through_the_loops_that_are_in(bypass: str, how: str) -> None:
    rig = rig_of(unit("box", f"bypass {bypass}", *BOX) + LOOPS)
    assert inner(rig, "box") == {"in out": how}
    assert inner(rig, "box", "box") == {"in out": how}, "a switcher is neither on nor off"
    assert inner(rig, "box", loops=(2,)) == {"in s2": how, "r2 out": how}
    assert inner(rig, "box", loops=(1, 2)) == {"in s1": how, "r1 s2": how, "r2 out": how}


def test_a_loop_of_a_units_own_is_passed_over_when_it_is_off() -> None:
    text = unit("gate", "bypass true", "output s1 ts", "input r1 ts", "loop 1 send s1 return r1") + unit(
        "marl", "bypass true"
    )
    rig = rig_of(text + "chain guitar -> gate -> combo\nchain gate.s1 -> marl -> gate.r1\n")
    assert inner(rig, "gate") == {"in out": "cable"}
    assert inner(rig, "gate", "gate") == {"in s1": "active", "r1 out": "active"}


STEREO = ("input inl ts", "input inr ts", "output outl ts", "output outr ts", "pair inl, inr", "pair outl, outr")


def test_wire_joins_left_to_left() -> None:
    front, back = block("unit", "front", *STEREO, "bypass buffered"), block("unit", "tank", *STEREO, "bypass true")
    rig = rig_of(front + back + "chain guitar -> front => tank -> combo\n")
    assert inner(rig, "tank") == {"inl outl": "cable", "inr outr": "cable"}
    assert set(inner(rig, "front")) == {"inl outl", "inl outr", "inr outl", "inr outr"}


def test_one_side_alone_goes_to_both() -> None:
    rig = rig_of(block("unit", "tank", *STEREO, "bypass true") + "chain guitar -> tank.inl\nchain tank.outl -> combo\n")
    assert {"inl outl", "inl outr"} <= set(inner(rig, "tank"))


def test_only_the_leads_that_hold() -> None:
    text = block("scenario", "van") + block("scenario", "stage") + unit("marl", "bypass true")
    rig = rig_of(text + "chain for van: guitar -> marl -> combo\nchain for stage: guitar -> combo\n")
    state = AudioState("", "all off", frozenset(), frozenset(), When(("stage",)))
    assert [str(each.end) for each in leads_in(rig, state)] == ["combo.in"]
