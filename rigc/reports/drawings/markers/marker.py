"""Label texts -> markers: what is printed on each in lines, and how large it must be."""

from __future__ import annotations

from math import ceil

from rigc.analysis.leads.labels import NEW_LINE, Labels
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.facts.bench import MARKER_MARGIN_MM, MARKER_STEP_MM
from rigc.record import Record
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import LETTERS
from rigc.traced.figure import Figure

LINE_GAP = 1.5
"""Between two lines of a marker, in mm."""


class Marker(Record):
    """The markers of a lead or adaptor (`quantity`), of one size in mm: the lines for its start and for its end."""

    mark: str
    start: tuple[str, ...]
    end: tuple[str, ...]
    width_mm: float
    height_mm: float
    quantity: Figure

    @property
    def texts(self) -> tuple[tuple[str, ...], ...]:
        """What is printed on each, in lines."""
        return (self.start, self.end)[: int(self.quantity)]


def markers(labels: Labels, special: SpecialLeads) -> tuple[Marker, ...]:
    """Two for every lead, stage leads too, in the order of the leads; then those of adaptors, and one for the plug of each
    Y lead at its outlet. ` / ` in a text begins a new line."""
    of_leads = (
        _marker(mark, labels.markers[mark], *(_lines(text) for text in texts)) for mark, texts in labels.texts.items()
    )
    others = (
        _marker(each.mark, each.markers, each.lines, each.lines) for each in special.all if each.markers is not None
    )
    return (*of_leads, *others)


def size(marker: Marker) -> str:
    """Its size as text."""
    return f"{marker.width_mm:g} × {marker.height_mm:g}"


def _lines(text: str) -> tuple[str, ...]:
    return tuple(text.split(NEW_LINE))


def _marker(mark: str, quantity: Figure, start: tuple[str, ...], end: tuple[str, ...]) -> Marker:
    margin, step = MARKER_MARGIN_MM.value, MARKER_STEP_MM.value
    widest = max(text_width(line, LETTERS) for line in (*start, *end)) + 2 * margin
    lines = max(len(start), len(end))
    height = lines * LETTERS + (lines - 1) * LINE_GAP + 2 * margin
    return Marker(mark, start, end, ceil(widest / step - 1e-9) * step, height, quantity)
