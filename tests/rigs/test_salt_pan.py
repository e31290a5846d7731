"""The salt-pan rig (invented): what the worked examples lack, with every expectation worked by hand."""

from __future__ import annotations

from functools import lru_cache

import pytest
from cases import ROOT, compiled, results
from power_rules import POWER_RULES

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.analysis.mains.primaries import Primaries
from rigc.analysis.power.battery_lives import BatteryLives
from rigc.analysis.power.lead_drops import LeadDrops
from rigc.analysis.power.supply_totals import SupplyTotals
from rigc.analysis.results import Results
from rigc.reports.sheets.power.power_table import power_table
from rigc.traced.term import known

RIG = ROOT / "tests" / "rigs" / "salt-pan.rig"


@lru_cache(maxsize=1)
def made() -> Results:
    return results(RIG)


JUDGED = POWER_RULES | {"limit-in-doubt", "unfit-lead-length"}


def test_what_power_rules_report() -> None:
    """Each finding of the power rules, of limit-in-doubt and of unfit-lead-length, by rule and subject.

    dunlin: captive 150 mm. Way: brine.n3 at x = 100 + 90 = 190, plug exit y = 200 − 7 = 193; dunlin.dc at 110 + 35 = 145,
    y = 120. 45 + (193 − 150) 43 + (150 − 120) 30 = 118; down 10, and 30 + 10 + 10 = 50: 178 mm; with
    40 of slack 68 short (unfit-lead-length). bittern: kettle.w at 450, bittern.ac at 325: 125 + 43 + 30 + 60 = 258;
    1.10 × 258 + 150 = 433.8 < 1800 (unfit-lead-length, too long). plover: 1.5 × 9 = 13.5 V > 12 V (unregulated-supply). away: 120 V at two primaries of
    230 V (unfit-mains twice), and stack states no mains; brine's stands behind its transformer. dunlin: 75 of 100 mA, limit 80, 6.25 % off, assumed (limit-in-doubt).
    """
    found = [
        (finding.kind.name, finding.level.word, finding.subject[0])
        for finding in compiled(RIG).findings
        if finding.kind.name in JUDGED
    ]
    assert sorted(found) == sorted(
        [
            ("unfit-mains", "error", "kettle"),
            ("unfit-mains", "error", "scrap"),
            ("unfit-mains", "can't-check", "stack"),
            ("unfit-lead-length", "error", "D8"),
            ("unfit-lead-length", "warning", "AC1"),
            ("unregulated-supply", "warning", "plover"),
            ("battery-only", "remark", "avocet"),
            ("brick-out-of-reach", "warning", "scrap"),
            ("moved-switch", "warning", "brine.n4"),
            ("limit-in-doubt", "warning", "dunlin"),
        ]
    )


def test_series_pair() -> None:
    """9 + 9 = 18 V; the smaller of 100 and 100 mA; 60 mA through both: 60 %."""
    power = made().get(PowerAssignment)
    tap = power.taps["godwit"]
    assert (tap.volts, tap.limit_ma, tap.how) == (18, 100, "series")
    assert [power.loads[port].percent for port in tap.outlets] == [60, 60]


def test_totals() -> None:
    """brine: 60 × 9 twice = 1.080, 75 × 9 = 0.675, 180 × 12 = 2.160: 3.915 W of 8 (48.9 %). kettle 4.05 of 9. scrap 0.135."""
    totals = {each.supply: each.drawn_w for each in made().get(SupplyTotals).all}
    assert totals == pytest.approx({"brine": 3.915, "kettle": 4.05, "scrap": 0.135})


def test_mains() -> None:
    """brine by its kind: 3.915/0.40 = 9.7875 W, /0.70 = 13.982 VA, heat 5.8725 W, /230 = 60.79 mA. kettle 4.05/0.90 = 4.5 W,
    /0.9 = 5 VA. scrap 0.135/0.30 = 0.45 W, /0.6 = 0.75 VA. In all 14.7375 W, 19.732 VA; 0.1644 A at 120 V."""
    loads = made().get(MainsLoads)
    brine, kettle, scrap = loads.all.values()
    assert brine.by_kind == ("efficiency", "power factor")
    assert kettle.by_kind == scrap.by_kind == ()
    assert (brine.watts, kettle.watts, scrap.watts) == pytest.approx((9.7875, 4.5, 0.45))
    assert (brine.volt_amperes, kettle.volt_amperes, scrap.volt_amperes) == pytest.approx((13.982, 5, 0.75), abs=5e-4)
    assert brine.heat == pytest.approx(5.8725)
    assert brine.milliamps[230] == pytest.approx(60.79, abs=5e-3)
    assert (loads.watts, loads.volt_amperes) == pytest.approx((14.7375, 19.732), abs=5e-4)
    assert (loads.volt_amperes or 0) / 120 == pytest.approx(0.1644, abs=5e-5)


def test_primaries_away() -> None:
    """brine behind 120 → 230 V at 60 Hz: 230/60 = 3.833 of 230/50 = 4.600 V/Hz, 83 %; 1.5 × 13.982 = 20.97 VA: 25 will do.
    kettle on 120 V: 120/230 = 52 % at the secondary; 1.5 × 5 = 7.5 VA: the smallest made is 25."""
    brine, kettle, scrap = (each for each in made().get(Primaries).all if each.scenario == "away")
    assert (brine.volts, brine.in_voltage, brine.in_frequency) == ((230, 230), True, True)
    assert brine.flux == pytest.approx(3.8333, abs=1e-4)
    assert brine.design_flux == pytest.approx(4.6)
    assert [brine.needed_va, brine.step_too_small] == [25, False]
    assert (kettle.in_voltage, scrap.in_voltage) == (False, False)
    assert kettle.secondary_pct == pytest.approx(52.17, abs=5e-3)
    assert kettle.needed_va == 25


def test_lead_drops() -> None:
    """0.5 mm² class 5: 39.0 mΩ/m. From n1: 75 + 43 + 23 + 60 = 201, + 40 = 241: the premade 300 mm. 2 × 0.3 × 39.0 = 23.4 mΩ;
    60 mA: 1.404 mV of 9 V = 0.0156 %. curlew 180 mA: 4.212 mV of 12 V = 0.0351 %; at 40 °C × 1.0786 = 4.543 mV."""
    drops = made().get(LeadDrops).all
    lengths = made().get(CableLengths).lengths
    by_unit = {(drop.unit, drop.outlet.jack): drop for drop in drops.values()}
    first = by_unit["godwit", "n1"]
    assert lengths[first.mark].route == 2010
    assert first.length_mm == 300
    assert (first.drop_v or 0) * 1000 == pytest.approx(1.404)
    assert first.percent == pytest.approx(0.0156)
    curlew = by_unit["curlew", "n4"]
    assert curlew.mark == "D5"
    assert (curlew.drop_v or 0) * 1000 == pytest.approx(4.212)
    assert curlew.percent == pytest.approx(0.0351)
    assert known(curlew.warm) == pytest.approx(4.543, abs=5e-4)
    assert by_unit["bittern", "w"].wire is None, "a captive lead is of no cable of ours"


def test_special_leads() -> None:
    """The series pair gets the first Y number; curlew's reversing lead is D5 itself, 2.1 mm at the outlet, 2.5 mm at the unit."""
    turned, series = made().get(SpecialLeads).all
    assert (turned.mark, turned.kind, turned.units) == ("D5", "reversing", ("curlew",))
    assert turned.plugs == ("barrel 5.5 × 2.1", "barrel 5.5 × 2.5")
    assert turned.itself and turned.label == ""  # it bears the two labels of the lead D5
    assert (series.mark, series.kind, series.stated) == ("Y1", "series", False)
    assert series.plugs == ("2 of barrel 5.5 × 2.1", "barrel 5.5 × 2.1")
    assert series.label == "Y1 SERIES 18 V DC brine.n1 + brine.n2 to godwit ONLY"


def test_battery() -> None:
    """400 mAh / 4 mA = 100 h; 25 shows of 4 h."""
    (life,) = made().get(BatteryLives).all
    assert (life.unit, life.only) == ("avocet", True)
    assert [life.hours, life.shows] == [100, 25]


def test_power_table_tells_it_all() -> None:
    """The AC row has no polarity; the switch position, the battery, the pair and the spare outlet are on the sheet."""
    sheet = made().call(power_table)
    cells = {
        block.name: [[cell.text for cell in row.cells] for row in block.rows]
        for block in sheet.blocks
        if hasattr(block, "rows")
    }
    outlets = {(row[0], row[1]): row for row in cells["by_outlet"]}
    assert outlets["kettle", "w"][5:7] == ["AC", "none (AC)"]
    assert outlets["brine", "n4"][3:5] == ["12", "9/12 V: set to 12 V"]
    assert outlets["brine", "n5"][-1] == "spare"
    assert cells["batteries"] == [["avocet", "9 V block", "400", "4", "100", "25", "none: unplug after the show"]]
    assert [row[:2] for row in cells["adaptors"]] == [["D5", "reversing"], ["Y1", "series"]]
