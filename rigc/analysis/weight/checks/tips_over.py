"""The board balances outside its feet, or a foot on a treadle or a switch beyond the feet tips it.

Why it matters: it rocks at each stamp, or stands up under the player's weight and pulls its leads out.
What to do: move the heavy things inwards, the treadle or switch behind the feet, or the feet outwards.
Source: physics: a foot that presses with {foot.STAMP_N} at a distance a outside the board's feet tips it when {foot.STAMP_N.value:g} · a > m · g · c, with c
from those feet to the centre of gravity; the {foot.STAMP_N} are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.body_clash import BodyClash
from rigc.analysis.deck.feet import Feet, feet_of, spots_pressed
from rigc.analysis.deck.meant_places import wholly_off
from rigc.analysis.deck.placement import Placement
from rigc.analysis.laying.place_finder import PlaceFinder
from rigc.analysis.weight.mass import Balance, Mass
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.wanted import how_to_state
from rigc.facts.foot import STAMP_N
from rigc.facts.weight import GRAVITY_M_PER_S2
from rigc.model.deck import Deck
from rigc.model.rig import Rig

KIND = Kind(
    "tips-over",
    Level.WARNING,
    __doc__,
    f"the centre of gravity lies within the feet; on a treadle or a switch, {STAMP_N} · overhang ≤ m · g · distance of the centre of gravity",
    f"physics: moments about the feet; {STAMP_N} is common practice, no source",
)
_HAIR_MM = 1e-6


def tips_over(
    rig: Rig, placement: Placement, mass: Mass, clash: BodyClash, finder: PlaceFinder
) -> Iterator[Diagnostic]:
    """One finding for each deck that balances outside its feet, and for each treadle or switch that tips one."""
    for balance in mass.balances:
        deck, feet = rig.decks[balance.deck], feet_of(rig.decks[balance.deck])
        beyond = [each for each in _beyond(rig, placement, deck, feet) if each[0] not in clash.beyond]
        if feet is None or balance.x_mm is None or balance.y_mm is None or balance.kg is None:
            yield from _unknown(rig, placement, deck, balance, feet is None or bool(beyond))
            continue
        if any(wholly_off(body, deck) for body in placement.outlines.values() if body.deck == deck.name):
            continue  # one of the places is a slip, which is told
        outside = {side: over for side, over in feet.outside(balance.x_mm, balance.y_mm).items() if over > _HAIR_MM}
        if outside:
            yield _unbalanced(deck, balance, outside)
            continue
        for thing, side, over in beyond:
            room = feet.inside(balance.x_mm, balance.y_mm)[side]
            most = balance.kg * GRAVITY_M_PER_S2.value * room / STAMP_N.value
            if over - most > _HAIR_MM:
                yield finder.moving(_tipped(rig, deck, balance.kg, (thing, side), (over, most, room)), thing)


def _beyond(rig: Rig, placement: Placement, deck: Deck, feet: Feet | None) -> list[tuple[str, str, float]]:
    """For each unit that a foot presses, the side of the feet over which its treadle's heel or toe, or a switch, reaches most."""
    found = []
    for body in placement.outlines.values():
        unit = rig.units.get(body.thing)
        if unit is None or feet is None or body.under or body.deck != deck.name:
            continue
        pressed = spots_pressed(unit, rig.places[unit.name])
        over, side = max(
            ((over, side) for spot in pressed for side, over in feet.outside(*spot).items()), default=(0.0, "")
        )
        if over > _HAIR_MM:
            found.append((unit.name, side, over))
    return found


def _unbalanced(deck: Deck, balance: Balance, outside: dict[str, float]) -> Diagnostic:
    far = " and ".join(f"{over:.1f} mm at the {side}" for side, over in outside.items())
    return KIND.at(
        deck.declared,
        f"'{deck.name}' balances at {balance.x_mm:.0f}, {balance.y_mm:.0f} mm, outside its feet by {far}",
        subject=(deck.name,),
        label="this deck",
        numbers=(Number("mass", balance.kg or 0.0, "kg"), *(Number(s, over, "mm") for s, over in outside.items())),
        help="move the heaviest things inwards, or the feet outwards",
    )


def _tipped(rig: Rig, deck: Deck, kg: float, what: tuple[str, str], figures: tuple[float, float, float]) -> Diagnostic:
    (thing, side), (over, most, room) = what, figures
    return KIND.at(
        rig.places[thing].span,
        f"a foot on '{thing}' {over:.1f} mm outside the {side} feet tips '{deck.name}' ({kg:.2f} kg, "
        f"its centre of gravity {room:.0f} mm inside them): {most:.1f} mm is the most",
        subject=(thing, deck.name),
        label="stands here",
        also=(Label(deck.declared, "this deck"),),
        numbers=(Number("overhang", over, "mm"), Number("most", most, "mm"), Number("mass", kg, "kg")),
        help="set the feet further outwards",
    )


def _unknown(rig: Rig, placement: Placement, deck: Deck, balance: Balance, asked: bool) -> Iterator[Diagnostic]:
    """Told where nobody knows where the feet are, or something is pressed beyond them; masses are also asked for by `too-heavy`."""
    missing = [*balance.missing, *([f"where the feet of '{deck.name}' are"] if deck.feet_inset_mm is None else [])]
    if asked and missing and any(body.deck == deck.name for body in placement.outlines.values()):
        yield KIND.cant_check(
            deck.declared,
            f"whether '{deck.name}' tips is not known, for want of {missing[0]}"
            + (f" and {len(missing) - 1} more" if len(missing) > 1 else ""),
            subject=(deck.name, rig.head.name),
            help=how_to_state(missing[-1] if deck.feet_inset_mm is None else missing[0]),
            wants=tuple(missing),
        )


CHECK = tips_over
