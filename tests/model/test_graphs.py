"""The graphs of signal, power and ground: what is a way, what is a node. Rigs are invented."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from small_rigs import block, results_of, unit

from rigc.model.graphs import FAR, GROUND, ground_graph, power_graph, signal_graph
from rigc.model.inner_ways import bypass_ways, sinks, sources
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import When

GUITAR, COMBO = block("instrument", "guitar"), block("amp", "combo", "input in ts")
SWITCHER = unit(
    "box",
    "output s1..s3 ts",
    "input r1..r3 ts",
    "loop 1..3 send s1..s3 return r1..r3",
)


def ways(rig: Rig, thing: str) -> set[tuple[str, str]]:
    return {(a.jack, b.jack) for a, b in signal_graph(rig).ways if a.thing == b.thing == thing}


def fed(rig: Rig) -> list[tuple[Port, str]]:
    return [(outlet, name) for feed in rig.power.feeds for name in feed.units for outlet in feed.outlets]


def test_every_input_reaches_every_output_unless_paths_are_stated() -> None:
    two = ("input b ts", "output y ts")
    rig = results_of(unit("whole", *two) + unit("kept", *two, "path in -> out straight")).rig
    assert ways(rig, "whole") == {("in", "out"), ("in", "y"), ("b", "out"), ("b", "y")}
    assert ways(rig, "kept") == {("in", "out")}


def test_loops_of_a_switcher_follow_each_other_and_an_empty_one_is_passed_over() -> None:
    text = SWITCHER + unit("marl") + unit("lant")
    text += "loop 1 of box holds marl\nloop 2 of box empty\nloop 3 of box holds lant\n"
    rig = results_of(text).rig
    assert ways(rig, "box") == {("in", "s1"), ("r1", "s3"), ("r3", "out")}
    assert bypass_ways(rig.units["box"]) == [(Port("box", "in"), Port("box", "out"))]


def test_a_switcher_without_wired_loops_is_straight_through() -> None:
    assert ways(results_of(SWITCHER).rig, "box") == {("in", "out")}


def test_loops_of_a_blender_lie_side_by_side() -> None:
    text = SWITCHER + unit("marl") + unit("lant")
    text += block("blend", "box", "dry 50 %", "wet 25 % through marl", "wet 25 % inverted through lant")
    expected = {("in", "out"), ("in", "s1"), ("r1", "out"), ("in", "s2"), ("r2", "out")}
    assert ways(results_of(text).rig, "box") == expected


@pytest.mark.parametrize(("mix", "around"), [("series", set()), ("parallel", {("in", "line")})])
def test_an_amp_loop_is_in_series_or_in_parallel(mix: str, around: set[tuple[str, str]]) -> None:
    jacks = ("input in ts", "output line ts", "output s ts", "input r ts")
    text = block("amp", "combo", *jacks, f"loop 1 send s return r {mix}") + unit("lant")
    rig = results_of(text + "loop 1 of combo holds lant\n").rig
    assert ways(rig, "combo") == {("in", "s"), ("r", "line")} | around


def test_what_never_holds_at_once_is_in_no_graph_together() -> None:
    text = block("scenario", "van") + block("scenario", "stage") + GUITAR + COMBO + unit("marl") + unit("lant")
    text += "chain for van: guitar -> marl -> lant -> combo\nchain for stage: guitar -> lant -> marl -> combo\n"
    rig = results_of(text).rig
    assert [len(circle) for circle in signal_graph(rig).circles()] == [4]  # marl in, out, lant in, out
    assert signal_graph(rig, When(("van",))).circles() == []


def test_sound_enters_by_instruments_and_leaves_by_amps_and_open_panel_jacks() -> None:
    text = GUITAR + COMBO + unit("marl") + block("panel", "rear", "jack l ts at 10, 10 mm", "jack r ts at 40, 10 mm")
    rig = results_of(text + "chain guitar -> marl -> rear.l\nchain rear.r -> combo\n").rig
    assert sources(rig) == [Port("guitar", "out"), Port("rear", "r")]
    assert sinks(rig) == [Port("combo", "in"), Port("rear", "l")]


def test_power_runs_from_outlets_to_units() -> None:
    graph = power_graph([(Port("mill", "o1"), "marl"), (Port("mill", "o1"), "lant")])
    assert sorted(graph.successors(Port("mill", "o1"))) == ["lant", "marl"]


def test_grounds_of_the_home_rig() -> None:
    # Worked by hand: 6 units and the shared outlet o2 = 7 nodes; leads A2 to A6 (5) and two legs of D2 = 7 edges; 7 - 7 + 1 = 1 ring.
    rig = results(ROOT / "examples/back-bedroom/board.rig").rig
    graph = ground_graph(rig, fed(rig))
    assert (graph.number_of_nodes(), graph.number_of_edges()) == (7, 7)


def test_a_positive_ground_hangs_on_the_plus_pole_of_a_common() -> None:
    ports = ("inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "draws 5 mA")
    text = unit("hedge", *ports, "ground positive") + unit("marl", *ports) + unit("lone", *ports, "ground isolated")
    text += block("supply", "mill", "outlet o1..o2 9 V dc 100 mA common a")
    text += "power {\n  hedge from mill.o1\n  marl from mill.o2\n  lone from mill.o2\n}\n"
    rig = results_of(text).rig
    graph = ground_graph(rig, fed(rig))
    joined = {frozenset(edge) for edge in graph.edges()}
    common = "mill common a"
    assert joined == {
        frozenset({(common, "positive"), ("hedge", GROUND)}),
        frozenset({(common, "negative"), ("marl", GROUND)}),
    }


def test_beyond_a_transformer_lies_another_ground() -> None:
    text = GUITAR + unit("marl") + unit("iso", "passive", "path in -> out transformer") + unit("lant")
    rig = results_of(text + "chain guitar -> marl -> iso -> lant\n").rig
    graph = ground_graph(rig, [])
    assert graph.has_edge(("marl", GROUND), ("iso", GROUND))
    assert graph.has_edge(("iso", FAR), ("lant", GROUND))
    assert not graph.has_edge(("iso", FAR), ("iso", GROUND))
