"""A board -> a layout, by trying changes: better ones are kept, worse ones now and then, ever more seldom. Always the same way.

Few free things are laid by branch and bound as well, once a layout without fault is known; where that does not come to an
end, further layouts are begun afresh: things are taken out and put back where they cost least, then four at a time are laid
as well as can be. So is what is still in the way after all steps of a larger board. A step is one change that is judged.
The steps of a longer search begin with those of a shorter one and the best layout is kept, so that more steps are never worse.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import combinations, cycle

from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.few_things import FewThings
from rigc.analysis.laying.search.first_layout import first_layout
from rigc.analysis.laying.search.found import Found, as_it_is
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.moves import Dice, some_change
from rigc.analysis.laying.search.refill import Refill

_MILD = 10_000  # what a step of the grid in the way costs at first, in hundredths of a tenth of cable
_STRICT = 50_000  # and at last, but for a tenth of a millimetre
_ROUND, _ROUND_EACH = 300, 100  # steps of the first round, and more for each thing to place
_LONG = 4  # further rounds are so many times as long
_HOT, _WARM, _COLD = 100_000, 20_000, 1_500  # what a worse layout may cost more: at first, when polishing, at last
_WAYS = (0, 1, 3, 0, 2)  # in which the rounds begin
FEW, SOME = 6, 7  # so many things are laid by branch and bound; so many are taken out and put back
_FAULTY = 3  # rounds more before that while something is in the way or out of balance
_REFILL = 4_000  # steps for that each time
_OUT, _EACH_OUT = 4, 3_000  # so many of them are taken out at a time, and the steps for laying them at most
_OWN, _COARSE = 75_000, 6_000  # steps for that at most: on the board's own grid, and where that is too fine
_LEAST = 0.7  # of what a layout costs: no change of a few things is hoped to save more
_TOLD_EACH = 250  # steps, to whoever watches


Watch = Callable[[int, int], None]
"""Is told now and then how many steps of how many were taken."""


def search(board: Board, effort: int, patience: int = 0, watch: Watch | None = None) -> Found:
    """The best layout after so many steps; while something is wrong with it, after so many more as there is patience for. An interrupt
    (`KeyboardInterrupt`) ends it with the best so far, which then says that it was `stopped`."""
    made = _Search(board, effort, watch)
    try:
        made.run(patience)
    except KeyboardInterrupt:
        return made.best.replace(steps=made.done, stopped=True)  # type: ignore[no-any-return]
    return made.best.replace(steps=made.done)  # type: ignore[no-any-return]


class _Search:
    """What is best so far, and how many steps are done of those to take."""

    def __init__(self, board: Board, effort: int, watch: Watch | None) -> None:
        self.board, self.effort, self.done, self._watch = board, effort, 0, watch
        self.free = tuple(number for number, item in enumerate(board.items) if item.fixed is None)
        layout = Layout(board, first_layout(board))
        self.ground, self.best = layout.ground, as_it_is(layout)
        self._room: FreeRoom | None = None
        self.hot = _HOT
        self.length = _ROUND + _ROUND_EACH * len(self.free)

    def run(self, patience: int) -> None:
        """Round after round."""
        number = 0
        while self.free:
            if self.done >= self.effort:
                if not self.best.hard or not patience:
                    break
                self.effort, patience = self.effort + patience, 0
                self._refilled(list(self.best.at), self.hot, number)
                continue
            if number > (_FAULTY if self.best.hard else 0) and len(self.free) <= SOME:
                self._begun_afresh()
                break
            if number > 1 and number % 4 and self.best.hard and len(self.free) > SOME:  # a tight board
                self._refilled(list(self.best.at), self.hot, number)
                number += 1
                continue
            polishing = number % 4 == 3
            begun = list(self.best.at) if polishing else self._begun(_WAYS[(number - number // 4) % len(_WAYS)])
            length = self.length * (1 if number == 0 else _LONG * (1 + number // 8))
            self._round(begun, number, length, _WARM if polishing else self.hot, self.best)
            number += 1

    def _begun(self, way: int) -> list[At]:
        return first_layout(self.board, way)

    def _round(self, begun: list[At], dice: int, length: int, hot: int, since: Found) -> Found:
        """The best of a round and of what was known before it, which is kept if it is the best of all."""
        layout, here = Layout(self.board, begun, self.ground), since
        steps = min(length, self.effort - self.done)
        for done, found in enumerate(_cooling(layout, self.free, Dice(dice), length, hot), start=1):
            if found is not None and found.rank < here.rank:
                here = found
                self._keep(found)
            self._count(1)
            if done == steps:
                break
        return here

    def _keep(self, found: Found) -> None:
        if found.rank < self.best.rank:
            self.best = found

    def _count(self, steps: int) -> None:
        before, self.done = self.done // _TOLD_EACH, self.done + steps
        if self._watch is not None and self.done // _TOLD_EACH > before:
            self._watch(self.done, self.effort)

    def _begun_afresh(self) -> None:
        """Few things are laid by branch and bound, once a layout without fault is known; then further layouts: each is begun another way,
        polished, bettered by what is taken out and put back, and few things by fours."""
        few, number = len(self.free) <= FEW, 0
        self._refilled(list(self.best.at), self.hot, number)
        if few and not self.best.hard and self.done < self.effort and self._few_things():
            return
        while self.done < self.effort:
            begun = self._begun(number)
            here = self._round(begun, number, self.length, self.hot, as_it_is(Layout(self.board, begun, self.ground)))
            if self.done < self.effort:
                here = self._round(list(here.at), number, self.length, _WARM, here)
            if self.done < self.effort:
                here = self._refilled(
                    list(here.at), _WARM if number % 2 == 0 and not here.hard else self.hot, number + 1
                )
            if few and not here.hard and self.done < self.effort:
                self._by_fours(here)
            number += 1

    def _refilled(self, begun: list[At], hot: int, dice: int) -> Found:
        """The best of a layout and of what comes of it when things are taken out and put back."""
        if self._room is None:
            self._room = FreeRoom(self.ground)
        layout = Layout(self.board, begun, self.ground)
        here = as_it_is(layout)
        refill = Refill(layout, self.free, self._room, Dice(dice))
        for steps in refill.run(_REFILL, hot, _COLD):
            self._count(min(steps, self.effort - self.done))
            if refill.found is not None and refill.found.rank < here.rank:
                here = refill.found
                self._keep(here)
            if self.done >= self.effort:
                break
        return here

    def _by_fours(self, best: Found) -> None:
        """Takes out four things at a time and lays them as well as can be, until that betters nothing any more."""
        since = 0
        fours = tuple(combinations(self.free, min(_OUT, len(self.free))))
        for out in cycle(fours):
            few = FewThings(Layout(self.board, list(best.at), self.ground), out)
            few.search(min(_EACH_OUT, self.effort - self.done))
            self._count(few.steps)
            since += 1
            if few.found:
                best, since = few.best(), 0
                self._keep(best)
            if since == len(fours) or self.done >= self.effort:
                break

    def _few_things(self) -> bool:
        """Looks for the best layout on a grid, and tells whether no better one is left on the board's own grid. On a coarser grid it gives up
        early."""
        few = FewThings(Layout(self.board, list(self.best.at), self.ground), self.free)
        few.search(min(self.effort - self.done, _OWN if few.on_own_grid else _COARSE))
        self._count(few.steps)
        if few.found:
            self._keep(few.best())
        return few.proved


def _cooling(layout: Layout, free: tuple[int, ...], dice: Dice, length: int, hot: int) -> Iterator[Found | None]:
    """Cools down over `length` steps; of each step the layout that was taken, None where none was."""
    heat, weight = float(hot), _STRICT if hot == _WARM else _MILD / layout.board.step
    cooling = (_COLD / hot) ** (1 / length)
    growing = (_STRICT / weight) ** (1 / length)
    while True:
        heat, weight = heat * cooling, weight * growing
        changes = some_change(layout, free, dice)
        ready = heat * dice.readiness()
        if not changes:
            yield None
            continue
        limit = weight * layout.faults + layout.cost + ready
        hard, missed, at = layout.faults_with(changes, (limit - layout.cost * _LEAST) / weight)
        wrong = weight * (hard + missed)
        if wrong + layout.cost * _LEAST > limit or wrong + layout.cost_at_sight(at, changes) > limit:
            yield None
            continue
        cost, broken = layout.cost_with(at, changes)
        if wrong + weight * broken + cost > limit:
            yield None
            continue
        layout.take(changes, at, hard, missed)
        yield Found(tuple(at), hard + broken, missed, cost)
