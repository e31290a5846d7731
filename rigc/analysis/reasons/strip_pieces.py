"""What strip is under a thing and whether it holds: `plumb.strips`, `.centres`, `.on-deck`, `.strip-width`, `.engaged`, `.needed`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.mounting_strip import MountingStrip, StrippedUnit
from rigc.analysis.computations.rail_tape import RailTape
from rigc.analysis.mounting.laid_pieces import shared_mm2
from rigc.analysis.mounting.piece_corners import on_deck, spots
from rigc.analysis.reasons.as_stated import as_stated
from rigc.analysis.reasons.inputs import derived, ours, placed, stands, stated
from rigc.diagnostics.figures import nearest_tenth, plain, square_centimetres
from rigc.facts import fastening
from rigc.model.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.model.stock import Strip
from rigc.model.things import Thing
from rigc.traced.reason import NOT_KNOWN, Input, Reason

_PRACTICE = "common practice, no source"


def strip_pieces(rig: Rig, strips: MountingStrip, tape: RailTape) -> Iterator[Reason]:
    """Six reasons for each thing on strips; one for a thing of which a fact is missing."""
    for unit in strips.units:
        thing, strip = rig.things[unit.thing], rig.stock.strips[unit.strip]
        assert isinstance(thing, Thing)
        yield _count(thing, unit)
        yield _centres(thing, unit)
        yield _on_deck(rig, unit)
        yield as_stated(f"{unit.thing}.strip-width", f"the width of strip {strip.name}", strip.width_mm, "mm")
        yield _engaged(rig, tape, unit)
        yield _needed(thing, strip, unit)
    for unknown in strips.unknown:
        here = (placed(unknown.thing, "placed", unknown.span),)
        for field in ("strips", "engaged", "needed"):
            why = f"for want of {unknown.missing}"
            yield Reason(
                f"{unknown.thing}.{field}", NOT_KNOWN, "", why, here, "what is missing is not guessed", _PRACTICE
            )


def _count(thing: Thing, unit: StrippedUnit) -> Reason:
    steps = (fastening.TWO_STRIPS_FROM_MM, fastening.THREE_STRIPS_FROM_MM, fastening.FOUR_STRIPS_FROM_MM)
    depth = 0.0 if thing.depth_mm is None else thing.depth_mm.value
    reached = unit.counted.by_width_mm
    more = f", {len(reached)} more for {', '.join(f'≥ {plain(step)}' for step in reached)} mm wide" if reached else ""
    if unit.counted.heavy:
        more += f", 1 more for ≥ {plain(fastening.ONE_MORE_FROM_KG.value)} kg"
    value = f"{unit.count} × {plain(unit.piece_mm)}"
    shorter = plain(fastening.PIECE_SHORTER_MM.value)
    inputs = [stated(f"{thing.name} width", thing.width_mm), stated(f"{thing.name} depth", thing.depth_mm)]
    inputs += [stated(f"{thing.name} mass", thing.mass_kg), *map(ours, steps), ours(fastening.ONE_MORE_FROM_KG)]
    return Reason(
        f"{unit.thing}.strips",
        value,
        "mm",
        f"1{more} = {unit.count}; {plain(depth)} − {shorter} = {plain(unit.piece_mm)} long",
        (*inputs, ours(fastening.PIECE_SHORTER_MM)),
        "strips by the width and mass of the unit, each a little shorter than it is deep",
        _PRACTICE,
    )


def _centres(thing: Thing, unit: StrippedUnit) -> Reason:
    width = 0.0 if thing.width_mm is None else thing.width_mm.value
    value = _middles(unit)
    numbers = ", ".join(str(number) for number in range(1, unit.count + 1))
    inputs = (stated(f"{thing.name} width", thing.width_mm), _strips(unit))
    formula = f"{plain(width)} × (n − 0.5) / {unit.count} for n = {numbers}: {value}"
    return Reason(
        f"{unit.thing}.centres", value, "mm", formula, inputs, "strips are spread evenly over the width", _PRACTICE
    )


def _on_deck(rig: Rig, unit: StrippedUnit) -> Reason:
    place, value = rig.places[unit.thing], on_deck(unit)
    by = plain(place.turned + place.skew_deg)
    turned = f", turned by {by}°" if by != "0" else ""
    corners = ", ".join(f"({nearest_tenth(x)}, {nearest_tenth(y)})" for x, y in spots(unit.pieces, unit.skew_deg))
    have = "middles" if unit.skew_deg else "corners"
    centres = derived("centres", _middles(unit), "mm", f"{unit.thing}.centres")
    here = stands(place)
    formula = f"strips below {unit.thing} have their {have} at {corners}{turned}: {value}"
    rule = "twins of the strips on a plate; on rails pieces as wide as the tape where a strip crosses it, none where tape is the partner"
    return Reason(f"{unit.thing}.on-deck", value, "mm", formula, (here, _strips(unit), centres), rule, _PRACTICE)


def _middles(unit: StrippedUnit) -> str:
    return ", ".join(map(nearest_tenth, unit.centres_mm))


def _engaged(rig: Rig, tape: RailTape, unit: StrippedUnit) -> Reason:
    place = rig.places[unit.thing]
    deck = rig.decks.get(place.deck or "", rig.deck)
    name, rule = f"{unit.thing}.engaged", "the area in which its strips lie over tape (on rails) or plate"
    inputs: tuple[Input, ...] = (_strips(unit), stands(place))
    if unit.engaged_mm2 is None or deck is None or deck.width_mm is None or deck.depth_mm is None:
        return Reason(name, NOT_KNOWN, "cm²", "for want of the size of its deck", inputs, rule, _PRACTICE)
    inputs += (stated(f"{unit.thing} strip", rig.stock.strips[unit.strip].width_mm),)
    plate = (Rectangle(0.0, 0.0, deck.width_mm.value, deck.depth_mm.value),)
    on_tape = unit.tapes_met is not None
    if on_tape:
        inputs += tuple(
            placed(f"tape of {deck.name}", f"{plain(rail.tape_front_mm)}..{plain(rail.tape_rear_mm)} mm", rail.span)
            for rail in deck.rails
            if rail.tape_front_mm is not None and rail.tape_rear_mm is not None
        )
    else:
        inputs += (stated(f"{deck.name} width", deck.width_mm), stated(f"{deck.name} depth", deck.depth_mm))
    value = square_centimetres(unit.engaged_mm2)
    overlaps = _overlaps(unit, tape.of(deck.name) if on_tape else plate)
    formula = f"{overlaps or '0'} = {plain(round(unit.engaged_mm2, 3))} mm² = {value} cm²"
    return Reason(name, value, "cm²", formula, inputs, rule, "arithmetic on stated places")


def _overlaps(unit: StrippedUnit, ground: tuple[Rectangle, ...]) -> str:
    """Each overlap as width × depth (askew as its area); equal ones told once with their number."""
    counts: dict[str, int] = {}
    for piece in unit.pieces:
        for one in ground:
            across, along = piece.overlap(one)
            area = shared_mm2(piece, unit.skew_deg, one)
            if area > 0:
                term = f"{plain(round(across, 3))} × {plain(round(along, 3))}"
                term = plain(round(area, 3)) if unit.skew_deg else term
                counts[term] = counts.get(term, 0) + 1
    return " + ".join(term if count == 1 else f"{count} × {term}" for term, count in counts.items())


def _needed(thing: Thing, strip: Strip, unit: StrippedUnit) -> Reason:
    shock, gravity = fastening.SHOCK_G, fastening.GRAVITY_M_PER_S2
    inputs = (
        stated(f"{thing.name} mass", thing.mass_kg),
        ours(shock),
        ours(gravity),
        stated(f"pull of {strip.name}", strip.pull_kpa),
    )
    name, rule = f"{unit.thing}.needed", "needed = mass × deceleration × g / pull (1 kPa = 1000 N per m²)"
    source = "physics: force = mass × acceleration; the deceleration as its fact says; the pull is the stock's"
    if unit.needed_mm2 is None or thing.mass_kg is None or strip.pull_kpa is None:
        return Reason(name, NOT_KNOWN, "cm²", f"for want of the pull of {strip.name}", inputs, rule, source)
    value = square_centimetres(unit.needed_mm2)
    terms = f"{plain(thing.mass_kg.value)} × {plain(shock.value)} × {plain(gravity.value)} / {plain(strip.pull_kpa.value)} × 10"
    return Reason(name, value, "cm²", f"{terms} = {value}", inputs, rule, source)


def _strips(unit: StrippedUnit) -> Input:
    return derived("strips", f"{unit.count} × {plain(unit.piece_mm)}", "mm", f"{unit.thing}.strips")


REASONS = strip_pieces
