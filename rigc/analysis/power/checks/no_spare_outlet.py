"""A touring rig has no outlet left, or fewer outlets are left than the power block keeps free.

Why it matters: on the road an outlet or a unit fails, and a guest brings one more; then there is nowhere to plug.
What to do: leave one free, or carry a supply more.
Source: common practice, no source. Outlets that the source reserves are not spare.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.wording import joined, listed
from rigc.model.rig import Rig
from rigc.source import Span

KIND = Kind(
    "no-spare-outlet",
    Level.WARNING,
    __doc__,
    "class touring: at least one outlet of all supplies is free; and as many as `spare` says",
    "common practice, no source",
)


def no_spare_outlet(rig: Rig, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each `spare` that the stated feeds leave no room for, else one for the whole rig."""
    short = [each for each in (_short(power, wish) for wish in rig.power.spare) if each is not None]
    yield from short
    taken = [port for port, load in power.loads.items() if load.units or port in power.reserved]
    if short or rig.head.rig_class != "touring" or not taken or len(taken) < len(power.loads):
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


def _short(power: PowerAssignment, wish: tuple[int, str | None, Span]) -> Diagnostic | None:
    """A finding where fewer outlets of the supply, or of all, are free than shall stay so."""
    count, supply, span = wish
    mine = [port for port in power.loads if supply in (None, port.thing)]
    free = [port for port in mine if not power.loads[port].units and port not in power.reserved]
    if not mine or len(free) >= count:
        return None
    whose = f"'{supply}'" if supply else listed(dict.fromkeys(port.thing for port in mine))
    left = "none" if not free else joined(free)
    return KIND.at(
        span,
        f"{count} of the {len(mine)} outlets of {whose} shall stay free, and {left} {'are' if len(free) > 1 else 'is'}",
        subject=(*dict.fromkeys(port.thing for port in mine), "spare"),
        label="kept free",
        help=f"keep {len(free)} free, or feed from other outlets what is on them"
        if free
        else "keep none free, or feed from other outlets what is on them",
    )


CHECK = no_spare_outlet
