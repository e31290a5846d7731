"""Mains of the worked rigs: watts, volt-amperes, current, V/Hz and step transformers, by hand."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from written import changed

from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.analysis.mains.primaries import Primaries
from rigc.analysis.mains.primary import Primary
from rigc.traced.term import known

HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"
AS_ORDERED = "tests/rigs/long-haul-as-ordered.rig"


def flux(each: Primary) -> tuple[float, float]:
    """V/Hz of a winding, and its percent of design."""
    assert each.flux is not None
    assert each.flux_pct is not None
    return round(each.flux, 3), round(each.flux_pct)


def test_back_bedroom() -> None:
    """3.078/0.40 = 7.695 W (7.70); /0.70 = 10.99 VA; /230 = 47.8 mA; 7.695 − 3.078 = 4.617 W of heat."""
    load = results(ROOT / HOME).get(MainsLoads).all["mill5"]
    assert load.watts == pytest.approx(7.695)
    assert load.volt_amperes == pytest.approx(10.99, abs=5e-3)
    assert load.milliamps[230] == pytest.approx(47.8, abs=0.05)
    assert load.heat == pytest.approx(4.617)


def test_long_haul() -> None:
    """mill8 3.897/0.40 = 9.74 W, /0.70 = 13.92 VA; weir8 15.21/0.80 = 19.01 W, /0.55 = 34.57 VA; in all 28.755 W, 48.49 VA:
    0.485 A at 100 V, 0.404 A at 120 V, 0.211 A at 230 V."""
    loads = results(ROOT / TOURING).get(MainsLoads)
    mill8, weir8 = loads.all.values()
    assert (mill8.watts, mill8.volt_amperes) == pytest.approx((9.74, 13.92), abs=5e-3)
    assert (weir8.watts, weir8.volt_amperes) == pytest.approx((19.01, 34.57), abs=5e-3)
    assert (loads.watts, loads.volt_amperes) == pytest.approx((28.755, 48.49), abs=5e-3)
    assert [round((loads.volt_amperes or 0) / volts, 3) for volts in (100, 120, 230)] == [0.485, 0.404, 0.211]


def test_kinds_give_what_is_not_stated() -> None:
    """Without its own figures a linear supply counts 40 % and 0.7 (from memory), and says so; another kind is not known."""
    usual = changed(HOME, ("  efficiency 40 %\n  power factor 0.70\n", "")).get(MainsLoads).all["mill5"]
    assert usual.volt_amperes == pytest.approx(10.99, abs=5e-3)
    assert usual.by_kind == ("efficiency", "power factor")
    bare = changed(HOME, ("  efficiency 40 %\n  power factor 0.70\n", ""), ("  linear\n", "")).get(MainsLoads)
    assert [known(bare.watts), known(bare.volt_amperes)] == [None, None]


def test_flux_of_the_corrected_rig() -> None:
    """Two windings, in series at 230 V: 115/50 = 2.30 by design. US 120/60 = 2.00 (87 %); Japan behind 100 → 115 V: 2.30 and
    115/60 = 1.917 (83 %)."""
    mill8 = [each for each in results(ROOT / TOURING).get(Primaries).all if each.supply == "mill8"]
    assert {each.scenario: flux(each) for each in mill8} == {
        "eu": (2.3, 100),
        "uk": (2.3, 100),
        "us": (2.0, 87),
        "jp-east": (2.3, 100),
        "jp-west": (1.917, 83),
    }
    assert all(each.in_voltage and each.in_frequency for each in mill8)


def test_japan_as_ordered() -> None:
    """100/50 = 2.00 (87 %), 100/60 = 1.667 (72 %): never over; the secondary gives 100/115 = 87 %. 1.5 × 13.92 = 20.9: 25 VA."""
    made = results(ROOT / AS_ORDERED).get(Primaries)
    east, west = (
        next(each for each in made.all if (each.scenario, each.supply) == (name, "mill8"))
        for name in ("jp-east", "jp-west")
    )
    assert (flux(east), flux(west)) == ((2.0, 87), (1.667, 72))
    assert not east.over_flux
    assert not west.over_flux
    assert east.secondary_pct == pytest.approx(86.96, abs=5e-3)
    assert (east.in_voltage, west.in_voltage) == (False, False)
    assert east.needed_va == west.needed_va == 25


def test_a_core_for_sixty() -> None:
    """Laid out for 60 Hz: 115/60 = 1.917; 230/50 and the transformed 115/50 drive it at 2.30, 20 % over."""
    made = changed(TOURING, ("  core 50 Hz\n", "  core 60 Hz\n")).get(Primaries)
    over = {each.scenario: flux(each) for each in made.all if each.supply == "mill8" and each.over_flux}
    assert over == {"eu": (2.3, 120), "uk": (2.3, 120), "jp-east": (2.3, 120)}
