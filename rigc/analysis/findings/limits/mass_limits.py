"""What is carried, how it is held and where it balances, each with its limit."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.feet import told_feet
from rigc.analysis.findings.limits.judged import Judged
from rigc.analysis.mounting.mounting_strip import MountingStrip
from rigc.analysis.weight.case_loads import CaseLoads
from rigc.analysis.weight.mass import Mass
from rigc.model.rig import Rig
from rigc.traced.term import number


def masses(rig: Rig, loads: CaseLoads) -> Iterator[Judged]:
    """What each board weighs in its case: what one person lifts, and the limits that are declared."""
    for load in loads.all if rig.places else ():
        what = "the mass of the board in its case" if load.mass.cases else "the mass of the board"
        whose = f" of {load.name}" if len(loads.all) > 1 else ""
        for each in sorted(loads.limits, key=lambda one: one.most_kg):
            yield Judged(what + whose, load.mass.known_kg, each.most_kg, True, "kg")


def strips(strips: MountingStrip) -> Iterator[Judged]:
    """The strip engaged under each thing, as it is laid, by the area that holds it."""
    for unit in strips.units:
        engaged, needed = unit.engaged_cm2, unit.needed_cm2
        if not unit.bridged and unit.fixing is None and engaged is not None and needed is not None:
            what = f"the strip engaged under '{unit.thing}'"
            yield Judged(what, number(float(engaged)), needed, False, "cm²")


def balances(rig: Rig, mass: Mass) -> Iterator[Judged]:
    """How far inside each side of its feet each deck balances, in mm."""
    for balance in mass.balances:
        feet = told_feet(rig.decks[balance.deck])
        if feet is not None and balance.x_mm is not None and balance.y_mm is not None:
            for side, room in feet.inside(balance.x_mm, balance.y_mm).items():
                yield Judged(f"how far '{balance.deck}' balances inside its {side} feet", room, 0.0, False, "mm")
