"""A unit with a foot switch or a treadle hangs under the deck, no loop of a switcher holds it, and nothing says that a hand works it.

Why it matters: no foot comes to it, so it stays on, or off, for the whole show.
What to do: stand it on the deck; put it into a loop of a switcher, which then switches it; or say `worked by hand` in its block if it is set
once and left so.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.foot_spots import worked_by_hand
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import AddTo, Mend
from rigc.model.rig import Rig

KIND = Kind(
    "switch-out-of-reach",
    Level.WARNING,
    __doc__,
    "what a foot works stands on the deck, or a loop of a switcher holds it",
    "common practice, no source",
)


def switch_out_of_reach(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each such unit."""
    held = {stop.thing for use in rig.loops for stop in use.stops}
    for place in rig.places.values():
        unit = rig.units.get(place.thing)
        if unit is None or not place.under or unit.name in held or worked_by_hand(unit):
            continue
        what = "treadle" if unit.treadle_mm is not None else "foot switch" if unit.switches else ""
        if what:
            yield KIND.at(
                place.span,
                f"'{unit.name}' hangs under the deck, and no foot comes to its {what}",
                subject=(unit.name,),
                label="under the deck",
                also=(Label(unit.switches[0].span if unit.switches else unit.declared, f"its {what}"),),
                mends=(
                    Mend(
                        f"write `worked by hand` into the block of '{unit.name}' if it is set once and left so",
                        (AddTo("unit", unit.name, "worked by hand"),),
                    ),
                ),
                help="else stand it on the deck",
            )


CHECK = switch_out_of_reach
