"""A treadle stands on the deck with its toe towards the player, or sideways.

Why it matters: whoever stands before the board can't rock it.
What to do: stand it with its heel to the front edge; up to 30 degrees askew is fine. A treadle's toe is the rear of its body as stated: where a body was
measured the other way round, measure it from the heel.
Source: common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from rigc.analysis.deck.foot_spots import worked_by_hand
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.model.deck import Place
from rigc.model.rig import Rig
from rigc.model.things import Unit

KIND = Kind(
    "turned-treadle",
    Level.WARNING,
    __doc__,
    "each treadle on a deck has its heel to the front",
    "common practice, no source",
)
_TURNED = re.compile(r"[ \t]+turned[ \t]+\S+[ \t]*(?:deg|°)")
_TOE = {90: "to the left", 180: "to the player", 270: "to the right"}


def turned_treadle(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each such unit whose place is stated."""
    for place in rig.places.values():
        unit = rig.units.get(place.thing)
        if (
            unit is None
            or unit.treadle_mm is None
            or not place.turned
            or place.under
            or place.chosen
            or worked_by_hand(unit)
        ):
            continue
        yield _told(unit, place)


def _told(unit: Unit, place: Place) -> Diagnostic:
    straight = _TURNED.sub("", place.span.text)
    words = f"write `{straight}`, its heel to the front"
    return KIND.at(
        place.span,
        f"the treadle '{unit.name}' is turned {place.turned:g} deg: its toe looks {_TOE[place.turned]}",
        subject=(unit.name,),
        label="turned",
        also=(Label(unit.declared, "a treadle"),),
        mends=(Mend(words, (Replace(place.span, straight),)),) if straight != place.span.text else (),
        otherwise="stand it with its heel to the front, where there is room",
    )


CHECK = turned_treadle
