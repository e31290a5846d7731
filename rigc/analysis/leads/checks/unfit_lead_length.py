"""A lead that exists, or was measured on the built board, is too short for its way, or so long that the rest becomes a coil.

Why it matters: without slack a unit can't be tilted out of its fastener and unplugged, and the plugs are pulled sideways;
a coil picks up hum and catches on things. A lead whose way is not known is told here, too, so that none is forgotten.
What to do: take another stock length, make a new lead, or stow the rest at the bundle under the deck, not between units. A
captive lead can't be exchanged: move what it grows out of nearer. A lead that leaves the board has no way that is reckoned; one shorter than {leads.SHORTEST_STAGE_MM} is told,
and one that is not as long as its instrument says.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.same_place import SamePlaces
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths, Length
from rigc.analysis.leads.lengths.cable_routes import CableRoutes, Route
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.analysis.leads.stated_length import instrument_lead, stated_length
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wanted import how_to_state
from rigc.facts.leads import LONGEST_MORE_MM, LONGEST_SHARE, SHORTEST_STAGE_MM
from rigc.facts.midi import LONGEST_MM
from rigc.model.fact import Quantity
from rigc.model.records import BuiltLead
from rigc.model.rig import Rig
from rigc.source import Span

KIND = Kind(
    "unfit-lead-length",
    Level.ERROR,
    __doc__,
    f"route + least slack <= length <= {LONGEST_SHARE.value:.2f} x route + {LONGEST_MORE_MM}",
    "common practice, no source",
)


def unfit_lead_length(
    rig: Rig, leads: Leads, routes: CableRoutes, lengths: CableLengths, same: SamePlaces
) -> Iterator[Diagnostic]:
    """Judges every lead that exists; tells once, for each fact that is missing, which leads have no way."""
    built = _built(rig)
    for lead in leads.all:
        length, existing, measured = lengths.lengths.get(lead.mark), lead.existing_mm, built.get(lead.mark)
        if length is not None and existing is not None:
            yield from _judge(lead, existing, length, f"is {existing.value:g} mm")
        if (
            length is not None
            and measured is not None
            and (existing is None or existing.value != measured.length_mm.value)
        ):
            yield from _judge(lead, measured.length_mm, length, _as_measured(measured))
    yield from _too_short_for_the_stage(rig, leads)
    yield from _unlike_the_instrument(rig, leads)
    without: dict[tuple[str, str, bool], list[Lead]] = {}
    for lead in leads.all:
        route = routes.routes.get(lead.mark)
        bought = lead.signal == "mains" and any(plug is None for plug in lead.ends)
        known = route is not None and (route.between or bought) and lead.existing_mm is not None
        if bought and route is not None and not known:
            yield _mains(lead)
        elif route is not None and route.length is None and not route.blocked and not known:
            without.setdefault((route.about, route.reason, route.missing), []).append(lead)
    for lead in leads.all:
        if lead.stage and lead.signal in ("dc", "ac") and lead.captive is None and not (lead.made_mm and lead.cable):
            yield _off_board(lead)
    for stuck in without.values():
        yield _stuck(rig, same, stuck, routes.routes[stuck[0].mark])


def _built(rig: Rig) -> dict[str, BuiltLead]:
    """By number the leads as measured on the board of this very revision, the latest last; those of the revision before are
    judged by the rework plan."""
    blocks = (block for block in rig.as_built if block.revision == rig.head.letter)
    return {lead.mark: lead for block in blocks for lead in block.leads}


def _too_short_for_the_stage(rig: Rig, leads: Leads) -> Iterator[Diagnostic]:
    """Leads that leave the board, of a stated length with which none does; one finding for each statement."""
    told: list[Span] = []
    for lead in leads.all:
        stated = stated_length(rig, lead)
        if (
            not lead.stage
            or lead.captive is not None
            or stated is None
            or stated.value >= SHORTEST_STAGE_MM.value
            or stated.span in told
        ):
            continue
        told.append(stated.span)
        yield KIND.at(
            stated.span,
            f"{lead.mark} from '{lead.start}' to '{lead.end}' leaves the board, and is {stated.typed} long",
            subject=(lead.mark,),
            label=f"shorter than {SHORTEST_STAGE_MM}",
            numbers=(Number("length", stated.value, "mm"), Number("least", SHORTEST_STAGE_MM.value, "mm")),
            help="look at its unit of measure; if it is so, bring another lead",
            level=Level.WARNING,
        )


def _unlike_the_instrument(rig: Rig, leads: Leads) -> Iterator[Diagnostic]:
    """Leads whose stated length is another than the instrument says that its lead has: what is reckoned of either is wrong of the other."""
    for lead in leads.all:
        own = instrument_lead(rig, lead) if lead.stage and lead.signal == "audio" else None
        here = lead.existing_mm
        if own is None or here is None or tenths(own.value) == tenths(here.value):
            continue
        name = next(port.thing for port in (lead.start, lead.end) if port.thing in rig.instruments)
        yield KIND.at(
            here.span,
            f"{lead.mark} is {here.typed}, and '{name}' says that its lead is {own.typed}",
            subject=(lead.mark, name),
            label="this long",
            also=(Label(own.span, "and this long"),),
            numbers=(Number(lead.mark, here.value, "mm"), Number(f"lead of {name}", own.value, "mm")),
            mends=(
                Mend(f"write {own.typed} behind {lead.mark}", (Replace(here.span, own.typed),)),
                Mend(f"write {here.typed} in '{name}'", (Replace(own.span, here.typed),)),
            ),
            level=Level.WARNING,
        )


def _as_measured(built: BuiltLead) -> str:
    when = f" on {built.date}" if built.date else ""
    by = f" by {built.by}" if built.by else ""
    return f"was measured{when}{by} as {built.length_mm.value:g} mm"


def _judge(lead: Lead, existing: Quantity, length: Length, told: str) -> Iterator[Diagnostic]:
    has = tenths(existing.value)
    way = f"its way from '{lead.start}' to '{lead.end}'"
    if has < length.least:
        need, short = f"{length.least / 10:g} mm", f"{(length.least - has) / 10:g} mm"
        said = f"{_named(lead)} {told}, but {way} needs {need}: {short} short"
        yield _told(lead, existing, length, said, Level.ERROR, _longer(lead, length, short))
    elif has > length.most and not (lead.signal == "midi" and has > tenths(LONGEST_MM.value)):  # such is told of MIDI
        said = f"{_named(lead)} {told}, more than the {length.most / 10:g} mm that {way} takes up"
        rest = f"{(has - length.route) / 10:g} mm of slack"
        yield _told(lead, existing, length, said, Level.WARNING, f"stow its {rest} under the deck at the bundle")


def _told(lead: Lead, existing: Quantity, length: Length, said: str, level: Level, help: str) -> Diagnostic:
    numbers = (
        Number("length", existing.value, "mm"),
        Number("route", length.route / 10, "mm"),
        Number("least", length.least / 10, "mm"),
        Number("most", length.most / 10, "mm"),
    )
    return KIND.at(
        existing.span,
        said,
        subject=(lead.mark,),
        label="this long",
        numbers=numbers,
        mends=_off_by_ten(lead, existing, length),
        help=help,
        level=level,
    )


def _off_by_ten(lead: Lead, existing: Quantity, length: Length) -> tuple[Mend, ...]:
    """The same number with a nought more or less, where that fits the way: a likelier slip than a lead that was made so."""
    typed = existing.span.text
    for times in (10, 0.1):
        meant = existing.value * times
        if lead.captive is None and typed.endswith("mm") and length.least <= tenths(meant) <= length.most:
            return (Mend(f"write {meant:g} mm, if that is meant", (Replace(existing.span, f"{meant:g} mm"),)),)
    return ()


def _named(lead: Lead) -> str:
    return lead.mark if lead.captive is None else f"the captive lead {lead.mark} of '{lead.captive.thing}'"


def _longer(lead: Lead, length: Length, short: str) -> str:
    if lead.captive is not None:
        other = lead.end if lead.captive == lead.start else lead.start
        return f"move '{lead.captive.thing}' nearer to '{other.thing}', by {short} or more"
    if length.premade is not None and length.cut is None:
        return f"take the premade length of {length.premade / 10:g} mm"
    return f"make a new one of {length.finished / 10:g} mm"


def _mains(lead: Lead) -> Diagnostic:
    """A mains lead is a certified set that is bought; the language has no kinds of its connectors, so nothing is reckoned."""
    return KIND.cant_check(
        lead.span,
        f"the length of {lead.mark} is not known, nor whether its connectors have room: sizes of mains connectors can't be stated",
        subject=(lead.mark,),
        help="lay the bought lead on the board, see that its connectors have room, and write its length behind it: "
        f"{lead.mark} {lead.start} -> {lead.end} made ___ mm",
        asks_for=(f"the length of {lead.mark}", *(f"the plug kind at '{end}'" for end in (lead.start, lead.end))),
    )


def _off_board(lead: Lead) -> Diagnostic:
    """A power lead that leaves the board: no way is reckoned there, and its drop hangs on how long and how thick it is."""
    lacking = [what for what, known in (("length", lead.made_mm), ("cable", lead.cable)) if not known]
    of = lead.cable or "___"
    made = "___ m" if lead.made_mm is None else lead.made_mm.typed
    return KIND.cant_check(
        lead.span,
        f"the {' and the '.join(lacking)} of {lead.mark} {'is' if len(lacking) == 1 else 'are'} not known: it leaves the board, and no way is reckoned there",
        subject=(lead.mark,),
        help=f"{'say of which it is' if lead.made_mm else 'measure it'}, and write in the leads block: {lead.mark} {lead.start} -> {lead.end} of {of} made {made}",
        asks_for=tuple(f"the {what} of {lead.mark}" for what in lacking),
    )


def _stuck(rig: Rig, same: SamePlaces, stuck: list[Lead], route: Route) -> Diagnostic:
    marks = tuple(lead.mark for lead in stuck)
    names = ", ".join(marks)
    asks: tuple[str, ...]
    if route.between:
        said = f"the length of {names} is not known: it joins two decks, and what lies between them is not reckoned"
        help = f"write it behind the lead: {stuck[0].mark} {stuck[0].start} -> {stuck[0].end} made ___ mm"
        asks = tuple(f"the length of {mark}" for mark in marks)
    elif route.missing:
        said = f"the length of {names} is not known, for want of {route.reason}"
        help = how_to_state(route.reason)
        kind = route.reason.replace("a plug kind in the stock that fits", "the plug kind at")
        asks = (*same.of(route.reason), kind, *(f"the length of {mark}" for mark in marks))
    else:
        said = f"there is no way for {names}: {route.reason}"
        help = "move it, or give the deck another drop line"
        if route.apart:
            help = f"join the decks by it: join {' to '.join(route.apart)} by {', '.join(marks)}; and write its length behind it"
        asks = tuple(f"the length of {mark}" for mark in marks)
    subject = (route.about, *marks) if route.about else marks
    wants = (route.reason,) if route.missing else ()
    span = _span(rig, route.about, stuck[0])
    return KIND.cant_check(span, said, subject=subject, help=help, wants=wants, asks_for=asks)


def _span(rig: Rig, about: str, lead: Lead) -> Span:
    """Where the thing, deck or plug is declared whose fact is missing, else the lead's own place."""
    owner = rig.things.get(about) or rig.decks.get(about) or rig.stock.plugs.get(about)
    return lead.span if owner is None else owner.declared


CHECK = unfit_lead_length
