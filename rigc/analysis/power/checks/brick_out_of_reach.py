"""A supply that feeds the board has nowhere to sit.

Why it matters: a brick that lies loose in the case pulls its leads out, or breaks; and how long its leads must be is not known.
What to do: give it a place on or under the deck, or say that it stands off the board. A captive lead that does not reach from there is told by unfit-lead-length.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig

KIND = Kind(
    "brick-out-of-reach",
    Level.WARNING,
    __doc__,
    "every supply in use has a place, or stands off the board",
    "common practice, no source",
)


def brick_out_of_reach(rig: Rig, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each supply without a place on a board that places other things."""
    if not rig.places:
        return
    hinted = {name for hint in rig.hints for name in hint.named}
    for name in dict.fromkeys(port.thing for port in power.loads):
        if name not in rig.places and name not in hinted and name not in rig.off_board:
            fed = [feed.unit for feed in power.feeds if any(port.thing == name for port in feed.outlets)]
            yield KIND.at(
                rig.supplies[name].declared,
                f"'{name}' feeds {listed(fed)} and has no place on the board"
                if fed
                else f"'{name}' has no place on the board",
                subject=(name,),
                label="nowhere to sit",
                asks_for=(f"the place of '{name}'",),
                help=f"write where it sits, for example {name} under at 100, 200 mm, or {name} off board",
            )


CHECK = brick_out_of_reach
