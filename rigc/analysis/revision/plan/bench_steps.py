"""The pieces of a rework -> the steps at the bench, in the order in which a board is put together: what can be made
beforehand, power off, out, settings, holes, strips, supplies, DC leads (tested before they go in), audio leads, units from the rear
row forwards, control and MIDI, labels, ties, programs, tests, and the bag for the way back. The order is common
practice, no source."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rigc.analysis.revision.board import BoardPlace
from rigc.analysis.revision.plan.bench_phases import (
    BAG,
    BEFORE,
    DEAD,
    LABELS,
    MOUNT,
    OFF,
    OUT,
    POWER,
    PROGRAMS,
    SEATS,
    STRIPS,
    SUPPLIES,
    TESTS,
)
from rigc.analysis.revision.plan.fitting_plans import exchanged_decks
from rigc.analysis.revision.plan.fitting_steps import fitting_steps
from rigc.analysis.revision.plan.leads.steps import lead_steps
from rigc.analysis.revision.plan.plan_records import THROWN, Piece, Step
from rigc.analysis.revision.plan.rework_pieces import Pieces
from rigc.facts.rework import MINUTES

MAINS, AT_PLUG, HEAT = (1, 2), 5, 19
"""The tests that are made before the mains lead goes in, the one before a DC plug goes into its unit, and the one that is waiting,
not work."""


def bench_steps(pieces: Pieces) -> tuple[Step, ...]:
    """All steps; things with the same step of one change stand together. None where nothing changes; the power stays on
    where only programs are entered, labels exchanged or readings taken."""
    found = [*_leads(pieces), *_units(pieces), *_strips(pieces), *_power(pieces), *_rest(pieces)]
    if not found:
        return ()
    away = [
        step for step in found if step.phase == OUT and step.action in ("pull out", "clear deck") and step.end != THROWN
    ]
    away += [step for plan in pieces.units if not plan.there_after for step in _told(plan, Step(OUT, "take off", ()))]
    gone = (plan for plan in pieces.fittings if plan.kind == "jack" and plan.before and not plan.after)
    away += [step for plan in gone for step in _told(plan, Step(OUT, "take out", ()))]
    dead = [step for step in found if step.phase in DEAD]
    if dead:
        found.append(Step(OFF, "power off", (), done=all(step.done for step in dead)))
    if away:
        found.append(Step(BAG, "bag", (), done=all(step.done for step in away)))
    return tuple(_together(_in_order(found, pieces)))


def minutes(steps: Iterable[Step], beforehand: bool) -> float:
    """The work that is not done yet: beforehand, or on the board."""
    return sum(step.minutes for step in steps if not step.done and (step.phase == BEFORE) is beforehand)


def _in_order(steps: list[Step], pieces: Pieces) -> list[Step]:
    """By phase; units from the rear row forwards, each plugged in before the next one covers it; in a phase as the
    facts list the actions."""
    actions = list(MINUTES)
    rows = {plan.name: -plan.after.y_mm for plan in pieces.units if plan.after is not None}
    for each in pieces.adaptors:
        if each.after is not None:
            rows[each.mark] = min((rows[name] for name in each.after.units if name in rows), default=1.0)

    def key(step: Step) -> tuple[int, float, str, bool, int]:
        rank = actions.index(step.action)
        if step.phase != MOUNT:
            return step.phase, 0.0, "", False, rank
        thing = step.what[0] if step.action == "mount" else step.end
        return step.phase, rows.get(thing, 1.0), thing, step.action != "mount", rank

    return sorted(steps, key=key)


def _together(steps: list[Step]) -> Iterator[Step]:
    groups: dict[tuple[object, ...], list[Step]] = {}
    for each in steps:
        groups.setdefault((each.phase, each.action, each.start, each.end, each.change, each.done), []).append(each)
    for group in groups.values():
        what = tuple(dict.fromkeys(name for each in group for name in each.what))
        times = max(1, sum(len(each.what) for each in group))
        together: Step = group[0].replace(what=what, minutes=times * MINUTES[group[0].action].value)
        yield together


def _told(piece: Piece, *steps: Step) -> Iterator[Step]:
    return (step.replace(change=piece.change, done=piece.done) for step in steps)


def _leads(pieces: Pieces) -> Iterator[Step]:
    for plan in pieces.leads:
        yield from _told(plan, *lead_steps(plan, pieces))
    for label in pieces.labels:
        beside = label.mark if label.end is None else f"{label.mark} {'AB'[label.end]}"
        if label.text:
            yield from _told(label, Step(BEFORE, "print", (beside,)))
        if label.text and label.destroy:
            yield from _told(label, Step(LABELS, "label", (beside,)))


def _units(pieces: Pieces) -> Iterator[Step]:
    exchanged = exchanged_decks(pieces.fittings)
    for plan in pieces.units:
        if plan.there_before and not plan.there_after and plan.name in pieces.corded:
            yield from _told(plan, Step(OUT, "pull out", (f"the mains lead of {plan.name}",)))
        if plan.there_before and (plan.before is not None or not plan.there_after):
            yield from _told(plan, Step(OUT, "take off", (plan.name,), where(plan.before)))
        if plan.there_after and (plan.after is not None or not plan.there_before):
            if plan.fixing and (plan.before != plan.after or plan.refixed or _deck(plan.after) in exchanged):
                yield from _told(plan, Step(STRIPS, "drill for it", (plan.name,), "", _HELD[plan.fixing]))
            held = f", {_HELD[plan.fixing]}" if plan.refixed and plan.fixing else ""
            phase = SEATS if plan.name in pieces.supply_names else MOUNT
            yield from _told(plan, Step(phase, "mount", (plan.name,), where(plan.before), where(plan.after) + held))


_HELD = {"bolted": "bolted", "screwed": "screwed", "brackets": "in brackets"}


def _deck(place: BoardPlace | None) -> str | None:
    return None if place is None else place.deck


def where(place: BoardPlace | None) -> str:
    """A place in words; empty for none."""
    if place is None:
        return ""
    turn = place.turned + place.skew_deg
    turned = f" turned {turn:g}°" if turn else ""
    return f"{'under ' if place.under else ''}{place.x_mm:g}, {place.y_mm:g} mm{turned}"


def _strips(pieces: Pieces) -> Iterator[Step]:
    for plan in pieces.strips:
        if plan.before is not None and plan.on_unit and plan.stays and plan.before.pieces:
            yield from _told(plan, Step(OUT, "peel base", (plan.unit,)))
        if plan.before is not None and plan.on_deck and plan.peel and plan.before.deck_pieces:
            yield from _told(plan, Step(OUT, "peel", (plan.unit,)))
        if plan.after is not None and plan.on_unit:
            yield from _told(plan, Step(STRIPS if plan.stays else BEFORE, "strip base", (plan.unit,)))
        if plan.after is not None and plan.on_deck and plan.after.deck_pieces:
            yield from _told(plan, Step(STRIPS, "strip deck", (plan.unit,)))


def _power(pieces: Pieces) -> Iterator[Step]:
    for plan in pieces.outlets:
        if plan.set_otherwise:
            before = "" if plan.before.volts is None else f"{plan.before.volts:g} V"
            yield from _told(plan, Step(SUPPLIES, "set volts", (str(plan.outlet),), before, f"{plan.after.volts:g} V"))
    for each in pieces.adaptors:
        if each.before is not None and each.after is not None and each.before.units == each.after.units:
            continue  # where its leads come from another outlet, those tell of it
        if each.before is not None:
            yield from _told(each, Step(OUT, "unplug", (each.mark,), " + ".join(each.before.units)))
        if each.after is not None:
            yield from _told(each, Step(MOUNT, "plug in", (each.mark,), "", " + ".join(each.after.units)))


def _rest(pieces: Pieces) -> Iterator[Step]:
    for program in pieces.programs:
        name = f"preset {program.number}" if program.number is not None else f"song '{program.title}'"
        yield from _told(program, Step(PROGRAMS, "clear" if program.after is None else "enter", (name,)))
    for channel in pieces.channels:
        if channel.after is not None:
            was = "" if channel.before is None else f"channel {channel.before}"
            yield from _told(channel, Step(PROGRAMS, "enter", (channel.unit,), was, f"channel {channel.after}"))
    for spare in pieces.spares:
        yield from _told(spare, Step(BAG, "pack", (spare.what,), str(spare.before), str(spare.after)))
    for fitting in pieces.fittings:
        yield from _told(fitting, *fitting_steps(fitting))
    for test in (each for each in pieces.retests if each.test != HEAT):
        action = "measure" if test.test == AT_PLUG else "mains test" if test.test in MAINS else "test"
        for point in test.points:
            yield Step(TESTS if action == "test" else POWER, action, (f"{test.test} at {point}",))
