"""The rig -> what is done at the bench to build it from nothing, in order, and how long it takes: `build.make`, `build.tests-leads`,
`rig.build` for all of it, and `rig.work-price` for what it costs."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.control.switch_settings import GROUND_LIFT, SELECTOR, SwitchSettings
from rigc.analysis.deck.placement import Placement
from rigc.analysis.leads.labels import Labels
from rigc.analysis.leads.lead_status import status
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.analysis.mounting.mounting_strip import MountingStrip
from rigc.analysis.routes.deck_holes import PASSAGE, STATED, DeckHole, DeckHoles
from rigc.analysis.tests.due_tests import Due, DueTests
from rigc.facts.rework import MINUTES
from rigc.model.fact import Choice
from rigc.model.money import amount_and_currency
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.given import ours, price
from rigc.traced.means import total
from rigc.traced.reason import ARITHMETIC, PRACTICE
from rigc.traced.units import MINUTES as IN_MINUTES
from rigc.traced.units import money

LEADS, MAINS, PLUGS = (3, 4, 20), (1, 2), (5, 8)
"""The tests that are made of a lead before it is laid, before the mains lead goes in for the first time, and before a plug goes into
a unit; all others come last."""


class BuildStep(Record):
    """One step: its `action` (a key of `facts.rework.MINUTES`, or `tests-...`), to `what` it is done, how many `times`, and how long
    that takes in all."""

    action: str
    what: tuple[str, ...]
    times: int
    minutes: Figure


class BuildWork(Record):
    """The steps in the order of the bench, and their sum in minutes of one hand that knows such boards; what that costs at the rate that
    the rig states, None where it states none."""

    steps: tuple[BuildStep, ...]
    minutes: Figure
    price: Figure | None


def build_work(
    rig: Rig,
    leads: Leads,
    placement: Placement,
    strips: MountingStrip,
    settings: SwitchSettings,
    due: DueTests,
    holes: DeckHoles,
    labels: Labels,
    specials: SpecialLeads,
) -> BuildWork:
    """Drilled are the holes of the hole schedule, but for those of panel jacks, which are set, and of feet, which a deck has; and those
    that hold what is bolted, screwed or in brackets, thing by thing, however many it has. What joins two decks is laid on neither. Waiting is not counted."""
    steps = tuple(
        _step(action, what, count)
        for action, what, count in _work(rig, leads, placement, strips, settings, due, holes, labels, specials)
        if count
    )
    rule = "each thing that is done, by how often it is done; waiting for strip to hold is not counted"
    whole = known_figure("rig.build", total(each.minutes for each in steps), IN_MINUTES, rule=rule, source=PRACTICE)
    return BuildWork(steps, whole, None if rig.head.rate is None else _price(whole, rig.head.rate))


def _price(minutes: Figure, rate: Choice) -> Figure:
    _, currency = amount_and_currency(rate)
    each = price("what an hour at the bench costs", rate)
    return known_figure("rig.work-price", minutes / 60 * each, money(currency), rule="hours × rate", source=ARITHMETIC)


def _step(action: str, what: tuple[str, ...], times: int) -> BuildStep:
    each = MINUTES["test" if action.startswith("tests-") else action]
    name = f"build.{action.replace(' ', '-')}"
    told = known_figure(name, ours(each) * times, IN_MINUTES, rule=each.says, source=each.source)
    return BuildStep(action, what, times, told)


def _work(
    rig: Rig,
    leads: Leads,
    placement: Placement,
    strips: MountingStrip,
    settings: SwitchSettings,
    due: DueTests,
    deck_holes: DeckHoles,
    labels: Labels,
    specials: SpecialLeads,
) -> Iterator[tuple[str, tuple[str, ...], int]]:
    holes = {name: _drilled(deck_holes.of(name)) for name in rig.decks}
    of_decks = tuple(f"deck {name}: {count} hole{'s' * (count > 1)}" for name, count in holes.items() if count)
    yield "drill", of_decks, sum(holes.values())
    held = tuple(name for name in placement.outlines if rig.mounting.fixing_of(name))
    yield "drill for it", held, len(held)
    jacks = tuple(f"{panel.name}.{jack.name}" for panel in rig.panels.values() for jack in panel.jacks)
    yield "set jack", jacks, len(jacks)
    own = tuple(lead for lead in leads.all if not lead.stage)
    markers = labels.markers | {each.mark: each.markers for each in specials.all if each.markers is not None}
    yield "print", tuple(markers), sum(round(each) for each in markers.values())
    made = tuple(lead.mark for lead in own if status(rig, lead) == "make")
    yield "make", made, len(made)
    yield from _tests("leads", LEADS, due.all)
    stripped = tuple(each.thing for each in strips.units)
    yield "strip base", stripped, len(stripped)
    yield "strip deck", stripped, len(stripped)
    standing = tuple(placement.outlines)
    yield "mount", standing, len(standing)
    between = {mark for _, _, marks in rig.joins for mark in marks}
    laid = tuple(lead.mark for lead in own if lead.mark not in between)
    yield "fit", laid, len(laid)
    moved = [each for each in settings.all if each.new and each.new != each.position]
    selectors = tuple(dict.fromkeys(each.at for each in moved if each.switch == SELECTOR))
    lifts = tuple(dict.fromkeys(each.at for each in moved if each.switch == GROUND_LIFT))
    outlets = tuple(dict.fromkeys(each.at for each in moved if each.switch not in (SELECTOR, GROUND_LIFT)))
    yield "set volts", outlets, len(outlets)
    yield "set lift", lifts, len(lifts)
    yield "set selector", selectors, len(selectors)
    yield from _tests("mains", MAINS, due.all)
    yield from _tests("plugs", PLUGS, due.all)
    yield "plug in", tuple(lead.mark for lead in own), _plugged(rig, own)
    last = tuple(dict.fromkeys(each.test for each in due.all if each.test not in (*LEADS, *MAINS, *PLUGS)))
    yield from _tests("whole", last, due.all)


def _drilled(holes: tuple[DeckHole, ...]) -> int:
    return sum(hole.kind in (STATED, PASSAGE) and not hole.open for hole in holes)


def _plugged(rig: Rig, leads: tuple[Lead, ...]) -> int:
    """How many plugs go in: none where an end is soldered, or grows out of its unit; a Y lead's at its outlet is one."""
    return len(
        {
            (lead.leg_of or lead.mark, port)
            for lead in leads
            for port, kind in zip((lead.start, lead.end), lead.ends, strict=True)
            if not _soldered(rig, kind) and not (lead.captive and kind is None)
        }
    )


def _soldered(rig: Rig, kind: str | None) -> bool:
    plug = rig.stock.plugs.get(kind or "")
    return plug is not None and plug.soldered


def _tests(name: str, numbers: tuple[int, ...], due: tuple[Due, ...]) -> Iterator[tuple[str, tuple[str, ...], int]]:
    made = [each for each in due if each.test in numbers]
    yield f"tests-{name}", tuple(f"test {number}" for number in dict.fromkeys(each.test for each in made)), len(made)


COMPUTE = build_work
