"""Routes -> the length of each lead: with slack, rounded, as it is cut, and as it is bought; totals by signal."""

from __future__ import annotations

from rigc.analysis.cables.lead_ends import tenths
from rigc.analysis.cables.lead_facts import leans_on_assumed
from rigc.analysis.cables.lead_status import status
from rigc.analysis.computations.cable_routes import CableRoutes
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.plug_uses import plugs_of_class, plugs_on_leads
from rigc.facts.leads import LEAST_SLACK_MM, LONGEST_MORE_MM, LONGEST_SHARE, ROUNDED_TO_MM, SHORTEST_MM, SLACK_SHARE
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Figure

_STEP = round(10 * ROUNDED_TO_MM.value)


class Length(Record):
    """The lengths of one lead, in whole tenths of a millimetre.

    `route` is the way from exit to exit, `slack` what is added by the rule and by the source. `least` is the shortest
    that will do (least slack and what the source adds), `most` the longest that makes no coil, `finished` the length
    from exit to exit as made. `cut` is None where an end comes on a premade lead or is captive. `premade` is None where
    no stock length is long enough, where an end is soldered or captive, and where the stock has no list: then
    `premade_listed` is False. `supplied` is how long it will lie there: as it exists, the premade length if it is bought
    (one that is longer than any in stock is made to order), else finished. `assumed`: a fact behind the route or the cut length is assumed.
    """

    mark: str
    signal: str
    route: int
    slack: int
    least: int
    most: int
    finished: int
    cut: int | None
    premade: int | None
    premade_listed: bool
    assumed: bool
    supplied: int

    @property
    def longest_kept(self) -> int:
        """The longest lead that stays where it lies: one that is no coil, or that is no longer than the one supplied."""
        return max(self.most, self.supplied)

    @property
    def premade_more(self) -> int | None:
        """How much longer the premade lead is than the one made here; None if no premade one will do."""
        return None if self.premade is None else self.premade - self.finished


class Total(Record):
    """The sums of one signal in tenths of a millimetre; leads without a route, cut or premade length count as nothing. `plugs` are
    those on its leads, of a Y lead the one at its outlet once."""

    signal: str
    leads: int
    unrouted: tuple[str, ...]
    finished: int
    cut: int
    premade: int
    supplied: int
    plugs: Figure


class CableLengths(Record):
    """Lengths by lead number (only of leads with a route), and totals by signal in the order of the leads."""

    lengths: dict[str, Length]
    totals: dict[str, Total]


def cable_lengths(rig: Rig, leads: Leads, routes: CableRoutes) -> CableLengths:
    """Reckons every routed lead."""
    lengths: dict[str, Length] = {}
    for lead in leads.all:
        route = routes.routes.get(lead.mark)
        if route is not None and route.length is not None:
            lengths[lead.mark] = _length(rig, lead, route.length)
    board = tuple(lead for lead in leads.all if not lead.stage)
    signals = dict.fromkeys(lead.signal for lead in board)
    plugs = plugs_on_leads(rig, leads)
    return CableLengths(
        lengths, {signal: _total(signal, board, lengths, plugs_of_class(signal, plugs)) for signal in signals}
    )


def rule_slack(signal: str, route: int) -> int:
    """The slack that a route of so many tenths of a millimetre gets by the rule, in tenths, part ones counted as whole."""
    return max(tenths(LEAST_SLACK_MM[signal].value), slack_share(route))


def slack_share(route: int) -> int:
    """The share of a route that is added as slack, in tenths, part ones counted as whole."""
    return -(-route * round(100 * SLACK_SHARE.value) // 100)


def finished_length(route_and_slack: int) -> int:
    """A finished length in tenths: rounded up to the next whole step, never below the shortest that can be made."""
    return max(-(-route_and_slack // _STEP) * _STEP, tenths(SHORTEST_MM.value))


def longest_length(route: int) -> int:
    """The longest lead for a route before the rest becomes a coil, all in tenths, part ones left off."""
    return route * round(100 * LONGEST_SHARE.value) // 100 + tenths(LONGEST_MORE_MM.value)


def _length(rig: Rig, lead: Lead, route: int) -> Length:
    added = 0 if lead.slack_mm is None else tenths(lead.slack_mm.value)
    slack = rule_slack(lead.signal, route) + added
    least = route + tenths(LEAST_SLACK_MM[lead.signal].value) + added
    finished = finished_length(route + slack)
    offered = _offered(rig, lead.signal)
    premade = next((length for length in offered or () if length >= least), None)
    if _fixed_end(rig, lead):
        premade = None
    return Length(
        lead.mark,
        lead.signal,
        route,
        slack,
        least,
        longest_length(route) + added,
        finished,
        _cut(rig, lead, finished),
        premade,
        offered is not None,
        leans_on_assumed(rig, lead),
        _supplied(rig, lead, finished, premade),
    )


def _supplied(rig: Rig, lead: Lead, finished: int, premade: int | None) -> int:
    if lead.existing_mm is not None:
        return tenths(lead.existing_mm.value)
    bought = premade if status(rig, lead) == "buy" else None
    return finished if bought is None else bought


def _offered(rig: Rig, signal: str) -> tuple[int, ...] | None:
    """The premade lengths of a signal, ascending."""
    offered = rig.stock.premade_mm.get(rig.stock.premade_list(signal))
    return None if offered is None else tuple(sorted(tenths(length) for length in offered))


def _fixed_end(rig: Rig, lead: Lead) -> bool:
    return lead.captive is not None or any(plug is not None and rig.stock.plugs[plug].soldered for plug in lead.ends)


def _cut(rig: Rig, lead: Lead, finished: int) -> int | None:
    """The finished length and what both plugs take in; None if it is not cut at the bench."""
    plugs = lead.plugs
    bought = lead.premade or dict(rig.lead_wishes.cutting).get(lead.signal) == "premade"
    if plugs is None or bought:
        return None
    cut_in = [rig.stock.plugs[plug].cut_in_mm for plug in plugs]
    known = [tenths(length.value) for length in cut_in if length is not None]
    return finished + sum(known) if len(known) == len(cut_in) else None


def _total(signal: str, leads: tuple[Lead, ...], lengths: dict[str, Length], plugs: Figure) -> Total:
    mine = [lead.mark for lead in leads if lead.signal == signal]
    known = [lengths[mark] for mark in mine if mark in lengths]
    return Total(
        signal,
        len(mine),
        tuple(mark for mark in mine if mark not in lengths),
        sum(length.finished for length in known),
        sum(length.cut or 0 for length in known),
        sum(length.premade or 0 for length in known),
        sum(length.supplied for length in known),
        plugs,
    )


COMPUTE = cable_lengths
