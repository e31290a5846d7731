"""Connections, feeds and stated leads -> every lead of the rig with its number, ends, plugs and cable."""

from __future__ import annotations

from functools import cached_property

from rigc.analysis.feeds.outlet_fit import OTHER_POLARITY
from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.feeds.power_tap import outlet_at
from rigc.analysis.leads.lead_make import CROSSED, REVERSED, STRAIGHT, LeadMake, Via
from rigc.analysis.leads.lead_numbers import LeadNumbers, adaptors_of, in_order, without_leg
from rigc.analysis.leads.lead_plugs import Wired, chosen_plug, socket
from rigc.analysis.leads.wanted_leads import Wanted, is_stage, wanted_leads
from rigc.analysis.previous import NOTHING_BEFORE, Previous, followed
from rigc.analysis.results import Results
from rigc.model.fact import Quantity
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Instrument
from rigc.record import Record
from rigc.source import Span

_CLASSES = ("audio", "control", "midi", "usb", "dc", "ac", "mains")


class Lead(Record):
    """A lead. `signal` is audio, control, midi, dc, ac (low voltage, from an outlet) or mains; a `stage` lead is not routed over the deck.

    `ends` are the plug kinds at start and end: None where no kind of the stock goes in, and at the end of a `captive`
    lead, which grows out of its unit, or out of a power brick, at `captive`. `leg_of` is the number of the Y lead whose leg it is. `chosen` tells of each end whether its plug was chosen
    with a place, in place of the usual one. `through_mm` are the drop lines that the source states: one for both ends, or one for each. `made` is
    the length of a lead that exists (or was bought: `premade`), `slack` what the source adds to the slack. `make` is how
    its conductors are joined, and what it is set to. `cable` is None for a captive lead, unless the source says what it is of.
    """

    mark: str
    signal: str
    start: Port
    end: Port
    stage: bool
    ends: tuple[str | None, str | None]
    plugs_stated: bool
    cable: str | None
    run: str | None
    slack_mm: Quantity | None
    made_mm: Quantity | None
    premade: bool
    made_in: str
    captive: Port | None
    captive_mm: Quantity | None
    leg_of: str | None
    stereo: bool
    stated: bool
    span: Span
    make: LeadMake = STRAIGHT
    through_mm: tuple[float, ...] = ()
    chosen: tuple[bool, bool] = (False, False)

    @property
    def plugs(self) -> tuple[str, str] | None:
        """Both plug kinds, if both are known."""
        start, end = self.ends
        return None if start is None or end is None else (start, end)

    @property
    def existing_mm(self) -> Quantity | None:
        """The length of a lead that need not be made: stated, or captive."""
        return self.made_mm or self.captive_mm


class Leads(Record):
    """All leads, class by class and in the order of their numbers."""

    all: tuple[Lead, ...]

    def at(self, port: Port) -> tuple[Lead, ...]:
        """The leads that are plugged into a jack."""
        return self._at.get(port, ())

    def of(self, mark: str) -> Lead | None:
        """The first lead of that number; None if there is none."""
        return self._of.get(mark)

    def to(self, thing: str) -> tuple[Lead, ...]:
        """The leads that are plugged into a thing."""
        return self._to.get(thing, ())

    @cached_property
    def plug_ends(self) -> tuple[tuple[Lead, tuple[tuple[Port, str | None], ...]], ...]:
        """Each lead that stays on the board with its own ends and the plug kind at each; legs of a Y lead have the end at their
        outlet in common, which is the first leg's."""
        seen: set[tuple[str, Port]] = set()
        found = []
        for lead in self.all:
            if not lead.stage:
                own = []
                for port, plug in zip((lead.start, lead.end), lead.ends, strict=True):
                    end = (lead.leg_of or lead.mark, port)
                    if end not in seen:
                        own.append((port, plug))
                    seen.add(end)
                found.append((lead, tuple(own)))
        return tuple(found)

    @cached_property
    def _at(self) -> dict[Port, tuple[Lead, ...]]:
        found: dict[Port, dict[int, Lead]] = {}
        for place, lead in enumerate(self.all):
            for port in (lead.start, lead.end):
                found.setdefault(port, {})[place] = lead
        return {port: tuple(plugged.values()) for port, plugged in found.items()}

    @cached_property
    def _of(self) -> dict[str, Lead]:
        return {lead.mark: lead for lead in reversed(self.all)}

    @cached_property
    def _to(self) -> dict[str, tuple[Lead, ...]]:
        found: dict[str, dict[int, Lead]] = {}
        for place, lead in enumerate(self.all):
            for port in (lead.start, lead.end):
                found.setdefault(port.thing, {})[place] = lead
        return {thing: tuple(plugged.values()) for thing, plugged in found.items()}


def leads(rig: Rig, power: PowerAssignment, previous: Previous = NOTHING_BEFORE) -> Leads:
    """Gives each connection its lead. Stated numbers stay, and so do those that the revision followed has for a lead between the
    same jacks, or those of the same names of what is said to stand in for a thing; the others follow above every number in use or
    retired."""
    wanted = wanted_leads(rig, power)
    wired = _wired(wanted)
    before = followed(rig, previous)
    marks = _marks(rig, wanted, before)
    makes = _Makes(rig, power, before)
    had = _between(rig, before)
    made = [
        _lead(rig, want, mark, leg_of, wired, makes.of(want, leg_of), had.get((want.start, want.end)))
        for want, (mark, leg_of) in zip(wanted, marks, strict=True)
    ]
    return Leads(tuple(sorted(made, key=lambda lead: (_CLASSES.index(lead.signal), in_order(lead.mark)))))


def _wired(wanted: tuple[Wanted, ...]) -> Wired:
    wired: Wired = {}
    for want in wanted:
        stated = want.facts.plugs if want.facts is not None and want.facts.plugs is not None else (None, None)
        for port, plug in zip((want.start, want.end), stated, strict=True):
            wired.setdefault(port.thing, {})[port] = plug
    return wired


def _marks(rig: Rig, wanted: tuple[Wanted, ...], earlier: Results | None) -> list[tuple[str, str | None]]:
    """A mark for each, and the number of its Y lead."""
    known = () if earlier is None else earlier.get(Leads).all
    taken = {want.facts.mark for want in wanted if want.facts is not None}
    rigs = (rig, *(() if earlier is None else (earlier.rig,)))
    retired = {mark for each in rigs for mark, _ in each.lead_wishes.retired}
    numbers = LeadNumbers((*taken, *retired, *(lead.mark for lead in known)))
    before = {ends: lead for ends, lead in _between(rig, earlier).items() if lead.mark not in taken | retired}
    bases: dict[Port, str] = {}
    for want in wanted:
        if want.shared is not None and want.facts is not None:
            bases.setdefault(want.shared, without_leg(want.facts.mark))
    gone = {lead.mark for lead in known}
    marks: list[tuple[str, str | None]] = []
    for want in wanted:
        base, own = None, before.get((want.start, want.end))
        own = own if own is not None and own.signal == want.signal else None
        if want.shared is not None:
            base = bases.get(want.shared) or (own and own.leg_of) or numbers.next(want.signal)
            bases[want.shared] = base
        mark = own.mark if want.facts is None and own is not None and own.leg_of == base else None
        mark = mark or _mark(want, base, taken, gone, numbers)
        taken.add(mark)
        marks.append((mark, base))
    return marks


def _between(rig: Rig, earlier: Results | None) -> dict[tuple[Port, Port], Lead]:
    """The leads of the revision followed, by the jacks of this one between which they lie."""
    if earlier is None:
        return {}
    heirs = _heirs(rig, earlier.rig)
    return {(_now(lead.start, heirs), _now(lead.end, heirs)): lead for lead in earlier.get(Leads).all}


def _heirs(rig: Rig, earlier: Rig) -> dict[str, str]:
    """What is gone, and what is said to stand in for it."""
    stood = {thing.stands_in: name for name, thing in (rig.units | rig.supplies).items() if thing.stands_in is not None}
    return {then: now for then, now in stood.items() if then in earlier.things and then not in rig.things}


def _now(port: Port, heirs: dict[str, str]) -> Port:
    return Port(heirs.get(port.thing, port.thing), port.jack)


def _mark(want: Wanted, base: str | None, taken: set[str], gone: set[str], numbers: LeadNumbers) -> str:
    if want.facts is not None:
        return want.facts.mark
    legs = () if base is None else (base + letter for letter in "abcdefghijklmnopqrstuvwxyz")
    free = (leg for leg in legs if leg not in taken and leg not in gone)
    return next(free, None) or numbers.next(want.signal)


def _lead(
    rig: Rig, want: Wanted, mark: str, leg_of: str | None, wired: Wired, make: LeadMake, had: Lead | None
) -> Lead:
    facts = want.facts
    stage = is_stage(rig, want.start) or is_stage(rig, want.end)
    captive, captive_mm = _captive(rig, want)
    stated = None if facts is None else facts.plugs
    return Lead(
        mark=mark,
        signal=want.signal,
        start=want.start,
        end=want.end,
        stage=stage,
        ends=_chosen(rig, want, stated or _ends(rig, want, make, stage, captive, wired, had)),
        chosen=(rig.chosen_plug(want.start) is not None, rig.chosen_plug(want.end) is not None),
        plugs_stated=stated is not None,
        cable=(None if facts is None else facts.cable) or (None if captive is not None else _cable(rig, want, stage)),
        run=None if facts is None else facts.run,
        through_mm=() if facts is None else facts.through_mm,
        slack_mm=None if facts is None else facts.slack_mm,
        made_mm=None if facts is None else facts.made_mm,
        premade=facts is not None and facts.premade,
        made_in="" if facts is None else facts.made_in,
        captive=captive,
        captive_mm=captive_mm,
        leg_of=leg_of,
        stereo=want.stereo,
        stated=facts is not None,
        span=want.span,
        make=make,
    )


class _Makes:
    """How each lead is made: what the connections and feeds of a rig say of it."""

    def __init__(self, rig: Rig, power: PowerAssignment, before: Results | None) -> None:
        self._rig, self._power = rig, power
        self._adaptors = adaptors_of(rig, power, before)
        self._links = {frozenset((link.start, link.end)): link for link in rig.connections}

    def of(self, want: Wanted, leg_of: str | None) -> LeadMake:
        """Of a power lead by its feed, of others by their connection."""
        outlet, inlet = (want.start, want.end) if outlet_at(self._rig, want.start) else (want.end, want.start)
        feed = self._power.of(inlet.thing)
        if feed is not None and outlet in feed.outlets:
            return self._fed(feed, outlet, leg_of or "")
        link = self._links.get(frozenset((want.start, want.end)))
        jacks = [self._rig.jack(port) for port in (want.start, want.end)]
        forms = tuple(None if jack is None else jack.midi_form for jack in jacks)
        return LeadMake(
            turned=CROSSED if link is not None and link.crossover else "",
            forms=(forms[0], forms[1]),
            shield_at_both=link is not None and link.shield_at_both,
        )

    def _fed(self, feed: Supplied, outlet: Port, leg_of: str) -> LeadMake:
        via = tuple(_of_pair(each, feed, outlet) for each in self._adaptors.get(feed.unit, ()))
        turned = REVERSED if feed.reversed and not any(each.kind == "reversing" for each in via) else ""
        there, tap = outlet_at(self._rig, outlet), self._power.taps.get(feed.unit)
        pole = None if there is None or feed.current == "ac" else there.polarity
        return LeadMake(
            turned,
            leg_of,
            via,
            feed.volts if tap is None else tap.setting(outlet).volts.value,
            feed.current,
            OTHER_POLARITY.get(pole or "") if turned else pole,
            there is not None and len(there.ratings) > 1,
        )


def _of_pair(each: Via, feed: Supplied, outlet: Port) -> Via:
    """A series lead, and from which outlet of its pair it takes this lead."""
    if each.kind != "series" or feed.lower is None:
        return each
    of: Via = each.replace(end="lower" if outlet == feed.lower else "upper")
    return of


def _captive(rig: Rig, want: Wanted) -> tuple[Port | None, Quantity | None]:
    for port in (want.start, want.end):
        jack = socket(rig, port)
        if jack is not None and jack.captive_mm is not None:
            return port, jack.captive_mm
    return None, None


def _ends(
    rig: Rig, want: Wanted, make: LeadMake, stage: bool, captive: Port | None, wired: Wired, had: Lead | None
) -> tuple[str | None, str | None]:
    """An outlet whose connector is not stated is taken to be made for the plug of the unit's end. The plugs that the lead had in the
    revision followed stay where they go in. Before a size adaptor the lead ends as
    it begins: the adaptor makes the other size."""
    here, there = (
        None if jack is None else jack.connector for jack in (socket(rig, want.start), socket(rig, want.end))
    )
    if any(each.kind == "size" for each in make.via):
        here = there = here if outlet_at(rig, want.start) is not None else there
    before = (None, None) if had is None or had.signal != want.signal else had.ends
    start, end = (
        None if port == captive else chosen_plug(rig, port, connector, want.signal, stage, wired, plug)
        for port, connector, plug in ((want.start, here or there, before[0]), (want.end, there or here, before[1]))
    )
    return start, end


def _chosen(rig: Rig, want: Wanted, ends: tuple[str | None, str | None]) -> tuple[str | None, str | None]:
    """With the plugs that were chosen with places, in place of the usual ones."""
    if not rig.chosen_plugs:
        return ends
    start, end = (rig.chosen_plug(port) for port in (want.start, want.end))
    return ends[0] if start is None else start.plug, ends[1] if end is None else end.plug


def _cable(rig: Rig, want: Wanted, stage: bool) -> str | None:
    """A stage lead with sound is made of the instrument's cable, one without of the rig's cable for the signal, where it names one; others of
    that, or of the stock's first. A mains lead is of none but its own: what is low-voltage cable must never be taken for it; a USB lead is
    bought ready."""
    if want.signal in ("mains", "usb"):
        return None
    if stage and want.signal == "audio":
        ends = (rig.things[port.thing] for port in (want.start, want.end))
        return next((end.lead_cable for end in ends if isinstance(end, Instrument)), None)
    wish = dict(rig.lead_wishes.cables).get(want.signal)
    if wish or stage:
        return wish
    return next((cable.name for cable in rig.stock.cables.values() if cable.signal == want.signal), None)


COMPUTE = leads
