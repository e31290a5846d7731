"""A board with few free things -> how little the rest must cost once one of them stands at a place.

The links among the free things are thought to be a tree (what closes a ring is left out of the bounds). From its leaves
upwards, each place of a thing gets the least that the thing and all that hangs on it can cost: two that are linked are in
each other's way, but no others are.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from rigc.analysis.laying.search.board import Link
from rigc.analysis.laying.search.grid_places import Sites
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.lengths import ROW, Standing, finished, link_bound, under_route

Ranked = list[tuple[int, Standing]]  # with what it and the tree below it cost at least, the best first
Lean = dict[int, list[tuple[int, int]]]  # by x of the exit: (cost, way down) that no other pair undercuts in both


WEIGHED_EACH = 16  # so many places whose bounds alone are weighed take as long as one that is looked at


class Branch:
    """A free thing of the tree: the link to the one it hangs on (None: a root), and its places."""

    def __init__(self, item: int, parent: int, link: Link | None) -> None:
        self.item, self.parent, self.link = item, parent, link
        self.children: list[Branch] = []
        self.cost: dict[At, int] = {}  # of the thing and all below it, by place
        self.upward: dict[At, int] = {}  # of the link and all below it, by the parent's place
        self.ranked: Ranked = []
        self.rows: dict[int, Ranked] = {}
        self.pair: dict[tuple[int, int, int, int], int] = {}  # what the link costs over the deck by shapes and distance
        self.below: list[tuple[int, tuple[int, int], list[Standing]]] = []  # cost, (x, way down), places
        self.least_down = 0


class TreeBounds:
    """The branches in the order in which they are laid, each after the one it hangs on; `looks` counts what was weighed."""

    def __init__(self, layout: Layout, free: tuple[int, ...], sites: Sites) -> None:
        self.layout, self.board, self.sites, self.looks = layout, layout.board, sites, 0
        self.free = set(free)
        self.standing = [sites.site(item, at) for item, at in enumerate(layout.at)]
        self.branches = self._grown(free)
        for branch in reversed(self.branches):
            self._weigh(branch)

    def _grown(self, free: tuple[int, ...]) -> list[Branch]:
        found: dict[int, Branch] = {}
        for root in free:
            if root not in found:
                found[root] = Branch(root, -1, None)
                self._grow(found[root], found)
        return list(found.values())

    def _grow(self, branch: Branch, found: dict[int, Branch]) -> None:
        for link in sorted(self.board.links, key=lambda link: -link.share):
            for one, other in ((link.start.item, link.end.item), (link.end.item, link.start.item)):
                if one == branch.item and other in self.free and other not in found:
                    found[other] = Branch(other, one, link)
                    branch.children.append(found[other])
                    self._grow(found[other], found)

    def _weigh(self, branch: Branch) -> None:
        now = list(self.standing)
        links = [link for link in self.board.links if self._to_fixed(link, branch.item)]
        others = [other for other in self.layout.beside(branch.item) if other not in self.free]
        groups: dict[tuple[int, tuple[int, int]], list[Standing]] = defaultdict(list)
        rows: dict[int, Ranked] = defaultdict(list)
        for site in self.sites.of(branch.item):
            if not all(self.layout.clear(branch.item, site.at, other, now[other].at) for other in others):
                continue
            now[branch.item] = site
            cost = site.cost + sum(link_bound(self.board, link, now) for link in links)
            cost += sum(child.upward[site.at] for child in branch.children)
            branch.cost[site.at] = cost
            branch.ranked.append((cost, site))
            if branch.link is not None:
                groups[cost, self.foot(branch, site)].append(site)
        branch.ranked.sort(key=lambda each: (each[0], each[1].at))
        for cost, site in branch.ranked:
            rows[site.at[1]].append((cost, site))
        branch.rows = rows
        branch.below = [(cost, foot, sites) for (cost, foot), sites in sorted(groups.items(), key=lambda each: each[0])]
        if branch.link is not None:
            branch.least_down = min((down for _, (_, down), _ in branch.below), default=0)
            self._look_up(branch)

    def weighed(self, link: Link) -> bool:
        """Whether a link is in the bounds: not if it closes a ring of the free things."""
        inner = link.start.item in self.free and link.end.item in self.free
        return not inner or any(branch.link is link for branch in self.branches)

    def _to_fixed(self, link: Link, item: int) -> bool:
        ends = {link.start.item, link.end.item}
        return item in ends and not (ends - {item}) & self.free

    def _look_up(self, branch: Branch) -> None:
        """What the link and the branch cost at least, for each place of the thing on which it hangs."""
        lean = _lean(branch)
        weighed = sum(map(len, lean.values()))
        for site in self.sites.of(branch.parent):
            x, down = self.foot(branch, site, parent=True)
            least = 10**12
            for column, pairs in lean.items():
                for cost, its in pairs:
                    if cost < least:
                        least = min(least, cost + self.below_cost(branch, abs(x - column) + down + its))
            for cost, other in self.in_row(branch, site):
                if cost < least:
                    least = min(least, cost + self.over_cost(branch, site, other))
            branch.upward[site.at] = least
            self.looks += 1 + weighed // WEIGHED_EACH

    def in_row(self, branch: Branch, site: Standing) -> Iterator[tuple[int, Standing]]:
        """The places of a branch whose fronts are in one row with a place of the thing on which it hangs."""
        step = self.board.step
        for front in range(-(-(site.at[1] - ROW) // step) * step, site.at[1] + ROW + 1, step):
            yield from branch.rows.get(front, ())

    def over_cost(self, branch: Branch, site: Standing, other: Standing) -> int:
        """What the link costs at least where both stand in one row; beyond all bounds where they are in each other's way."""
        (x, y, shape), (x2, y2, its) = site.at, other.at
        key = (shape, its, x2 - x, y2 - y)
        if key not in branch.pair:
            clear = not self._one_side(branch) or self.layout.clear(branch.parent, site.at, branch.item, other.at)
            branch.pair[key] = self.link_cost(branch, site, other) if clear else 10**12
        return branch.pair[key]

    def link_cost(self, branch: Branch, site: Standing, other: Standing) -> int:
        """What the link of a branch costs at least with its two things at these places."""
        assert branch.link is not None
        return link_bound(self.board, branch.link, {branch.parent: site, branch.item: other})

    def below_cost(self, branch: Branch, route: int) -> int:
        """What the link costs below the deck with such a route."""
        assert branch.link is not None
        return finished(branch.link.signal, route, branch.link.more) * branch.link.share

    def foot(self, branch: Branch, site: Standing, parent: bool = False) -> tuple[int, int]:
        """Where the end of a branch's link is in x, and its way down to the nearest drop line and below the deck."""
        assert branch.link is not None
        item = branch.parent if parent else branch.item
        end = branch.link.start if branch.link.start.item == item else branch.link.end
        x, _, above, _, down = site.stops[end.socket]
        return x, under_route(self.board, above, site.on_top) + down

    def _one_side(self, branch: Branch) -> bool:
        return self.board.items[branch.parent].under == self.board.items[branch.item].under


def _lean(branch: Branch) -> Lean:
    lean: Lean = defaultdict(list)
    for cost, (x, down), _ in branch.below:
        pairs = lean[x]
        if not pairs or down < pairs[-1][1]:
            pairs.append((cost, down))
    return lean
