"""Loading -> how to read its sheet, and which facts are missing."""

from __future__ import annotations

from rigc.analysis.signal.loading.loading import Loading
from rigc.reports.content import Paragraph

_READING = (
    "A section runs from what drives it to the next inputs that are more than wire. A true-bypass unit that is off is wire, and "
    "so is a passive one; what a switcher's loop holds is there only while the loop is in.",
    "The unloaded resonance is 1/(2π√(LC)) of pickup and cable alone; the peak counts the controls and all inputs, and lies lower.",
    "A volume control below full is split by the share of its track (a linear track); a passive treadle is full up before a "
    "pickup's first active input, and behind that it counts with a quarter of its track, its worst.",
    "The treble corner is 1/(2πRC) of source and cable; the loss is 20·log10(Zin/(Zin+Zout)) into all inputs side by side.",
    "Levels are those at the input over the pickup's own voltage. The plain lead is the one stated for when the radio fails, "
    "else the instrument's own, into the same inputs.",
    "Figures are computed from stated facts: verify them by measurement.",
)


def reading(loading: Loading) -> Paragraph:
    """Assumptions and formulas, then every missing fact once."""
    missing = dict.fromkeys(reason for section in loading.sections for reason in section.missing)
    return Paragraph(
        "reading", (*_READING, *(f"Not known: {reason}." for reason in missing)), heading="How to read this sheet"
    )
