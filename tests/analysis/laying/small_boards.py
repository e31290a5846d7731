"""Boards of a few invented units with two jacks each, dealt by seeded dice: chains in which each plays into the next."""

from __future__ import annotations

import random
from typing import Any

from rigc.analysis.laying.search.board import Board, End, Item, Link, Parting, Shape, Socket, Tier, Wish

SIDES = {"left": (-1, 0), "right": (1, 0), "front": (0, -1), "rear": (0, 1)}


def unit(name: str, width: int, depth: int, jacks: tuple[tuple[str, int], ...], height: int = 500, **more: Any) -> Item:
    """A unit with jacks (side, offset) in all four turns; plugs that stand out 15, are 16 wide, leave at 8 mm, at a height of 25 mm."""
    return Item(name, tuple(shape(width, depth, jacks, turned) for turned in (0, 90, 180, 270)), height, **more)


def shape(width: int, depth: int, jacks: tuple[tuple[str, int], ...], turned: int) -> Shape:
    """The unit turned counter-clockwise: each quarter takes a point (x, y) of a w x d body to (d - y, x)."""
    spots = []
    for side, offset in jacks:
        dx, dy = SIDES[side]
        spots.append((offset if dy else (0 if dx < 0 else width), offset if dx else (0 if dy < 0 else depth), dx, dy))
    for _ in range(turned // 90):
        spots = [(depth - y, x, -dy, dx) for x, y, dx, dy in spots]
        width, depth = depth, width
    sockets = (Socket(x, y, dx, dy, 80, 150, 160, 170, 330, 250) for x, y, dx, dy in spots)
    return Shape(turned, width, depth, tuple(sockets))


def dealt(seed: int, units: int, turning: bool = True) -> Board:
    """A board on a grid of 10 mm that is about half covered."""
    dice = random.Random(seed)
    items = []
    for number in range(units):
        width, depth = 100 * dice.randint(4, 6), 100 * dice.randint(5, 8)
        jacks = tuple(
            (side, 50 * dice.randint(3, (depth if SIDES[side][0] else width) // 50 - 3))
            for side in dice.sample(sorted(SIDES), 2)
        )
        made = unit(f"u{number}", width, depth, jacks)
        items.append(made if turning else made.replace(shapes=made.shapes[:1]))
    covered = sum(item.shapes[0].width * item.shapes[0].depth for item in items)
    width = 100 * dice.randint(17, 24)
    depth = -(-3 * covered // (2 * width) // 100) * 100 + 500
    links = tuple(
        Link(f"A{number}", "audio", End(number, 0), End(number + 1, 1), onward=False) for number in range(units - 1)
    )
    return Board(width, depth, 120, (depth // 2,), tuple(items), links, apart=0, air=20, step=100)


def of_some(board: Board, items: tuple[int, ...]) -> Board:
    """The board with these items alone, and nothing that joins them or is wished."""
    partings = tuple(
        each.replace(one=items.index(each.one), other=items.index(each.other))
        for each in board.partings
        if each.one in items and each.other in items
    )
    some: Board = board.replace(items=tuple(board.items[n] for n in items), links=(), wishes=(), partings=partings)
    return some


def crowded(seed: int) -> Board:
    """A dealt board, every other one with all that the rules may ask of one: parts that are kept free, a tier, tapes, partings, knobs, feet."""
    board = dealt(seed, 3 + seed % 6, seed % 2 == 0)
    if seed < 6:
        return board
    items = tuple(
        item.replace(use=(40, -20, 0)[number % 3], grams=300 + 50 * number, grip=150 * (number % 2), under=number == 2)
        for number, item in enumerate(board.items)
    )
    spots = tuple(
        item.replace(shapes=tuple(each.replace(switches=((200, 100),), pressed=((200, 100),), knobs=((100, 400),),
        at_hand=((each.width, 200, 100),), strips=((50, each.depth - 50, 1),)) for each in item.shapes))
        for item in items
    )  # fmt: skip
    links = tuple(link.replace(joint=number % 2 == 1, back=5, onward=True) for number, link in enumerate(board.links))
    made: Board = board.replace(
        items=spots,
        links=links,
        width=board.width + 300,
        depth=board.depth + 400,
        kept_free=((0, 0, 200, 300),),
        reserved=((500, board.depth - 200, 800, board.depth),),
        tiers=(Tier(board.depth - 600, board.depth + 400, 300),) if seed % 3 == 0 else (),
        tapes=((0, 400), (700, 1100), (1400, 1800)),
        partings=(Parting(0, 1, 350),),
        aside=500,
        behind=400,
        apart=30,
        knob=250,
        feet=200,
        grams=2000,
        weighed=True,
        passing=20_000,
        unbalanced=1000,
        gap=2,
        line=3000,
        centring=10,
        crossing=1000,
    )
    return made


def panelled(seed: int) -> Board:
    """A board of 5 to 11 units with what the others have not: leads to a panel, of several sorts and stated ways, a thing that stays, wishes, a
    unit that hangs and beneath which leads may pass, one that must not stand behind others, one that is too tall in the rear, warm air, rails below."""
    count = (5, 9, 10, 11)[seed % 4]
    board = dealt(seed, count, seed % 2 == 1)
    width, depth = board.width + 300, board.depth + 400

    def other(number: int, item: Item) -> Item:
        vents = item.replace(
            shapes=tuple(each.replace(vents=((each.width, 100, each.width + 80, 200),)) for each in item.shapes)
        )
        changed: dict[int, Item] = {
            0: item.replace(foremost=600, shapes=tuple(each.replace(pressed=((200, 100),)) for each in item.shapes)),
            1: item.replace(
                under=True,
                beneath=150,
                grip=120,
                shapes=tuple(each.replace(strips=((50, each.depth - 50, 1),)) for each in item.shapes),
            ),
            2: item.replace(fixed=(width - 700, depth - 900), shapes=item.shapes[:1]),
            3: item.replace(rearmost=((0, depth - 300),), use=20),
            4: vents,
        }
        return changed.get(number, item)

    items = tuple(other(number, item) for number, item in enumerate(board.items))
    ways: tuple[dict[str, Any], ...] = (
        {"run": "under", "more": 120}, {"signal": "dc", "share": 50}, {"run": "over"}, {"through": (depth // 2,)}, {"lanes": (depth // 3,), "joint": True},
        {"existing": 700, "back": 10, "onward": True},
    )  # fmt: skip
    links = tuple(link.replace(**ways[number % len(ways)]) for number, link in enumerate(board.links))
    links += (
        Link("A90", "audio", End(-1, 0, 0, depth), End(0, 1)),
        Link("A91", "audio", End(count - 1, 0), End(-1, 0, width, depth), run="under"),
    )
    wishes = (Wish("row", (3,), "front"), Wish("near_edge", (4,), "left", (), 50), Wish("beside", (0,), "", (4,), 100))
    made: Board = board.replace(
        width=width, depth=depth, lines=(depth // 2, depth - 300), items=items, links=links, wishes=wishes, tapes_below=((100, 700),),
        apart=20, passing=30_000, unbalanced=500, line=2000, crossing=2000, feet=150, grams=2500, spared=300, on_deck=40, plugs=2, plug=700,
    )  # fmt: skip
    return made
