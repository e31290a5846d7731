"""Leads of power that begin at other outlets than the power block says: of one statement, or exchanged among each other."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import joined
from rigc.model.resolve.wishes.loose.loose_lead import Caused, Joints, Left, LooseLead, by, carrying
from rigc.model.scope import LOOSE_LEAD
from rigc.model.wishes import Feed


def moved_together(left: Left, joints: Joints) -> Caused:
    """One finding for each statement that feeds units from another outlet than their leads, two or more, begin at."""
    for leads, feed in _moved_together(carrying("power", left), joints.power.feeds):
        yield leads, _other_outlet(leads, feed)


def exchanged(left: Left, joints: Joints) -> Caused:
    """One finding for all units whose outlets are exchanged among each other."""
    if turned := _exchanged(carrying("power", left), joints.power.feeds_of):
        yield [lead for lead, _ in turned], _other_outlets(turned)


def _moved_together(leads: Sequence[LooseLead], feeds: Iterable[Feed]) -> Iterator[tuple[list[LooseLead], Feed]]:
    """The leads, two or more, of units that one statement feeds from another outlet than these begin at."""
    ending = by(leads, lambda lead: (lead.end.thing,))
    gone = set[str]()
    for feed in feeds:
        moved = [
            lead for unit in feed.units for lead in ending.get(unit, ()) if lead.mark not in gone and _moved(lead, feed)
        ]
        if len(moved) > 1:
            gone.update(lead.mark for lead in moved)
            yield moved, feed


def _other_outlet(leads: Sequence[LooseLead], feed: Feed) -> Diagnostic:
    marks, (outlet,) = [each.mark for each in leads], feed.outlets
    lines = joined(f"`{each.mark} {outlet} -> {each.end}`" for each in leads)
    starts = dict.fromkeys(str(each.start) for each in leads)
    return LOOSE_LEAD.at(
        leads[0].span,
        f"{joined(marks)} go from {joined(starts)} to {joined(each.end.thing for each in leads)}, and the power block feeds these from {outlet}",
        subject=(*marks, *(each.end.thing for each in leads), str(outlet)),
        label="the first of them",
        also=(Label(feed.span, "they are fed so"),),
        mends=(Mend(f"write {lines}", tuple(Replace(each.ends[0], str(outlet)) for each in leads)),),
        help="correct the power block if the leads are right",
    )


def _exchanged(leads: Sequence[LooseLead], feeding: Mapping[str, Sequence[Feed]]) -> list[tuple[LooseLead, Feed]]:
    """The leads, two or more, of units that the power block feeds each from an outlet at which another one of them begins."""
    found = [(lead, feed) for lead in leads for feed in feeding.get(lead.end.thing, ()) if _moved(lead, feed)]
    while True:
        starts = {lead.start for lead, _ in found}
        among = [(lead, feed) for lead, feed in found if feed.outlets[0] in starts]
        if len(among) == len(found):
            return found if len(found) > 1 else []
        found = among


def _other_outlets(turned: Sequence[tuple[LooseLead, Feed]]) -> Diagnostic:
    leads = [lead for lead, _ in turned]
    marks = [lead.mark for lead in leads]
    lines = joined(f"`{lead.mark} {feed.outlets[0]} -> {lead.end}`" for lead, feed in turned)
    return LOOSE_LEAD.at(
        leads[0].span,
        f"{joined(marks)} go from {joined(each.start for each in leads)} to {joined(each.end.thing for each in leads)}; the power block feeds "
        f"these from {joined(feed.outlets[0] for _, feed in turned)}",
        subject=(*marks, *(each.end.thing for each in leads)),
        label="the first of them",
        also=tuple(Label(feed.span, f"'{lead.end.thing}' is fed so") for lead, feed in turned[:3]),
        mends=(Mend(f"write {lines}", tuple(Replace(lead.ends[0], str(feed.outlets[0])) for lead, feed in turned)),),
        help="exchange the outlets in the power block if the leads are right",
    )


def _moved(lead: LooseLead, feed: Feed) -> bool:
    """Whether a lead from one outlet goes to a unit that this statement feeds from another one."""
    return lead.end.thing in feed.units and len(feed.outlets) == 1 and lead.start not in feed.outlets
