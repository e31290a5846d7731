"""Board: what a search for places knows, as numbers alone, all lengths in whole tenths of a millimetre."""

from __future__ import annotations

from rigc.record import Record

Spot = tuple[int, int]
Area = tuple[int, int, int, int]  # left, front, right, rear


class Socket(Record):
    """A jack with the plug in it: its point on the outline, the normal of its face, where its cable leaves (`exit`
    outwards), what the plug takes. `needs` is what it and the bend of its cable need outwards, 0 where no plug is; `low` and `high` are its levels over the base."""

    x: int
    y: int
    dx: int
    dy: int
    exit: int
    needs: int
    width: int
    low: int
    high: int
    above: int
    jack: str = ""


class Shape(Record):
    """A thing turned by so many degrees: its outline, its sockets, its foot switches and knobs, all spots that a foot presses, the
    rooms before its vents in which nothing may stand, the spots to which a hand must come, each with what a length from the nearest
    edge costs, in percent, and the `strips` under it: front, rear and how far across each."""

    turned: int
    width: int
    depth: int
    sockets: tuple[Socket, ...] = ()
    switches: tuple[Spot, ...] = ()
    knobs: tuple[Spot, ...] = ()
    pressed: tuple[Spot, ...] = ()
    vents: tuple[Area, ...] = ()
    at_hand: tuple[tuple[int, int, int], ...] = ()
    strips: tuple[tuple[int, int, int], ...] = ()


class Item(Record):
    """A thing to place, in the ways it may be turned; a `fixed` one stays at that corner.

    `use` is how much it is worth to have its front edge near the player, in hundredths of a length, below 0 its rear edge far from him; `grams` is None where
    its mass is not known. On a deck with rails so much of its strips must lie on tape as `grip` says, in
    hundredths of a square millimetre. `beneath` is what it costs
    a lead to pass beneath one that hangs, None where it can't. `rearmost` tells for each height at which it may stand how far back its rear
    may be before it is too tall for the case (none: anywhere), `foremost` how far back at most the front edge may be of what a foot must not reach
    over anything for. A foot tilts a `treadle`.
    """

    name: str
    shapes: tuple[Shape, ...]
    height: int
    under: bool = False
    fixed: Spot | None = None
    use: int = 0
    grams: int | None = None
    grip: int = 0
    beneath: int | None = None
    rearmost: tuple[tuple[int, int], ...] = ()
    foremost: int | None = None
    treadle: bool = False


class End(Record):
    """An end of a link: a socket of an item, or (item -1) a point of the deck at a panel."""

    item: int
    socket: int = 0
    x: int = 0
    y: int = 0


class Link(Record):
    """A lead between two ends. `share` is the weight of its length in percent; `run` is `over`, `under` or empty;
    `onward` where sound goes from start to end; `lanes` are the lines in y where it may run below the deck (none: any);
    `existing` is how long it is where it exists already; `back` is what a length costs that it goes from left to right, in percent.
    Its drop lines are the nearest, or those `through` which it shall go (one for both ends, or one for each), or, of a `joint` choice,
    those by which it is shortest."""

    mark: str
    signal: str
    start: End
    end: End
    share: int = 100
    run: str = ""
    more: int = 0
    onward: bool = True
    lanes: tuple[int, ...] = ()
    existing: int | None = None
    back: int = 0
    joint: bool = False
    through: tuple[int, ...] = ()


class Wish(Record):
    """A wish for items, of a kind of `rigc.model.deck.Hint`, whose `word` it has; `others` are items, too. `amount` is the gap or the
    distance asked for (None: any), of `near_edge` what is kept free there, of `stands` how much the room there lacks. `front` and `rear` are the ends of a tier that is asked for."""

    kind: str
    items: tuple[int, ...]
    word: str = ""
    others: tuple[int, ...] = ()
    amount: int | None = None
    front: int = 0
    rear: int = 0


class Parting(Record):
    """Two items that must be so far apart, seen from above, on whichever side of the deck; 0: not one over the other."""

    one: int
    other: int
    gap: int


class Tier(Record):
    """A raised part of the deck over its whole width."""

    front: int
    rear: int
    raised: int


class Board(Record):
    """The task: a deck, what to put on and under it, and what joins them.

    `aside` and `behind`: two switches must not be nearer than the one in x and the other in y at once. `apart` is left
    between bodies, `air` round plugs, `knob` from a knob to a switch. `step` is the grid of all corners. `feet` is where the feet stand in from the
    edges; `grams` is the deck's mass, and `weighed` says whether every mass is known.
    `passing` is what it costs, in hundredths of a length, where a lead is longer for a covered drop line or has no way. What is `kept_free` is so on both sides of the deck, what is `reserved` on top.
    `unbalanced` is what a length costs that the board balances outside its feet, `gap` one by which the gaps in a line of front edges differ, `centring` one by which such a line is off the middle, in percent; `line` is what each such line costs, in hundredths of a length, and
    `crossing` what each point does at which a lead with sound and one of power cross. What is chosen beside places costs the same in all layouts of a
    board: each length of the width and depth, `spared` in all, of what stands on top and could hang `on_deck` percent, and each of the `plugs`
    of another kind than is usual `plug` hundredths of a length. `shoe` is how far from a treadle beside it the middle of a foot shall be, and
    `shoe_share` what each length costs that it is nearer, in percent.
    """

    width: int
    depth: int
    thickness: int
    lines: tuple[int, ...]
    items: tuple[Item, ...]
    links: tuple[Link, ...] = ()
    wishes: tuple[Wish, ...] = ()
    kept_free: tuple[Area, ...] = ()
    reserved: tuple[Area, ...] = ()
    tiers: tuple[Tier, ...] = ()
    tapes: tuple[tuple[int, int], ...] = ()
    tapes_below: tuple[tuple[int, int], ...] = ()
    aside: int = 0
    behind: int = 0
    apart: int = 0
    air: int = 0
    step: int = 10
    feet: int = 0
    grams: int = 0
    weighed: bool = False
    passing: int = 0
    knob: int = 0
    partings: tuple[Parting, ...] = ()
    unbalanced: int = 0
    line: int = 0
    gap: int = 0
    centring: int = 0
    shoe: int = 0
    shoe_share: int = 0
    crossing: int = 0
    spared: int = 0
    on_deck: int = 0
    plugs: int = 0
    plug: int = 0

    @property
    def loose(self) -> Board:
        """The same, on which nothing has to lie on rails or within a foot's reach of the front edge."""
        made: Board = self.replace(items=tuple(item.replace(grip=0, foremost=None) for item in self.items))
        return made

    @property
    def chosen(self) -> int:
        """What is chosen beside places costs so much, in hundredths of a length."""
        return self.spared * self.on_deck + self.plugs * self.plug
