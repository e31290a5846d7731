"""Joined grounds, earths and rings of both worked boards, counted by hand, and of small ones. Rigs are invented."""

from __future__ import annotations

from collections import Counter

from cases import ROOT, results
from small_rigs import block, results_of, unit

from rigc.analysis.ground.ground_systems import GroundSystems
from rigc.analysis.ground.ring_words import ring_words
from rigc.analysis.ground.rings import DESK, EARTHS, PAIR, PANEL, SHARED, SIGNAL
from rigc.analysis.ground.states import GroundState

GUITAR, COMBO = block("instrument", "guitar"), block("amp", "combo", "earthed", "input in ts")
POWER = ("inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "draws 5 mA")


def only(of: str) -> GroundState:
    """The one state of a rig whose scenarios join grounds alike."""
    grounds: GroundSystems = results_of(of).get(GroundSystems)
    (state,) = grounds.states
    return state


def board(name: str) -> GroundState:
    """The one state of a worked board."""
    grounds: GroundSystems = results(ROOT / name).get(GroundSystems)
    (state,) = grounds.states
    return state


def counted(state: GroundState) -> tuple[int, int]:
    return len(state.poles), len(state.links)


def test_home_rig() -> None:
    # On the board 6 units and the shared outlet o2 = 7 nodes; leads A2 to A6 (5) and D2a, D2b = 7 edges; 7 - 7 + 1 = 1 ring.
    # With the amp and the earth as nodes: 7 + 2 = 9; edges 7 + A7 + the amp's earth = 9; 9 - 9 + 1 = 1 again.
    state = board("examples/back-bedroom/board.rig")
    assert counted(state) == (9, 9)
    assert [ring.kind for ring in state.rings] == [SHARED]
    assert ring_words(state.rings[0]) == "mill5.o2 – D2a – marl – A4 – millpond – D2b – mill5.o2"
    assert [system.earths for system in state.systems] == [("combo",)]


def test_touring_rig() -> None:
    # On the board: heron, signalbox, 8 loop units, slipway, plumb, weathervane, lantxl, rotundaxl, canaltwo, lever = 17
    # nodes; A01 + A02 to A17 (16) + A18 to A20 (3) + A21 to A26 (6) + C01 = 27 edges; 27 - 17 + 1 = 11 rings.
    # With both amps and the earth 20 nodes, and A27 with A30 as one edge, and two earths: 30 edges; 30 - 20 + 1 = 11.
    state = board("examples/long-haul/board.rig")
    assert counted(state) == (17 + 3, 27 + 3)
    assert state.scenarios == ("eu", "uk", "us", "jp-east", "jp-west")
    assert Counter(ring.kind for ring in state.rings) == {PAIR: 11}
    assert [ring.marks for ring in state.rings[-3:]] == [("A21", "A22"), ("A23", "A24"), ("A25", "A26")]
    assert [system.earths for system in state.systems] == [("left-amp",), ("right-amp",)]  # one each


def test_touring_rig_as_ordered() -> None:
    # A26 is gone, rotundaxl to right-amp is new: 30 - 20 + 1 = 11 again, but 10 pairs and one through two mains earths.
    state = board("tests/rigs/long-haul-as-ordered.rig")
    assert counted(state) == (20, 30)
    assert Counter(ring.kind for ring in state.rings) == {PAIR: 10, EARTHS: 1}
    assert ring_words(state.rings[-1]) == (
        "left-amp – A30 + A27 – canaltwo – A25 – rotundaxl – A29 + A31 – right-amp – earth"
    )
    assert [system.earths for system in state.systems] == [("left-amp", "right-amp")]


def test_rings_number_edges_less_nodes_and_components() -> None:
    for name in (
        "examples/back-bedroom/board.rig",
        "examples/long-haul/board.rig",
        "tests/rigs/long-haul-as-ordered.rig",
    ):
        state = board(name)
        earth = 1 if any(system.earths for system in state.systems) else 0
        components = len([system for system in state.systems if not system.earths]) + earth
        assert len(state.rings) == len(state.links) - len(state.poles) + components


def test_a_positive_ground_hangs_on_the_plus_pole_of_a_common() -> None:
    text = unit("hedge", *POWER, "ground positive") + unit("marl", *POWER, "ground negative")
    text += (
        unit("lone", *POWER, "ground isolated") + GUITAR + COMBO + "chain guitar -> hedge -> marl -> lone -> combo\n"
    )
    text += block("supply", "mill", "outlet o1..o2 9 V dc 100 mA common a")
    text += "power {\n  hedge from mill.o1\n  marl, lone from mill.o2 shared\n}\n"
    commons = {link.ends for link in only(text).links if link.kind == "common"}
    assert commons == {
        (("mill common a", "positive"), ("hedge", "ground")),
        (("mill common a", "negative"), ("marl", "ground")),
    }


def test_beyond_a_transformer_lies_another_ground() -> None:
    text = GUITAR + COMBO + unit("marl") + unit("iso", "passive", "path in -> out transformer") + unit("lant")
    state = only(text + "chain guitar -> marl -> iso -> lant -> combo\n")
    assert [system.members for system in state.systems] == [("combo", "lant", "iso.out"), ("marl", "iso")]


def test_a_scenario_sets_a_lift() -> None:
    text = block("scenario", "hall", "lift di.out closed") + block("scenario", "home", "lift di.out open") + GUITAR
    text += unit("di", "path in -> out transformer") + unit("marl") + COMBO + "chain guitar -> marl -> di -> combo\n"
    found = results_of(text).get(GroundSystems)
    assert [len(found.in_scenario(name).systems) for name in ("hall", "home")] == [1, 2]


def test_a_ring_closes_through_the_desk() -> None:
    text = GUITAR + COMBO + block("desk", "foh", "earthed", "input in xlr")
    text += unit("di", "output mic xlr") + "chain guitar -> di\nchain a: di.out -> combo\nchain b: di.mic -> foh\n"
    assert [ring.kind for ring in only(text).rings] == [DESK]


def test_two_bonded_jacks_make_a_ring_through_the_panel() -> None:
    text = GUITAR + block("panel", "rear", "jack l ts bonded at 10, 10 mm", "jack r ts bonded at 40, 10 mm")
    text += unit("marl", "output y ts") + unit("lant") + block("amp", "combo", "earthed", "input in ts", "input b ts")
    text += "chain guitar -> marl\nchain a: marl.out -> rear.l -> combo.in\n"
    text += "chain b: marl.y -> lant\nchain c: lant -> rear.r -> combo.b\n"
    kinds = Counter(ring.kind for ring in only(text).rings)
    # Nodes: marl, lant, the metal, combo, earth = 5; edges: marl to metal, marl to lant, lant to metal, metal to combo twice,
    # combo to earth = 6; 6 - 5 + 1 = 2 rings.
    assert kinds == {PAIR: 1, PANEL: 1}


def test_parallel_ways_of_sound_are_a_ring_of_audio_leads() -> None:
    text = GUITAR + COMBO + unit("split", "output y ts") + unit("lant") + unit("mixer", "input b ts")
    text += "chain guitar -> split\nchain dry: split.out -> mixer.in\nchain wet: split.y -> lant\n"
    text += "chain back: lant -> mixer.b\nchain out: mixer -> combo\n"
    assert [ring.kind for ring in only(text).rings] == [SIGNAL]
