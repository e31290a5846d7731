"""The stretches of a Y lead, worked by hand: what each carries, and what its legs then lose, in the table and in the network alike."""

from __future__ import annotations

import pytest
from cases import READER, ROOT, results

from rigc.analysis.computations.lead_drops import LeadDrop, LeadDrops
from rigc.analysis.computations.power_network import PowerNetwork
from rigc.analysis.computations.shared_returns import SharedReturns
from rigc.analysis.power.conductor import Conductor
from rigc.analysis.power.y_stretches import y_stretches
from rigc.analysis.results import Results
from rigc.compile import compile_rig
from rigc.files.disk import Disk
from rigc.model.jacks import Port

THIN, THICK = Conductor(0.04, "test", "0.5 mm2"), Conductor(0.02, "test", "1 mm2")
CASES = ROOT / "tests" / "analysis" / "checks" / "cases" / "lossy-lead"


def leg(mark: str, length: float | None, wire: Conductor | None, ma: float | None) -> LeadDrop:
    return LeadDrop(mark, mark, Port("mill", "o1"), 9.0, ma, length, wire, False)


def test_three_legs() -> None:
    """1 m, 2 m and 3 m: all lie in the first metre (100 + 200 + 400 = 700 mA), two in the second (600 mA), one in the third."""
    legs = (leg("a", 1000, THIN, 100), leg("b", 2000, THIN, 200), leg("c", 3000, THIN, 400))
    found = y_stretches(legs)
    assert found is not None
    assert [(each.marks, each.length_mm, each.ma) for each in found] == [
        (("a", "b", "c"), 1000, 700),
        (("b", "c"), 1000, 600),
        (("c",), 1000, 400),
    ]


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
    assert found is not None and [(each.marks, each.ma) for each in found] == [(("a", "b"), 300)]


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
    assert drops["D1a"].shared_v == pytest.approx(0.117)
    assert drops["D1b"].drop_v == pytest.approx(0.2223)
    for name, lost in (("marl", 0.1794), ("lant", 0.2223)):
        inlet = network.of(name)
        assert inlet is not None and inlet.least_v == pytest.approx(9 - lost, abs=1e-5)


def test_the_shared_return_is_the_first_stretch() -> None:
    """One conductor of the metre that both share: 0.039 Ω, and 2300 mA through it are 89.7 mV."""
    (shared,) = of_lengths(1000, 1500).get(SharedReturns).all
    assert (shared.length_mm, shared.ma) == (1000, 2300)
    assert shared.ohm == pytest.approx(0.039)
    assert shared.millivolts == pytest.approx(89.7)


def test_table_and_network_agree_on_legs_of_one_wire() -> None:
    """2 × 0.039 × 1.506 × 2.3 = 0.270176 V, at both."""
    made = results(CASES / "y-legs-just-outside.rig")
    for drop in made.get(LeadDrops).all.values():
        inlet = made.get(PowerNetwork).of(drop.unit)
        assert drop.drop_v == pytest.approx(0.270176, abs=1e-6)
        assert inlet is not None and inlet.least_v == pytest.approx(9 - 0.270176, abs=1e-5)
