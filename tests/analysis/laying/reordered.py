"""A board -> the same board with its things, jacks, leads, wishes and partings in another order, and other names."""

from __future__ import annotations

import random

from rigc.analysis.laying.search.board import Board, End, Item


def reordered(board: Board, seed: int, named: str = "") -> tuple[Board, tuple[int, ...]]:
    """The board, and which of the old items each of its items is; `named` is put before all names."""
    dice = random.Random(seed)
    order = dice.sample(range(len(board.items)), len(board.items))
    number = {item: place for place, item in enumerate(order)} | {-1: -1}
    jacks = [dice.sample(range(len(each)), len(each)) for each in (item.shapes[0].sockets for item in board.items)]

    def end(old: End) -> End:
        socket = old.socket if old.item < 0 else jacks[old.item].index(old.socket)
        moved: End = old.replace(item=number[old.item], socket=socket)
        return moved

    def thing(item: int) -> Item:
        old = board.items[item]
        shapes = (each.replace(sockets=tuple(each.sockets[jack] for jack in jacks[item])) for each in old.shapes)
        made: Item = old.replace(name=named + old.name, shapes=tuple(shapes))
        return made

    def things(old: tuple[int, ...]) -> tuple[int, ...]:
        return tuple(number[item] for item in old)

    links = [link.replace(start=end(link.start), end=end(link.end)) for link in board.links]
    wishes = [wish.replace(items=things(wish.items), others=things(wish.others)) for wish in board.wishes]
    partings = [each.replace(one=number[each.other], other=number[each.one]) for each in board.partings]
    made: Board = board.replace(
        items=tuple(thing(item) for item in order),
        links=tuple(dice.sample(links, len(links))),
        wishes=tuple(dice.sample(wishes, len(wishes))),
        partings=tuple(dice.sample(partings, len(partings))),
    )
    return made, tuple(order)
