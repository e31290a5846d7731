"""What strip is laid and ordered: `hook.width`, `hook.on-units`, `.on-deck`, `.on-rails`, `.sum`, `.order`; `board.tape-1`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.mounting_strip import MountingStrip
from rigc.analysis.computations.rail_tape import RailTape
from rigc.analysis.computations.strip_order import OrderedStrip, StripOrder, strip_length
from rigc.analysis.reasons.inputs import derived, follows, ours, placed, stated
from rigc.diagnostics.figures import metres_ordered, nearest_tenth, plain
from rigc.facts import fastening
from rigc.model.rig import Rig
from rigc.traced.reason import ARITHMETIC, Input, Reason

_PRACTICE = "common practice, no source"


def strip_order(rig: Rig, strips: MountingStrip, tape: RailTape, order: StripOrder) -> Iterator[Reason]:
    """Six reasons for each kind of strip, two for each rail's tape."""
    for kind in order.kinds:
        parts = (_width(rig, kind), _on_units(strips, kind), _on_deck(strips, kind), _on_rails(tape, kind))
        total = _sum(kind, parts[1:])
        yield from (*parts, total, _order(kind, total))
    for deck, pieces in tape.tapes.items():
        for number in range(len(pieces)):
            yield from _tape(rig, tape, deck, number)


def strip_name(kind: OrderedStrip) -> str:
    """What a kind of strip is called in the name of a reason."""
    return kind.name.replace(" ", "-")


def _width(rig: Rig, kind: OrderedStrip) -> Reason:
    strip = rig.stock.strips.get(kind.strip or "")
    value = plain(kind.width_mm)
    inputs = (stated(f"width of {strip.name}", strip.width_mm),) if strip is not None else ()
    formula = f"{value}, as {'the strip' if strip else 'the tape on the rail'} is wide"
    return Reason(
        f"{strip_name(kind)}.width", value, "mm", formula, inputs, "a stated figure stands", "the source states it"
    )


def _on_units(strips: MountingStrip, kind: OrderedStrip) -> Reason:
    own = [unit for unit in strips.units if unit.strip == kind.strip]
    value = nearest_tenth(kind.on_units_mm)
    terms = [f"{unit.count} × {plain(unit.piece_mm)}" for unit in own]
    inputs = tuple(
        derived(f"strips of {unit.thing}", term, "mm", f"{unit.thing}.strips")
        for unit, term in zip(own, terms, strict=True)
    )
    return Reason(
        f"{strip_name(kind)}.on-units",
        value,
        "mm",
        f"{' + '.join(terms) or '0'} = {value}",
        inputs,
        "the pieces under units",
        ARITHMETIC,
    )


def _on_deck(strips: MountingStrip, kind: OrderedStrip) -> Reason:
    own = [unit for unit in strips.units if unit.strip == kind.strip]
    value = nearest_tenth(kind.on_deck_mm)
    pieces = {unit.thing: [strip_length(piece, kind.width_mm) for piece in unit.deck_pieces] for unit in own}
    terms = [
        f"{len(lengths)} × {plain(lengths[0])}" if len(set(lengths)) == 1 else " + ".join(map(plain, lengths))
        for lengths in pieces.values()
        if lengths
    ]
    inputs = tuple(
        derived(f"strips of {unit.thing}", f"{unit.count} × {plain(unit.piece_mm)}", "mm", f"{unit.thing}.strips")
        for unit in own
        if unit.deck_pieces
    )
    rule = "twins of the pieces under units: as long on a plate, as long as the tape is wide on rails; none where tape is the partner"
    return Reason(
        f"{strip_name(kind)}.on-deck", value, "mm", f"{' + '.join(terms) or '0'} = {value}", inputs, rule, _PRACTICE
    )


def _on_rails(tape: RailTape, kind: OrderedStrip) -> Reason:
    value = nearest_tenth(kind.on_rails_mm)
    own = [
        (f"{deck}.tape-{number}", piece)
        for deck, number, piece, strip, faces in tape.each
        if kind.on_rails_mm and kind.is_tape(strip, piece.depth_mm)
        for _ in range(faces)
    ]
    inputs = tuple(
        derived(name, f"{plain(piece.width_mm)} × {plain(piece.depth_mm)}", "mm", name) for name, piece in own
    )
    formula = f"{' + '.join(plain(piece.width_mm) for _, piece in own) or '0'} = {value}"
    return Reason(f"{strip_name(kind)}.on-rails", value, "mm", formula, inputs, "the tape on rails", ARITHMETIC)


def _sum(kind: OrderedStrip, parts: tuple[Reason, ...]) -> Reason:
    value = nearest_tenth(kind.laid_mm)
    words = ("on units", "on the deck", "on rails")
    inputs = tuple(follows(word, part) for word, part in zip(words, parts, strict=True))
    formula = f"{' + '.join(part.value for part in parts)} = {value}"
    return Reason(f"{strip_name(kind)}.sum", value, "mm", formula, inputs, "all that is laid", ARITHMETIC)


def _order(kind: OrderedStrip, total: Reason) -> Reason:
    more = fastening.ORDER_MORE
    value = metres_ordered(kind.order_mm)
    exact = plain(round(kind.laid_mm * (1 + more.value), 3))
    inputs: tuple[Input, ...] = (follows("sum", total), ours(more), ours(fastening.ORDER_STEP_MM))
    formula = f"{total.value} × {plain(1 + more.value)} = {exact} mm → {value} m"
    rule = f"the sum and {plain(100 * more.value)} %, rounded up to the next {plain(fastening.ORDER_STEP_MM.value)} mm"
    return Reason(f"{strip_name(kind)}.order", value, "m", formula, inputs, rule, _PRACTICE)


def _tape(rig: Rig, tape: RailTape, deck_name: str, number: int) -> Iterator[Reason]:
    piece, deck = tape.tapes[deck_name][number], rig.decks[deck_name]
    taped = [rail for rail in deck.rails if rail.tape_front_mm is not None and rail.tape_rear_mm is not None]
    rail, shorter = taped[number], plain(fastening.TAPE_SHORTER_MM.value)
    width, name = stated(f"{deck_name} width", deck.width_mm), f"{deck_name}.tape-{number + 1}"
    across = "" if deck.width_mm is None else plain(deck.width_mm.value)
    span = f"{plain(rail.tape_front_mm or 0)}..{plain(rail.tape_rear_mm or 0)} mm"
    size = f"{plain(piece.width_mm)} × {plain(piece.depth_mm)}"
    rule = "tape is a little shorter than the deck is wide, and centred on it"
    formula = f"{across} − {shorter} = {plain(piece.width_mm)} long; {plain(piece.rear_mm)} − {plain(piece.y_mm)} = {plain(piece.depth_mm)} wide"
    inputs = (width, ours(fastening.TAPE_SHORTER_MM), placed("tape on the rail", span, rail.span))
    yield Reason(name, size, "mm", formula, inputs, rule, _PRACTICE)
    yield Reason(
        f"{name}.x",
        plain(piece.x_mm),
        "mm",
        f"{shorter} / 2 = {plain(piece.x_mm)}",
        (ours(fastening.TAPE_SHORTER_MM),),
        rule,
        _PRACTICE,
    )


REASONS = strip_order
