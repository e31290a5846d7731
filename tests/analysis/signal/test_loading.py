"""Sections of the signal path and their loading. Rigs are invented; figures are worked in the comments."""

from __future__ import annotations

from math import inf, pi

import pytest
from cases import ROOT, results
from small_rigs import block, results_of, unit
from written import changed, compiled_with

from rigc.analysis.results import Results
from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Section
from rigc.analysis.signal.loading.section_figures import PickupFigures, SectionFigures
from rigc.traced.figure import Answer, Lacking
from rigc.traced.means import in_parallel
from rigc.traced.term import known

HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"
COAX = block("cable", "coax", "carries audio", "capacitance 100 pF/m")
GUITAR = block("instrument", "guitar", "inductance 4 H", "capacitance 100 pF", "lead 3 m of coax")
COMBO = block("amp", "combo", "input in ts 1 Mohm")


def section(made: Results, source: str, state: str) -> Section:
    """The one section that a jack drives in a state."""
    loading = made.get(Loading)
    (found,) = (
        each
        for each in loading.sections
        if str(each.source) == source and state in [one.name for one in loading.states(each)]
    )
    return found


def told(made: Results, source: str, state: str) -> SectionFigures:
    """The figures of that section."""
    return made.get(Loading).figures(section(made, source, state))


def pickup(made: Results, state: str) -> PickupFigures:
    """The figures of what the guitar drives in a state."""
    found = told(made, "guitar.out", state).by_pickup
    assert found is not None
    return found


def quality(made: Results, found: PickupFigures) -> float:
    """Q = R_par/(2 pi f0 L) with both controls and all inputs in parallel."""
    guitar = made.rig.instruments["guitar"]
    load, resonance = known(found.figures.load), known(found.resonance)
    assert guitar.volume_ohm and guitar.tone_ohm and guitar.inductance_h and load and resonance
    across = float(in_parallel(guitar.volume_ohm.value, guitar.tone_ohm.value, float(load)))
    return across / (2 * pi * float(resonance) * guitar.inductance_h.value)


def test_the_home_rig_with_all_off() -> None:
    # Worked by hand: 630 + 18.9 + 120 = 768.9 pF, 2801 Hz; 500k || 500k || 1M = 200k over 73.9k: Q 2.71. First buffer: marl.
    made = results(ROOT / HOME)
    found = pickup(made, "all off")
    assert [str(load.port) for load in found.figures.section.loads] == ["marl.in"]
    assert found.total == pytest.approx(768.9)
    assert found.resonance == pytest.approx(2801, abs=0.5)
    assert quality(made, found) == pytest.approx(2.71, abs=0.005)
    assert isinstance(found.peak, float) and isinstance(found.resonance, float)
    assert found.peak < found.resonance


def test_the_home_rig_with_its_fuzz_on() -> None:
    # Worked by hand: 630 + 9.45 + 120 = 759.45 pF, 2818 Hz; 500k || 500k || 12k = 11.45k over 74.4k: Q 0.154, no peak.
    made = results(ROOT / HOME)
    found = pickup(made, "hedge alone on")
    assert found.total == pytest.approx(759.45)
    assert found.resonance == pytest.approx(2818, abs=0.5)
    assert quality(made, found) == pytest.approx(0.154, abs=0.0005)
    assert isinstance(found.peak, Answer) and found.peak.text == "none"


def test_the_touring_rig_through_the_air() -> None:
    # Worked by hand: 84 + 120 = 204 pF: 5437 Hz; on the plain lead 750 pF: 2836 Hz; a factor of 1.92.
    found = pickup(results(ROOT / TOURING), "all off")
    assert found.total == pytest.approx(204)
    assert found.resonance == pytest.approx(5437, abs=0.5)
    assert found.plain_resonance == pytest.approx(2836, abs=0.5)
    assert found.brighter == pytest.approx(1.92, abs=0.005)


def test_the_touring_rig_with_a_loop_in_and_its_unit_off() -> None:
    # Worked by hand: A02 + A03 = 2.05 m = 215 pF on the switcher's 1 kohm: 740 kHz.
    preset = 'preset 9 "Loop 1, wah off" {\n  loops 1 of signalbox\n  off teeter\n}\n\nsong "Salt Road" {'
    found = told(changed(TOURING, ('song "Salt Road" {', preset)), "signalbox.s1", 'preset 9 "Loop 1, wah off"')
    assert [lead.mark for lead in found.section.leads] == ["A02", "A03"]
    assert found.cable == pytest.approx(215, abs=0.5)
    assert found.corner == pytest.approx(740e3, rel=1e-3)


def test_the_touring_rigs_treadle() -> None:
    # Worked by hand: 25k/4 = 6.25 kohm into 0.60 m x 105 = 63 pF: 404 kHz.
    found = told(results(ROOT / TOURING), "slipway.out", "all off")
    assert found.source == 6250
    assert found.cable == pytest.approx(63)
    assert found.corner == pytest.approx(404e3, rel=1e-3)


def test_the_other_kind_of_treadle_is_told_there() -> None:
    # 250k/4 = 62.5 kohm into 63 pF would still be 40 kHz: a matter of its kind alone.
    made = compiled_with(TOURING, ("track 25 kohm", "track 250 kohm"))
    names = [finding.kind.name for finding in made.findings if "slipway" in finding.subject]
    assert [
        code
        for code in names
        if code in ("too-much-cable", "heavy-load", "dull-treble", "wrong-treadle", "long-tuner-branch")
    ] == ["wrong-treadle"]


def test_the_switched_off_tuner_on_a_branch_loads_nothing() -> None:
    # On it is 1 Mohm beside the treadle's 25 kohm: 24.39 kohm.
    made = results(ROOT / TOURING)
    assert section(made, "signalbox.out", "all off").load_ohm == pytest.approx(25e3)
    assert section(made, "signalbox.out", "plumb alone on").load_ohm == pytest.approx(24390, abs=1)


def test_equal_sections_are_one() -> None:
    made = results(ROOT / TOURING)
    loading = made.get(Loading)
    keys = [(each.source, each.how, each.leads, each.loads) for each in loading.sections]
    assert len(set(keys)) == len(keys)
    everywhere = section(made, "heron.out", "all off")
    assert len(loading.states(everywhere)) == sum(state.kind != "unpowered" for state in loading.audio.all)


def test_without_power_only_what_passes() -> None:
    # 3 m to marl and 2 m on to the amp: 500 pF; with power marl is a buffer.
    text = (
        COAX
        + GUITAR
        + COMBO
        + "chain guitar -> marl -> combo\nleads {\n  A1 marl.out -> combo.in of coax made 2 m\n}\n"
    )
    passes = results_of(text + unit("marl", "bypass buffered", "unpowered passes"))
    assert section(passes, "guitar.out", "no power").cable_pf == pytest.approx(500)
    assert section(passes, "guitar.out", "all off").cable_pf == pytest.approx(300)
    for facts in ("unpowered mutes", "unpowered latches", "digital"):
        mutes = results_of(text + unit("marl", "bypass buffered", facts)).get(Loading)
        assert all(state.kind != "unpowered" for each in mutes.sections for state in mutes.states(each))


def test_impedances_when_bypassed() -> None:
    # Off, marl's input stage has 500 kohm and its output 2 kohm; on, 1 Mohm and 1 kohm.
    marl = block(
        "unit", "marl", "input in ts 1 Mohm", "output out ts 1 kohm", "bypass buffered",
        "impedance in 500 kohm bypassed", "impedance out 2 kohm bypassed",
    )  # fmt: skip
    made = results_of(COAX + GUITAR + COMBO + marl + "chain guitar -> marl -> combo\n")
    assert section(made, "guitar.out", "all off").load_ohm == 500e3
    assert section(made, "marl.out", "all off").source_ohm == 2000
    assert section(made, "guitar.out", "marl alone on").load_ohm == 1e6
    assert section(made, "marl.out", "marl alone on").source_ohm == 1000


def test_what_bridges_a_unit_that_is_off() -> None:
    # True bypass with a resistor across its input: 1 Mohm beside the amp's 1 Mohm.
    marl = unit("marl", "bypass true", "impedance in 1 Mohm bypassed")
    made = results_of(COAX + GUITAR + COMBO + marl + "chain guitar -> marl -> combo\n")
    assert section(made, "guitar.out", "all off").load_ohm == pytest.approx(500e3)


def test_the_rig_ends_at_a_panel_jack() -> None:
    text = COAX + GUITAR + block("panel", "rear", "jack l ts at 10, 10 mm") + "chain guitar -> rear\n"
    (found,) = results_of(text).get(Loading).sections
    assert (found.load_ohm, found.missing_end) == (inf, ())


def test_missing_facts_are_named() -> None:
    text = COAX + GUITAR + block("amp", "combo", "input in ts") + unit("marl", "bypass buffered") + unit("lant")
    made = results_of(text + "chain guitar -> marl -> lant -> combo\n")
    first = section(made, "guitar.out", "all off")
    assert first.missing == (
        "the impedance of 'marl.in' is not said",
        "the resistance of 'guitar' is not said",
        "the volume control of 'guitar' is not said",
        "the tone control of 'guitar' is not said",
    )
    assert (known(first.load_ohm), first.network) == (None, None)
    assert known(pickup(made, "all off").resonance) is not None, "it needs pickup and cable alone"
    behind = section(made, "marl.out", "all off")
    assert "how 'lant' is bypassed is not said" in behind.missing_wire
    figures = told(made, "marl.out", "all off")
    assert [type(each) for each in (figures.cable, figures.corner, figures.loss)] == [Lacking] * 3
    assert section(made, "lant.out", "all off").source_ohm is None


def test_what_is_stated_is_told_where_another_part_of_the_circuit_is_missing() -> None:
    # Only the amp's impedance is missing: 4 H, 8 kohm and 100 pF are stated, 300 + 100 = 400 pF resonate with them.
    guitar = GUITAR.replace("inductance", "resistance 8 kohm\n  volume 500 kohm\n  tone 500 kohm 22 nF\n  inductance")
    made = results_of(COAX + guitar + block("amp", "combo", "input in ts") + "chain guitar -> combo\n")
    found = pickup(made, "all off")
    assert [each.text for each in (found.inductance, found.resistance, found.own, found.total)] == [
        "4",
        "8",
        "100",
        "400",
    ]
    assert [type(each) for each in (found.across, found.quality, found.peak)] == [Lacking] * 3
