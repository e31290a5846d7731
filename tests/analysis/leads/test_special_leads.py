"""Y, parallel and size leads, and what Y leads share of their return."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from small_rigs import block, results_of

from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.analysis.power.lead_drops import LeadDrop, LeadDrops
from rigc.analysis.power.shared_returns import SharedReturns, noise_mv
from rigc.analysis.results import Results
from rigc.traced.term import known

SUPPLY = block(
    "supply", "mill", "connector barrel 5.5 x 2.1 mm", "polarity centre-negative", "outlet a7..a8 9 V dc 250 mA isolated",
    "outlet a6 9 V dc 500 mA isolated",
)  # fmt: skip
UNIT = block("unit", "stepladder", "inlet dc barrel 5.5 x 2.5 mm", "needs 9 V dc", "draws 320 mA")


def special(*leads: str) -> list[tuple[str, str, bool]]:
    power = "power {\n  stepladder from mill.a7, mill.a8 parallel\n}\n"
    text = SUPPLY + UNIT + power + "leads {\n" + "".join(f"  {line}\n" for line in leads) + "}\n"
    return [(each.mark, each.kind, each.stated) for each in results_of(text).get(SpecialLeads).all]


def test_numbers() -> None:
    """A stated adaptor keeps its number; one that is not stated gets the next above every one in use or retired."""
    assert special() == [("Y1", "parallel", False)]
    assert special("retired Y4") == [("Y5", "parallel", False)]
    assert special("Y2 parallel for stepladder", "Y3 size for stepladder") == [
        ("Y2", "parallel", True),
        ("Y3", "size", True),
    ]
    assert special("Y3 size for stepladder") == [("Y3", "size", True), ("Y4", "parallel", False)]


def test_before_a_size_adaptor_a_lead_ends_as_it_begins() -> None:
    """The outlet takes 2.1 mm and the unit 2.5 mm: the adaptor makes the one of the other, not the lead too."""
    kinds = "".join(
        f"plug {name} {{\n  fits barrel 5.5 x {inner} mm\n}}\n" for name, inner in (("two", 2.1), ("three", 2.5))
    )
    supply = (
        "supply mill {\n  outlet a 9 V dc 250 mA connector barrel 5.5 x 2.1 mm polarity centre-negative isolated\n}\n"
    )
    thing = "unit fen {\n  input in ts\n  output out ts\n  inlet dc barrel 5.5 x 2.5 mm\n  needs 9 V dc\n  polarity centre-positive\n  draws 20 mA\n}\n"
    text = kinds + supply + thing + "power {\n  fen from mill.a reversed\n}\nleads {\n  Y1 size for fen\n}\n"
    made = results_of(text)
    assert [lead.ends for lead in made.get(Leads).all] == [("two", "two")]
    told = {each.kind: each.plugs for each in made.get(SpecialLeads).all}
    assert told == {
        "reversing": ("barrel 5.5 × 2.1", "barrel 5.5 × 2.1"),
        "size": ("barrel 5.5 × 2.1", "barrel 5.5 × 2.5"),
    }


def test_parallel_leads_bear_their_share() -> None:
    """320 mA from two outlets of 250 mA: 160 each."""
    power = "power {\n  stepladder from mill.a7, mill.a8 parallel\n}\n"
    drops = results_of(SUPPLY + UNIT + power).get(LeadDrops).all.values()
    assert [drop.ma for drop in drops] == [160, 160]


def home() -> Results:
    return results(ROOT / "examples" / "back-bedroom" / "board.rig")


def test_y_lead() -> None:
    """D2 feeds marl and millpond from o2: one plug at the outlet, two at the units."""
    (two,) = home().get(SpecialLeads).all
    assert (two.mark, two.kind, two.units) == ("D2", "Y", ("marl", "millpond"))
    assert two.plugs == ("barrel 5.5 × 2.1", "2 of barrel 5.5 × 2.1")
    assert two.label == "D2 Y 9 V DC mill5.o2 to marl + millpond ONLY"


def test_shared_return() -> None:
    """8 + 22 = 30 mA through one conductor of the shorter leg: D2a is bought as 300 mm, 0.3 × 84.215 = 25.26 mΩ: 0.758 mV."""
    (shared,) = home().get(SharedReturns).all
    assert (str(shared.outlet), shared.units) == ("mill5.o2", ("marl", "millpond"))
    assert [known(shared.current), known(shared.length)] == [30, 300]
    assert known(shared.noise) == pytest.approx(0.758, abs=5e-4)


def test_rule_of_thumb() -> None:
    """20 mA of clock current × 0.1 ohm = 2 mV (arithmetic)."""
    assert noise_mv(20.0, 100.0) == pytest.approx(2.0)


def one_lead(length: str, draws: str) -> LeadDrop:
    """A lead of 24 AWG, as long as that, to a unit that draws that."""
    cable = block("cable", "thin", "carries dc", "conductor 24 AWG")
    unit = block("unit", "lapwing", "inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", f"draws {draws}")
    rest = f"power {{\n  lapwing from mill.a6\n}}\nleads {{\n  D1 mill.a6 -> lapwing.dc of thin made {length}\n}}\n"
    return results_of(SUPPLY + cable + unit + rest).get(LeadDrops).all["D1"]


def test_worked_lead() -> None:
    """0.5 m of 24 AWG there and back at 0.3 A: 2 × 0.5 × 84.2 mΩ × 0.3 A = 25 mV; 6 m of it at 1 A: 1.0 V."""
    assert one_lead("500 mm", "300 mA").drop_v == pytest.approx(0.025, abs=5e-4)
    assert one_lead("6 m", "1000 mA").drop_v == pytest.approx(1.0, abs=0.02)
