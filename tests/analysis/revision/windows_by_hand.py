"""The lengths of a lead of which a test says how long it may be, with no way and no plugs behind them."""

from __future__ import annotations

from rigc.analysis.leads.lengths.cable_lengths import Length
from rigc.traced.figure import Answer, Figure, known_figure
from rigc.traced.term import number
from rigc.traced.units import TENTHS


def window_of(mark: str, least: int, most: int, finished: int) -> Length:
    """A lead that is supplied as it would be made, all in tenths of a millimetre."""
    none = Answer(f"{mark}.cut", "none", "not cut", rule="", source="")
    return Length(
        mark,
        "audio",
        _figure(least - 3),
        _figure(3),
        _figure(least),
        _figure(most),
        _figure(finished),
        lambda: none,
        lambda: none,
        lambda length: length.made,
    )


def _figure(tenths: int) -> Figure:
    return known_figure("by-hand", number(tenths), TENTHS, rule="", source="")
