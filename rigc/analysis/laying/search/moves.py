"""Layout and dice -> a change to try: meet a wish, shift, align, set beside, exchange, turn, make room in a row, reorder a row."""

from __future__ import annotations

from math import log

from rigc.analysis.laying.search.layout import Change, Layout
from rigc.analysis.laying.wishes.wished import missed

_FACTOR, _ADDED, _MASK = 6364136223846793005, 1442695040888963407, (1 << 64) - 1  # constants: Knuth, MMIX, from memory


_SIZES = 64
_READINESS = tuple(round(-1000 * log((2 * each + 1) / (2 * _SIZES))) for each in range(_SIZES))


class Dice:
    """Numbers that look thrown; the same seed gives the same ones for ever."""

    def __init__(self, seed: int) -> None:
        self._state = seed & _MASK
        self.below(2)

    def below(self, sides: int) -> int:
        """A number from 0 up to, not including, `sides`."""
        self._state = (self._state * _FACTOR + _ADDED) & _MASK
        return (self._state >> 33) * sides >> 31

    def readiness(self) -> float:
        """How many times the heat a worse layout may cost more: the less, the likelier."""
        return _READINESS[self.below(_SIZES)] / 1000


_STRIDES = (1, 2, 3, 5, 8, 13, 21, 34, 55)  # in steps of the grid
_WISHED = 8  # while wishes are missed, one change in so many is made for one of them
_ONE_ROW = 300  # fronts that are no further apart count as one row when a row is reordered


def some_change(layout: Layout, free: tuple[int, ...], dice: Dice) -> list[Change]:
    """A change of one or more free items; empty where the dice fell on one that cannot be."""
    if layout.missed and not dice.below(_WISHED):
        return _wished(layout, free, dice)
    item = free[dice.below(len(free))]
    kind = dice.below(16)
    if kind < 1:
        return _anywhere(layout, item, dice)
    if kind < 4:
        return _shifted(layout, item, dice)
    if kind < 5:
        return _aligned(layout, item, free, dice)
    if kind < 9:
        return _beside(layout, item, dice)
    if kind < 12:
        return _exchanged(layout, item, free, dice)
    if kind < 13:
        return _turned(layout, item, dice)
    if kind < 14:
        return _row_shifted(layout, item, free, dice)
    return _reordered(layout, item, free, dice)


def pushed(layout: Layout, item: int, x: int, y: int, shape: int, way: tuple[int, int], other: int) -> tuple[int, int]:
    """Moves a place on in one direction until another item is not in the way; gives up after a few pushes."""
    step = layout.board.step
    for _ in range(6):
        short = layout.between(item, (x, y, shape), other, layout.at[other])
        if short <= 0:
            break
        short = -(-short // step) * step
        x, y = x + way[0] * short, y + way[1] * short
    return x, y


def _on_grid(layout: Layout, length: int) -> int:
    step = layout.board.step
    return (length + step // 2) // step * step


def _stride(layout: Layout, dice: Dice) -> int:
    """So far to one side or the other, but not from one end of the deck to the other."""
    board = layout.board
    most = max(1, max(board.width, board.depth) // (3 * board.step))
    return min(_STRIDES[dice.below(len(_STRIDES))], most) * board.step * (1 if dice.below(2) else -1)


def _anywhere(layout: Layout, item: int, dice: Dice) -> list[Change]:
    """To any place on the deck, in any of its turns."""
    board, shape = layout.board, dice.below(len(layout.solids[item]))
    solid = layout.solids[item][shape]
    columns, rows = (
        max(1, (room - size) // board.step + 1)
        for room, size in ((board.width, solid.width), (board.depth, solid.depth))
    )
    return [(item, dice.below(columns) * board.step, dice.below(rows) * board.step, shape)]


def _shifted(layout: Layout, item: int, dice: Dice) -> list[Change]:
    x, y, shape = layout.at[item]
    far = _stride(layout, dice)
    along = dice.below(3)
    return [(item, x + (far if along != 1 else 0), y + (far if along == 1 else 0), shape)]


def _aligned(layout: Layout, item: int, free: tuple[int, ...], dice: Dice) -> list[Change]:
    """An item's front edge goes into the line of another thing's, alone or with all that stand in its line."""
    items, front = layout.board.items, layout.at[item][1]
    line = layout.at[dice.below(len(items))][1]
    if line == front:
        return []
    together = dice.below(2)
    moved = (
        [item]
        if not together
        else [each for each in free if layout.at[each][1] == front and items[each].under == items[item].under]
    )
    return [(each, layout.at[each][0], line, layout.at[each][2]) for each in moved]


def _wished(layout: Layout, free: tuple[int, ...], dice: Dice) -> list[Change]:
    """A thing of a wish that is missed goes to an edge, into the middle or the end of a row, onto the tier that is asked for, or into line
    with, beside or mirroring what the wish names."""
    board = layout.board
    wishes = [wish for wish in board.wishes if missed(board, wish, layout.at)]
    wish = wishes[dice.below(len(wishes))]
    named = [item for item in (*wish.items, *wish.others) if item in free]
    if not named:
        return []
    item = named[dice.below(len(named))]
    shape, gap, third = dice.below(len(layout.solids[item])), wish.amount or 0, board.depth // 3
    width, depth = layout.solids[item][shape].width, layout.solids[item][shape].depth
    xs = [layout.at[item][0], 0, board.width - width, (board.width - width) // 2]
    ys = [layout.at[item][1], 0, board.depth - depth, third, board.depth - third - depth]
    ys += [wish.front, wish.rear - depth] if wish.rear else []
    for other in sorted({*wish.items, *wish.others} - {item}):
        left, front, right, rear = layout.box(other)
        xs += [left, board.width - right, left - width - gap, right + gap]
        ys += [front, front - depth - gap, rear + gap]
    x, y = xs[dice.below(len(xs))], ys[dice.below(len(ys))]
    return [(item, max(0, min(x, board.width - width)), max(0, min(y, board.depth - depth)), shape)]


def _beside(layout: Layout, item: int, dice: Dice) -> list[Change]:
    """Next to another thing, on one of its sides, as near as plugs allow; in line with it more often than not."""
    if len(layout.board.items) < 2:
        return []
    other = dice.below(len(layout.board.items))
    if other == item or layout.board.items[other].under != layout.board.items[item].under:
        return []
    shape = layout.at[item][2] if dice.below(4) else dice.below(len(layout.solids[item]))
    solid, (left, front, right, rear) = layout.solids[item][shape], layout.box(other)
    side, line = dice.below(4), dice.below(3)
    if side < 2:
        x = left - solid.width if side == 0 else right
        y = (front, rear - solid.depth, layout.at[item][1])[line]
        way = (-1 if side == 0 else 1, 0)
    else:
        y = front - solid.depth if side == 2 else rear
        x = (left, right - solid.width, layout.at[item][0])[line]
        way = (0, -1 if side == 2 else 1)
    step = layout.board.step
    x, y = (
        (-(-x // step) * step if way[0] >= 0 else x // step * step),
        (-(-y // step) * step if way[1] >= 0 else y // step * step),
    )
    x, y = pushed(layout, item, x, y, shape, way, other)
    return [(item, x, y, shape)]


def _exchanged(layout: Layout, item: int, free: tuple[int, ...], dice: Dice) -> list[Change]:
    """Two things change places, in line with the fronts and the middles that were there."""
    other = free[dice.below(len(free))]
    if other == item or layout.board.items[other].under != layout.board.items[item].under:
        return []
    (x1, y1, s1), (x2, y2, s2) = layout.at[item], layout.at[other]
    by = 0 if dice.below(2) else (layout.solid(item).width - layout.solid(other).width) // 2
    return [(item, _on_grid(layout, x2 - by), y2, s1), (other, _on_grid(layout, x1 + by), y1, s2)]


def _turned(layout: Layout, item: int, dice: Dice) -> list[Change]:
    shapes = layout.solids[item]
    if len(shapes) < 2:
        return _shifted(layout, item, dice)
    x, y, shape = layout.at[item]
    other = (shape + 1 + dice.below(len(shapes) - 1)) % len(shapes)
    x += (shapes[shape].width - shapes[other].width) // 2
    y += (shapes[shape].depth - shapes[other].depth) // 2
    return [(item, _on_grid(layout, x), _on_grid(layout, y), other)]


def _row_of(layout: Layout, item: int, free: tuple[int, ...]) -> list[int]:
    """The free things whose fronts are about in line with an item's, from left to right."""
    front, under = layout.at[item][1], layout.board.items[item].under
    row = [
        each for each in free if layout.board.items[each].under == under and abs(layout.at[each][1] - front) <= _ONE_ROW
    ]
    return sorted(row, key=lambda each: (layout.at[each][0], each))


def _row_shifted(layout: Layout, item: int, free: tuple[int, ...], dice: Dice) -> list[Change]:
    """An item and all of its row to one side of it move together, or the whole row to the front or rear."""
    row = _row_of(layout, item, free)
    far = _stride(layout, dice)
    kind = dice.below(3)
    if kind == 0:
        return [(each, layout.at[each][0], layout.at[each][1] + far, layout.at[each][2]) for each in row]
    place = row.index(item)
    return [
        (each, layout.at[each][0] + far, layout.at[each][1], layout.at[each][2])
        for each in (row[place:] if kind == 1 else row[: place + 1])
    ]


def _reordered(layout: Layout, item: int, free: tuple[int, ...], dice: Dice) -> list[Change]:
    """An item goes to another place in a row, its own or another thing's; that row closes up from the left or from the right."""
    target = free[dice.below(len(free))]
    if layout.board.items[target].under != layout.board.items[item].under:
        return []
    row = [each for each in _row_of(layout, target, free) if each != item]
    place = dice.below(len(row) + 1)
    order = [*row[:place], item, *row[place:]]
    everything = [*row, item]
    rightwards = dice.below(2) == 0
    start = (
        min(layout.at[each][0] for each in everything)
        if rightwards
        else max(layout.box(each)[2] for each in everything)
    )
    return _closed_up(layout, order, start, rightwards, layout.at[target][1], item)


def _closed_up(layout: Layout, order: list[int], start: int, rightwards: bool, front: int, item: int) -> list[Change]:
    """Things one beside the other in that order, each as near to the last as their plugs allow."""
    kept = layout.at
    layout.at = list(kept)
    changes: list[Change] = []
    edge, last = start, -1
    for each in order if rightwards else order[::-1]:
        shape, solid = kept[each][2], layout.solid(each)
        y = front if each == item else kept[each][1]
        x = edge if rightwards else edge - solid.width
        if last >= 0:
            x, y = pushed(layout, each, x, y, shape, (1 if rightwards else -1, 0), last)
        x = _on_grid(layout, x)
        changes.append((each, x, y, shape))
        layout.at[each] = (x, y, shape)
        edge, last = (x + solid.width if rightwards else x), each
    layout.at = kept
    return changes
