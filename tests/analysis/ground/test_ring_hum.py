"""Area, hum and gain of rings: the worked home rig against its hand estimate, and small rings worked by hand."""

from __future__ import annotations

from pathlib import Path

import pytest
from cases import ROOT, results
from small_rigs import block, results_of, unit

from rigc.analysis.ground.gain_after import GainAfter
from rigc.analysis.ground.ring_hum import Hum, RingHum
from rigc.analysis.ground.ring_ways import Ways, area_mm2, beside
from rigc.model.graphs import signal_graph
from rigc.model.jacks import Port
from rigc.traced.term import known

SHARED_RING = ROOT / "tests/analysis/checks/cases/shared-supply-ring"


def hum_of(case: Path) -> Hum:
    """The hum of the one ring that matters in the one state."""
    hums: RingHum = results(case).get(RingHum)
    ((hum,),) = hums.states
    return hum


def test_home_rig() -> None:
    # Hand estimate: about 0.34 x 0.15 m = 0.051 m²; 2π · 50 · 1e-6 · 0.051 = 16.0 µV, 20·lg(16.0e-6/77.5e-3) = -73.7 dB.
    hum = hum_of(ROOT / "examples/back-bedroom/board.rig")
    assert known(hum.area) is not None and known(hum.induced) is not None
    assert 0.5 < hum.area / 0.051 < 2
    assert 8.0 < hum.induced * 1e6 < 32.0
    assert hum.level_db == pytest.approx(-73.7, abs=6.1)
    assert (hum.gain.most_db, hum.gain.unknown, hum.hertz) == (0.0, (), 50)


def test_polygon_of_three_routes() -> None:
    # D1a (225,300)-(225,293)-(225,200)-(435,200)-(435,147)-(435,140), A2 (400,100)-(392,100)-(138,100)-(130,100),
    # D1b (95,140)-(95,147)-(95,200)-(225,200)-(225,300): 340 x 100 less two corners of 35 x 40 / 2 = 32 600 mm².
    assert hum_of(SHARED_RING / "one-outlet-for-two.rig").area == pytest.approx(0.0326, rel=1e-9)


def test_gain_behind_the_ring() -> None:
    assert hum_of(SHARED_RING / "gain-just-above.rig").gain.most_db == 18
    unknown = hum_of(SHARED_RING / "gain-not-stated.rig")
    assert unknown.gain.unknown == ("lift",)
    assert unknown.follows.text.startswith("≥ ") and unknown.follows.formula().endswith(", without gain of lift")


def test_without_routes_the_reason_is_told() -> None:
    hum = hum_of(SHARED_RING / "no-places.rig")
    assert [known(each) for each in (hum.area, hum.induced, hum.level)] == [None] * 3
    assert hum.why_not == "D1a has no route: a place for any thing is not stated"


def test_a_ring_through_the_mains_has_no_area_in_the_plan() -> None:
    hum = hum_of(ROOT / "tests/rigs/long-haul-as-ordered.rig")
    assert known(hum.area) is None
    assert hum.why_not == "it closes off the board, through the mains"


def test_area_of_a_way_that_crosses_itself() -> None:
    # Two squares of 10 mm, walked the one round and the other way round: a field finds nothing in both together.
    assert area_mm2(((0, 0), (10, 0), (10, 20), (20, 20), (20, 10), (0, 10))) == 0
    assert area_mm2(((0, 0), (30, 0), (30, 20), (0, 20))) == 600


def test_the_most_gain_of_parallel_ways_counts_once() -> None:
    text = block("instrument", "guitar") + block("amp", "combo", "input in ts", "gain 40 dB")
    text += unit("box", "output s ts", "input r ts", "loop 1 send s return r", "gain 3 dB") + unit(
        "drive", "gain 20 dB"
    )
    rig = results_of(text + "chain guitar -> box -> combo\nloop 1 of box holds drive\n").rig
    gains = GainAfter(rig, signal_graph(rig).ways)
    # Into the box: its 3 dB once, where sound leaves it for good, and 20 dB in the loop; the amp is not counted.
    assert gains.of(Port("box", "in")).most_db == 23
    assert gains.of(Port("box", "r")).most_db == 3


def test_a_lead_beside_a_ring() -> None:
    ring: Ways = {"A1": ((0.0, 0.0), (400.0, 0.0))}
    near = ((50.0, 25.0), (350.0, 25.0))  # 300 mm, 25 mm away: counts
    far = ((50.0, 25.1), (350.0, 25.1))
    short = ((50.0, 10.0), (250.0, 10.0))  # 200 mm: not more than 200
    across = ((100.0, -200.0), (100.0, 200.0))
    others: Ways = {"D1": near, "D2": far, "D3": short, "D4": across}
    found = beside(ring, others)
    assert found is not None
    assert (found.mark, found.long_mm, found.near_mm) == ("D1", 300.0, 25.0)
    del others["D1"]
    assert beside(ring, others) is None


def test_hum_from_the_lead_beside_a_ring() -> None:
    # D2 (235,300)-(235,200)-(555,200) runs beside D1a (225,300)-(225,200)-(435,200): 100 + 200 = 300 mm, at the nearest in one
    # place, so as far apart as the cable is thick, 3.5 mm. Ring: 0.0326 / 0.3 = 108.67 mm wide; wires of D2 1.75 mm apart.
    # M = 2e-7 · 0.3 · [ln(112.167/3.5) - ln(113.917/5.25)] = 6e-8 · (3.46722 - 3.07724) = 23.40 nH; 2π · 50 · M · 1 A = 7.35 µV.
    coupled = hum_of(SHARED_RING / "another-lead-beside.rig").coupled
    assert coupled is not None
    assert (coupled.beside.mark, coupled.beside.long_mm, coupled.beside.near_mm) == ("D2", 300, 0)
    assert coupled.henry * 1e9 == pytest.approx(23.40, abs=0.01)
    assert coupled.volts_per_ampere * 1e6 == pytest.approx(7.35, abs=0.01)
