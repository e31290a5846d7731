"""Label texts -> markers: what is printed on each in lines, and how large it must be."""

from __future__ import annotations

from math import ceil

from rigc.analysis.computations.labels import Labels
from rigc.analysis.computations.leads import Leads
from rigc.facts.bench import MARKER_MARGIN_MM, MARKER_STEP_MM
from rigc.record import Record
from rigc.reports.drawing.lettering import text_width
from rigc.reports.shapes import LETTERS

LINE_GAP = 1.5
"""Between two lines of a marker, in mm."""


class Marker(Record):
    """A lead's two markers, of one size in mm: the lines for its start and for its end."""

    mark: str
    start: tuple[str, ...]
    end: tuple[str, ...]
    width_mm: float
    height_mm: float


def markers(leads: Leads, labels: Labels) -> tuple[Marker, ...]:
    """Two for every lead, stage leads too, in the order of the leads. ` / ` in the template begins a new line."""
    return tuple(_marker(lead.mark, *labels.texts[lead.mark]) for lead in leads.all)


def size(marker: Marker) -> str:
    """Its size as text."""
    return f"{marker.width_mm:g} × {marker.height_mm:g}"


def _marker(mark: str, at_start: str, at_end: str) -> Marker:
    start, end = (tuple(text.split(" / ")) for text in (at_start, at_end))
    margin, step = MARKER_MARGIN_MM.value, MARKER_STEP_MM.value
    widest = max(text_width(line, LETTERS) for line in (*start, *end)) + 2 * margin
    lines = max(len(start), len(end))
    height = lines * LETTERS + (lines - 1) * LINE_GAP + 2 * margin
    return Marker(mark, start, end, ceil(widest / step - 1e-9) * step, height)
