"""A whole number that stands in the source -> its figure: a channel, a preset, a program."""

from __future__ import annotations

from rigc.source import Span
from rigc.traced.figure import Figure, known_figure
from rigc.traced.given import mentioned
from rigc.traced.means import found
from rigc.traced.reason import STATED
from rigc.traced.units import COUNT


def written_number(name: str, label: str, number: int, span: Span, text: str = "") -> Figure:
    """`label` names what states it; `text` is what is stated there, if it is more than the number."""
    return known_figure(
        name,
        found(number, lambda: f"{number}, as stated"),
        COUNT,
        mentioned(label, text or str(number), span),
        rule="a stated number stands",
        source=STATED,
    )
