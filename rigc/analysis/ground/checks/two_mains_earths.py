"""Two mains earths are joined by the leads of the board.

Why it matters: the earths of two outlets differ by some millivolts to volts of hum, and the leads between form a ring
of many square metres: current flows in their shields and is heard.
What to do: break the signal ground, with a transformer, a relay or an opto-coupler. Never lift, cut or tape a
protective earth: with a fault in the amp, strings and microphones become live, and that kills.
With an isolator on the ring whose ground lift is closed it is a warning: opening the lift is enough. Where every lead of the ring is
balanced at both ends, as between a desk and what it feeds, it is a remark: the current flows in the shields alone. Where a lead runs
straight from one earthed thing to another on the same mains strip, as in a rack, it is a warning: the earths differ by little, and
the ring is as small as the lead is laid.
Source: physics: a conducting ring through two earths; that a balanced input bears it, and a rack mostly, is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.ground.ground_systems import GroundSystems
from rigc.analysis.ground.ring_mends import ring_mends
from rigc.analysis.ground.ring_words import in_scenarios, ring_words
from rigc.analysis.ground.rings import Ring
from rigc.analysis.ground.where_to_break import all_balanced, one_strip, where_to_break
from rigc.analysis.leads.leads import Leads
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig
from rigc.model.ways.ground_link import GroundLink

KIND = Kind(
    "two-mains-earths",
    Level.ERROR,
    __doc__,
    "a joined ground system holds one mains earth in each scenario",
    "physics: a conducting ring through two earths",
)


def two_mains_earths(rig: Rig, grounds: GroundSystems, leads: Leads, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each ring through the mains earth; can't-check for each amp that may add one."""
    rings: dict[Ring, list[str]] = {}
    links: dict[Ring, tuple[GroundLink, ...]] = {}
    unsure: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    for state in grounds.states:
        for ring in state.rings:
            if ring.through_earth:
                rings.setdefault(ring, []).extend(state.scenarios)
                links.setdefault(ring, state.links)
        for system in state.systems:
            for name in system.unknown if len(system.earths) + len(system.unknown) > 1 else ():
                others = tuple(each for each in (*system.earths, *system.unknown) if each != name)
                unsure.setdefault((name, others), []).extend(state.scenarios)
    for ring, names in rings.items():
        yield _told(rig, leads, power, ring, names, links[ring])
    for (name, others), names in unsure.items():
        yield KIND.cant_check(
            rig.things[name].declared,
            f"'{name}' does not say whether it is earthed; it is joined with {listed(others)}{in_scenarios(rig, names)}",
            subject=(name, *others),
            help=f"write `earthed` or `double-insulated` in '{name}'",
        )


def _told(
    rig: Rig, leads: Leads, power: PowerAssignment, ring: Ring, names: list[str], links: tuple[GroundLink, ...]
) -> Diagnostic:
    where = in_scenarios(rig, names)
    run = next(link for link in reversed(ring.links) if link.kind != "earth")
    earths = [link for link in ring.links if link.kind == "earth"]
    whose = [pole[0] for link in reversed(earths) for pole in link.ends if pole[0] in ring.things]
    if ring.unsure is not None:
        return KIND.cant_check(
            run.span,
            f"{ring.unsure[0]}; two mains earths may be joined: {ring_words(ring)}{where}",
            subject=(*whose, *ring.marks),
            help=ring.unsure[1],
            wants=(ring.unsure[0],),
        )
    mends = ring_mends(rig, leads, power, ring, names)
    isolated = any(link.isolators for link in ring.links)
    balanced, strip = all_balanced(rig, leads, ring), one_strip(rig, ring)
    also = tuple(Label(link.span, "earthed") for link in reversed(earths) if link.span is not None)
    on_strip = f", both on '{strip}'" if strip else ""
    return KIND.at(
        run.span,
        f"two mains earths are joined: {ring_words(ring)}{on_strip}{where}",
        subject=(*whose, *ring.marks),
        label="this closes the ring",
        also=also,
        mends=mends,
        help=where_to_break(rig, leads, ring, links, beside_edits=bool(mends)),
        level=Level.REMARK if balanced else Level.WARNING if isolated or strip else None,
    )


CHECK = two_mains_earths
