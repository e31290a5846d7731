"""StripOrder: the strips under units and the tape on rails -> what is laid of each kind of strip, and what to order: `hook.width`,
`.on-units`, `.on-deck`, `.on-rails`, `.sum`, `.order`."""

from __future__ import annotations

import math
from collections import Counter

from rigc.analysis.mounting.mounting_strip import MountingStrip, StrippedUnit
from rigc.analysis.mounting.rail_tape import RailTape, TapeSize
from rigc.diagnostics.figures import plain
from rigc.facts import fastening
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Basis, Figure, known_figure
from rigc.traced.given import ours, stated
from rigc.traced.means import becomes, total
from rigc.traced.reason import ARITHMETIC, AS_STATED, PRACTICE, STATED
from rigc.traced.shown import Shown, exactly, places
from rigc.traced.term import Term, number
from rigc.traced.units import MILLIMETRES

_LENGTH = places("mm", 1)
_METRES = exactly("m", 1)
_TWINS = "twins of the pieces under units: as long on a plate, as long as the tape is wide on rails; none where tape is the partner"
_ORDER = (
    f"the sum and {plain(100 * fastening.ORDER_MORE.value)} %, rounded up to the next "
    f"{plain(fastening.ORDER_STEP_MM.value)} mm"
)


class OrderedStrip(Record):
    """One kind of strip: its width, what is laid of it under units, on the deck, on rails and in all, in mm; what to order of it, in
    m. `strip` is its name in stock, None for rail tape where no strip in stock is so wide.

    `tape_of` is then the kind that the source calls that tape, None where it does not say. What the stock tells of that kind (mass per
    metre, roll) is true of its own width alone.
    """

    strip: str | None
    width_mm: Figure
    on_units_mm: Figure
    on_deck_mm: Figure
    on_rails_mm: Figure
    laid_mm: Figure
    order: Figure
    tape_of: str | None = None

    @property
    def name(self) -> str:
        """What it is called on every sheet; no two kinds have one name."""
        return _called(self.strip, self.width_mm, self.tape_of)

    @property
    def key(self) -> str:
        """What its figures are called by."""
        return self.name.replace(" ", "-")

    def is_tape(self, strip: str | None, width_mm: float) -> bool:
        """Whether a tape on a rail of that kind and width is of this kind."""
        return strip == (self.strip or self.tape_of) and math.isclose(width_mm, self.width_mm)


class StripOrder(Record):
    """What is laid and ordered, strips under units first, then rail tape, each in the order in which it is met."""

    kinds: tuple[OrderedStrip, ...]


def strip_order(rig: Rig, strips: MountingStrip, tape: RailTape) -> StripOrder:
    """Sums the pieces on units, their twins on the deck, and the rail tape, by kind of strip."""
    return order_of(rig, strips, tape)


def order_of(rig: Rig, strips: MountingStrip, tape: RailTape, within: str = "") -> StripOrder:
    """The same of a part of the rig, by whose name its figures are then called."""
    laid: dict[tuple[str | None, float, str | None], _Laid] = {}
    for unit in strips.units:
        laid.setdefault((unit.strip, float(unit.width_mm), None), _Laid()).units.append(unit)
    for deck, at, piece, strip, faces in tape.each:
        kind = laid.setdefault(_tape_kind(rig, strip, piece.depth_mm), _Laid())
        kind.tapes += [tape.sizes[deck][at - 1]] * faces
    return StripOrder(tuple(_ordered(rig, *kind, found, within) for kind, found in laid.items()))


def ordered(laid_mm: Term) -> Term:
    """What to order of a strip, in m: a tenth more than is laid, rounded up to the next 100 mm; an exact multiple stays."""
    made: Term = becomes(laid_mm / 1000 * (1 + ours(fastening.ORDER_MORE)), _next_step)
    return made


def strip_length(piece: Rectangle, strip_mm: float) -> float:
    """The length of a piece of strip in mm: its side that is not the strip's width."""
    return piece.depth_mm if math.isclose(piece.width_mm, strip_mm) else piece.width_mm


class _Laid:
    """Where strip of a kind lies: under units, and on rails, of a tape on both faces twice."""

    def __init__(self) -> None:
        self.units: list[StrippedUnit] = []
        self.tapes: list[TapeSize] = []


def _ordered(
    rig: Rig, strip: str | None, width_mm: float, tape_of: str | None, laid: _Laid, within: str
) -> OrderedStrip:
    name = f"{within}{_called(strip, width_mm, tape_of).replace(' ', '-')}"
    stock = rig.stock.strips.get(strip or "")
    wide = laid.tapes[0].width if stock is None else stated(f"width of {stock.name}", stock.width_mm)
    assert isinstance(wide, Term)  # a unit whose strip has no width is not stripped
    twins = [unit for unit in laid.units if unit.deck_pieces]
    on_units = _figure(
        f"{name}.on-units", total(each.counted * each.piece_mm for each in laid.units), "the pieces under units"
    )
    on_deck = _figure(
        f"{name}.on-deck",
        total(length for unit in twins for length in _twins(unit)),
        _TWINS,
        *(each for unit in twins for each in _on_rails(unit)),
        source=PRACTICE,
    )
    on_rails = _figure(f"{name}.on-rails", total(each.length for each in laid.tapes), "the tape on rails")
    sum_mm = _figure(f"{name}.sum", total((on_units, on_deck, on_rails)), "all that is laid")
    step = ours(fastening.ORDER_STEP_MM)
    return OrderedStrip(
        strip,
        known_figure(f"{name}.width", wide, MILLIMETRES, rule=AS_STATED, source=STATED),
        on_units,
        on_deck,
        on_rails,
        sum_mm,
        _figure(f"{name}.order", ordered(sum_mm), _ORDER, step, source=PRACTICE, shown=_METRES),
        tape_of,
    )


def _figure(
    name: str, value: Term, rule: str, *beside: Basis, source: str = ARITHMETIC, shown: Shown = _LENGTH
) -> Figure:
    return known_figure(name, value, shown, *beside, rule=rule, source=source)


def _twins(unit: StrippedUnit) -> list[Term]:
    """The lengths of a unit's pieces on the deck, equal ones once with their number."""
    if unit.tapes_met is None:
        return [unit.counted * unit.piece_mm]
    lengths = Counter(strip_length(piece, unit.width_mm) for piece in unit.deck_pieces)
    return [count * number(length) for length, count in lengths.items()]


def _on_rails(unit: StrippedUnit) -> tuple[Basis, ...]:
    """What the lengths of a unit's pieces on rails follow from; from the strip's width only where they lie askew."""
    if unit.tapes_met is None:
        return ()
    return tuple(each for each in unit.on_deck.beside if unit.skew_deg or each is not unit.width_mm)


def _next_step(metres: float) -> float:
    """Rounded up to the next step, in whole hundredths of a millimetre, since 1.1 × 1000 in binary floats is a hair above 1100."""
    step = round(fastening.ORDER_STEP_MM.value)
    return -(-round(metres * 100_000) // (100 * step)) * step / 1000


def _called(strip: str | None, width_mm: float, tape_of: str | None) -> str:
    return strip or f"{tape_of or 'rail tape'} {width_mm:g} mm wide"


def _tape_kind(rig: Rig, strip: str | None, width_mm: float) -> tuple[str | None, float, str | None]:
    """The strip in stock, its width, and None where its width is that of the tape; else the tape is of a kind apart."""
    width = rig.stock.strips[strip].width_mm if strip is not None else None
    if width is not None and math.isclose(width.value, width_mm):
        return strip, width.value, None
    return None, round(width_mm, 6), strip


COMPUTE = strip_order
