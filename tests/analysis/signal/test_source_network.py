"""The response of a passive instrument on its cable and inputs, and the plain formulas beside it."""

from __future__ import annotations

from math import inf, log, log10, pi

import pytest
from cases import ROOT, results

from rigc.analysis.signal.loading.source_network import SourceNetwork, bridging_db, corner_hz, unloaded_hz
from rigc.traced.means import in_parallel

# Five circuits and what ngspice 39 said of them on the day they were recorded (swept in 0.5 Hz steps from 100 Hz to
# 20050 Hz); an independent nodal formula in numpy gave the same to six digits. Outside check: ngspice, a general-purpose
# circuit simulator. Promised: 0.1 % in level, 0.2 % in frequency.
# H, ohm, pF; volume ohm, its setting; cable pF; input ohm; peak Hz, peak level; levels at 100 Hz, 1 kHz, 5 kHz.
RECORDED = {
    "A": (2.5, 6e3, 110, 250e3, 1.0, 500, 1e6, 3708.08, 1.5393, (0.95229, 0.99444, 1.06553)),
    "B, a humbucker": (4.5, 8e3, 150, 500e3, 1.0, 720, 1e6, 2450.80, 2.1410, (0.96383, 1.10641, 0.33641)),
    "C, short cable": (2.5, 6e3, 110, 250e3, 1.0, 50, 1e6, 4802.52, 1.0129, (0.95192, 0.95521, 1.01245)),
    "D, low input": (2.5, 6e3, 110, 250e3, 1.0, 500, 100e3, 2340.67, 0.9469, (0.90541, 0.91751, 0.63290)),
    "E, volume at half": (2.5, 6e3, 110, 250e3, 0.5, 500, 1e6, None, None, (0.44988, 0.44649, 0.33367)),
}


def network(case: str) -> SourceNetwork:
    henry, ohm, pickup, volume, turned, cable, load, *_ = RECORDED[case]
    return SourceNetwork(henry, ohm, pickup, volume, turned, volume, 1.0, 22e3, cable, load)


@pytest.mark.parametrize("case", RECORDED)
def test_levels_of_the_recorded_circuits(case: str) -> None:
    told = [abs(network(case).level(hertz)) for hertz in (100, 1000, 5000)]
    assert told == pytest.approx(RECORDED[case][-1], rel=1e-3)


@pytest.mark.parametrize("case", RECORDED)
def test_peaks_of_the_recorded_circuits(case: str) -> None:
    hertz, level = RECORDED[case][7:9]
    found = network(case).peak_hz
    if hertz is None:
        assert found is None, "it falls from the start"
        return
    assert found == pytest.approx(hertz, rel=2e-4)
    assert abs(network(case).level(found or 0)) == pytest.approx(level, rel=1e-3)


@pytest.mark.parametrize("case", RECORDED)
def test_the_point_where_it_has_fallen_3_db(case: str) -> None:
    # By its definition: there the level is 1/sqrt(2) of that at 100 Hz, and higher just below.
    made = network(case)
    assert made.fallen_hz is not None
    floor = abs(made.level(100)) / 2**0.5
    assert abs(made.level(made.fallen_hz)) == pytest.approx(floor, rel=1e-4)
    assert abs(made.level(made.fallen_hz * 0.99)) > floor


def test_the_first_circuit_lies_below_its_unloaded_resonance() -> None:
    # Textbook 1/(2 pi sqrt(L C)) with 2.5 H and 610 pF: 4075.54 Hz; controls and input pull the peak down to 3708 Hz.
    assert unloaded_hz(2.5, 610) == pytest.approx(4075.54, rel=1e-4)
    assert (network("A").peak_hz or 0) < 0.92 * unloaded_hz(2.5, 610)


def test_nothing_comes_through_a_volume_control_that_is_down() -> None:
    down = network("A").replace(turned=0.0)
    assert down.level(1000) == 0
    assert down.decibel(1000) == -inf
    assert down.peak_hz is None


def test_a_tone_control_that_is_down_leaves_its_capacitor_across_the_pickup() -> None:
    # By hand: C = 22 nF + 610 pF, R = 6k in front, Rp = 250k || 1M = 200k across. The response of such a circuit is highest
    # at w^2 = (1 + R/Rp)/(LC) - (R/L + 1/(Rp C))^2/2 = 1.8222e7 - 2621^2/2 = 1.4787e7: 612.0 Hz.
    down = network("A").replace(tone_turned=0.0)
    assert down.peak_hz == pytest.approx(612.0, rel=1e-3)
    assert abs(down.level(5000)) < 0.1


@pytest.mark.parametrize(
    ("ohms", "decibel"),
    [((1e6,), -0.08643), ((1e5,), -0.82785), ((1e6, 1e6), -0.17200), ((1e4,), -6.02060), ((), 0.0)],
)
def test_bridging_loss(ohms: tuple[float, ...], decibel: float) -> None:
    # 20 log10(Zl/(Zs+Zl)) at 10 kohm, evaluated outside this project; the formula is the general reference on bridging.
    assert bridging_db(1e4, in_parallel(*ohms)) == pytest.approx(decibel, abs=1e-4)


def test_loss_at_the_ratio_of_bridging() -> None:
    assert bridging_db(1, 10) == pytest.approx(-20 * log10(1.1))
    assert bridging_db(1, 0) == -inf
    assert in_parallel(5.0, 0.0) == 0


def test_treble_corner() -> None:
    # 3 m of 100 pF/m on 10 kohm: 53052 Hz (1/(2 pi R C), relative 1e-4).
    assert corner_hz(1e4, 300) == pytest.approx(53052, rel=1e-4)
    assert corner_hz(1e4, 0) == inf


def test_the_stock_cable_is_what_its_geometry_gives() -> None:
    # Textbook: 2 pi e0 er / ln(D/d); polyethylene 2.25, 2.95 over 0.9 mm: 105.439 pF/m. Printed forms differ by up to 0.7 %.
    geometry = 2 * pi * 8.8541878128e-12 * 2.25 / log(2.95 / 0.9) * 1e12
    assert geometry == pytest.approx(105.439, abs=5e-4)
    cable = results(ROOT / "examples/back-bedroom/board.rig").rig.stock.cables["mini-coax"]
    assert cable.capacitance_pf_per_m is not None
    assert cable.capacitance_pf_per_m.value == pytest.approx(geometry, rel=7e-3)
