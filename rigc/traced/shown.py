"""Shown: how a kind of figure is written, in which unit, and what number its text says."""

from __future__ import annotations

from collections.abc import Callable

from rigc.diagnostics.decimals import decimals, fixed, signed
from rigc.record import Record


class Shown(Record):
    """`write(value, more)` gives the text that a sheet prints, with so many digits `more` where a formula needs them.

    `unit` is what stands beside it. `size` is what the text's 1 is of the value's unit: 10 where tenths of a millimetre are
    told in mm. `read` gives the number that a text says, in the text's unit.
    """

    unit: str
    write: Callable[[float, int], str]
    size: float = 1.0
    read: Callable[[str], float] = lambda text: float(text.replace("−", "-"))

    def text(self, value: float) -> str:
        """The text as a sheet prints it."""
        return self.write(float(value) / self.size, 0)

    def told(self, value: float, more: int) -> tuple[str, float]:
        """The text with so many digits more, and the value that it says."""
        text = self.write(float(value) / self.size, more)
        return text, self.read(text) * self.size


def places(unit: str, count: int, size: float = 1.0) -> Shown:
    """At most so many decimals, halves away from nought, without needless zeros."""
    return Shown(unit, lambda value, more: decimals(value, count + more), size)


def exactly(unit: str, count: int, size: float = 1.0) -> Shown:
    """Always so many decimals; in a formula more, as far as they tell anything."""

    def write(value: float, more: int) -> str:
        text = fixed(value, count + more)
        least = len(text) - more
        return text[:least] + text[least:].rstrip("0")

    return Shown(unit, write, size)


def as_typed(unit: str, size: float = 1.0) -> Shown:
    """As short as it can be written, to six figures."""
    return Shown(unit, lambda value, more: signed(f"{value:.{6 + more}g}"), size)


PLAIN = as_typed("")
