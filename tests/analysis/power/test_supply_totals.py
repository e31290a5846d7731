"""Loads and totals, worked by hand."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from power_rigs import feed, outlets, rig, supply, unit

from rigc.analysis.deck.placement import placement
from rigc.analysis.feeds.load_limits import load_limits
from rigc.analysis.feeds.power_assignment import PowerAssignment, power_assignment
from rigc.analysis.power.supply_totals import SupplyTotal, SupplyTotals, supply_totals
from rigc.diagnostics.percentage import percentage
from rigc.model.rig import Rig


def loads(power: PowerAssignment) -> dict[str, str]:
    return {
        port.jack: f"{','.join(load.units)} {load.known_ma:g}/{load.limit_ma:g} {percentage(load.percent)}"
        for port, load in power.loads.items()
    }


def totals(of: Rig) -> dict[str, SupplyTotal]:
    return {each.supply: each for each in supply_totals(of, power_assignment(of, load_limits(of), placement(of))).all}


def test_back_bedroom() -> None:
    """2 + 8 + 22 + 30 + 120 + 160 = 342 mA; 0.342 A x 9 V = 3.078 W; 3.078 / 6.0 = 51.3 %.

    o2: 8 + 22 = 30 of 100; o4: 120/250 = 48 %; o5: 160/250 = 64 %.
    """
    made = results(ROOT / "examples" / "back-bedroom" / "board.rig")
    assert loads(made.get(PowerAssignment)) == {
        "o1": "hedge 2/100 2 %",
        "o2": "marl,millpond 30/100 30 %",
        "o3": "plumb 30/100 30 %",
        "o4": "lant 120/250 48 %",
        "o5": "rotunda 160/250 64 %",
    }
    (total,) = made.get(SupplyTotals).all
    assert total.drawn_ma == 342
    assert total.drawn_w == pytest.approx(3.078, abs=1e-9)
    assert percentage(total.known_pct) == "51.3 %"


def test_long_haul() -> None:
    """mill8: 5 + 12 + 3 + 8 + 15 + 40 + 160 + 190 = 433 mA; x 9 V = 3.897 W; / 9.9 = 39.4 %.

    weir8 at 9 V: 350 + 250 + 300 + 300 + 40 = 1240 mA = 11.160 W; at 12 V 300 mA = 3.600 W; at 18 V 25 mA = 0.450 W;
    in all 15.210 W of 22.5 = 67.6 %.
    """
    made = results(ROOT / "examples" / "long-haul" / "board.rig")
    assert loads(made.get(PowerAssignment)) == {
        "a1": "teeter 5/100 5 %",
        "a2": "settle 12/100 12 %",
        "a3": "bramble 3/100 3 %",
        "a4": "marl 8/100 8 %",
        "a5": "claypit 15/100 15 %",
        "a6": "plumb 40/100 40 %",
        "a7": "echomill 160/250 64 %",
        "a8": "stepladder 190/250 76 %",
        "b1": "signalbox 350/500 70 %",
        "b2": "weathervane 250/500 50 %",
        "b3": "lantxl 300/500 60 %",
        "b4": "rotundaxl 300/500 60 %",
        "b5": "heron 300/375 80 %",
        "b6": "lapwing 25/250 10 %",
        "b7": "fan4 40/250 16 %",
        "b8": " 0/250 0 %",
    }
    mill8, weir8 = made.get(SupplyTotals).all
    assert [mill8.drawn_ma, weir8.drawn_ma] == [433, 1240 + 300 + 25]
    assert mill8.drawn_w == pytest.approx(3.897, abs=1e-9)
    assert weir8.drawn_w == pytest.approx(11.160 + 3.600 + 0.450, abs=1e-9) == pytest.approx(15.210)
    assert [percentage(each.known_pct) for each in (mill8, weir8)] == ["39.4 %", "67.6 %"]


def test_parallel_pair() -> None:
    """(250 + 250) x 0.9 = 450 mA; 320/450 = 71.1 %; each outlet gives 160 mA; 320 mA x 9 V = 2.880 W."""
    two = supply("s", outlets("a", 7, 8, (9, 250)), watts=9.9)
    made = rig((unit("stepladder", 320),), (two,), feed("stepladder", "s.a7 s.a8", "parallel"))
    power = power_assignment(made, load_limits(made), placement(made))
    assert power.taps["stepladder"].limit_ma == 450
    assert [load.known_ma for load in power.loads.values()] == [160, 160]
    assert [f"{load.percent:.1f}" for load in power.loads.values()] == ["71.1", "71.1"]
    assert totals(made)["s"].drawn_w == pytest.approx(2.880)


def test_series_pair() -> None:
    """9 + 9 = 18 V, the smaller of 250 and 100 mA; 25 mA flow through both: 25 x 9 + 25 x 9 = 450 mW."""
    two = supply("s", outlets("b", 7, 7, (9, 250)), outlets("b", 8, 8, (9, 100)))
    made = rig((unit("lapwing", 25, volts=18),), (two,), feed("lapwing", "s.b7 s.b8", "series"))
    power = power_assignment(made, load_limits(made), placement(made))
    tap = power.taps["lapwing"]
    assert (tap.volts, tap.limit_ma) == (18, 100)
    assert [load.percent for load in power.loads.values()] == [25, 25]
    assert totals(made)["s"].drawn_w == pytest.approx(0.450)


def test_two_units_of_which_one_is_unknown() -> None:
    """30 mA are known; the load is not."""
    one = supply("s", outlets("o", 1, 1, (9, 100)), watts=6)
    made = rig((unit("a", 30), unit("b", None)), (one,), feed("a b", "s.o1", "shared"))
    (load,) = power_assignment(made, load_limits(made), placement(made)).loads.values()
    assert [load.known_ma, load.load_ma, load.percent] == [30, None, None]
    assert totals(made)["s"].unknown == ("b",)


def test_ceiling_in_milliamps() -> None:
    """100 + 50 mA of 200 mA, whatever the volts."""
    one = supply("s", outlets("o", 1, 1, (9, 100)), outlets("o", 2, 2, (18, 100)), milliamps=200)
    made = rig((unit("a", 100), unit("b", 50, volts=18)), (one,), feed("a", "s.o1"), feed("b", "s.o2"))
    total = totals(made)["s"]
    assert [total.taken, total.unit] == [150, "mA"]
    assert total.drawn_w == pytest.approx(0.9 + 0.9)


def test_limits_of_the_rig() -> None:
    """`limit load 60 %` holds for digital units too; `limit digital load` only for them."""
    units = (unit("a", 10),)
    assert load_limits(rig(units, ())).digital_pct == 65
    assert load_limits(rig(units, (), limits={"load": 60})).digital_pct == 60
    assert load_limits(rig(units, (), limits={"digital load": 50})).load_pct == 80
    assert load_limits(rig(units, (), limits={"total": 90})).total_pct == 90
