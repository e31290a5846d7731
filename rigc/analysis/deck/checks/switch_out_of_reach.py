"""A unit with a foot switch or a treadle hangs under the deck, no loop of a switcher holds it, and nothing says that a hand works it.

Why it matters: no foot comes to it, so it stays on, or off, for the whole show.
What to do: stand it on the deck; put it into a loop of a switcher, which then switches it; or say `worked by hand` in its block if it is set
once and left so.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.foot_beneath import foot_beneath, too_low_mm
from rigc.analysis.deck.placement import Placement
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.model.deck import Place
from rigc.model.rig import Rig
from rigc.model.things import Unit

KIND = Kind(
    "switch-out-of-reach",
    Level.WARNING,
    __doc__,
    "what a foot works stands on the deck, or a loop of a switcher holds it",
    "common practice, no source",
)


def switch_out_of_reach(rig: Rig, placement: Placement) -> Iterator[Diagnostic]:
    """One finding for each such unit; of one that hangs too low as well that finding says it."""
    for name, what in foot_beneath(rig).items():
        body = placement.outline(name)
        if body is None or too_low_mm(rig, body) is None:
            yield _told(rig.units[name], rig.places[name], what)


def _told(unit: Unit, place: Place, what: str) -> Diagnostic:
    return KIND.at(
        place.span,
        f"'{unit.name}' hangs under the deck, and no foot comes to its {what}",
        subject=(unit.name,),
        label="under the deck",
        also=(Label(unit.switches[0].span if unit.switches else unit.declared, f"its {what}"),),
        help=f"stand it on the deck; or, if it is set once and left so, write `worked by hand` in the block of '{unit.name}', and in the mounting "
        "block what holds it",
    )


CHECK = switch_out_of_reach
