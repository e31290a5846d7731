"""Routes -> the length of each lead: with slack, rounded, as it is cut, and as it is bought: `A14.slack`, `.least`, `.most`,
`.finished`, `.cut`, `.premade`, `.supplied`; of one that is there, `A30.length`; totals by signal."""

from __future__ import annotations

from collections.abc import Callable
from math import ceil, floor
from typing import TypeVar

from rigc.analysis.leads.lead_status import comes_premade, status
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_routes import CableRoutes
from rigc.analysis.leads.lengths.lead_ends import tenths, whole_tenths
from rigc.analysis.leads.plug_uses import plugs_of_class, plugs_on_leads
from rigc.analysis.leads.stated_length import stated_length
from rigc.diagnostics.figures import plain
from rigc.facts.leads import LEAST_SLACK_MM, LONGEST_MORE_MM, LONGEST_SHARE, ROUNDED_TO_MM, SHORTEST_MM, SLACK_SHARE
from rigc.model.rig import Rig
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
Offers = dict[str, tuple[tuple[int, ...], Unknown]]
"""The premade lengths of a signal, ascending in tenths of a millimetre, and how they are told."""
_LEAST_SLACK = {signal: ours(fact, shown=TENTHS) for signal, fact in LEAST_SLACK_MM.items()}
_SHARE, _MOST_SHARE, _MOST_MORE = ours(SLACK_SHARE), ours(LONGEST_SHARE), ours(LONGEST_MORE_MM, shown=TENTHS)
_STEP_MM, _SHORTEST_MM = ours(ROUNDED_TO_MM), ours(SHORTEST_MM)
_SLACK_RULE = f"the larger of {plain(100 * SLACK_SHARE.value)} % of the route and the least slack of the class, and what the source adds"
_FINISHED_RULE = (
    f"finished = route + slack, rounded up to the next {plain(ROUNDED_TO_MM.value)} mm, "
    f"at least {plain(SHORTEST_MM.value)} mm"
)


class Length(Record):
    """The lengths of one lead, counted in tenths of a millimetre.

    `way` is the route from exit to exit, `slack` what is added by the rule and by the source. `shortest` is the shortest
    that will do (least slack and what the source adds), `longest` the longest that makes no coil, `made` the finished length
    from exit to exit. `cutting` is none where an end comes on a premade lead or is captive. `bought` is the next premade
    length, none where no stock length is long enough and where an end is soldered or captive, lacking where the stock has no
    list. `lies` is how long it will lie there: as it exists, the premade length if it is bought
    (one that is longer than any in stock is made to order), else finished. `premade_more` is how much longer the premade lead is
    than the one made here; None where none will do.
    """

    mark: str
    signal: str
    way: Figure
    slack: Figure
    shortest: Figure
    longest: Figure
    made: Figure
    cutting: AnyFigure | Answer
    bought: AnyFigure | Answer
    lies: Figure
    premade_more: Figure | None = None

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
    """The leads of one signal and the sums of their lengths in tenths of a millimetre. Leads without a route, cut or premade length
    count as nothing; where none has a cut or premade length, there is none. `plugs` are those on its leads, of a Y lead the one at its outlet once."""

    signal: str
    leads: Figure
    unrouted: tuple[str, ...]
    finished: Figure
    cut: Figure | Answer
    premade: Figure | Answer
    supplied: Figure
    plugs: Figure


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
    totals = {signal: _total(signal, board, lengths, plugs_of_class(signal, plugs)) for signal in signals}
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


def _offer(signal: str, lengths_mm: tuple[float, ...]) -> tuple[tuple[int, ...], Unknown]:
    listed = mentioned(f"premade {signal} leads in stock", ", ".join(map(plain, lengths_mm)), unit="mm")
    return tuple(map(tenths, lengths_mm)), listed


def _length(rig: Rig, lead: Lead, way: Figure, there: AnyFigure | None, offers: Offers) -> Length:
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
    finished = _finished(mark, way, slack)
    bought = _bought(rig, lead, shortest, offers)
    return Length(
        mark,
        lead.signal,
        way,
        slack,
        shortest,
        longest,
        finished,
        _cutting(rig, lead, finished),
        bought,
        _lies(rig, lead, finished, bought, there),
        _premade_more(mark, finished, bought),
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


def _lies(rig: Rig, lead: Lead, finished: Figure, bought: AnyFigure | Answer, there: AnyFigure | None) -> Figure:
    """How long it will lie there."""
    if isinstance(there, Figure):
        value = chosen(there, "it exists")
    elif status(rig, lead) != "buy":
        value = chosen(finished, "it is made here")
    elif isinstance(bought, Figure):
        value = chosen(bought, "it is bought")
    else:
        value = chosen(finished, "it is bought; no stock length is long enough, so it is made to order")
    return known_figure(
        f"{lead.mark}.supplied",
        value,
        TENTHS,
        rule="the length of a lead that exists, else the next premade one where it is bought, else the finished one",
        source=PRACTICE,
        label=f"{lead.mark} as supplied",
    )


def _bought(rig: Rig, lead: Lead, shortest: Figure, offers: Offers) -> AnyFigure | Answer:
    """The next premade length."""
    name, signal = f"{lead.mark}.premade", rig.stock.premade_list(lead.signal)
    rule = "the shortest stock length that is at least the route and the least slack"
    if signal not in offers:
        nowhere = mentioned(f"a list of premade {signal} leads in stock", "none")
        return figure(name, nowhere, TENTHS, shortest, rule=rule, source=PRACTICE)
    offered, stock = offers[signal]
    soldered = any(plug is not None and rig.stock.plugs[plug].soldered for plug in lead.ends)
    if lead.captive is not None or soldered:
        because = f"an end is {'captive' if lead.captive is not None else 'soldered'}"
    elif not offered or shortest > offered[-1]:
        because = f"{shortest.text}, longer than any in stock"
    else:
        following = becomes(shortest, lambda each: next((length for length in offered if length >= each), offered[-1]))
        return known_figure(name, following, TENTHS, stock, rule=rule, source=PRACTICE)
    return Answer(name, "none", because, shortest, stock, rule=rule, source=PRACTICE)


def _cutting(rig: Rig, lead: Lead, finished: Figure) -> AnyFigure | Answer:
    """The finished length and what both plugs take in, if it is cut at the bench."""
    name, rule = f"{lead.mark}.cut", "cut = finished + what each plug takes in (cut-in)"
    plugs = [rig.stock.plugs[plug] for plug in lead.plugs or ()]
    wanted_ready = lead.premade or dict(rig.lead_wishes.cutting).get(lead.signal) == "premade"
    bare = [plug for plug in plugs if plug.cut_in_mm is None]
    if plugs and not bare and not wanted_ready:
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
    if lead.premade or comes_premade(rig, lead):
        kinds = [rig.stock.plugs[plug] for plug in dict.fromkeys(lead.ends) if plug is not None]
        ready = [mentioned(f"plug {kind.name}", "no cut-in", kind.declared) for kind in kinds if kind.cut_in_mm is None]
        return Answer(
            name,
            "premade",
            "it comes ready: nothing is cut",
            *(ready or (mentioned(lead.mark, "premade", lead.span),)),
            rule=rule,
            source=STATED,
        )
    kind = mentioned("a plug kind", f"{lead.start} -> {lead.end}", lead.span)
    return figure(name, kind, TENTHS, rule=rule, source=ARITHMETIC)


def _premade_more(mark: str, finished: Figure, bought: AnyFigure | Answer) -> Figure | None:
    if not isinstance(bought, Figure):
        return None
    return known_figure(
        f"{mark}.premade-more", bought - finished, TENTHS, rule="bought less made here", source=ARITHMETIC
    )


def _total(signal: str, leads: tuple[Lead, ...], lengths: dict[str, Length], plugs: Figure) -> Total:
    own = [lead for lead in leads if lead.signal == signal]
    routed = [lengths[lead.mark] for lead in own if lead.mark in lengths]
    unrouted = [lead for lead in own if lead.mark not in lengths]
    without = [mentioned(lead.mark, "no route", lead.span) for lead in unrouted]

    def together(field: str, parts: list[Figure]) -> Figure:
        return known_figure(
            f"{signal}.{field}",
            total_known(parts, without),
            TENTHS,
            rule=_SUM.format(field),
            source=ARITHMETIC,
        )

    def together_if_any(field: str, every: list[AnyFigure | Answer]) -> Figure | Answer:
        parts = [each for each in every if isinstance(each, Figure)]
        if parts:
            return together(field, parts)
        missing = f", without {', '.join(lead.mark for lead in unrouted)}" if unrouted else ""
        because = f"no lead of the class has one{missing}"
        return Answer(f"{signal}.{field}", "none", because, *without, rule=_SUM.format(field), source=ARITHMETIC)

    return Total(
        signal,
        known_figure(
            f"{signal}.leads",
            found(len(own), lambda: f"{', '.join(lead.mark for lead in own)}: {len(own)}"),
            COUNT,
            *(mentioned(lead.mark, f"{lead.start} -> {lead.end}", lead.span) for lead in own),
            rule="leads that stay on the board",
            source=ARITHMETIC,
        ),
        tuple(lead.mark for lead in unrouted),
        together("finished", [length.made for length in routed]),
        together_if_any("cut", [length.cutting for length in routed]),
        together_if_any("premade", [length.bought for length in routed]),
        together("supplied", [length.lies for length in routed]),
        plugs,
    )


COMPUTE = cable_lengths
