"""The states in which a rig is looked at. Rigs are invented."""

from __future__ import annotations

from cases import ROOT, results
from small_rigs import block, results_of, unit

from rigc.analysis.signal.audio_states import AudioState, AudioStates

GUITAR = block("instrument", "guitar", "inductance 4 H")
COMBO = block("amp", "combo", "input in ts")
BOX = unit("box", "bypass buffered", "output s1..s2 ts", "input r1..r2 ts", "loop 1..2 send s1..s2 return r1..r2")


def states(text: str) -> tuple[AudioState, ...]:
    return results_of(text).get(AudioStates).all


def test_all_off_each_alone_everything_and_no_power() -> None:
    text = GUITAR + COMBO + unit("marl", "bypass true") + unit("lant", "bypass buffered")
    assert [
        (state.name, state.kind, set(state.on)) for state in states(text + "chain guitar -> marl -> lant -> combo\n")
    ] == [
        ("all off", "all off", set()),
        ("marl alone on", "alone", {"marl"}),
        ("lant alone on", "alone", {"lant"}),
        ("everything on", "everything on", {"marl", "lant"}),
        ("no power", "unpowered", set()),
    ]


def test_what_cant_be_switched_or_is_not_used_has_no_state() -> None:
    text = GUITAR + COMBO + unit("slipway", "passive") + unit("heron", "bypass always-on") + unit("idle", "bypass true")
    text += "chain guitar -> heron -> slipway -> combo\n"
    assert [state.name for state in states(text)] == ["all off", "everything on", "no power"]


def test_a_unit_in_a_loop_takes_its_loop_along() -> None:
    text = GUITAR + COMBO + BOX + unit("marl", "bypass true") + unit("lant", "bypass true")
    text += "chain guitar -> box -> combo\nloop 1 of box holds marl\nloop 2 of box holds lant\n"
    found = {state.name: state for state in states(text)}
    assert set(found) == {"all off", "marl alone on", "lant alone on", "everything on", "no power"}
    assert found["all off"].loops == frozenset()
    assert found["lant alone on"].loops == {("box", 2)}
    assert found["everything on"].loops == {("box", 1), ("box", 2)}


def test_a_preset_switches_loops_and_what_is_in_them() -> None:
    text = (
        GUITAR + COMBO + BOX + unit("marl", "bypass true") + unit("lant", "bypass true") + unit("moss", "bypass true")
    )
    text += "chain guitar -> moss -> box -> combo\nloop 1 of box holds marl\nloop 2 of box holds lant\n"
    text += 'preset 1 "Lift" {\n  loops 1, 2\n  off lant\n  on moss\n}\npreset 2 {\n  loops 2 of box\n}\n'
    one, two = (state for state in states(text) if state.kind == "preset")
    assert (one.name, one.preset, set(one.on)) == ('preset 1 "Lift"', 1, {"marl", "moss"})
    assert one.loops == {("box", 1), ("box", 2)}
    assert (two.name, set(two.on), set(two.loops)) == ("preset 2", {"lant"}, {("box", 2)})


def test_scenarios_count_only_where_their_wiring_differs() -> None:
    text = block("scenario", "van") + block("scenario", "stage") + block("scenario", "hall") + GUITAR + COMBO
    text += unit("marl", "bypass buffered") + unit("lant", "bypass buffered")
    same = states(text + "chain guitar -> marl -> lant -> combo\n")
    assert len(same) == 5
    assert {state.when.scenarios for state in same} == {()}
    text += "chain for van: guitar -> marl -> combo\nchain for stage, hall: guitar -> lant -> combo\n"
    found = [(state.name, state.when.scenarios) for state in states(text) if state.kind == "all off"]
    assert found == [("all off, van", ("van",)), ("all off, stage, hall", ("stage", "hall"))]


def test_each_instrument_has_its_states_where_a_chain_is_only_for_one() -> None:
    text = GUITAR + block("instrument", "fiddle", "active") + COMBO + unit("marl", "bypass buffered")
    text += "chain with guitar: guitar -> marl -> combo\nchain with fiddle: fiddle -> combo\n"
    found = [(state.name, state.when.instrument) for state in states(text) if state.kind == "all off"]
    assert found == [("all off, with guitar", "guitar"), ("all off, with fiddle", "fiddle")]


def test_the_touring_rig() -> None:
    # 12 units can be switched: the eight in the loops, the tuner, three stereo units; receiver, treadles, isolator and
    # splitter can't, nor can the switcher itself. So 12 alone, all off, everything on, four presets, no power: 19.
    found = results(ROOT / "examples/long-haul/board.rig").get(AudioStates)
    assert len(found.all) == 19
    assert len(found.wirings) == 1
    wall = next(state for state in found.all if state.preset == 4)
    assert (set(wall.on), {number for _, number in wall.loops}) == ({"bramble", "claypit"}, {3, 6})
