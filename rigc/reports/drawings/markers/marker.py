"""Label texts -> markers: the number large in its own cell, what stands beside it in lines, and how large it must be.

A lead that carries d.c. says at both ends which volts stand at its far plug, and the polarity of that plug.
"""

from __future__ import annotations

from math import ceil

from rigc.analysis.leads.labels import NEW_LINE, Labels
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.facts.bench import MARKER_MARGIN_MM, MARKER_STEP_MM
from rigc.record import Record
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import LARGE_LETTERS, LETTERS
from rigc.traced.figure import Figure

LINE_GAP = 1.5
"""Between two lines of a marker, in mm."""


_POLES = {"centre-negative": "centre −", "centre-positive": "centre +"}


class Marker(Record):
    """The markers of a lead or adaptor (`quantity`), of one size in mm: the lines for its start and for its end.

    `cell_mm` is the width of the cell at the left that holds the number.
    """

    mark: str
    start: tuple[str, ...]
    end: tuple[str, ...]
    cell_mm: float
    width_mm: float
    height_mm: float
    quantity: Figure

    @property
    def texts(self) -> tuple[tuple[str, ...], ...]:
        """What is printed on each, in lines."""
        return (self.start, self.end)[: int(self.quantity)]


def markers(leads: Leads, labels: Labels, special: SpecialLeads) -> tuple[Marker, ...]:
    """Two for every lead, stage leads too, in the order of the leads; then those of adaptors, and one for the plug of each
    Y lead at its outlet. ` / ` in a text begins a new line."""
    of_leads = (
        _marker(lead.mark, labels.markers[lead.mark], *(_told(lead, text) for text in labels.texts[lead.mark]))
        for lead in leads.all
    )
    others = (
        _marker(each.mark, each.markers, each.lines, each.lines) for each in special.all if each.markers is not None
    )
    return (*of_leads, *others)


def size(marker: Marker) -> str:
    """Its size as text."""
    return f"{marker.width_mm:g} × {marker.height_mm:g}"


def _told(lead: Lead, text: str) -> tuple[str, ...]:
    """The lines of a label; those of a lead that feeds a unit end with its volts and the polarity of its plug."""
    lines, make = tuple(text.split(NEW_LINE)), lead.make
    if make.volts is None:
        return lines
    volts = f"{make.volts:g} V {make.current.upper()}"
    pole = _POLES.get(make.polarity or "", "")
    if make.flag and lines[-1] == make.flag:
        *lines_before, volts = lines
        lines = tuple(lines_before)
    return (*lines, ", ".join(filter(None, (volts, pole))))


def _beside(mark: str, lines: tuple[str, ...]) -> tuple[str, ...]:
    """The lines without the number, which stands in its own cell."""
    first = lines[0].removeprefix(mark).lstrip() if lines[0].split(" ")[0] == mark else lines[0]
    return (first, *lines[1:]) if first else lines[1:]


def _marker(mark: str, quantity: Figure, start: tuple[str, ...], end: tuple[str, ...]) -> Marker:
    start, end = _beside(mark, start), _beside(mark, end)
    margin, step = MARKER_MARGIN_MM.value, MARKER_STEP_MM.value
    cell = text_width(mark, LARGE_LETTERS, strong=True) + 2 * margin
    widest = max((text_width(line, LETTERS) for line in (*start, *end)), default=0.0) + 2 * margin
    lines = max(len(start), len(end))
    height = max(lines * LETTERS + (lines - 1) * LINE_GAP, LARGE_LETTERS) + 2 * margin
    return Marker(mark, start, end, cell, ceil((cell + widest) / step - 1e-9) * step, height, quantity)
