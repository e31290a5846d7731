"""The board in its case is heavier than one person lifts, or than a limit that the source declares.

Why it matters: a back is hurt, or the case stays at the airport.
What to do: two people lift it, and the mass stands on the case; or take out what need not fly. Airline limits are the carrier's.
Source: arithmetic on stated masses; 23 kg for one lifter is the load constant of the NIOSH lifting equation (publication
94-110), which holds under ideal conditions; common practice for the rest.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.mass import Mass
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.facts import weight
from rigc.model.records import Limit
from rigc.model.rig import Rig

KIND = Kind(
    "too-heavy",
    Level.WARNING,
    __doc__,
    "case + board ≤ 23 kg for one lifter (or the lift limit declared), and ≤ each limit declared",
    "arithmetic on stated masses; 23 kg from NIOSH publication 94-110",
)
_FIRST = 3  # so many missing facts fit into one line
_NAMES = {"lift": "one lifter", "airline": "one airline piece", "case": "the case"}


def too_heavy(rig: Rig, mass: Mass) -> Iterator[Diagnostic]:
    """One finding with all limits that are passed; a can't-check where unknown masses could pass one."""
    if not rig.places:
        return
    limits = {name: found.amount.value for name in _NAMES if (found := rig.limit(name)) is not None}
    limits.setdefault("lift", weight.ONE_LIFTER_KG.value)
    known, missing = mass.known_kg, mass.missing
    passed = {name: limits[name] for name in _NAMES if name in limits and known > limits[name] + 1e-9}
    if passed:
        yield _told(rig, mass, passed)
    elif missing:
        yield _unknown(rig, mass)


def _unknown(rig: Rig, mass: Mass) -> Diagnostic:
    """One finding for all that is not weighed: the first few in its line, every thing where it is declared."""
    missing, owners = mass.missing, {**rig.things, **rig.decks, **rig.cases}
    more = f" and {len(missing) - _FIRST} more" if len(missing) > _FIRST else ""
    things = [owners[item.name] for item in (*mass.items, *mass.cases) if item.kg is None and item.name in owners]
    return KIND.at(
        rig.head.span,
        f"can't tell whether '{rig.head.name}' is too heavy: {', '.join(missing[:_FIRST])}{more} "
        f"{'is' if len(missing) == 1 else 'are'} not known",
        subject=(rig.head.name,),
        also=tuple(Label(thing.declared, "not weighed") for thing in things) if more else (),
        help=f"state {missing[0]}",
        wants=tuple(missing),
        level=Level.CANT_CHECK,
    )


def _told(rig: Rig, mass: Mass, passed: dict[str, float]) -> Diagnostic:
    known = mass.known_kg
    cases = " in its case" if mass.cases else ""
    least = "at least " if mass.missing else ""
    over = " and ".join(f"{limit:g} kg for {_NAMES[name]}" for name, limit in passed.items())
    declared = [found for name in passed if (found := rig.limit(name)) is not None]
    return KIND.at(
        rig.head.span,
        f"'{rig.head.name}' weighs {least}{known:.3f} kg{cases}, over {over}",
        subject=(rig.head.name, *passed),
        label="this rig",
        also=tuple(Label(each.amount.span, _source(each)) for each in declared),
        numbers=(
            Number("mass", round(known, 3), "kg"),
            *(Number(f"limit of {_NAMES[name]}", limit, "kg") for name, limit in passed.items()),
        ),
        help=_relief(rig, mass, passed),
    )


def _source(limit: Limit) -> str:
    return f"declared here: {limit.source}" if limit.source else "declared here"


def _relief(rig: Rig, mass: Mass, passed: dict[str, float]) -> str:
    loose = (item for item in mass.items if item.name in rig.things)
    heaviest = max(loose, key=lambda item: item.kg or 0.0, default=None)
    excess = mass.known_kg - min(passed.values())
    lift = "two people lift it, and the mass stands on the case"
    if set(passed) == {"lift"} or heaviest is None:
        return lift
    return f"{lift}; to come under all limits, {excess:.3f} kg must travel apart (the heaviest is '{heaviest.name}')"


CHECK = too_heavy
