"""The stretches of a Y lead, worked by hand: what each carries, and what its legs then lose, in the table and in the network alike."""

from __future__ import annotations

from typing import NamedTuple

import pytest
from cases import READER, ROOT, results
from written import compiled_text

from rigc.analysis.power.conductor import Conductor
from rigc.analysis.power.lead_drops import LeadDrops
from rigc.analysis.power.power_network import PowerNetwork
from rigc.analysis.power.shared_returns import SharedReturns
from rigc.analysis.power.y_stretches import y_stretches
from rigc.analysis.results import Results
from rigc.compile import compile_rig
from rigc.files.disk import Disk
from rigc.traced.figure import assumed, known_figure
from rigc.traced.given import unstated
from rigc.traced.term import Traced, known, number
from rigc.traced.units import OHM_PER_KM

CASES = ROOT / "tests" / "analysis" / "checks" / "cases" / "lossy-lead"


def wire(name: str, ohm_per_km: float) -> Conductor:
    return Conductor(known_figure(name, number(ohm_per_km), OHM_PER_KM, rule="", source="test"), name)


THIN, THICK = wire("0.5 mm2", 40), wire("1 mm2", 20)


class OneLeg(NamedTuple):
    mark: str
    millimetres: Traced
    wire: Conductor | None
    current: Traced


def leg(mark: str, length: float | None, wire: Conductor | None, ma: float | None) -> OneLeg:
    return OneLeg(mark, _number(length), wire, _number(ma))


def _number(value: float | None) -> Traced:
    return unstated("it") if value is None else number(value)


def test_three_legs() -> None:
    """1 m, 2 m and 3 m: all lie in the first metre (100 + 200 + 400 = 700 mA), two in the second (600 mA), one in the third."""
    legs = (leg("a", 1000, THIN, 100), leg("b", 2000, THIN, 200), leg("c", 3000, THIN, 400))
    found = y_stretches(legs)
    assert found is not None
    assert [each.marks for each in found] == [("a", "b", "c"), ("b", "c"), ("c",)]
    assert [each.length_mm for each in found] == [1000, 1000, 1000]
    assert [each.ma for each in found] == [700, 600, 400]


def test_the_trunk_is_of_the_thinner_wire() -> None:
    """The long leg is thin: the metre that both share may be thin (40 mΩ), and the second metre is thin too."""
    found = y_stretches((leg("a", 1000, THICK, 100), leg("b", 2000, THIN, 200)))
    assert found is not None
    assert [each.ohm for each in found] == pytest.approx([0.04, 0.04])
    found = y_stretches((leg("a", 1000, THIN, 100), leg("b", 2000, THICK, 200)))
    assert found is not None
    assert [each.ohm for each in found] == pytest.approx([0.04, 0.02])


def test_legs_of_one_length_part_at_their_ends() -> None:
    found = y_stretches((leg("a", 1000, THIN, 100), leg("b", 1000, THIN, 200)))
    assert found is not None and [each.marks for each in found] == [("a", "b")]
    assert found[0].ma == 300


def test_a_missing_fact_is_not_nothing() -> None:
    """Without a length or a wire no stretch is known; without a current what flows there is not."""
    assert y_stretches((leg("a", 1000, THIN, 100), leg("b", None, THIN, 200))) is None
    assert y_stretches((leg("a", 1000, THIN, 100), leg("b", 1000, None, 200))) is None
    found = y_stretches((leg("a", 1000, THIN, 100), leg("b", 1000, THIN, None)))
    assert found is not None and found[0].ma is None


def of_lengths(short: int, long: int) -> Results:
    """A leg of 0.75 mm² (26 mΩ a metre) to marl at 1.2 A, one of 0.5 mm² (39 mΩ a metre) to lant at 1.1 A."""
    path = CASES / "unlike-legs-just-inside.rig"
    text = path.read_text("utf-8").replace("thick made 1500 mm", f"thick made {short} mm")
    disk = Disk(path, root=ROOT, given=text.replace("thin made 1500 mm", f"thin made {long} mm").encode())
    made = compile_rig(disk, disk.name, READER).results
    assert made is not None
    return made


def test_table_and_network_agree_on_legs_of_unlike_wire() -> None:
    """1 m is shared, of the thin wire: 2 × 0.039 × 1 × 2.3 = 0.1794 V, which is all that marl loses. Its own wire alone would lose
    2 × 0.026 × 1 × 1.2 = 0.0624 V: 0.117 V come of the other leg and of the thinner trunk. lant has 0.5 m more: + 2 × 0.039 × 0.5 × 1.1 =
    0.0429 V, 0.2223 V in all."""
    made = of_lengths(1000, 1500)
    drops, network = made.get(LeadDrops).all, made.get(PowerNetwork)
    assert drops["D1a"].drop_v == pytest.approx(0.1794)
    assert drops["D1a"].others == pytest.approx(117)
    assert drops["D1b"].drop_v == pytest.approx(0.2223)
    for name, lost in (("marl", 0.1794), ("lant", 0.2223)):
        inlet = network.of(name)
        assert inlet is not None and inlet.least_v == pytest.approx(9 - lost, abs=1e-5)


def test_the_shared_return_is_the_first_stretch() -> None:
    """One conductor of the metre that both share: 0.039 Ω, and 2300 mA through it are 89.7 mV."""
    (shared,) = of_lengths(1000, 1500).get(SharedReturns).all
    assert [known(shared.length), known(shared.current)] == [1000, 2300]
    assert known(shared.mohm) == pytest.approx(39)
    assert known(shared.noise) == pytest.approx(89.7)


def test_table_and_network_agree_on_legs_of_one_wire() -> None:
    """2 × 0.039 × 1.506 × 2.3 = 0.270176 V, at both."""
    made = results(CASES / "y-legs-just-outside.rig")
    for drop in made.get(LeadDrops).all.values():
        inlet = made.get(PowerNetwork).of(drop.unit)
        assert drop.drop_v == pytest.approx(0.270176, abs=1e-6)
        assert inlet is not None and inlet.least_v == pytest.approx(9 - 0.270176, abs=1e-5)


def test_what_the_other_legs_cause_is_told_as_it_is_reckoned() -> None:
    """In the metre that both share: 39 mΩ × 1100 mA of lant, and marl's own 1200 mA in 39 − 26 = 13 mΩ more than in its own wire;
    2 × (42.9 + 15.6) mV = 117 mV. lant is of the thin wire itself: only marl's current adds to its drop, 2 × 39 × 1.2 = 93.6 mV."""
    drops = of_lengths(1000, 1500).get(LeadDrops).all
    told = [drop.others.formula() for drop in drops.values() if drop.others is not None]
    assert told == [
        "2 × (the least of 1000, 1500) × ((the highest of 26, 39) × 1100 + ((the highest of 26, 39) − 26) × 1200) / 1000 / 1000 = 117",
        "2 × (the least of 1000, 1500) × (the highest of 26, 39) × 1200 / 1000 / 1000 = 93.6",
    ]


def test_an_assumed_current_marks_what_it_changes() -> None:
    """With both legs of one wire, marl's own current is no part of what the other leg adds to its drop."""
    path = "tests/analysis/checks/cases/lossy-lead/y-legs-just-outside.rig"
    made = compiled_text(path, lambda text: text.replace("draws 1150 mA", "draws 1150 mA assumed", 1)).results
    assert made is not None
    marl, lant = made.get(LeadDrops).all.values()
    assert [(assumed(leg.current), assumed(leg.others), assumed(leg.lost)) for leg in (marl, lant)] == [
        (True, False, True),
        (False, True, True),
    ]
    assert [assumed(inlet.least_v) for inlet in made.get(PowerNetwork).inlets] == [True, True]
