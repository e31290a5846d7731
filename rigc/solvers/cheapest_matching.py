"""Rows with the costs of their columns -> a column of its own for each row, at least total cost.

Shortest augmenting paths with prices, as in H. W. Kuhn, "The Hungarian method for the assignment problem" (1955), and its
successors [from memory]. A row may have a price for staying out (`out`). Earlier prices and pairs may be handed in: what still
fits is kept, so that a task that changed little costs little.
"""

from __future__ import annotations

from heapq import heappop, heappush

OUT = -1

Row = dict[int, int]  # column: cost


class Matching:
    """`of` is the column of each row (OUT where it stays out, None where it has none yet), `prices` those of the columns
    (never above 0); `short` names the rows that together have too few columns, `work` counts the costs looked at."""

    def __init__(self, rows: list[Row], out: list[int | None], columns: int) -> None:
        self.rows, self.out = rows, out
        self.of: list[int | None] = [None] * len(rows)
        self.prices = [0] * columns
        self.owner: list[int | None] = [None] * columns
        self.values = [0] * len(rows)
        self.short: tuple[int, ...] = ()
        self.work = 0

    @property
    def cost(self) -> int:
        """The total."""
        return sum(self.values) + sum(price for price in self.prices if price)

    def start_from(self, of: list[int | None], prices: list[int]) -> None:
        """Takes over pairs and prices of a similar task, as far as they can be part of a cheapest matching of this one."""
        self.prices = list(prices)
        for row, column in enumerate(of):
            self.of[row] = column
            if column is not None and column != OUT:
                self.owner[column] = row

    def solve(self) -> bool:
        """Whether every row gets a column."""
        self._settle()
        return all(self.of[row] is not None or self._augment(row) for row in range(len(self.rows)))

    def _settle(self) -> None:
        loose = True
        while loose:
            loose = False
            for at, owner in enumerate(self.owner):
                if owner is None:
                    self.prices[at] = 0
            for row, costs in enumerate(self.rows):
                prices, out, column = self.prices, self.out[row], self.of[row]
                self.work += len(costs)
                best = min((cost - prices[at] for at, cost in costs.items()), default=None)
                value = out if best is None or (out is not None and out < best) else best
                self.values[row] = value if value is not None else 0
                if column is None:
                    continue
                kept = out if column == OUT else costs[column] - prices[column] if column in costs else None
                if kept is None or kept != value:
                    self.of[row], loose = None, True
                    if column != OUT:
                        self.owner[column] = None

    def _augment(self, free: int) -> bool:
        far: dict[int, int] = {}
        came: dict[int, int] = {}
        done: dict[int, int] = {}
        heap: list[tuple[int, int]] = []
        row, here = free, 0
        way_out: tuple[int, int] | None = None
        while True:
            out = self.out[row]
            if out is not None and (way_out is None or here + out - self.values[row] < way_out[0]):
                way_out = here + out - self.values[row], row
            self._look(row, here, far, came, heap, done)
            while heap and heap[0][1] in done:
                heappop(heap)
            if not heap or (way_out is not None and way_out[0] <= heap[0][0]):
                break
            here, column = heappop(heap)
            owner = self.owner[column]
            if owner is None:
                self._reprice(free, here, done)
                self._shift(column, came)
                return True
            done[column] = here
            row = owner
        if way_out is None:
            self.short = tuple(sorted({free, *(owner for each in done if (owner := self.owner[each]) is not None)}))
            return False
        self._reprice(free, way_out[0], done)
        column_left = self.of[way_out[1]]
        self.of[way_out[1]] = OUT
        if column_left is not None:
            self._shift(column_left, came)
        return True

    def _look(
        self,
        row: int,
        here: int,
        far: dict[int, int],
        came: dict[int, int],
        heap: list[tuple[int, int]],
        done: dict[int, int],
    ) -> None:
        base, prices = here - self.values[row], self.prices
        self.work += len(self.rows[row])
        for column, cost in self.rows[row].items():
            reach = base + cost - prices[column]
            if column not in done and (column not in far or reach < far[column]):
                far[column] = reach
                came[column] = row
                heappush(heap, (reach, column))

    def _reprice(self, free: int, end: int, done: dict[int, int]) -> None:
        self.values[free] += end
        for column, reach in done.items():
            self.prices[column] -= end - reach
            owner = self.owner[column]
            if owner is not None:
                self.values[owner] += end - reach

    def _shift(self, column: int, came: dict[int, int]) -> None:
        """Hands the column to the row that reached it, that row's to the next, back to the row that was free."""
        to: int | None = column
        while to is not None:
            row = came[to]
            left = self.of[row]
            self.of[row], self.owner[to] = to, row
            to = left
