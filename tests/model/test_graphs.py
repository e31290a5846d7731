"""The graphs of signal, power and ground: what is a way, what is a node. Rigs are invented."""

from __future__ import annotations

import random
import subprocess
import sys
from pathlib import Path

import networkx
import pytest
from small_rigs import block, results_of, unit

from rigc.model.graphs import SignalGraph, ground_graph, ground_rings, joined_grounds, signal_graph
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.ground_link import EARTH, GROUND, GroundLink, Pole
from rigc.model.ways.inner_ways import bypass_ways, sinks, sources
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


def joined(*pairs: str) -> list[GroundLink]:
    """Links between grounds of one letter, named by their number; `z` is the mains earth."""
    poles = {letter: (letter, GROUND) for letter in "abcdef"} | {"z": EARTH}
    return [
        GroundLink((poles[pair[0]], poles[pair[1]]), "audio", (f"A{number}",)) for number, pair in enumerate(pairs, 1)
    ]


def marks(rings: list[list[GroundLink]]) -> list[set[str]]:
    return [{mark for link in ring for mark in link.marks} for ring in rings]


def test_rings_between_two_grounds_come_first_and_stand_for_one_in_longer_ones() -> None:
    # 4 nodes, 7 edges: 7 - 4 + 1 = 4 rings. ab three times: two pairs; aa: one to itself; abcd: one of four.
    graph = ground_graph([], joined("ab", "ab", "bc", "cd", "da", "ab", "aa"))
    assert marks(ground_rings(graph)) == [{"A7"}, {"A1", "A2"}, {"A1", "A6"}, {"A1", "A3", "A4", "A5"}]


def test_rings_are_the_shortest_there_are() -> None:
    # A square with both diagonals: 6 - 4 + 1 = 3 rings, all of three.
    rings = ground_rings(ground_graph([], joined("ab", "bc", "cd", "da", "ac", "bd")))
    assert [len(ring) for ring in rings] == [3, 3, 3]
    assert all(set(ring[0].ends) & set(ring[1].ends) and set(ring[-1].ends) & set(ring[0].ends) for ring in rings)


def test_a_chain_has_no_ring() -> None:
    assert ground_rings(ground_graph([], joined("ab", "bc", "cd"))) == []


def test_the_mains_earth_joins_no_grounds_of_a_board() -> None:
    lone: Pole = ("f", GROUND)
    graph = ground_graph([lone], joined("ab", "cd", "az", "cz"))
    parts = [[thing for thing, _ in part] for part in joined_grounds(graph)]
    assert parts == [["f"], ["a", "b"], ["c", "d"]]


def random_links(seed: int) -> list[GroundLink]:
    """From none to a dozen links between ten grounds."""
    dice = random.Random(seed)
    poles = [EARTH, *((f"u{number}", GROUND) for number in range(9))]
    return [
        GroundLink((dice.choice(poles), dice.choice(poles)), "audio", (f"A{number}",))
        for number in range(dice.randrange(13))
    ]


@pytest.mark.parametrize("seed", range(60))
def test_grounds_and_rings_agree_with_networkx(seed: int) -> None:
    # Outside check: networkx 3, connected_components and minimum_cycle_basis. A basis is not the only one of its size, but
    # the lengths of its rings are those of every other (they are the bases of a matroid), and its number is links - grounds + parts.
    links = random_links(seed)
    graph = ground_graph([], links)
    outside = networkx.MultiGraph([link.ends for link in links])
    simple = networkx.Graph((a, b) for a, b in outside.edges() if a != b)
    rings = ground_rings(graph)
    count = len(links) - outside.number_of_nodes() + networkx.number_connected_components(outside)
    assert len(rings) == count
    longer = sorted(len(ring) for ring in rings if len(ring) > 2)
    assert longer == sorted(map(len, networkx.minimum_cycle_basis(simple)))
    for ring in rings:
        ends = [pole for link in ring for pole in set(link.ends)]
        assert len(ring) == 1 or all(ends.count(pole) == 2 for pole in ends)
    board = outside.subgraph(pole for pole in outside if pole != EARTH)
    assert {frozenset(part) for part in joined_grounds(graph)} == set(
        map(frozenset, networkx.connected_components(board))
    )


@pytest.mark.parametrize("seed", range(20))
def test_what_is_reached_agrees_with_networkx(seed: int) -> None:
    # Outside check: networkx 3, descendants, ancestors and simple_cycles.
    dice = random.Random(seed)
    ports = [Port(f"u{number}", "out") for number in range(8)]
    ways = tuple(dict.fromkeys((dice.choice(ports), dice.choice(ports)) for _ in range(dice.randrange(14))))
    graph = SignalGraph(ways, {port: [end for start, end in ways if start == port] for port in ports})
    outside = networkx.DiGraph(ways)
    outside.add_nodes_from(ports)
    for port in ports:
        assert graph.after([port]) == {port, *networkx.descendants(outside, port)}
        assert graph.before([port]) == {port, *networkx.ancestors(outside, port)}
    tangles = [part for part in networkx.strongly_connected_components(outside) if len(part) > 1]
    circles = graph.circles()
    assert len(circles) == len(tangles)
    for circle in circles:
        assert all(outside.has_edge(a, b) for a, b in zip(circle, [*circle[1:], circle[0]], strict=True))


@pytest.mark.parametrize("rig", ["back-bedroom", "long-haul"])
def test_a_check_without_tangled_rings_loads_no_library_of_graphs_or_units(rig: str) -> None:
    path = Path(__file__).parent.parent.parent / "examples" / rig / "board.rig"
    code = (
        f"import sys; from rigc.cli import main; main(['check', {str(path)!r}]);"
        "sys.exit(str([name for name in ('networkx', 'pint') if name in sys.modules]))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True)
    assert done.stderr.splitlines()[-1] == "[]"
