"""A touring rig has no outlet left.

Why it matters: on the road an outlet or a unit fails, and a guest brings one more; then there is nowhere to plug.
What to do: leave one free, or carry a supply more.
Source: common practice, no source. Outlets that the source reserves are not spare.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig

KIND = Kind(
    "no-spare-outlet",
    Level.WARNING,
    __doc__,
    "class touring: at least one outlet of all supplies is free",
    "common practice, no source",
)


def no_spare_outlet(rig: Rig, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for the whole rig."""
    taken = [port for port, load in power.loads.items() if load.units or port in power.reserved]
    if rig.head.rig_class != "touring" or not taken or len(taken) < len(power.loads):
        return
    supplies = tuple(dict.fromkeys(port.thing for port in power.loads))
    outlets = {1: "the only outlet", 2: "both outlets"}.get(len(taken), f"all {len(taken)} outlets")
    kept = f" ({len(power.reserved)} reserved)" if power.reserved else ""
    yield KIND.at(
        rig.supplies[supplies[0]].declared,
        f"{outlets} of {listed(supplies)} {'is' if len(taken) == 1 else 'are'} taken{kept}: the rig has no spare one",
        subject=supplies,
        label="no outlet left",
        help="let two units that may share one do so, or add a supply",
    )


CHECK = no_spare_outlet
