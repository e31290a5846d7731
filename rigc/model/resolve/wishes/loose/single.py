"""One lead by itself, told with what does join its jacks."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Mend, Replace
from rigc.model.resolve.wishes.loose.loose_lead import Joints, LooseLead, feed_of, statement
from rigc.model.scope import LOOSE_LEAD
from rigc.model.wishes import Connection, Feed
from rigc.source import Span


def single(lead: LooseLead, joints: Joints) -> Diagnostic:
    """The finding of one lead."""
    also: tuple[Label, ...] = ()
    mends: tuple[Mend, ...] = ()
    turned = joints.connections.get((lead.end, lead.start))
    feed = next(iter(joints.power.feeds_of.get(lead.end.thing, ())), None)
    instead = _instead(lead, joints)
    if turned is not None:
        also = (Label(turned.span, "joined the other way round"),)
        help = ""
        start, end = lead.ends
        mends = (Mend("turn the two ends round", (Replace(start, end.text), Replace(end, start.text))),)
    elif lead.carries == "power" and feed is not None and lead.start not in feed.outlets:
        also = (Label(feed.span, f"'{lead.end.thing}' is fed so"),)
        mends = _of_feed(lead, feed)
        help = "" if mends else "correct the one that is wrong"
    elif lead.carries == "power" and feed is None:
        help = f"state it in the power block: {feed_of(lead)}"
    elif instead is not None:
        also = (Label(instead.span, f"{instead.start} to {instead.end} is joined here"),)
        mends = _as_joined(lead, instead)
        help = "" if len(mends) > 1 else f"if {lead.mark} is right, correct the {statement(instead)}"
    elif lead.carries in ("midi", "control"):
        help = f"state it in the {lead.carries} block: {lead.start} -> {lead.end}; or correct the lead's ends"
    else:
        help = "correct the lead's ends, or add the connection to a chain"
    return LOOSE_LEAD.at(
        lead.span,
        f"{lead.mark} joins {lead.start} to {lead.end}, but no other statement does",
        subject=(lead.mark, lead.start.thing, lead.end.thing),
        label="this lead",
        also=also,
        mends=mends,
        help=help,
    )


def _instead(lead: LooseLead, joints: Joints) -> Connection | None:
    """The one connection that lacks a lead and that this one may be meant to be: between the same things, else at one of its jacks."""
    begun, ended = joints.begun.get(lead.start.thing, ()), joints.ended.get(lead.end.thing, ())
    alike = [each for each in begun if each.end.thing == lead.end.thing]
    for fitting in (
        [each for each in alike if each.start == lead.start],
        [each for each in alike if each.end == lead.end],
        alike,
        [each for each in begun if each.start == lead.start],
        [each for each in ended if each.end == lead.end],
    ):
        if fitting:
            return fitting[0] if len(fitting) == 1 else None
    return None


def _as_joined(lead: LooseLead, joint: Connection) -> tuple[Mend, ...]:
    """The lead's ends as the connection has them; or, where these differ in the jack at which a hop arrives, that jack as the lead has it."""
    pairs = zip(lead.ends, (lead.start, lead.end), (joint.start, joint.end), strict=True)
    edits = tuple(Replace(at, str(joined_at)) for at, stated, joined_at in pairs if stated != joined_at)
    mends = [Mend(f"write `{lead.mark} {joint.start} -> {joint.end}`", edits)]
    if joint.signal == "audio" and joint.start == lead.start and joint.end.thing == lead.end.thing and not joint.stereo:
        mends.append(Mend(f"write `{lead.end}` in the {statement(joint)}", (Replace(joint.span, str(lead.end)),)))
    return tuple(mends)


def _of_feed(lead: LooseLead, feed: Feed) -> tuple[Mend, ...]:
    """The lead from the outlet that feeds its unit; or that unit from the outlet at which the lead begins."""
    if len(feed.outlets) != 1:
        return ()
    (outlet,) = feed.outlets
    mends = [Mend(f"write `{lead.mark} {outlet} -> {lead.end}`", (Replace(lead.ends[0], str(outlet)),))]
    at = feed.span.text.find(str(outlet))
    if len(feed.units) == 1 and at >= 0:
        typed = Span(feed.span.source, feed.span.start + at, feed.span.start + at + len(str(outlet)))
        mends.append(Mend(f"write `{feed_of(lead)}`", (Replace(typed, str(lead.start)),)))
    return tuple(mends)
