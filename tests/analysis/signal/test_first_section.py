"""What hangs on an instrument before the first active input. Rigs are invented; figures are worked in the comments."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from small_rigs import HEAD, block, results_of, unit

from rigc.analysis.signal.loading.first_section import FirstSection, InstrumentSection, PassiveSection
from rigc.analysis.signal.loading.source_network import unloaded_hz
from rigc.traced.figure import assumed
from rigc.traced.term import known

COAX = block("cable", "coax", "carries audio", "capacitance 100 pF/m")
GUITAR = block("instrument", "guitar", "inductance 4 H", "capacitance 100 pF", "lead 3 m of coax")
COMBO = block("amp", "combo", "input in ts")


def sections(text: str) -> tuple[InstrumentSection, ...]:
    return results_of(COAX + text).get(FirstSection).sections


def passive(section: InstrumentSection) -> PassiveSection:
    """What a passive instrument drives."""
    assert section.passive is not None
    return section.passive


@pytest.mark.parametrize(("henry", "picofarad", "hertz"), [(2.5, 610, 4075.54), (4.5, 870, 2543.63)])
def test_the_ideal_resonance(henry: float, picofarad: float, hertz: float) -> None:
    # Source: the textbook formula f0 = 1/(2 pi sqrt(L C)), evaluated outside this project; tolerance 0.01 %.
    assert unloaded_hz(henry, picofarad) == pytest.approx(hertz, rel=1e-4)


def test_the_home_rig() -> None:
    # Worked by hand: A1 6 m x 105 = 630 pF; A2 and A3 90 mm each: 0.18 m x 105 = 18.9 pF; cable 648.9 pF = 81 % of 800 pF;
    # with the pickup's 120 pF 768.9 pF; 1/(2 pi sqrt(4.2 x 768.9e-12)) = 1/(2 pi x 5.6828e-5) = 2801 Hz.
    (section,) = results(ROOT / "examples/back-bedroom/board.rig").get(FirstSection).sections
    assert [lead.mark for lead in passive(section).leads] == ["A1", "A2", "A3"]
    assert section.until == ("marl",)
    assert passive(section).cable == pytest.approx(648.9)
    assert passive(section).percent == pytest.approx(81.1125)
    assert passive(section).together == pytest.approx(768.9)
    assert passive(section).resonance == pytest.approx(2801, abs=0.5)


def test_the_touring_rig_ends_at_its_receiver() -> None:
    # Worked by hand: 0.8 m x 105 = 84 pF, with the pickup's 120 pF 204 pF: 5437 Hz.
    # On the plain lead 6 m x 105 = 630 pF, with the pickup 750 pF: 2836 Hz.
    (section,) = results(ROOT / "examples/long-haul/board.rig").get(FirstSection).sections
    assert section.until == ("heron",)
    assert passive(section).together == pytest.approx(204)
    assert passive(section).resonance == pytest.approx(5437, abs=0.5)
    assert passive(section).plain == pytest.approx(2836, abs=0.5)


def test_passive_units_panels_and_branches_count_as_cable() -> None:
    # 3 m + 0.5 m + 1 m, and 0.2 m to the tuner on the branch: 4.7 m x 100 = 470 pF.
    text = GUITAR + COMBO + unit("slipway", "passive", "output tun ts") + unit("plumb", "bypass true")
    text += unit("marl", "bypass buffered") + block("panel", "rear", "jack l ts at 10, 10 mm")
    text += "chain guitar -> rear -> slipway.in\nchain slipway.out -> marl -> combo\nchain slipway.tun -> plumb\n"
    text += "leads {\n  A2 rear.l -> slipway.in of coax made 500 mm\n  A3 slipway.out -> marl.in of coax made 1 m\n"
    text += "  A4 slipway.tun -> plumb.in of coax made 200 mm\n}\n"
    (section,) = sections(text)
    assert section.until == ("marl",)
    assert passive(section).cable == pytest.approx(470)


def test_a_switcher_that_is_out_leaves_its_loops_out() -> None:
    # 3 m to the switcher and 1 m on to the amp: 400 pF; the loop's two leads do not count.
    text = GUITAR + COMBO + unit("marl", "bypass buffered")
    text += unit("box", "bypass true", "output s1 ts", "input r1 ts", "loop 1 send s1 return r1")
    text += "chain guitar -> box -> combo\nloop 1 of box holds marl\n"
    text += "leads {\n  A9 box.out -> combo.in of coax made 1 m\n}\n"
    (section,) = sections(text)
    assert section.until == ("combo",)
    assert passive(section).cable == pytest.approx(400)


def test_a_missing_fact_is_named_and_nothing_is_guessed() -> None:
    text = block("instrument", "guitar", "inductance 4 H", "lead 3 m of coax") + COMBO + unit("marl", "bypass true")
    (section,) = sections(text + unit("lant") + "chain guitar -> marl -> lant -> combo\n")
    assert known(passive(section).cable) is None
    assert known(passive(section).resonance) is None
    assert section.missing == (
        "how 'lant' is bypassed is not said",
        "the length of A2 is not known",
        "the capacitance of 'guitar' is not said",
    )


def test_an_active_instrument_is_not_reckoned() -> None:
    text = block("instrument", "bass", "active", "lead 3 m of coax") + COMBO + "chain bass -> combo\n"
    (section,) = sections(text)
    assert (section.passive, section.missing) == (None, ())


def test_each_scenario_has_its_section_where_they_differ() -> None:
    text = block("scenario", "van") + block("scenario", "stage") + GUITAR + COMBO + unit("marl", "bypass buffered")
    text += unit("lant", "bypass buffered")
    text += "chain for van: guitar -> marl -> combo\nchain for stage: guitar -> lant -> combo\n"
    assert [(section.scenarios, section.until) for section in sections(text)] == [
        (("van",), ("marl",)),
        (("stage",), ("lant",)),
    ]


def test_the_rig_may_set_its_own_limit() -> None:
    # 3 m x 100 = 300 pF of the stated 400 pF = 75 %.
    head = HEAD.replace("}", '  limit capacitance 400 pF source "the player likes it bright"\n}')
    (section,) = results_of(COAX + GUITAR + COMBO + "chain guitar -> combo\n", head).get(FirstSection).sections
    assert passive(section).percent == pytest.approx(75)


def test_an_assumed_fact_marks_just_what_leans_on_it() -> None:
    """The capacitance of the pickup is no part of the cable's, and none of its share of the limit."""
    text = GUITAR.replace("100 pF", "100 pF assumed") + COMBO + "chain guitar -> combo\n"
    made = passive(*sections(text))
    marked = {name for name in PassiveSection.FIELDS if name != "leads" and assumed(getattr(made, name))}
    assert marked == {"pickup", "together", "resonance"}
    assert not any(assumed(lead.capacitance) for lead in made.leads)
