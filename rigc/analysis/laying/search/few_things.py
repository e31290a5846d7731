"""A board with few free things -> the best layout on a grid: a branch and bound that lets the limit grow until one is found.

A limit just above the best layout leaves few ways to try; so it begins at the bound and grows by a few percent. What is
found first is then bettered until nothing below it is left.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.laying.neat import lines
from rigc.analysis.laying.search.board import Link
from rigc.analysis.laying.search.found import Found
from rigc.analysis.laying.search.grid_places import Sites
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.lengths import Standing, backwards, link_bound, some_runs
from rigc.analysis.laying.search.tree_bounds import WEIGHED_EACH, Branch, TreeBounds

_GROWTH = 3  # percent by which the limit grows each time
_LOOKS = 8  # so many places looked at take as long as one step of the other search
_MEASURED, _JUDGED = 24, 40  # and as many as these, leads measured once more and a whole layout judged


class FewThings:
    """Looks for layouts that are without fault and cheaper than the one given; `found` is the best of them so far."""

    def __init__(self, layout: Layout, free: tuple[int, ...]) -> None:
        self.layout, self.most = layout, 0
        self.found: tuple[At, ...] | None = None
        self.limit = self.cost = 0
        self.missed = layout.missed
        sites = Sites(layout)
        self.on_own_grid = all(sites.pitch(item) == layout.board.step for item in free)
        self.tree = TreeBounds(layout, free, sites)
        self.looks = self.tree.looks
        standing = self.tree.standing
        fixed = [link for link in layout.board.links if not {link.start.item, link.end.item} & set(free)]
        self.base = sum(link_bound(layout.board, link, standing) for link in fixed)
        self.base += sum(site.cost for item, site in enumerate(standing) if item not in free)
        laid = set(range(len(layout.at))) - set(free)
        self.base += layout.board.line * lines(layout.board, layout.at, laid)

        self.standing: list[tuple[int, ...]] = []
        self.closed: list[list[Link]] = []  # by branch: the links that have both ends once it stands
        for branch in self.tree.branches:
            laid |= {branch.item}
            self.standing.append(tuple(sorted(laid)))
            links = (link for link in layout.board.links if {link.start.item, link.end.item} <= laid | {-1})
            self.closed.append([link for link in links if self.tree.weighed(link)])

    def search(self, steps: int) -> None:
        """Until the best is found, or the steps are used up."""
        self.most = steps * _LOOKS
        layout, branches = self.layout, self.tree.branches
        roots = [branch.ranked for branch in branches if branch.parent < 0]
        if not all(branch.ranked for branch in branches):
            return
        least = self.base + sum(ranked[0][0] for ranked in roots)
        best = 10**12 if layout.hard or layout.broken else layout.cost
        self.limit = self.cost = least
        while self.found is None and self.cost < best and self.looks < self.most:
            self.limit = min(best, self.limit + self.limit * _GROWTH // 100 + 1)
            self.cost = self.limit
            self._lay(0, list(self.tree.standing), least)

    def best(self) -> Found:
        """What it found."""
        assert self.found is not None
        return Found(self.found, 0, self.missed, self.cost)

    @property
    def proved(self) -> bool:
        """Whether it went through the board's own grid to the end."""
        return self.on_own_grid and self.looks < self.most

    @property
    def steps(self) -> int:
        """What it took."""
        return min(self.looks, self.most) // _LOOKS

    def _lay(self, number: int, now: list[Standing], bound: int) -> None:
        """Lays the branches from a number on; `bound` is the least that all costs, seen what stands."""
        if number == len(self.tree.branches):
            self._judge(now)
            return
        branch = self.tree.branches[number]
        laid = [each.item for each in self.tree.branches[:number]]
        beside = [item for item in laid if item in self.layout.beside(branch.item)]
        for site, least in self._places(branch, now, bound):
            self.looks += 1
            if self.looks >= self.most:
                return
            if least < self.cost and all(
                self.layout.clear(branch.item, site.at, other, now[other].at) for other in beside
            ):
                now[branch.item] = site
                if least + self._more(number, now) < self.cost:
                    self._lay(number + 1, now, least)

    def _more(self, number: int, now: list[Standing]) -> int:
        """By how much the links of what stands so far cost more than their bounds, because other things are in their way."""
        board, links = self.layout.board, self.closed[number]
        standing = {item: now[item] for item in self.standing[number]}
        more = 0
        self.looks += _MEASURED
        for link, (length, broken, *_) in zip(links, some_runs(board, links, standing), strict=True):
            more += length * link.share + broken * board.passing + backwards(link, now) - link_bound(board, link, now)
        return more

    def _places(self, branch: Branch, now: list[Standing], bound: int) -> Iterator[tuple[Standing, int]]:
        """The places of a branch that may lead below the limit, each with the least that all costs then."""
        if branch.parent < 0:
            bound -= branch.ranked[0][0]
            for cost, site in branch.ranked:
                if bound + cost >= self.cost:
                    return
                yield site, bound + cost
            return
        tree, parent = self.tree, now[branch.parent]
        bound -= branch.upward[parent.at]
        for cost, site in tree.in_row(branch, parent):
            if bound + cost < self.cost and (least := bound + cost + tree.over_cost(branch, parent, site)) < self.cost:
                yield site, least
        x, down = tree.foot(branch, parent, parent=True)
        room = self.cost - bound - tree.below_cost(branch, down + branch.least_down)
        for number, (cost, (column, its), sites) in enumerate(branch.below):
            if cost >= room:
                return
            self.looks += number % WEIGHED_EACH == 0
            least = bound + cost + tree.below_cost(branch, abs(x - column) + down + its)
            if least < self.cost:
                yield from ((site, least) for site in sites if abs(site.at[1] - parent.at[1]) > 0)

    def _judge(self, now: list[Standing]) -> None:
        """Keeps a layout that the bounds let through if it is without fault and really cheaper."""
        changes = [(branch.item, *now[branch.item].at) for branch in self.tree.branches]
        hard, missed, at = self.layout.faults_with(changes)
        self.looks += _JUDGED
        if hard or missed > self.missed:
            return
        cost, broken = self.layout.cost_with(at, changes)
        if cost < self.cost and not broken:
            self.cost, self.missed, self.found = cost, missed, tuple(at)
