"""A rig whose things have places -> what its layout costs, term by term: the very sum that the search for places makes least."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.unplaced import as_stated, own_deck
from rigc.analysis.laying.board_of_rig import board_of
from rigc.analysis.laying.neat import lines, off_middle, uneven
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.ground import At, far_from_hand
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.lengths import backwards
from rigc.analysis.laying.use import uses
from rigc.analysis.laying.weights import price_per_metre, weights
from rigc.analysis.leads.leads import Leads
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.things import Thing
from rigc.record import Record


class LayoutTerm(Record):
    """A term: what is counted, in tenths of a millimetre or, of lines and rules, in pieces; how each of these weighs, in percent (None: not
    all alike); what that costs, in hundredths of tenths of a millimetre of audio lead; and what it costs in money, where that is known."""

    name: str
    counted: int
    share: int | None
    cost: int
    pieces: bool = False
    money: tuple[float, str] | None = None


class Objective(Record):
    """All terms of a layout, and what it costs in all."""

    terms: tuple[LayoutTerm, ...]

    @property
    def cost(self) -> int:
        """In hundredths of tenths of a millimetre of audio lead."""
        return sum(term.cost for term in self.terms)


def objective(rig: Rig, leads: Leads) -> Objective | None:
    """Of the layout on the rig's own deck, chosen places or stated ones; None without a deck whose size is known."""
    deck = own_deck(rig)
    if deck is None or deck.width_mm is None or deck.depth_mm is None:
        return None
    board, at = board_and_places(rig, deck, leads)
    return Objective(tuple(terms(rig, board, at)))


def board_and_places(rig: Rig, deck: Deck, leads: Leads) -> tuple[Board, list[At]]:
    """The board with what has a chosen place free, and where all stands."""
    chosen = [name for name, place in rig.places.items() if place.chosen]
    things = tuple(thing for name in chosen if isinstance(thing := rig.things[name], Thing))
    sides = {name: rig.places[name].under for name in chosen}
    board = board_of(as_stated(rig), deck, leads, things, sides=sides)
    at: list[At] = []
    for item in board.items:
        place = rig.places[item.name]
        shape = next((number for number, each in enumerate(item.shapes) if each.turned == place.turned), 0)
        at.append((round(10 * place.x_mm), round(10 * place.y_mm), shape))
    return board, at


def terms(rig: Rig, board: Board, at: list[At]) -> Iterator[LayoutTerm]:
    """Each term of the cost of a layout; together they are `Layout.cost`."""
    layout, weighed = Layout(board, at), weights(rig)
    runs, stood = layout.runs(), [layout.ground.stand(item, each) for item, each in enumerate(at)]
    signals = dict.fromkeys(link.signal for link in board.links)
    for signal in sorted(signals, key=lambda each: (each != "audio", each)):
        mine = [(link, run) for link, run in zip(board.links, runs, strict=True) if link.signal == signal]
        length = sum(run[0] for _, run in mine)
        price = price_per_metre(rig, signal)
        money = None if price is None else (length / 10_000 * price[0], price[1])
        cost = sum(run[0] * link.share for link, run in mine)
        yield LayoutTerm(f"{signal} leads", length, mine[0][0].share, cost, money=money)
    broken = sum(run[1] for run in runs)
    if broken:
        yield LayoutTerm("rules that leads break", broken, None, broken * board.passing, pieces=True)
    back = [backwards(link, stood) for link in board.links]
    far = sum(
        max(0, at[link.end.item][0] - at[link.start.item][0])
        for link in board.links
        if link.onward and link.start.item >= 0 and link.end.item >= 0
    )
    yield LayoutTerm("onward", far, weighed["onward"], sum(back))
    yield from _reach(rig, board, at, weighed)
    lacks = layout.pinched
    yield LayoutTerm("beside treadle", lacks, weighed["beside treadle"], lacks * board.shoe_share)
    near = [each for item, there in enumerate(at) for each in far_from_hand(board, item, there)]
    shares = {share for _, share in near} or {weighed["at hand"]}
    share = shares.pop() if len(shares) == 1 else None
    yield LayoutTerm("at hand", sum(far for far, _ in near), share, sum(far * each for far, each in near))
    if not board.weighed:
        off = layout.outside
        yield LayoutTerm("balance", off, weighed["balance"], off * board.unbalanced)
    count = lines(board, at, range(len(at)))
    yield LayoutTerm("front lines", count, weighed["front lines"], count * board.line, pieces=True)
    gaps = uneven(board, at)
    yield LayoutTerm("gaps", gaps, weighed["gaps"], gaps * board.gap)
    off_centre = off_middle(board, at)
    yield LayoutTerm("centring", off_centre, weighed["centring"], off_centre * board.centring)
    met = layout.crossings
    yield LayoutTerm("crossings", met, weighed["crossings"], met * board.crossing, pieces=True)
    yield LayoutTerm("on deck", board.spared, weighed["on deck"], board.spared * board.on_deck)
    yield LayoutTerm("other plugs", board.plugs, weighed["other plugs"], board.plugs * board.plug, pieces=True)


def _reach(rig: Rig, board: Board, at: list[At], weighed: dict[str, int]) -> Iterator[LayoutTerm]:
    """What a foot works, by the deck before it; how much more that counts where presets stamp on it; and what lies behind the rest."""
    plain = uses(rig, {**weighed, "stamped": 0})
    fronts = [(item, front, item.use) for item, (_, front, _) in zip(board.items, at, strict=True) if item.use >= 0]
    trodden = [(front, plain[item.name], use) for item, front, use in fronts if item.name in plain]
    bare = sum(front for front, *_ in trodden)
    alike = all(least == weighed["bare deck"] for _, least, _ in trodden)
    share = weighed["bare deck"] if alike else None
    yield LayoutTerm("bare deck", bare, share, sum(front * least for front, least, _ in trodden))
    more = [(front, use - least) for front, least, use in trodden if use > least]
    stamped = sum(front for front, _ in more)
    yield LayoutTerm("stamped", stamped, None if more else weighed["stamped"], sum(front * use for front, use in more))
    behind = [
        (board.depth - y - item.shapes[shape].depth, -item.use)
        for item, (_, y, shape) in zip(board.items, at, strict=True)
        if item.use < 0
    ]
    yield LayoutTerm(
        "behind", sum(far for far, _ in behind), weighed["behind"], sum(far * share for far, share in behind)
    )
