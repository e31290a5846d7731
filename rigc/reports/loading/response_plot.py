"""Sections that passive instruments drive -> plots of their responses, a curve for each section and one for the plain lead."""

from __future__ import annotations

from math import ceil

from rigc.analysis.computations.loading import Loading
from rigc.analysis.signal.section import Section
from rigc.analysis.signal.section_figures import PickupFigures
from rigc.analysis.signal.source_network import SourceNetwork
from rigc.reports.content import Drawing
from rigc.reports.loading.words import state_names
from rigc.reports.plot import STYLES, Curve, Mark, plot
from rigc.reports.plotting.axis import Axis

WIDTH, HEIGHT = 250.0, 110.0
LOW_HZ, HIGH_HZ, POINTS = 20.0, 20_000.0, 180
FLOOR_DB = -30.0
_LONGEST = 30
_NEAR = 1.2


def response_plots(loading: Loading, driven: tuple[PickupFigures, ...]) -> tuple[Drawing, ...]:
    """The plots of each instrument; as many curves in one as can be told apart. Curves bear the numbers of the table."""
    sections = [told.figures.section for told in driven]
    numbered = [(at, section) for at, section in enumerate(sections, 1) if section.network is not None]
    drawings: list[Drawing] = []
    for name in dict.fromkeys(section.source.thing for _, section in numbered):
        mine = [each for each in numbered if each[1].source.thing == name]
        room = len(STYLES) - 1
        for start in range(0, len(mine), room):
            part = f"-{start // room + 1}" if len(mine) > room else ""
            drawings.append(_drawing(loading, name, mine[start : start + room], part))
    return tuple(drawings)


def _drawing(loading: Loading, name: str, numbered: list[tuple[int, Section]], part: str) -> Drawing:
    networks = [(_named(loading, at, section), section.network) for at, section in numbered]
    plain = next((section.plain for _, section in numbered if section.plain is not None), None)
    if plain is not None:
        networks.append(("plain lead", plain))
    known = [(title, network) for title, network in networks if network is not None]
    peaks = [(network.peak_hz, network.decibel(network.peak_hz)) for _, network in known if network.peak_hz is not None]
    top = max((level for _, level in peaks), default=0.0)
    frequency = Axis("frequency", "Hz", LOW_HZ, HIGH_HZ, log=True)
    level = Axis("level at the input", "dB", FLOOR_DB, max(6.0, 6.0 * ceil((top + 2) / 6)), step=6.0)
    curves = tuple(Curve(title, _points(network)) for title, network in known)
    return Drawing(
        name=f"response-{name}{part}",
        title=f"Response of '{name}'" + (f", part {part[1:]}" if part else ""),
        desc=_told(name, known),
        width_mm=WIDTH,
        height_mm=HEIGHT,
        shapes=plot(frequency, level, curves, WIDTH, HEIGHT, _marks(peaks)),
        caption="Numbers are those of the table of responses. The plain lead is heard into the inputs of the first curve.",
        landscape=True,
    )


def _named(loading: Loading, number: int, section: Section) -> str:
    states = state_names(loading, (section,))
    short = states if len(states) <= _LONGEST else f"{loading.first_state(section).name[: _LONGEST - 4]} …"
    return f"{number} {short}"


def _points(network: SourceNetwork) -> tuple[tuple[float, float], ...]:
    ratio = (HIGH_HZ / LOW_HZ) ** (1 / POINTS)
    at = (LOW_HZ * ratio**step for step in range(POINTS + 1))
    return tuple((hertz, max(network.decibel(hertz), 4 * FLOOR_DB)) for hertz in at)


def _marks(peaks: list[tuple[float, float]]) -> tuple[Mark, ...]:
    """A mark at each peak, but none where another's words stand."""
    marked: list[Mark] = []
    for hertz, level in peaks:
        if all(max(hertz, mark.x) / min(hertz, mark.x) > _NEAR for mark in marked):
            marked.append(Mark(hertz, level, f"{hertz:.0f} Hz"))
    return tuple(marked)


def _told(name: str, networks: list[tuple[str, SourceNetwork]]) -> str:
    words = []
    for title, network in networks:
        peak = network.peak_hz
        at = "has no peak" if peak is None else f"peaks at {peak:.0f} Hz with {network.decibel(peak):.1f} dB"
        words.append(f"curve '{title}' {at}")
    return f"Level at the first input that '{name}' drives, in dB, from 20 Hz to 20 kHz: {'; '.join(words)}."
