"""Rework -> what the player will notice: units, places under the foot, loops and chains, presets and songs."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.deck.foot_spots import FootSpot, foot_spots
from rigc.analysis.deck.placement import Placement
from rigc.analysis.previous import Previous
from rigc.analysis.results import Results
from rigc.analysis.revision.plan.plan_records import UnitPlan
from rigc.analysis.revision.plan.program_plans import changed_loops
from rigc.analysis.revision.plan.successors import stated
from rigc.analysis.revision.rework import Rework
from rigc.diagnostics.figures import short
from rigc.model.rig import Rig
from rigc.reports.content import Paragraph

_LEAST_MM = 1.0
_WANTED = 3  # so many facts are named


def player_notes(previous: Previous, old: Results, new: Results, rework: Rework) -> Paragraph:
    """One line a matter; that there is nothing to notice is said, too. `old` are the results of `previous`."""
    lines = [f"{then} is called {now} now." for now, then in previous.renamed]
    lines += [line for plan in rework.units if (line := _unit(new.rig, plan))]
    lines += _switches(old, new, rework) + _treadles(old, new, rework)
    lines += _loops(old.rig, new.rig, rework) + _chains(old.rig, new.rig, rework)
    lines += _programs(rework)
    return Paragraph("player", tuple(lines) or ("Nothing: it plays as before.",), heading="What the player will notice")


def _programs(rework: Rework) -> list[str]:
    """Presets and songs that are entered anew, and those that go."""
    told: dict[tuple[str, str], list[str]] = {}
    for plan in rework.programs:
        preset, gone = plan.number is not None, plan.after is None
        words = "gone" if gone else "entered anew, to be tried" if preset else "set otherwise"
        told.setdefault(("Preset" if preset else "Song", words), []).append(
            str(plan.number) if preset else f"'{plan.title}'"
        )
    return [f"{what}{'s' * (len(names) > 1)} {', '.join(names)}: {words}." for (what, words), names in told.items()]


def _unit(rig: Rig, plan: UnitPlan) -> str:
    if plan.name not in rig.units and plan.there_after:
        return ""
    if plan.replaces is not None:
        guess = "" if stated(rig, plan.replaces, plan.name) else " (a guess)"
        return f"{plan.name} stands in for {plan.replaces}{guess}: set its knobs."
    if plan.there_after and not plan.there_before:
        return f"{plan.name} is new."
    if plan.there_before and not plan.there_after and plan.replaced_by is None:
        return f"{plan.name} is gone."
    return ""


def _switches(old: Results, new: Results, rework: Rework) -> list[str]:
    """Switches of units that stay, or of successors, that are elsewhere, one line for all that went the same way;
    successors are compared one by one, in order."""
    heirs = {plan.replaces: plan.name for plan in rework.units if plan.replaces is not None}
    before = _by_thing(foot_spots(old.rig, old.get(Placement))[0], heirs)
    after = _by_thing(foot_spots(new.rig, new.get(Placement))[0], {})
    return [
        f"The switch{'es' * (len(things) > 1)} of {', '.join(things)}: {way}." for way, things in _ways(before, after)
    ]


def _treadles(old: Results, new: Results, rework: Rework) -> list[str]:
    """The same of treadles, by their front-left corners."""
    heirs = {plan.replaces: plan.name for plan in rework.units if plan.replaces is not None}
    ways = _ways(_by_thing(_treadle_spots(old), heirs), _by_thing(_treadle_spots(new), {}))
    return [f"The treadle{'s' * (len(things) > 1)} {', '.join(things)}: {way}." for way, things in ways]


def _treadle_spots(results: Results) -> list[FootSpot]:
    return [
        FootSpot(body.thing, "treadle", body.x_mm, body.y_mm, body.deck)
        for body in results.get(Placement).outlines.values()
        if not body.under and body.thing in results.rig.units and results.rig.units[body.thing].treadle_mm is not None
    ]


def _ways(before: dict[str, list[FootSpot]], after: dict[str, list[FootSpot]]) -> list[tuple[str, list[str]]]:
    """Each way that something went, with the things that did."""
    ways: dict[str, list[str]] = {}
    for thing, spots in after.items():
        for number, (was, now) in enumerate(zip(before.get(thing, ()), spots, strict=False), 1):
            way = _way(was, now)
            if way:
                ways.setdefault(way, []).append(f"{thing} ({number})" if len(spots) > 1 else thing)
    return list(ways.items())


def _by_thing(spots: Iterable[FootSpot], heirs: dict[str, str]) -> dict[str, list[FootSpot]]:
    found: dict[str, list[FootSpot]] = {}
    for spot in spots:
        found.setdefault(heirs.get(spot.thing, spot.thing), []).append(spot)
    return found


def _way(was: FootSpot, now: FootSpot) -> str:
    """Which way it went, as the player sees it: right, left, back, front."""
    if was.deck != now.deck:
        return f"now on {now.deck}"
    across, along = now.x_mm - was.x_mm, now.y_mm - was.y_mm
    parts = [f"{short(abs(across))} mm to the {'right' if across > 0 else 'left'}"] if abs(across) >= _LEAST_MM else []
    parts += [f"{short(abs(along))} mm {'back' if along > 0 else 'nearer'}"] if abs(along) >= _LEAST_MM else []
    return " and ".join(parts)


def _loops(old: Rig, new: Rig, rework: Rework) -> list[str]:
    heirs = {plan.replaces: plan.name for plan in rework.units if plan.replaces is not None}
    return [
        f"Loop {number} of {switcher}: {' + '.join(before) or 'nothing'} → {' + '.join(after) or 'nothing'}."
        for (switcher, number), (before, after) in changed_loops(old, new).items()
        if tuple(heirs.get(name, name) for name in before) != after
    ]


def _chains(old: Rig, new: Rig, rework: Rework) -> list[str]:
    """Chains whose stops are others, and those that go; a successor in the place of another unit is told above."""
    heirs = {plan.replaces: plan.name for plan in rework.units if plan.replaces is not None}
    before = {chain.name: [heirs.get(stop.thing, stop.thing) for stop in chain.stops] for chain in old.chains}
    after = {chain.name: [stop.thing for stop in chain.stops] for chain in new.chains}
    return [
        *(
            f"Chain {name or 'of the rig'}: now {' → '.join(stops)}."
            for name, stops in after.items()
            if stops != before.get(name)
        ),
        *(f"Chain {name}: gone." for name in before if name and name not in after),
    ]


def mass_line(rework: Rework) -> str:
    """The board before and after, or for want of what that is not known; empty where nothing is done."""
    before, after = rework.mass_kg
    if before is None or after is None:
        wanted = list(rework.unweighed)
        if len(wanted) > _WANTED + 1:
            wanted[_WANTED:] = [f"and {len(wanted) - _WANTED} facts more"]
        return f"Mass: not known, for want of {', '.join(wanted)}." if rework.steps else ""
    unweighed = [each.mark for each in rework.adaptors]
    without = f" ({', '.join(unweighed)} not weighed)" if unweighed else ""
    return f"Board without case {before:.2f} → {after:.2f} kg{without}."
