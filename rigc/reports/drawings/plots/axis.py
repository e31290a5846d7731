"""An axis: its range of values -> places along a length in mm, and its ticks."""

from __future__ import annotations

from math import log10

from rigc.record import Record
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.plots.ticks import decade_ticks, linear_ticks, tick_text
from rigc.reports.drawings.shapes import LETTERS


class Axis(Record):
    """What is measured, its unit, and the range shown, `low` under `high`; `log` axes start above 0.

    `step` sets the distance of the ticks of a linear axis; without it they are as near as they can be read.
    """

    title: str
    unit: str
    low: float
    high: float
    log: bool = False
    step: float = 0.0

    def part(self, value: float) -> float:
        """How far along the axis a value stands: 0 at `low`, 1 at `high`, beyond that outside."""
        if self.log:
            return log10(value / self.low) / log10(self.high / self.low)
        return (value - self.low) / (self.high - self.low)

    def named(self) -> str:
        """The text beside the axis."""
        return f"{self.title} ({self.unit})" if self.unit else self.title

    def major(self, length: float, upright: bool = False) -> tuple[float, ...]:
        """The values that get a number, for an axis of this length in mm: as many as do not crowd."""
        if not self.log:
            most = int(length / (7.5 if upright else 16))
            count = round((self.high - self.low) / self.step) if self.step else most
            return linear_ticks(self.low, self.high, count)
        choices = [decade_ticks(self.low, self.high, parts) for parts in ((1, 2, 5), (1, 3), (1,))]
        return next((ticks for ticks in choices if self._clear(ticks, length, upright)), choices[-1])

    def minor(self) -> tuple[float, ...]:
        """The values of a log axis that get a thin line and no number; a linear axis has none."""
        return decade_ticks(self.low, self.high, tuple(range(1, 10))) if self.log else ()

    def _clear(self, ticks: tuple[float, ...], length: float, upright: bool) -> bool:
        places = [self.part(tick) * length for tick in ticks]
        room = [LETTERS if upright else text_width(tick_text(tick), LETTERS) for tick in ticks]
        return all(places[at + 1] - places[at] > (room[at] + room[at + 1]) / 2 + 1.2 for at in range(len(places) - 1))
