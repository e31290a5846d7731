"""The d.c. network of the power wiring, against networks worked by hand and against ngspice on a hundred dealt rigs."""

from __future__ import annotations

import shutil
import subprocess
from itertools import pairwise
from pathlib import Path
from random import Random

import pytest
from small_rigs import results_of, unit

from rigc.analysis.power.circuit import Circuit, Node
from rigc.analysis.power.power_network import PowerNetwork

RIGS = 100
needs_ngspice = pytest.mark.skipif(shutil.which("ngspice") is None, reason="ngspice is not installed")


def test_divider() -> None:
    """9 V over 1 Ω and 2 Ω: 9 / 3 = 3 A, 6 V across the 2 Ω."""
    circuit = Circuit()
    circuit.source("+", "-", 9)
    circuit.resistor("a", "+", "m", 1)
    circuit.resistor("b", "m", "-", 2)
    found = circuit.solved()
    assert found.amps["a"] == pytest.approx(3)
    assert found.volts["m"] - found.volts["-"] == pytest.approx(6)


def test_load_through_there_and_back() -> None:
    """0.4 A through 0.5 Ω there and 0.5 Ω back: 9 − 0.4 × 1 = 8.6 V."""
    circuit = Circuit()
    circuit.source("+", "-", 9)
    circuit.resistor("there", "+", "u+", 0.5)
    circuit.resistor("back", "-", "u-", 0.5)
    circuit.load("u+", "u-", 0.4)
    found = circuit.solved()
    assert found.volts["u+"] - found.volts["u-"] == pytest.approx(8.6)
    assert found.amps["back"] == pytest.approx(-0.4)


def test_sources_in_series_add() -> None:
    """Two sources of 9 V end to end are 18 V, wherever the zero is."""
    circuit = Circuit()
    circuit.source("top", "middle", 9)
    circuit.source("middle", "bottom", 9)
    circuit.load("top", "bottom", 0.01)
    found = circuit.solved()
    assert found.volts["top"] - found.volts["bottom"] == pytest.approx(18)


def test_a_ring_of_sources_has_no_answer() -> None:
    circuit = Circuit()
    circuit.source("a", "b", 9)
    circuit.source("b", "c", 9)
    with pytest.raises(ValueError, match="ring of sources"):
        circuit.source("a", "c", 9)


def test_what_comes_back_from_a_series_pair_is_what_its_unit_draws() -> None:
    """90 mA flow through both outlets, one behind the other; through the pair's return, that of the lower one, they flow once."""
    text = (
        "supply mill {\n  connector barrel 5.5 x 2.1 mm\n  outlet o1..o2 9 V dc 200 mA isolated\n}\n"
        + unit("elder", "inlet dc barrel 5.5 x 2.1 mm", "needs 18 V dc", "draws 90 mA")
        + "power {\n  elder from mill.o1, mill.o2 series\n}\n"
    )
    network = results_of(text).get(PowerNetwork)
    found = network.of("elder")
    assert found is not None
    assert float(found.returned) == pytest.approx(90)
    returns = network.states[0].returns
    assert [flow.ma for flow in returns] == pytest.approx([90, 90])
    assert [flow.within for flow in returns] == [False, True]


class Dealt:
    """A dealt rig's wiring: the same elements for our circuit and, as cards, for ngspice.

    Outlets, some on one common, some in series; leads there and back; units that draw; shields between neighbours, with units on midpoints
    and of positive ground among them, so that shorts come up too.
    """

    def __init__(self, seed: int) -> None:
        self.seed, self.circuit, self.cards = seed, Circuit(), list[str]()
        self.nodes: dict[Node, str] = {}
        self.resistors: dict[str, tuple[Node, Node, float]] = {}
        chance = Random(seed)
        grounds: list[Node] = []
        for at in range(chance.randint(2, 8)):
            common = chance.random() < 0.3
            low: Node = "common" if common else f"o{at}-"
            self._source(f"o{at}+", low, chance.choice((9, 9, 9, 12, 18)))
            upper: Node = f"o{at}+"
            if chance.random() < 0.2:
                self._resistor(f"j{at}", f"o{at}+", f"p{at}-", chance.uniform(0.01, 0.3))
                self._source(f"p{at}+", f"p{at}-", 9)
                upper = f"p{at}+"
                if chance.random() < 0.3:  # a second unit, on the midpoint
                    self._unit(chance, f"m{at}", f"p{at}+", f"p{at}-", grounds)
            self._unit(chance, f"u{at}", upper, low, grounds)
        for at, (one, other) in enumerate(pairwise(grounds)):
            self._resistor(f"s{at}", one, other, 0.05)

    def _unit(self, chance: Random, name: str, plus: Node, minus: Node, grounds: list[Node]) -> None:
        ohm = chance.uniform(0.01, 0.4)
        self._resistor(f"{name}there", plus, f"{name}+", ohm)
        self._resistor(f"{name}back", minus, f"{name}-", ohm)
        amps = chance.choice((0.005, 0.02, 0.1, 0.4))
        self.circuit.load(f"{name}+", f"{name}-", amps)
        self.cards.append(f"I{self.seed}_{name} {self._node(f'{name}+')} {self._node(f'{name}-')} DC {amps}")
        grounds.append(f"{name}+" if chance.random() < 0.05 else f"{name}-")

    def _source(self, plus: Node, minus: Node, volts: float) -> None:
        self.circuit.source(plus, minus, volts)
        self.cards.append(f"V{self.seed}_{plus} {self._node(plus)} {self._node(minus)} DC {volts}")

    def _resistor(self, name: str, one: Node, other: Node, ohm: float) -> None:
        self.circuit.resistor(name, one, other, ohm)
        self.resistors[name] = one, other, ohm
        self.cards.append(f"R{self.seed}_{name} {self._node(one)} {self._node(other)} {ohm!r}")

    def _node(self, node: Node) -> str:
        return self.nodes.setdefault(node, f"n{self.seed}_{len(self.nodes)}")


@pytest.mark.parametrize("seed", range(RIGS))
def test_idle_is_solved_without_loads(seed: int) -> None:
    """Each voltage against a neighbour's, also where sources work against each other through a short."""
    each = Dealt(seed)
    quiet = each.circuit.copy()
    quiet._loads = []
    idle, solved = each.circuit.idle(), quiet.solved().volts
    for one, other, _ in each.resistors.values():
        assert idle[one] - idle[other] == pytest.approx(solved[one] - solved[other], abs=1e-6)
    for plus, minus, _ in each.circuit._loads:
        assert idle[plus] - idle[minus] == pytest.approx(solved[plus] - solved[minus], abs=1e-6)


def test_idle_of_sources_that_agree_and_that_do_not() -> None:
    """Two of 9 V side by side: 9 V. One of 9 V and one of 12 V, each over 1 Ω: 9 + 3 / 2 = 10.5 V."""
    for volts, at_inlet in ((9, 9), (12, 10.5)):
        circuit = Circuit()
        circuit.source("a+", "-", 9)
        circuit.source("b+", "-", volts)
        circuit.resistor("a", "a+", "u+", 1)
        circuit.resistor("b", "b+", "u+", 1)
        circuit.load("u+", "-", 0.1)
        idle = circuit.idle()
        assert idle["u+"] - idle["-"] == pytest.approx(at_inlet)


@needs_ngspice
def test_a_hundred_dealt_rigs_as_ngspice_solves_them(tmp_path: Path) -> None:
    """Every voltage across and current through a resistor to 0.1 % (or 1 µA); all circuits in one run, each tied to ground by 1 GΩ."""
    dealt = [Dealt(seed) for seed in range(RIGS)]
    cards = ["dealt power wiring"]
    for each in dealt:
        cards += each.cards
        cards += [f"Rz{each.seed}_{at} {node} 0 1e9" for at, node in enumerate(each.nodes.values())]
    names = [node for each in dealt for node in each.nodes.values()]
    cards += [".options gmin=1e-15 reltol=1e-6", ".control", "op", "set numdgt=12", "set width=200"]
    cards += [f"print v({name})" for name in names]
    cards += [".endc", ".end"]
    (tmp_path / "dealt.cir").write_text("\n".join(cards) + "\n", "utf-8")
    done = subprocess.run(
        ["ngspice", "-b", "dealt.cir"], cwd=tmp_path, capture_output=True, text=True, timeout=120, check=False
    )
    volts = {}
    for line in done.stdout.splitlines():
        if line.startswith("v("):
            name, value = line.split("=")
            volts[name.strip()[2:-1]] = float(value)
    assert len(volts) == len(names), done.stdout[-2000:] + done.stderr[-2000:]
    compared = shorts = 0
    for each in dealt:
        found = each.circuit.solved()
        for name, (one, other, ohm) in each.resistors.items():
            theirs = (volts[each.nodes[one]] - volts[each.nodes[other]]) / ohm
            assert found.amps[name] == pytest.approx(theirs, rel=1e-3, abs=1e-6), (each.seed, name)
            compared += 1
            shorts += abs(theirs) > 3
    assert compared > 1000
    assert shorts > 50
