"""Two boards -> the numbered changes of one deck that an overlay shows: bodies, panel jacks, holes, ways of leads."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import chain, product
from string import ascii_lowercase

from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.leads.leads import Leads
from rigc.analysis.results import Results
from rigc.analysis.revision.plan.leads.plan import NEW, REMAKE, UNTOLD, LeadPlan
from rigc.analysis.revision.plan.of_changes import ChangeLedger
from rigc.analysis.revision.plan.successors import successors
from rigc.analysis.revision.rework import Rework
from rigc.analysis.routes.route_paths import RoutePaths
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.reports.drawings.deck.lead_ways import Way, ways
from rigc.reports.drawings.shapes import Point

_SAME_MM = 0.05


class Mark(Record):
    """One change: what it is called, what changed and how, from where to where in mm (None: was not there, or is gone).

    `label` is the number of the `change` of the rework plan that it belongs to, with a letter where that has several
    marks; a letter alone where no change names it, and a number of its own where the revision numbers none. `bodies` or `ways` hold the old and the new one of a thing or a lead, both None for a jack or a hole; `under`: it is
    seen from below.
    """

    label: str
    what: str
    change: str
    old: Point | None
    new: Point | None
    under: bool
    change_number: int | None = None
    bodies: tuple[Outline | None, Outline | None] = (None, None)
    ways: tuple[Way | None, Way | None] = (None, None)


def marks(before: Results, after: Results, deck: Deck) -> tuple[Mark, ...]:
    """Things first, then panel jacks and holes (told on the view from above), then leads by number."""
    old = before.rig.decks.get(deck.name)
    found = [
        *_things(before, after, deck),
        *_points("jack", _jacks(before.rig, deck), _jacks(after.rig, deck), _fitted(after, "jack")),
        *_points("hole", _holes(old), _holes(deck), _fitted(after, "hole")),
        *_leads(before, after, deck),
    ]
    if not after.rig.head.changes:
        return tuple(mark.replace(label=str(number)) for number, mark in enumerate(found, 1))
    return tuple(_labelled(found))


def _labelled(found: list[Mark]) -> Iterator[Mark]:
    """`2` for the only mark of change 2, else `2a`, `2b`."""
    of = Counter(mark.change_number for mark in found)
    letters = {number: _letters() for number in of}
    for mark in found:
        number = mark.change_number
        lone = number is not None and of[number] == 1
        yield mark.replace(label=f"{number or ''}{'' if lone else next(letters[number])}")


def _letters() -> Iterator[str]:
    """a to z, then aa to zz."""
    return map("".join, chain(product(ascii_lowercase), product(ascii_lowercase, repeat=2)))


def _things(before: Results, after: Results, deck: Deck) -> list[Mark]:
    old, new = _bodies(before, deck), _bodies(after, deck)
    gone, come = tuple(name for name in old if name not in new), tuple(name for name in new if name not in old)
    heirs = successors(before.rig, after.rig, gone, come).units
    ledger = ChangeLedger(after.rig.head.changes, frozenset())
    found = []
    for name, body in new.items():
        was = next((left for left, heir in heirs.items() if heir == name), None)
        if was is not None:
            found.append(_body(f"{was}, {name}", f"'{name}' in the place of '{was}'", old[was], body))
        elif name not in old:
            found.append(_body(name, "new", None, body))
        elif words := _moved(before.rig, after.rig, old[name], body):
            found.append(_body(name, words, old[name], body))
    found += [_body(name, "gone", old[name], None) for name in gone if name not in heirs]
    return [mark.replace(change_number=ledger.of((mark.what.rpartition(", ")[2],))["change"]) for mark in found]


def _bodies(results: Results, deck: Deck) -> dict[str, Outline]:
    return {name: body for name, body in results.get(Placement).outlines.items() if body.deck == deck.name}


def _body(what: str, change: str, old: Outline | None, new: Outline | None) -> Mark:
    seen = new or old
    here, there = (None if body is None else (body.x_mm, body.y_mm) for body in (old, new))
    return Mark("", what, change, here, there, seen is not None and seen.under, bodies=(old, new))


def _moved(before: Rig, after: Rig, old: Outline, new: Outline) -> str:
    """What differs in where and how a thing stands, in words; empty if nothing does."""
    found = []
    if old.under != new.under:
        found.append("now below the deck" if new.under else "now on top")
    if not _near((old.x_mm, old.y_mm), (new.x_mm, new.y_mm)):
        found.append("moved")
    one, other = before.places[old.thing], after.places[new.thing]
    angles = [place.turned + place.skew_deg for place in (one, other)]
    if abs(angles[0] - angles[1]) > _SAME_MM:
        found.append(f"turned from {angles[0]:g}° to {angles[1]:g}°")
    elif not _near((old.width_mm, old.depth_mm), (new.width_mm, new.depth_mm)):
        found.append(f"{old.width_mm:g} x {old.depth_mm:g} mm is now {new.width_mm:g} x {new.depth_mm:g} mm")
    if one.tier != other.tier:
        found.append(f"now on tier {other.tier}" if other.tier else f"no longer on tier {one.tier}")
    return ", ".join(found)


def _fitted(after: Results, kind: str) -> dict[str, int | None]:
    """The numbers of the changes of panel jacks by name, or of holes by diameter and purpose."""
    fittings = (plan for plan in after.get(Rework).fittings if plan.kind == kind)
    return {plan.name.replace(" mm for ", " mm "): plan.change for plan in fittings}


def _points(what: str, old: dict[str, Point], new: dict[str, Point], numbers: dict[str, int | None]) -> list[Mark]:
    found = []
    for name in dict.fromkeys((*new, *old)):
        here, there = old.get(name), new.get(name)
        if here is None or there is None or not _near(here, there):
            change = "new" if here is None else "gone" if there is None else "moved"
            number = numbers.get(name.partition(" #")[0])
            found.append(Mark("", f"{what} {name}", change, here, there, False, number))
    return found


def _jacks(rig: Rig, deck: Deck) -> dict[str, Point]:
    first = None if rig.deck is None else rig.deck.name
    panels = [panel for panel in rig.panels.values() if (panel.deck or first) == deck.name]
    return {f"{panel.name}.{jack.name}": (jack.x_mm, jack.y_mm) for panel in panels for jack in panel.jacks}


def _holes(deck: Deck | None) -> dict[str, Point]:
    """By diameter and purpose, those alike by their order."""
    found: dict[str, Point] = {}
    for hole in () if deck is None else deck.holes:
        name = f"{hole.diameter_mm:g} mm {hole.purpose}".strip()
        count = sum(each.split(" #")[0] == name for each in found)
        found[f"{name} #{count + 1}" if count else name] = (hole.x_mm, hole.y_mm)
    return found


def _leads(before: Results, after: Results, deck: Deck) -> list[Mark]:
    """Leads that a hand lays otherwise: a shift that the slack takes up is none."""
    old, new = ({way.mark: way for way in _ways(results, deck)} for results in (before, after))
    plans = after.get(Rework).leads
    ends = [{lead.mark: f"{lead.start} -> {lead.end}" for lead in each.get(Leads).all} for each in (before, after)]
    anew = {plan.mark for plan in plans if plan.verdict == REMAKE}
    found = []
    for plan in plans:
        if not _laid(plan) or (plan.after is None and plan.mark in anew):
            continue
        was, now = old.get(plan.mark if plan.before is None else plan.before.mark), new.get(plan.mark)
        was, now = (None if plan.verdict == NEW else was), (None if plan.after is None else now)
        seen = now or was
        if seen is None:
            continue
        moved = None if was is None or now is None else _moved_end(was, now)
        here, then = moved or (None, None)
        told = f"{_change(plan)}: {'; before: '.join(reversed(_between(ends, plan)))}"
        found.append(Mark("", f"lead {plan.mark}", told, here, then, seen.under, plan.change, ways=(was, now)))
    return found


def _laid(plan: LeadPlan) -> bool:
    ends = bool(plan.moved or plan.swapped or plan.adaptor)
    return plan.after is None or plan.verdict in (NEW, REMAKE, UNTOLD) or plan.dressed or plan.spare or ends


def _change(plan: LeadPlan) -> str:
    if plan.after is None:
        return "gone"
    if plan.verdict in (NEW, REMAKE):
        return "new" if plan.verdict == NEW else "made anew"
    return "another end" if plan.moved or plan.swapped or plan.adaptor else "another way"


def _between(ends: list[dict[str, str]], plan: LeadPlan) -> list[str]:
    """The two jacks of the lead as it was and as it is, once where they are the same."""
    was = None if plan.verdict == NEW else ends[0].get(plan.mark if plan.before is None else plan.before.mark)
    now = None if plan.after is None else ends[1].get(plan.mark)
    return list(dict.fromkeys(filter(None, (was, now))))


def _ways(results: Results, deck: Deck) -> tuple[Way, ...]:
    return ways(results.get(Leads), results.get(RoutePaths), results.get(Placement), deck.name)


def _moved_end(one: Way, other: Way) -> tuple[Point, Point] | None:
    """Where the end that moves was and is; None where both ends stay or both move."""
    pairs = [((a.x_mm, a.y_mm), (b.x_mm, b.y_mm)) for a, b in zip(one.jacks, other.jacks, strict=True)]
    moved = [pair for pair in pairs if not _near(*pair)]
    return moved[0] if len(moved) == 1 else None


def _near(one: Point, other: Point) -> bool:
    return all(abs(here - there) < _SAME_MM for here, there in zip(one, other, strict=True))
