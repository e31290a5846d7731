"""Sections that passive instruments drive -> plots of their responses, a curve for each section and one for the plain lead."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Section
from rigc.analysis.signal.loading.section_figures import PickupFigures
from rigc.analysis.signal.loading.source_network import SourceNetwork
from rigc.record import Record
from rigc.reports.content import Drawing
from rigc.reports.drawings.plot import STYLES, Curve, Mark, plot
from rigc.reports.drawings.plots.axis import Axis
from rigc.reports.signal.loading.words import state_names
from rigc.traced.figure import Figure

WIDTH, HEIGHT = 250.0, 110.0
LOW_HZ, HIGH_HZ, POINTS = 20.0, 20_000.0, 180
FLOOR_DB = -30.0
_LONGEST = 30
_NEAR = 1.2


class _Plotted(Record):
    """A curve with its title, and where its peak is: Hz and dB; None where it has none."""

    title: str
    network: SourceNetwork
    peak: tuple[float, float] | None


def response_plots(loading: Loading, driven: tuple[PickupFigures, ...]) -> tuple[Drawing, ...]:
    """The plots of each instrument; as many curves in one as can be told apart. Curves bear the numbers of the table."""
    numbered = [(at, told) for at, told in enumerate(driven, 1) if told.figures.section.network is not None]
    drawings: list[Drawing] = []
    for name in dict.fromkeys(told.pickup.instrument for _, told in numbered):
        mine = [each for each in numbered if each[1].pickup.instrument == name]
        room = len(STYLES) - 1
        for start in range(0, len(mine), room):
            part = f"-{start // room + 1}" if len(mine) > room else ""
            drawings.append(_drawing(loading, name, mine[start : start + room], part))
    return tuple(drawings)


def _drawing(loading: Loading, name: str, numbered: list[tuple[int, PickupFigures]], part: str) -> Drawing:
    plotted = list(_plotted(loading, numbered))
    peaks = [each.peak for each in plotted if each.peak is not None]
    top = max((level for _, level in peaks), default=0.0)
    frequency = Axis("frequency", "Hz", LOW_HZ, HIGH_HZ, log=True)
    level = Axis("level at the input", "dB", FLOOR_DB, max(6.0, 6.0 * ceil((top + 2) / 6)), step=6.0)
    curves = tuple(Curve(each.title, _points(each.network)) for each in plotted)
    return Drawing(
        name=f"response-{name}{part}",
        title=f"Response of '{name}'" + (f", part {part[1:]}" if part else ""),
        desc=_told(name, plotted),
        width_mm=WIDTH,
        height_mm=HEIGHT,
        shapes=plot(frequency, level, curves, WIDTH, HEIGHT, _marks(peaks)),
        caption="Numbers are those of the table of responses. The plain lead is heard into the inputs of the first curve.",
        landscape=True,
    )


def _plotted(loading: Loading, numbered: list[tuple[int, PickupFigures]]) -> Iterator[_Plotted]:
    """The curves of the sections, and that of the plain lead."""
    for at, told in numbered:
        network, peak, level = told.figures.section.network, told.peak, told.peak_level
        if network is not None:
            found = (float(peak), float(level)) if isinstance(peak, Figure) and isinstance(level, Figure) else None
            yield _Plotted(_named(loading, at, told.figures.section), network, found)
    plain = next((each for _, told in numbered if (each := told.figures.section.plain) is not None), None)
    if plain is not None:
        hertz = plain.peak_hz
        yield _Plotted("plain lead", plain, None if hertz is None else (hertz, plain.decibel(hertz)))


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


def _told(name: str, plotted: list[_Plotted]) -> str:
    words = []
    for each in plotted:
        at = "has no peak" if each.peak is None else f"peaks at {each.peak[0]:.0f} Hz with {each.peak[1]:.1f} dB"
        words.append(f"curve '{each.title}' {at}")
    return f"Level at the first input that '{name}' drives, in dB, from 20 Hz to 20 kHz: {'; '.join(words)}."
