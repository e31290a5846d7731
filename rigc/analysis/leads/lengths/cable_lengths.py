"""Routes -> the length of each lead: with slack, rounded, as it is cut, and as it is bought: `A14.slack`, `.least`, `.most`,
`.finished`, `.cut`, `.premade`, `.supplied`; of one that is there, `A30.length`; totals by signal."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property, partial
from math import ceil, floor
from typing import ClassVar, TypeVar

from rigc.analysis.leads.lead_status import comes_premade, status
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_routes import CableRoutes
from rigc.analysis.leads.lengths.lead_ends import tenths, whole_tenths
from rigc.analysis.leads.plug_uses import plugs_of_class, plugs_on_leads
from rigc.analysis.leads.stated_length import stated_length
from rigc.diagnostics.figures import plain
from rigc.facts.leads import LEAST_SLACK_MM, LONGEST_MORE_MM, LONGEST_SHARE, ROUNDED_TO_MM, SHORTEST_MM, SLACK_SHARE
from rigc.model.rig import Rig
from rigc.model.stock import Plug
from rigc.record import Record
from rigc.traced.figure import Answer, AnyFigure, Figure, assumed, figure, known_figure
from rigc.traced.given import mentioned, ours, stated
from rigc.traced.means import becomes, chosen, found, highest, in_its_unit, total, total_known
from rigc.traced.reason import ARITHMETIC, AS_STATED, PRACTICE, STATED
from rigc.traced.term import Term, Traced, Unknown, known
from rigc.traced.units import COUNT, TENTHS

_STEP = round(10 * ROUNDED_TO_MM.value)
T = TypeVar("T", float, Term)
_SUM = "the sum over the class, of the leads that have a {} length"
_HAIR = 1e-6  # far below a tenth of a millimetre, far above what binary floats are off
Offer = tuple[tuple[int, ...], Unknown]
"""Premade lengths, ascending in tenths of a millimetre, and how they are told."""
Kinds = tuple[Plug | None, ...]
"""Of each end of a lead its plug kind; None where none is known."""
_LEAST_SLACK = {signal: ours(fact, shown=TENTHS) for signal, fact in LEAST_SLACK_MM.items()}
_SHARE, _MOST_SHARE, _MOST_MORE = ours(SLACK_SHARE), ours(LONGEST_SHARE), ours(LONGEST_MORE_MM, shown=TENTHS)
_STEP_MM, _SHORTEST_MM = ours(ROUNDED_TO_MM), ours(SHORTEST_MM)
_SLACK_RULE = f"the larger of {plain(100 * SLACK_SHARE.value)} % of the route and the least slack of the class, and what the source adds"
_FINISHED_RULE = (
    f"finished = route + slack, rounded up to the next {plain(ROUNDED_TO_MM.value)} mm, "
    f"at least {plain(SHORTEST_MM.value)} mm"
)


class Length(Record):
    """The lengths of one lead, counted in tenths of a millimetre. What is cut, bought and lies there is reckoned when it is asked for.

    `way` is the route from exit to exit, `slack` what is added by the rule and by the source. `shortest` is the shortest
    that will do (least slack and what the source adds), `longest` the longest that makes no coil, `made` the finished length
    from exit to exit.
    """

    TOLD: ClassVar[tuple[str, ...]] = ("cutting", "bought", "lies", "premade_more")
    mark: str
    signal: str
    way: Figure
    slack: Figure
    shortest: Figure
    longest: Figure
    made: Figure
    cuts: Callable[[], AnyFigure | Answer]
    buys: Callable[[], AnyFigure | Answer]
    lies_as: Callable[[Length], Figure]

    @cached_property
    def cutting(self) -> AnyFigure | Answer:
        """The length of cable that is cut; none where an end comes on a premade lead or is captive."""
        return self.cuts()

    @cached_property
    def bought(self) -> AnyFigure | Answer:
        """The next premade length, none where no stock length is long enough and where an end is soldered or captive, lacking where
        the stock has no list."""
        return self.buys()

    @cached_property
    def lies(self) -> Figure:
        """How long it will lie there: as it exists, the premade length if it is bought (one that is longer than any in stock is
        made to order), else finished."""
        return self.lies_as(self)

    @cached_property
    def premade_more(self) -> Figure | None:
        """How much longer the premade lead is than the one made here; None where none will do."""
        if not isinstance(self.bought, Figure):
            return None
        return known_figure(
            f"{self.mark}.premade-more",
            self.bought - self.made,
            TENTHS,
            rule="bought less made here",
            source=ARITHMETIC,
        )

    @property
    def route(self) -> int:
        """The way from exit to exit, in whole tenths of a millimetre; as all below."""
        return round(self.way)

    @property
    def least(self) -> int:
        """The shortest that will do."""
        return round(self.shortest)

    @property
    def most(self) -> int:
        """The longest that makes no coil."""
        return round(self.longest)

    @property
    def finished(self) -> int:
        """The length from exit to exit as made."""
        return round(self.made)

    @property
    def cut(self) -> int | None:
        """The length of cable that is cut for it; None where none is."""
        return round(self.cutting) if isinstance(self.cutting, Figure) else None

    @property
    def premade(self) -> int | None:
        """The premade length that will do; None where none does."""
        return round(self.bought) if isinstance(self.bought, Figure) else None

    @property
    def premade_listed(self) -> bool:
        """Whether the stock has a list of premade leads of its signal."""
        return not isinstance(self.bought, Unknown)

    @property
    def supplied(self) -> int:
        """How long it will lie there."""
        return round(self.lies)

    @property
    def assumed(self) -> bool:
        """Whether the lengths that will do rest on an assumed fact."""
        return assumed(self.shortest) or assumed(self.longest)

    @property
    def longest_kept(self) -> int:
        """The longest lead that stays where it lies: one that is no coil, or that is no longer than the one supplied."""
        return max(self.most, self.supplied)


class Total(Record):
    """The leads of one signal that stay on the board, and the sums of their lengths in tenths of a millimetre, reckoned when they are asked
    for. Leads without a route, cut or premade length count as nothing; where none has a cut or premade length, there is none."""

    TOLD: ClassVar[tuple[str, ...]] = ("leads", "finished", "cut", "premade", "supplied", "plugs")
    signal: str
    own: tuple[Lead, ...]
    routed: tuple[Length, ...]
    uses: Callable[[], Figure]

    @cached_property
    def leads(self) -> Figure:
        """How many there are."""
        own = self.own
        return known_figure(
            f"{self.signal}.leads",
            found(len(own), lambda: f"{', '.join(lead.mark for lead in own)}: {len(own)}"),
            COUNT,
            *(mentioned(lead.mark, f"{lead.start} -> {lead.end}", lead.span) for lead in own),
            rule="leads that stay on the board",
            source=ARITHMETIC,
        )

    @property
    def unrouted(self) -> tuple[str, ...]:
        """The numbers of those without a route."""
        return tuple(lead.mark for lead in self._unrouted)

    @cached_property
    def finished(self) -> Figure:
        """As they are made."""
        return self._together("finished", [length.made for length in self.routed])

    @cached_property
    def cut(self) -> Figure | Answer:
        """As they are cut."""
        return self._together_if_any("cut", [length.cutting for length in self.routed])

    @cached_property
    def premade(self) -> Figure | Answer:
        """As they are bought ready."""
        return self._together_if_any("premade", [length.bought for length in self.routed])

    @cached_property
    def supplied(self) -> Figure:
        """As they will lie there."""
        return self._together("supplied", [length.lies for length in self.routed])

    @cached_property
    def plugs(self) -> Figure:
        """Those on its leads, of a Y lead the one at its outlet once."""
        return self.uses()

    @cached_property
    def _unrouted(self) -> tuple[Lead, ...]:
        marks = {length.mark for length in self.routed}
        return tuple(lead for lead in self.own if lead.mark not in marks)

    @property
    def _without(self) -> tuple[Unknown, ...]:
        return tuple(mentioned(lead.mark, "no route", lead.span) for lead in self._unrouted)

    def _together(self, field: str, parts: list[Figure]) -> Figure:
        return known_figure(
            f"{self.signal}.{field}",
            total_known(parts, self._without),
            TENTHS,
            rule=_SUM.format(field),
            source=ARITHMETIC,
        )

    def _together_if_any(self, field: str, every: list[AnyFigure | Answer]) -> Figure | Answer:
        parts = [each for each in every if isinstance(each, Figure)]
        if parts:
            return self._together(field, parts)
        missing = f", without {', '.join(self.unrouted)}" if self.unrouted else ""
        because = f"no lead of the class has one{missing}"
        return Answer(
            f"{self.signal}.{field}", "none", because, *self._without, rule=_SUM.format(field), source=ARITHMETIC
        )


class CableLengths(Record):
    """Lengths by lead number (only of leads with a route), and totals by signal in the order of the leads.

    `as_supplied` says of every lead how long it is as it is supplied, in tenths of a millimetre: as it is where that is
    stated, else as it is bought or made; lacking where it has no way.
    """

    lengths: dict[str, Length]
    totals: dict[str, Total]
    as_supplied: dict[str, AnyFigure]

    def supplied(self, mark: str) -> Traced:
        """How long a lead is as it is supplied, in mm."""
        supplied: Traced = in_its_unit(self.as_supplied[mark])
        return supplied

    def supplied_mm(self, mark: str) -> Term | None:
        """The same; None where that is not known."""
        return known(self.supplied(mark))

    def supplied_tenths(self, mark: str) -> int | None:
        """The same in whole tenths of a millimetre."""
        supplied = known(self.as_supplied[mark])
        return None if supplied is None else round(supplied)


def cable_lengths(rig: Rig, leads: Leads, routes: CableRoutes) -> CableLengths:
    """Reckons every routed lead."""
    lengths: dict[str, Length] = {}
    supplied: dict[str, AnyFigure] = {}
    offers = {signal: _offer(signal, tuple(sorted(each))) for signal, each in rig.stock.premade_mm.items()}
    for lead in leads.all:
        there = None
        if lead.stage or lead.existing_mm is not None:
            there = supplied[lead.mark] = _there(rig, lead)
        route = routes.routes.get(lead.mark)
        if route is not None and isinstance(route.way, Figure):
            length = lengths[lead.mark] = _length(rig, lead, route.way, there, offers)
            supplied.setdefault(lead.mark, length.lies)
        elif route is not None and there is not None:
            supplied[lead.mark] = _existing(lead, there)
        elif route is not None and route.way is not None:
            supplied[lead.mark] = route.way
    board = tuple(lead for lead in leads.all if not lead.stage)
    signals = dict.fromkeys(lead.signal for lead in board)
    plugs = plugs_on_leads(rig, leads)
    totals = {}
    for signal in signals:
        own = tuple(lead for lead in board if lead.signal == signal)
        routed = tuple(lengths[lead.mark] for lead in own if lead.mark in lengths)
        totals[signal] = Total(signal, own, routed, partial(plugs_of_class, signal, plugs))
    return CableLengths(lengths, totals, supplied)


def rule_slack(route: T, least: T, share: T, more: float) -> T:
    """The slack of a route in tenths of a millimetre, part ones counted as whole: the least of its class, or a share of it; and
    what the source adds. Of terms a term."""
    slack: T = highest(route * share, least) + more
    return _whole(slack, _ceil)


def finished_length(route_and_slack: float) -> int:
    """A finished length in tenths: rounded up to the next whole step, never below the shortest that can be made."""
    return max(_ceil(route_and_slack / _STEP) * _STEP, tenths(SHORTEST_MM.value))


def longest_length(route: T, share: T, more: T) -> T:
    """The longest lead for a route before the rest becomes a coil, in tenths, part ones left off. Of terms a term."""
    longest: T = route * share + more
    return _whole(longest, _floor)


def _ceil(length: float) -> int:
    return ceil(length - _HAIR)


def _floor(length: float) -> int:
    return floor(length + _HAIR)


def _whole(length: T, rounded: Callable[[float], int]) -> T:
    """A length in whole tenths, as it is where it is that already."""
    if isinstance(length, Term) and abs(rounded(float(length)) - float(length)) < _HAIR:
        return length
    whole: T = becomes(length, rounded)
    return whole


def _there(rig: Rig, lead: Lead) -> AnyFigure:
    return figure(
        f"{lead.mark}.length",
        stated(f"the length of {lead.mark}", stated_length(rig, lead), TENTHS),
        TENTHS,
        rule=AS_STATED,
        source=STATED,
        label=f"{lead.mark}, as it is",
    )


def _existing(lead: Lead, there: AnyFigure) -> AnyFigure:
    """The length of a lead that exists and has no route."""
    return figure(
        f"{lead.mark}.finished",
        chosen(there, "it exists"),
        TENTHS,
        rule="the length of a lead that exists",
        source=STATED,
        label=f"{lead.mark}, as it is",
    )


def _offer(signal: str, lengths_mm: tuple[float, ...]) -> Offer:
    listed = mentioned(f"premade {signal} leads in stock", ", ".join(map(plain, lengths_mm)), unit="mm")
    return tuple(map(tenths, lengths_mm)), listed


def _length(rig: Rig, lead: Lead, way: Figure, there: AnyFigure | None, offers: dict[str, Offer]) -> Length:
    mark = lead.mark
    least = _LEAST_SLACK[lead.signal]
    added: float = 0
    if lead.slack_mm is not None:
        added = whole_tenths(stated("more slack for this lead", lead.slack_mm, TENTHS))
    slack = known_figure(
        f"{mark}.slack",
        rule_slack(way, least, _SHARE, added),
        TENTHS,
        rule=_SLACK_RULE,
        source=PRACTICE,
        label="slack",
    )
    shortest = known_figure(
        f"{mark}.least",
        way + least + added,
        TENTHS,
        rule="the shortest lead that will do: the route, the least slack of the class, and what the source adds",
        source=PRACTICE,
    )
    longest = known_figure(
        f"{mark}.most",
        longest_length(way, _MOST_SHARE, _MOST_MORE + added),
        TENTHS,
        rule="the longest lead that makes no coil, and what the source adds",
        source=PRACTICE,
    )
    finished, stock = _finished(mark, way, slack), rig.stock.premade_list(lead.signal)
    kinds = tuple(None if plug is None else rig.stock.plugs[plug] for plug in lead.ends)
    wanted = lead.premade or dict(rig.lead_wishes.cutting).get(lead.signal) == "premade"
    ready = wanted or comes_premade(rig, lead)
    return Length(
        mark,
        lead.signal,
        way,
        slack,
        shortest,
        longest,
        finished,
        partial(_cutting, lead, finished, kinds, wanted, ready),
        partial(_bought, lead, shortest, stock, kinds, offers.get(stock)),
        partial(_lies, lead, there, status(rig, lead)),
    )


def _finished(mark: str, way: Figure, slack: Figure) -> Figure:
    together = way + slack
    short = together <= tenths(SHORTEST_MM.value) - _STEP
    return known_figure(
        f"{mark}.finished",
        becomes(together, finished_length),
        TENTHS,
        _STEP_MM,
        *((_SHORTEST_MM,) if short else ()),
        rule=_FINISHED_RULE,
        source=PRACTICE,
    )


def _lies(lead: Lead, there: AnyFigure | None, kept: str, length: Length) -> Figure:
    """How long it will lie there."""
    if isinstance(there, Figure):
        value = chosen(there, "it exists")
    elif kept != "buy":
        value = chosen(length.made, "it is made here")
    elif isinstance(length.bought, Figure):
        value = chosen(length.bought, "it is bought")
    else:
        value = chosen(length.made, "it is bought; no stock length is long enough, so it is made to order")
    return known_figure(
        f"{lead.mark}.supplied",
        value,
        TENTHS,
        rule="the length of a lead that exists, else the next premade one where it is bought, else the finished one",
        source=PRACTICE,
        label=f"{lead.mark} as supplied",
    )


def _bought(lead: Lead, shortest: Figure, signal: str, kinds: Kinds, offer: Offer | None) -> AnyFigure | Answer:
    """The next premade length."""
    name, rule = f"{lead.mark}.premade", "the shortest stock length that is at least the route and the least slack"
    if offer is None:
        nowhere = mentioned(f"a list of premade {signal} leads in stock", "none")
        return figure(name, nowhere, TENTHS, shortest, rule=rule, source=PRACTICE)
    offered, stock = offer
    soldered = any(kind is not None and kind.soldered for kind in kinds)
    if lead.captive is not None or soldered:
        because = f"an end is {'captive' if lead.captive is not None else 'soldered'}"
    elif not offered or shortest > offered[-1]:
        because = f"{shortest.text}, longer than any in stock"
    else:
        following = becomes(shortest, lambda each: next((length for length in offered if length >= each), offered[-1]))
        return known_figure(name, following, TENTHS, stock, rule=rule, source=PRACTICE)
    return Answer(name, "none", because, shortest, stock, rule=rule, source=PRACTICE)


def _cutting(lead: Lead, finished: Figure, kinds: Kinds, wanted: bool, ready: bool) -> AnyFigure | Answer:
    """The finished length and what both plugs take in, if it is cut at the bench: where it is neither `wanted` nor made `ready`."""
    name, rule = f"{lead.mark}.cut", "cut = finished + what each plug takes in (cut-in)"
    plugs = [kind for kind in kinds if kind is not None]
    bare = [plug for plug in plugs if plug.cut_in_mm is None]
    if len(plugs) == len(kinds) and not bare and not wanted:
        taken = (
            whole_tenths(stated(f"cut-in of {plug.name} (end {end})", plug.cut_in_mm, TENTHS))
            for end, plug in zip("ab", plugs, strict=True)
            if plug.cut_in_mm is not None
        )
        return known_figure(name, total((finished, *taken)), TENTHS, rule=rule, source=ARITHMETIC)
    if lead.captive is not None:
        because = f"it grows out of {lead.captive}: nothing is cut"
        captive = stated(f"captive lead at {lead.captive}", lead.captive_mm)
        return Answer(name, "captive", because, captive, rule=rule, source=ARITHMETIC)
    if ready:
        told = {plug.name: mentioned(f"plug {plug.name}", "no cut-in", plug.declared) for plug in bare}
        return Answer(
            name,
            "premade",
            "it comes ready: nothing is cut",
            *(told.values() or (mentioned(lead.mark, "premade", lead.span),)),
            rule=rule,
            source=STATED,
        )
    kind = mentioned("a plug kind", f"{lead.start} -> {lead.end}", lead.span)
    return figure(name, kind, TENTHS, rule=rule, source=ARITHMETIC)


COMPUTE = cable_lengths
