"""A board in its case is heavier than one person lifts, or than a limit that the source declares.

Why it matters: a back is hurt, or the case stays at the airport.
What to do: two people lift it, and the mass stands on the case; or take out what need not fly. Airline limits are the carrier's.
Source: arithmetic on stated masses; {weight.ONE_LIFTER_KG} for one lifter is the load constant of the NIOSH lifting equation (publication
94-110), which holds under ideal conditions; common practice for the rest.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.weight.case_loads import CaseLoad, CaseLoads, Margin
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.wanted import how_to_state
from rigc.diagnostics.wording import listed
from rigc.facts.weight import ONE_LIFTER_KG
from rigc.model.records import Limit
from rigc.model.rig import Rig
from rigc.source import Span

KIND = Kind(
    "too-heavy",
    Level.WARNING,
    __doc__,
    f"case + board ≤ {ONE_LIFTER_KG} for one lifter (or the lift limit declared), and ≤ each limit declared",
    f"arithmetic on stated masses; {ONE_LIFTER_KG} from NIOSH publication 94-110",
)
_FIRST = 3  # so many missing facts fit into one line


def too_heavy(rig: Rig, loads: CaseLoads) -> Iterator[Diagnostic]:
    """One finding for each case, with all limits that it passes; a can't-check where unknown masses could pass one, or nobody
    says which case holds which deck."""
    if not rig.places:
        return
    if loads.unclear:
        yield _unclear(rig, loads.unclear)
    for load in loads.all:
        yield from _judged(rig, load)


def _unclear(rig: Rig, cases: tuple[str, ...]) -> Diagnostic:
    return KIND.cant_check(
        rig.cases[cases[0]].declared,
        f"can't tell whether a case is too heavy: {listed(cases)} don't say which deck they hold",
        subject=cases,
        help=f"write into the block of each case what travels in it, for example `holds {next(iter(rig.decks))}`",
    )


def _judged(rig: Rig, load: CaseLoad) -> Iterator[Diagnostic]:
    passed = tuple(margin for margin in load.margins if margin.passed)
    if passed:
        yield _told(rig, load, passed)
    elif load.mass.missing:
        yield _unknown(rig, load)


def _unknown(rig: Rig, load: CaseLoad) -> Diagnostic:
    """One finding for all that is not weighed: the first few in its line, every thing where it is declared."""
    mass = load.mass
    missing, owners = mass.missing, {**rig.things, **rig.decks, **rig.cases}
    more = f" and {len(missing) - _FIRST} more" if len(missing) > _FIRST else ""
    things = [owners[item.name] for item in (*mass.items, *mass.cases) if item.kg is None and item.name in owners]
    return KIND.at(
        _span(rig, load),
        f"can't tell whether '{load.name}' is too heavy: {', '.join(missing[:_FIRST])}{more} "
        f"{'are' if len(missing) > 1 or missing[0].startswith('the strips') else 'is'} not known",
        subject=(load.name,),
        also=tuple(Label(thing.declared, "not weighed") for thing in things) if more else (),
        help=how_to_state(missing[0]),
        wants=tuple(missing),
        asks_for=tuple(missing),
        level=Level.CANT_CHECK,
    )


def _told(rig: Rig, load: CaseLoad, passed: tuple[Margin, ...]) -> Diagnostic:
    mass = load.mass
    cases = f" with {listed(load.decks)} in it" if load.name == load.case else " in its case" if mass.cases else ""
    least = "at least " if mass.missing else ""
    over = " and ".join(f"{each.most.text} kg for {each.limit.whose}" for each in passed)
    declared = [each.limit.stated for each in passed if each.limit.stated is not None]
    return KIND.at(
        _span(rig, load),
        f"'{load.name}' weighs {least}{mass.known_kg.text} kg{cases}, over {over}",
        subject=(load.name, *(each.limit.name for each in passed)),
        label="this rig" if load.name == rig.head.name else "this case",
        also=tuple(Label(each.amount.span, _source(each)) for each in declared),
        numbers=(
            Number("mass", round(mass.known_kg, 3), "kg"),
            *(Number(f"limit of {each.limit.whose}", each.most, "kg") for each in passed),
        ),
        help=_relief(rig, load, passed),
    )


def _span(rig: Rig, load: CaseLoad) -> Span:
    if load.name == rig.head.name:
        return rig.head.span
    return (rig.cases[load.case] if load.case is not None else rig.decks[load.name]).declared


def _source(limit: Limit) -> str:
    return f"declared here: {limit.source}" if limit.source else "declared here"


def _relief(rig: Rig, load: CaseLoad, passed: tuple[Margin, ...]) -> str:
    loose = (item for item in load.mass.items if item.name in rig.things)
    heaviest = max(loose, key=lambda item: item.kg or 0.0, default=None)
    excess = -min(each.left for each in passed)
    lift = "two people lift it, and the mass stands on the case"
    if [each.limit.name for each in passed] == ["lift"] or heaviest is None:
        return lift
    return f"{lift}; to come under all limits, {excess:.3f} kg must travel apart (the heaviest is '{heaviest.name}')"


CHECK = too_heavy
