"""StripOrder: the strips under units and the tape on rails -> what is laid of each kind of strip, and what to order."""

from __future__ import annotations

import math

from rigc.analysis.computations.mounting_strip import MountingStrip, StrippedUnit
from rigc.analysis.computations.rail_tape import RailTape
from rigc.facts import fastening
from rigc.model.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.record import Record


class OrderedStrip(Record):
    """One kind of strip, in mm. `strip` is its name in stock, None for rail tape where no strip in stock is so wide.

    `tape_of` is then the kind that the source calls that tape, None where it does not say. What the stock tells of that kind (mass per
    metre, roll) is true of its own width alone.
    """

    strip: str | None
    width_mm: float
    on_units_mm: float
    on_deck_mm: float
    on_rails_mm: float
    tape_of: str | None = None

    @property
    def name(self) -> str:
        """What it is called on every sheet; no two kinds have one name."""
        return self.strip or f"{self.tape_of or 'rail tape'} {self.width_mm:g} mm wide"

    def is_tape(self, strip: str | None, width_mm: float) -> bool:
        """Whether a tape on a rail of that kind and width is of this kind."""
        return strip == (self.strip or self.tape_of) and math.isclose(width_mm, self.width_mm)

    @property
    def laid_mm(self) -> float:
        """All that is laid."""
        return self.on_units_mm + self.on_deck_mm + self.on_rails_mm

    @property
    def order_mm(self) -> int:
        """What to order of it."""
        return ordered_mm(self.laid_mm)


class StripOrder(Record):
    """What is laid and ordered, strips under units first, then rail tape, each in the order in which it is met."""

    kinds: tuple[OrderedStrip, ...]


def strip_order(rig: Rig, strips: MountingStrip, tape: RailTape) -> StripOrder:
    """Sums the pieces on units, their twins on the deck, and the rail tape, by kind of strip."""
    laid: dict[tuple[str | None, float, str | None], list[float]] = {}
    for unit in strips.units:
        width = _width(rig, unit)
        sums = laid.setdefault((unit.strip, width, None), [0.0, 0.0, 0.0])
        sums[0] += unit.count * unit.piece_mm
        sums[1] += sum(strip_length(piece, width) for piece in unit.deck_pieces)
    for _, _, piece, strip, faces in tape.each:
        laid.setdefault(_tape_kind(rig, strip, piece.depth_mm), [0.0, 0.0, 0.0])[2] += piece.width_mm * faces
    return StripOrder(
        tuple(
            OrderedStrip(strip, width, on_units, on_deck, on_rails, tape_of)
            for (strip, width, tape_of), (on_units, on_deck, on_rails) in laid.items()
        )
    )


def ordered_mm(laid_mm: float) -> int:
    """What to order of a strip in mm: a tenth more than is laid, rounded up to the next 100 mm; an exact multiple stays.

    Reckoned in whole hundredths of a millimetre, since 1.1 × 1000 in binary floats is a hair above 1100.
    """
    percent = round(100 * (1 + fastening.ORDER_MORE.value))
    step = round(fastening.ORDER_STEP_MM.value)
    return -(-round(laid_mm * 100) * percent // (step * 10_000)) * step


def strip_length(piece: Rectangle, strip_mm: float) -> float:
    """The length of a piece of strip in mm: its side that is not the strip's width."""
    return piece.depth_mm if math.isclose(piece.width_mm, strip_mm) else piece.width_mm


def _tape_kind(rig: Rig, strip: str | None, width_mm: float) -> tuple[str | None, float, str | None]:
    """The strip in stock, its width, and None where its width is that of the tape; else the tape is of a kind apart."""
    width = rig.stock.strips[strip].width_mm if strip is not None else None
    if width is not None and math.isclose(width.value, width_mm):
        return strip, width.value, None
    return None, round(width_mm, 6), strip


def _width(rig: Rig, unit: StrippedUnit) -> float:
    width = rig.stock.strips[unit.strip].width_mm
    assert width is not None, "a unit whose strip has no width is not stripped"
    return width.value


COMPUTE = strip_order
