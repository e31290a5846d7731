"""A state of the grounds -> rows of a drawing: each ground below the one that it hangs on, nearest the earth first."""

from __future__ import annotations

from rigc.analysis.ground.breaks import Break
from rigc.analysis.ground.states import GroundState, GroundSystem
from rigc.model.ways.ground_link import EARTH, GROUND, GroundLink, Pole
from rigc.record import Record


class TreeRow(Record):
    """A ground, or what is kept apart from it (`parted`), at its `indent`; `links` join it to the row `parent`.

    One child of a ground stands straight below it (`spine`), the others to the right. A ground that another part of the
    drawing shows already stands `again`.
    """

    pole: Pole | None
    indent: int
    parent: int | None
    spine: bool
    links: tuple[GroundLink, ...] = ()
    parted: Break | None = None
    again: bool = False


class Tree(Record):
    """The rows of one system, the links that close rings between two of them (as row, row, link), and what is earthed."""

    rows: tuple[TreeRow, ...]
    earthed: tuple[Pole, ...]
    closing: tuple[tuple[int, int, GroundLink], ...]


def system_tree(state: GroundState, system: GroundSystem, parted: tuple[Break, ...]) -> Tree:
    """The tree of shortest ways from an earthed ground of the system, or from its first."""
    between = _between(state, system)
    root = next((pole for pole in system.poles if pole[0] in system.earths and pole[1] == GROUND), system.poles[0])
    children = _children(root, between)
    rows: list[TreeRow] = []
    _lay(root, TreeRow(root, 0, None, True), children, between, parted, rows)
    at = {row.pole: number for number, row in enumerate(rows) if row.pole is not None}
    hung = {link for row in rows for link in row.links}
    closing = tuple(
        (at[link.ends[0]], at[link.ends[1]], link)
        for links in between.values()
        for link in links
        if link not in hung and link.ends[0] != link.ends[1]
    )
    earthed = tuple(link.other(EARTH) for link in state.links if EARTH in link.ends)
    return Tree(tuple(rows), earthed, closing)


_Between = dict[frozenset[Pole], list[GroundLink]]


def _between(state: GroundState, system: GroundSystem) -> _Between:
    here, between = set(system.poles), _Between()
    for link in state.links:
        if EARTH not in link.ends and link.ends[0] in here:
            between.setdefault(frozenset(link.ends), []).append(link)
    return between


def _children(root: Pole, between: _Between) -> dict[Pole, list[Pole]]:
    """Breadth first; below a ground those with the fewest below them come first, so that the longest way is the spine."""
    near: dict[Pole, list[Pole]] = {}
    for ends in between:
        for pole in sorted(ends):
            near.setdefault(pole, []).extend(other for other in sorted(ends) if other != pole)
    children: dict[Pole, list[Pole]] = {root: []}
    order = [root]
    for pole in order:
        for other in near.get(pole, ()):
            if other not in children:
                children[other] = []
                children[pole].append(other)
                order.append(other)
    weight = dict.fromkeys(order, 1)
    for pole in reversed(order):
        children[pole].sort(key=lambda child: weight[child])
        weight[pole] += sum(weight[child] for child in children[pole])
    return children


def _lay(
    pole: Pole,
    row: TreeRow,
    children: dict[Pole, list[Pole]],
    between: _Between,
    parted: tuple[Break, ...],
    rows: list[TreeRow],
) -> None:
    """Puts a ground and all below it; a stack, as chains may be long."""
    todo = [(pole, row)]
    while todo:
        here, each = todo.pop()
        own = len(rows)
        rows.append(each)
        if each.parted is not None or here is None:
            continue
        below: list[tuple[Pole, TreeRow]] = [
            (here, TreeRow(None, each.indent + 1, own, False, parted=cut))
            for cut in parted
            if (cut.port.thing, GROUND) == here
        ]
        for child in children[here]:
            spine = child == children[here][-1]
            links = between[frozenset((here, child))]
            alike = tuple(link for link in links if link.kind == links[0].kind)
            below.append((child, TreeRow(child, each.indent + (not spine), own, spine, alike)))
        todo += reversed(below)
