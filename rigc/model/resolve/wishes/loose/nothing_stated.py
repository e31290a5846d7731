"""Leads of power, or of audio, where no statement at all says what feeds what, or what plays into what."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.wording import joined
from rigc.model.resolve.wishes.loose.loose_lead import Caused, Joints, Left, LooseLead, carrying, feed_of
from rigc.model.scope import LOOSE_LEAD


def nothing_stated(left: Left, joints: Joints) -> Caused:
    """One finding for all leads of power, one for all of audio, two or more."""
    fed, sounding = carrying("power", left), carrying("audio", left)
    if len(fed) > 1 and not joints.power.feeds and not joints.power.others:
        yield fed, _told(fed, "no power statement says what feeds what", f"power {{ {feed_of(fed[0])} ... }}")
    if len(sounding) > 1 and not any(each.signal == "audio" for each in joints.connections.values()):
        first = sounding[0]
        yield sounding, _told(sounding, "no chain is stated", f"chain {first.start.thing} -> {first.end.thing} -> ...")


def _told(leads: list[LooseLead], lacking: str, example: str) -> Diagnostic:
    marks = [each.mark for each in leads]
    names = dict.fromkeys(port.thing for each in leads for port in (each.start, each.end))
    return LOOSE_LEAD.at(
        leads[0].span,
        f"{lacking}; the leads {joined(marks)} join what no other statement does",
        subject=(*marks, *names),
        label="the first of them",
        help=f"state it, for example: {example}",
    )
