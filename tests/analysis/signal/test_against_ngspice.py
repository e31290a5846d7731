"""Whole curves against a circuit simulator: random instruments, and every section of the examples in every state."""

from __future__ import annotations

import random
from math import inf, sqrt
from pathlib import Path

import pytest
from cases import ROOT, results
from ngspice import needs_ngspice, responses

from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Section
from rigc.analysis.signal.loading.section_figures import SectionFigures
from rigc.analysis.signal.loading.section_walk import PICKUP
from rigc.analysis.signal.loading.source_network import SourceNetwork
from rigc.model.rig import Rig
from rigc.model.things import Instrument
from rigc.traced.figure import Figure, Lacking

EXAMPLES = sorted((ROOT / "examples").glob("*/board.rig"))
SWEEP = "ac dec 40 20 20k"


def circuit(
    henry: float, ohm: float, pickup: float, volume: float, turned: float, tone: float, nano: float
) -> list[str]:
    """The instrument alone; its lead hangs on node `w`."""
    above = max(volume * (1 - turned), 1e-3)
    return [
        f"R s a {ohm!r}", f"L a p {henry!r}", f"C p 0 {pickup!r}p", f"R p t {max(tone, 1e-3)!r}", f"C t 0 {nano!r}n",
        f"R p w {above!r}", f"R w 0 {volume * turned!r}",
    ]  # fmt: skip


def drawn(source: random.Random) -> tuple[SourceNetwork, list[str]]:
    """A random instrument on random cable: parts in the ranges that are published for magnetic pickups, and beyond."""
    henry, ohm, pickup = source.uniform(1, 10), source.uniform(2e3, 15e3), source.uniform(50, 250)
    volume, tone = source.choice((100e3, 250e3, 500e3, 1e6)), source.choice((250e3, 500e3))
    turned, tone_turned = source.choice((1.0, source.uniform(0.05, 1))), source.choice((1.0, source.uniform(0, 1)))
    nano = source.choice((10.0, 22.0, 47.0))
    leads = [source.uniform(5, 700) for _ in range(source.randint(1, 4))]
    inputs = [source.choice((12e3, 100e3, 470e3, 1e6)) for _ in range(source.randint(1, 2))]
    load = 1 / sum(1 / each for each in inputs)
    network = SourceNetwork(henry, ohm, pickup, volume, turned, tone, tone_turned, nano * 1000, sum(leads), load)
    elements = circuit(henry, ohm, pickup, volume, turned, tone * tone_turned, nano)
    elements += [f"C w 0 {each!r}p" for each in leads] + [f"R w 0 {each!r}" for each in inputs]
    return network, elements


@needs_ngspice
def test_fifty_random_instruments(tmp_path: Path) -> None:
    source = random.Random(20260302)
    made = [drawn(source) for _ in range(50)]
    found = responses([elements for _, elements in made], SWEEP, tmp_path)
    for (network, elements), curve in zip(made, found, strict=True):
        assert len(curve) > 100
        for hertz, level in curve:
            assert abs(network.level(hertz)) == pytest.approx(level, rel=1e-4), (elements, hertz)


@needs_ngspice
def test_peaks_of_random_instruments(tmp_path: Path) -> None:
    source = random.Random(7)
    made = [drawn(source) for _ in range(8)]
    found = responses([elements for _, elements in made], "ac lin 9951 100 20000", tmp_path)
    for (network, elements), curve in zip(made, found, strict=True):
        hertz, level = max(curve, key=lambda point: point[1])
        if network.peak_hz is None:
            assert hertz in (curve[0][0], curve[-1][0]), elements
        else:
            assert network.peak_hz == pytest.approx(hertz, rel=2e-3, abs=2), elements
            assert abs(network.level(network.peak_hz)) == pytest.approx(level, rel=1e-3), elements


@needs_ngspice
@pytest.mark.parametrize("board", EXAMPLES, ids=lambda path: path.parent.name)
def test_the_loading_of_an_example_in_every_state(board: Path, tmp_path: Path) -> None:
    made = results(board)
    loading = made.get(Loading)
    told = {state.name for section in loading.sections for state in loading.states(section)}
    assert told >= {state.name for state in loading.audio.all if state.kind != "unpowered"}
    sections = [section for section in loading.sections if not section.missing]
    assert len(sections) == len(loading.sections)
    found = responses([elements(made.rig, section) for section in sections], SWEEP, tmp_path)
    for section, curve in zip(sections, found, strict=True):
        for hertz, level in curve:
            assert level_of(loading.figures(section), hertz) == pytest.approx(level, rel=1e-4), (
                str(section.source),
                hertz,
            )


def elements(rig: Rig, section: Section) -> list[str]:
    """A section's circuit straight from the facts: a capacitor for each lead, a resistor for each input."""
    hung = [f"C w 0 {float(lead.length * lead.pf_per_m / 1000)!r}p" for lead in section.leads]
    hung += [f"R w 0 {load.ohm!r}" for load in section.loads if load.ohm != inf]
    if section.how != PICKUP:
        return [f"R s w {section.source_ohm!r}", *hung]
    own: Instrument = rig.instruments[section.source.thing]
    facts = (own.inductance_h, own.resistance_ohm, own.capacitance_pf, own.volume_ohm, own.tone_ohm, own.tone_nf)
    assert own.volume_setting is None and own.tone_setting is None
    henry, ohm, pickup, volume, tone, nano = (fact.value for fact in facts if fact is not None)
    return [*circuit(henry, ohm, pickup, volume, 1.0, tone, nano), *hung]


def level_of(told: SectionFigures, hertz: float) -> float:
    """What rigc says: a pickup's response; else the bridging loss, and the low pass of source, inputs and cable."""
    if told.section.network is not None:
        return abs(told.section.network.level(hertz))
    assert isinstance(told.loss, Figure) and not isinstance(told.corner, Lacking)
    corner = float(told.corner) if isinstance(told.corner, Figure) else inf
    low = 10 ** (float(told.loss) / 20)
    return float(low / sqrt(1 + (low * hertz / corner) ** 2))
