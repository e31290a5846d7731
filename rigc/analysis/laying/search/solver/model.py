"""A board -> what no layout of it beats, or that none exists: proved by CP-SAT of OR-tools, where that is installed (`pip install 'rigc[solver]'`).

The solver sees less than the search: no way round what hangs below, no balance, no wishes, no tapes, and each lead takes the drop line that
suits it. So its best is a bound for every layout, and what it finds impossible is so. A layout of its own counts only as the search's rules judge it.
One thread and a limit in the solver's own measure of work, so that the same board gives the same answer.
"""

from __future__ import annotations

from collections.abc import Iterable
from importlib.util import find_spec
from math import ceil
from typing import Any

from rigc.analysis.laying.search.board import Area, Board, End, Link
from rigc.analysis.laying.search.ground import At, Ground
from rigc.analysis.laying.search.lengths import ROW, under_route
from rigc.analysis.laying.search.solver.forbidden import forbidden, parted
from rigc.analysis.laying.search.solver.parts import Part, parts
from rigc.analysis.leads.lengths.cable_lengths import finished_length
from rigc.facts.leads import LEAST_SLACK_MM, SLACK_SHARE
from rigc.record import Record

_MADE = 100  # leads are made in steps of so many tenths of a millimetre
_FAR = 1 << 20
_NOISE = 0.001  # of a bound that is told as a real number: all costs are whole ones
_PARTS = (
    (3, 0.1),
    (4, 0.2),
    (6, 0.4),
)  # so many things has a part of a larger board, and all such parts that share of the work
_WHOLE = 0.3  # is left for the board itself then


class Proof(Record):
    """What is proved: that no layout exists (`impossible`), else that each costs at least `bound`; `at` is the solver's own best, if it
    found one, by its own view."""

    impossible: bool
    bound: int
    at: tuple[At, ...] | None


def is_installed() -> bool:
    """Whether there is a solver."""
    return find_spec("ortools") is not None


def proof(board: Board, work: float, start: tuple[At, ...] | None = None, costs: bool = True) -> Proof:
    """What the solver proves with so much work, about a second each; `start` is a layout to begin with. Without `costs` only
    whether a layout exists."""
    model = _Model(board, costs)
    known = _proved_of_parts(board, work) if costs else []
    for part, bound in known:
        model.costs_at_least(part.links, part.items, bound)
    return model.solved(_WHOLE * work if known else work, start)


def _proved_of_parts(board: Board, work: float) -> list[tuple[Part, int]]:
    """What the parts of a larger board cost at least: small ones first, because that helps to prove the larger ones."""
    known: list[tuple[Part, int]] = []
    for size, share in _PARTS:
        split, smaller = parts(board, size), tuple(known)
        for part in split:
            model = _Model(part.board, costs=True)
            for its, bound in smaller:
                if set(its.items) <= set(part.items):
                    model.costs_at_least(map(part.links.index, its.links), map(part.kept.index, its.items), bound)
            known.append((part, model.solved(share * work / len(split), None).bound))
    return known


class _Model:
    def __init__(self, board: Board, costs: bool) -> None:
        from ortools.sat.python import cp_model

        self._cp = cp_model
        self.model: Any = cp_model.CpModel()
        self.board, self.ground, self.costs = board, Ground(board), costs
        self.x: list[Any] = []
        self.y: list[Any] = []
        self.turned: list[list[Any]] = []  # by item and shape: whether it stands so
        for item in range(len(board.items)):
            self._item(item)
        for one in range(len(board.items)):
            for other in self.ground.beside[one]:
                if other > one:
                    self._pair(one, other)
        for under in (False, True):
            self._no_overlap(under)
        self.total: Any = 0
        if costs:
            self.link_costs = [self._link(link) for link in board.links]
            self.worths = [self._worth(item) for item in range(len(board.items))]
            self.total = sum(self.link_costs) + sum(self.worths)
            if any(not item.under for item in board.items):
                self.total += board.line  # things on top make one line at least
            self.total += board.chosen
            self.model.minimize(self.total)

    def costs_at_least(self, links: Iterable[int], items: Iterable[int], bound: int) -> None:
        """Lets the model know what was proved of these links and things."""
        self._when(sum(self.link_costs[each] for each in links) + sum(self.worths[each] for each in items) >= bound)

    def solved(self, work: float, start: tuple[At, ...] | None) -> Proof:
        """One run of the solver."""
        solver: Any = self._cp.CpSolver()
        solver.parameters.num_workers = 1
        solver.parameters.random_seed = 0
        solver.parameters.max_deterministic_time = work
        for item, at in enumerate(start or ()):
            if self.board.items[item].fixed is None:
                self.model.add_hint(self.x[item], at[0] // self.board.step)
                self.model.add_hint(self.y[item], at[1] // self.board.step)
                for shape, literal in enumerate(self.turned[item]):
                    if len(self.turned[item]) > 1:
                        self.model.add_hint(literal, int(shape == at[2]))
        status = solver.solve(self.model)
        found = status in (self._cp.OPTIMAL, self._cp.FEASIBLE)
        places = tuple(self._at(solver, item) for item in range(len(self.board.items))) if found else None
        bound = ceil(solver.best_objective_bound - _NOISE) if self.costs and status != self._cp.INFEASIBLE else 0
        return Proof(status == self._cp.INFEASIBLE, bound, places)

    def _at(self, solver: Any, item: int) -> At:
        step, shapes = self.board.step, enumerate(self.turned[item])
        shape = next(shape for shape, literal in shapes if solver.value(literal))
        fixed = self.board.items[item].fixed
        return (
            (*fixed, shape) if fixed else (solver.value(self.x[item]) * step, solver.value(self.y[item]) * step, shape)
        )

    def _item(self, item: int) -> None:
        board, it, step = self.board, self.board.items[item], self.board.step
        literals = [self.model.new_bool_var("") for _ in it.shapes] if len(it.shapes) > 1 else [1]
        if len(it.shapes) > 1:
            self.model.add_exactly_one(literals)
        self.turned.append(literals)
        if it.fixed is not None:
            self.x.append(it.fixed[0])
            self.y.append(it.fixed[1])
            return
        x, y = self.model.new_int_var(0, board.width // step, ""), self.model.new_int_var(0, board.depth // step, "")
        self.x.append(x)
        self.y.append(y)
        for shape, literal in enumerate(literals):
            left, front, right, rear = self.ground.solids[item][shape].reach
            for variable, low, high, size in ((x, left, right, board.width), (y, front, rear, board.depth)):
                self._when(variable >= -(low // step), literal)
                self._when(variable <= (size - high) // step, literal)
            solid = self.ground.solids[item][shape]
            blocked: list[Area] = [*board.kept_free, *(() if it.under else board.reserved)]
            areas = [(a[0] - solid.width, a[1] - solid.depth, a[2], a[3]) for a in blocked]
            if not it.under:
                areas += [
                    (-_FAR, edge - solid.depth, _FAR, edge) for tier in board.tiers for edge in (tier.front, tier.rear)
                ]
            for area in areas:
                self._outside(area, (0, 0), (self._x(item), self._y(item)), [literal])

    def _x(self, item: int) -> Any:
        fixed = self.board.items[item].fixed
        return fixed[0] if fixed is not None else self.board.step * self.x[item]

    def _y(self, item: int) -> Any:
        fixed = self.board.items[item].fixed
        return fixed[1] if fixed is not None else self.board.step * self.y[item]

    def _when(self, constraint: Any, *literals: Any) -> None:
        if isinstance(constraint, bool):
            if not constraint:
                self.model.add_bool_or([literal.negated() for literal in literals if not isinstance(literal, int)])
            return
        conditions = [literal for literal in literals if not isinstance(literal, int)]
        made = self.model.add(constraint)
        if conditions:
            made.only_enforce_if(conditions)

    def _outside(self, area: Area, here: tuple[Any, Any], there: tuple[Any, Any], when: list[Any]) -> None:
        """The second corner is not inside an open rectangle that is seen from the first."""
        ways = []
        for there_by, here_by, low, high in (
            (there[0], here[0], area[0], area[2]),
            (there[1], here[1], area[1], area[3]),
        ):
            for constraint in (there_by - here_by <= low, there_by - here_by >= high):
                if isinstance(constraint, bool):
                    if constraint:
                        return
                    continue
                way = self.model.new_bool_var("")
                self.model.add(constraint).only_enforce_if(way)
                ways.append(way)
        self.model.add_bool_or([*ways, *(literal.negated() for literal in when if not isinstance(literal, int))])

    def _pair(self, one: int, other: int) -> None:
        board = self.board
        if board.items[one].fixed is not None and board.items[other].fixed is not None:
            return
        gap = next((each.gap for each in board.partings if {each.one, each.other} == {one, other}), None)
        for shape, solid in enumerate(self.ground.solids[one]):
            for its_shape, its in enumerate(self.ground.solids[other]):
                areas = parted(solid, its, gap) if gap is not None else []
                if board.items[one].under == board.items[other].under:
                    areas += forbidden(board, solid, its)
                for area in areas:
                    self._outside(
                        area,
                        (self._x(one), self._y(one)),
                        (self._x(other), self._y(other)),
                        [self.turned[one][shape], self.turned[other][its_shape]],
                    )

    def _no_overlap(self, under: bool) -> None:
        """The bodies once more, all at once, which proves much that pairs alone do not."""
        apart, model = self.board.apart, self.model
        wide: list[Any] = []
        deep: list[Any] = []
        for item, it in enumerate(self.board.items):
            if it.under != under:
                continue
            for shape, solid in enumerate(self.ground.solids[item]):
                literal = self.turned[item][shape]
                for intervals, start, size in ((wide, self._x(item), solid.width), (deep, self._y(item), solid.depth)):
                    if isinstance(literal, int):
                        intervals.append(model.new_fixed_size_interval_var(start, size + apart, ""))
                    else:
                        intervals.append(model.new_optional_fixed_size_interval_var(start, size + apart, literal, ""))
        model.add_no_overlap_2d(wide, deep)

    def _worth(self, item: int) -> Any:
        """What a place costs by itself (see `Ground`)."""
        it = self.board.items[item]
        if it.use >= 0:
            return it.use * self._y(item)
        depths = sum(
            solid.depth * literal for solid, literal in zip(self.ground.solids[item], self.turned[item], strict=True)
        )
        return -it.use * (self.board.depth - self._y(item) - depths)

    def _link(self, link: Link) -> Any:
        """What a lead costs at least (see `link_bound`)."""
        model, board = self.model, self.board
        x1, y1, above1, top1 = self._end(link.start)
        x2, y2, above2, top2 = self._end(link.end)
        across, along = self._distance(x1, x2), self._distance(y1, y2)
        made: Any = model.new_int_var(finished_length(0) // _MADE, _FAR // _MADE, "")
        over: Any = None
        if top1 and top2 and link.run != "under" and min(link.start.item, link.end.item) >= 0:
            over = 1 if link.run == "over" else model.new_bool_var("")
            if link.run != "over":
                front1, front2 = self._y(link.start.item), self._y(link.end.item)
                self._when(front1 - front2 <= ROW, over)
                self._when(front2 - front1 <= ROW, over)
                self._in_sight(link, (x1, y1), (x2, y2), over)
        below = 1 if over is None else 0 if isinstance(over, int) else over.negated()
        down1, down2 = self._down(link.start, x1, y1, below), self._down(link.end, x2, y2, below)
        passages = under_route(board, 0, top1) + under_route(board, 0, top2) + above1 + above2
        unders = [across + passages + along, across + passages + down1 + down2]
        directs = [across + along + above1 - above2, across + along + above2 - above1]
        if over is not None:
            for route in directs:
                self._long_enough(link, made, route, over)
        if not isinstance(below, int) or below:
            for route in unders:
                self._long_enough(link, made, route, below)
        cost = _MADE * link.share * made
        if link.onward and link.back and min(link.start.item, link.end.item) >= 0:
            back = model.new_int_var(0, _FAR, "")
            model.add(back >= self._x(link.end.item) - self._x(link.start.item))
            cost += link.back * link.share // 100 * back
        return cost

    def _in_sight(self, link: Link, start: tuple[Any, Any], end: tuple[Any, Any], over: Any) -> None:
        """One of the two ways with one bend crosses nothing that stands on top (see `free_bends`)."""
        model = self.model
        front, rear = self._sorted(start[1], end[1])
        left, right = self._sorted(start[0], end[0])
        ways = [model.new_bool_var(""), model.new_bool_var("")]
        model.add_bool_or([*ways, over.negated()])
        for item, it in enumerate(self.board.items):
            if it.under:
                continue
            for shape, solid in enumerate(self.ground.solids[item]):
                turned = self.turned[item][shape]
                x, y = self._x(item), self._y(item)
                along = [self._if(front >= y + solid.depth), self._if(rear <= y)]
                across = [self._if(left >= x + solid.width), self._if(right <= x)]
                for way, bend_x, bend_y in ((ways[0], start[0], end[1]), (ways[1], end[0], start[1])):
                    unless = [way.negated(), *(() if isinstance(turned, int) else (turned.negated(),))]
                    aside = [self._if(bend_x <= x), self._if(bend_x >= x + solid.width)]
                    before = [self._if(bend_y <= y), self._if(bend_y >= y + solid.depth)]
                    model.add_bool_or([*unless, *along, *aside])
                    model.add_bool_or([*unless, *across, *before])
        for one, other in ((link.start.item, link.end.item), (link.end.item, link.start.item)):
            self._nothing_between(one, other, over)

    def _nothing_between(self, one: int, other: int, over: Any) -> None:
        """No third thing reaches between two of which one stands at the left, over the y that both share (see `runs_direct`)."""
        left, front, rear = self._right(one), self._y(one), self._rear(one)
        right, its_front, its_rear = self._x(other), self._y(other), self._rear(other)
        shared = [self._if(right <= left), self._if(rear <= its_front), self._if(its_rear <= front)]
        for item, it in enumerate(self.board.items):
            if it.under or item in (one, other):
                continue
            beside = [self._if(self._x(item) >= right), self._if(self._right(item) <= left)]
            beside += [self._if(self._y(item) >= end) for end in (rear, its_rear)]
            beside += [self._if(self._rear(item) <= end) for end in (front, its_front)]
            self.model.add_bool_or([over.negated(), *shared, *beside])

    def _right(self, item: int) -> Any:
        return self._x(item) + sum(
            solid.width * literal for solid, literal in zip(self.ground.solids[item], self.turned[item], strict=True)
        )

    def _rear(self, item: int) -> Any:
        return self._y(item) + sum(
            solid.depth * literal for solid, literal in zip(self.ground.solids[item], self.turned[item], strict=True)
        )

    def _sorted(self, one: Any, other: Any) -> tuple[Any, Any]:
        """The lesser and the greater of two; the lesser may be less, the greater more, which hides nothing."""
        low, high = self.model.new_int_var(-_FAR, _FAR, ""), self.model.new_int_var(-_FAR, _FAR, "")
        for each in (one, other):
            self._when(low <= each)
            self._when(high >= each)
        return low, high

    def _if(self, constraint: Any) -> Any:
        """A literal that may be true only where a constraint holds."""
        if isinstance(constraint, bool):
            return int(constraint)
        literal = self.model.new_bool_var("")
        self.model.add(constraint).only_enforce_if(literal)
        return literal

    def _long_enough(self, link: Link, made: Any, route: Any, when: Any) -> None:
        """Route and slack fit into a lead that is made in whole steps."""
        least = round(10 * LEAST_SLACK_MM[link.signal].value)
        share = round(1000 * SLACK_SHARE.value) if SLACK_SHARE.value < 1 else round(10 * SLACK_SHARE.value)
        self._when(_MADE * made >= route + least + link.more, when)
        self._when(1000 * _MADE * made >= (1000 + share) * route + 1000 * link.more, when)

    def _end(self, end: End) -> tuple[Any, Any, Any, bool]:
        """x, y and height of where a lead leaves, and whether that is on top."""
        if end.item < 0:
            return end.x, end.y, 0, False
        it = self.board.items[end.item]
        x, y, above = self._x(end.item), self._y(end.item), 0
        for shape, literal in zip(it.shapes, self.turned[end.item], strict=True):
            each = shape.sockets[end.socket]
            x += (each.x + each.dx * each.exit) * literal
            y += (each.y + each.dy * each.exit) * literal
            above += (0 if it.under else each.above) * literal
        return x, y, above, not it.under

    def _distance(self, one: Any, other: Any) -> Any:
        far = self.model.new_int_var(0, _FAR, "")
        self._when(far >= one - other)
        self._when(far >= other - one)
        return far

    def _down(self, end: End, x: Any, y: Any, below: Any) -> Any:
        """How far it is to a drop line that no body covers there, if the lead runs below."""
        board = self.board
        if end.item < 0 or board.items[end.item].under or not board.lines or (isinstance(below, int) and not below):
            return 0
        far = self.model.new_int_var(0, _FAR, "")
        lines = [self.model.new_bool_var("") for _ in board.lines]
        self.model.add_exactly_one(lines)
        for line, literal in zip(board.lines, lines, strict=True):
            self._when(far >= y - line, literal)
            self._when(far >= line - y, literal)
            for item, solids in enumerate(self.ground.solids):
                for solid, turned in zip(solids, self.turned[item], strict=True):
                    body = (0, 0, solid.width, solid.depth)
                    self._outside(body, (self._x(item), self._y(item)), (x, line), [literal, turned, below])
        return far
