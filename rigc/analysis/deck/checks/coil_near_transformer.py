"""A wah's coil is near to the transformer of a supply: a linear or an unregulated one, or a bare winding.

Why it matters: the coil hears the transformer's stray field as hum, and the drives behind it lift it.
What to do: move one of them until {separation.COIL_MM} lie between them, or feed the board from a supply that has no such transformer.
A treadle with sound through it that is neither a volume treadle (`track`) nor digital is taken for one with a coil.
Source: common practice, no source; geometry on stated places.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.coils import TRANSFORMERS, has_coil, may_hold_transformer
from rigc.analysis.deck.placement import Placement
from rigc.analysis.laying.place_finder import PlaceFinder
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.figures import short
from rigc.facts.separation import COIL_MM
from rigc.model.geometry.polygon import gap
from rigc.model.rig import Rig

KIND = Kind(
    "coil-near-transformer",
    Level.WARNING,
    __doc__,
    f"from the body of a wah to that of a supply with a mains transformer at least {COIL_MM}, seen from above",
    "common practice, no source; geometry on stated places",
)
_HAIR_MM = 1e-6


def coil_near_transformer(rig: Rig, placement: Placement, finder: PlaceFinder) -> Iterator[Diagnostic]:
    """One finding for each wah and such supply on one deck that are too near; can't-check where the supply's kind is not said."""
    supplies = [
        body
        for body in placement.outlines.values()
        if body.thing in rig.supplies and may_hold_transformer(rig.supplies[body.thing])
    ]
    for unit in rig.units.values():
        body = placement.outline(unit.name)
        for supply in supplies if body is not None and has_coil(unit) else ():
            if body is None or supply.deck != body.deck:
                continue
            apart = gap(body.corners, supply.corners)
            if COIL_MM.value - apart > _HAIR_MM:
                kind = rig.supplies[supply.thing].technology
                yield (
                    _unsure(rig, unit.name, supply.thing, apart)
                    if kind is None
                    else finder.moving(
                        _told(rig, unit.name, supply.thing, apart, TRANSFORMERS[kind]), supply.thing, unit.name
                    )
                )


def _told(rig: Rig, unit: str, supply: str, apart: float, kind: str) -> Diagnostic:
    return KIND.at(
        rig.places[unit].span,
        f"'{unit}' is {short(apart)} mm from '{supply}', which is {kind}; its coil wants {COIL_MM.value:g} mm",
        subject=(unit, supply),
        label="stands here",
        also=(Label(rig.places[supply].span, f"'{supply}' is here"),),
        numbers=(Number("distance", apart, "mm"), Number("needed", COIL_MM.value, "mm")),
    )


def _unsure(rig: Rig, unit: str, supply: str, apart: float) -> Diagnostic:
    return KIND.cant_check(
        rig.supplies[supply].declared,
        f"'{supply}' does not say whether it holds a transformer; '{unit}' is {short(apart)} mm from it, and its coil would want "
        f"{COIL_MM.value:g} mm",
        subject=(supply, unit),
        help=f"write `linear`, `switch-mode`, `unregulated` or `winding` in '{supply}'",
    )


CHECK = coil_near_transformer
