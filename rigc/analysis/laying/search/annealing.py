"""A board -> a layout, by trying changes: better ones are kept, worse ones now and then, ever more seldom. Always the same way.

Few free things are laid by branch and bound as well, once a layout without fault is known; where that does not come to an
end, further layouts are begun afresh, and of each four things at a time are taken out and laid anew as well as can be. A
step is one change that is judged. The steps of a longer search begin with those of a shorter one and the best layout is
kept, so that more steps are never worse.
"""

from __future__ import annotations

from itertools import combinations, cycle
from math import log

from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.few_things import FewThings
from rigc.analysis.laying.search.first_layout import first_layout
from rigc.analysis.laying.search.found import Found, as_it_is
from rigc.analysis.laying.search.ground import Ground
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.moves import Dice, some_change

_MILD = 10_000  # what a step of the grid in the way costs at first, in hundredths of a tenth of cable
_STRICT = 50_000  # and at last, but for a tenth of a millimetre
_ROUND, _ROUND_EACH = 300, 100  # steps of the first round, and more for each thing to place
_LONG = 4  # further rounds are so many times as long
_HOT, _WARM, _COLD = 100_000, 20_000, 1_500  # what a worse layout may cost more: at first, when polishing, at last
_WAYS = (0, 1, 3, 0, 2)  # in which the rounds begin
FEW, _FEW_AFTER = 6, 1  # so many things are laid by branch and bound, after so many rounds
_OUT, _EACH_OUT = 4, 3_000  # so many of them are taken out at a time, and the steps for laying them at most
_OWN, _COARSE = 75_000, 24_000  # steps for that at most: on the board's own grid, and where that is too fine
_LEAST = 0.7  # of what a layout costs: no change of a few things is hoped to save more
_SIZES = 64
_READINESS = tuple(round(-1000 * log((2 * each + 1) / (2 * _SIZES))) for each in range(_SIZES))


def search(board: Board, effort: int, patience: int = 0) -> Found:
    """The best layout after so many steps; while something is wrong with it, after so many more as there is patience for."""
    free = tuple(number for number, item in enumerate(board.items) if item.fixed is None)
    layout = Layout(board, first_layout(board))
    ground = layout.ground
    best = as_it_is(layout)
    done, number, few = 0, 0, len(free) <= FEW
    while free:
        if done >= effort:
            if not best.hard or not patience:
                break
            effort, patience = effort + patience, 0
        if few and number >= _FEW_AFTER and not best.hard:
            few = False
            best, steps, proved = _few_things(Layout(board, list(best.at), ground), free, effort - done, best)
            done, number = done + steps, number + 1
            if not proved:
                best, done = _begun_afresh(ground, free, effort, done, best)
            break
        polishing = number % 4 == 3
        begun = list(best.at) if polishing else first_layout(board, _WAYS[(number - number // 4) % len(_WAYS)])
        length = (_ROUND + _ROUND_EACH * len(free)) * (1 if number == 0 else _LONG * (1 + number // 8))
        steps = min(length, effort - done)
        best = _round(Layout(board, begun, ground), free, Dice(number), length, steps, polishing, best)
        done, number = done + steps, number + 1
    return best.replace(steps=done)  # type: ignore[no-any-return]


def _begun_afresh(ground: Ground, free: tuple[int, ...], effort: int, done: int, best: Found) -> tuple[Found, int]:
    """The best of further layouts, and all steps taken: each is begun another way, polished, and bettered by fours."""
    board, length, number = ground.board, _ROUND + _ROUND_EACH * len(free), 0
    while done < effort:
        layout = Layout(board, first_layout(board, number), ground)
        here = as_it_is(layout)
        for polishing in (False, True):
            steps = min(length, effort - done)
            here = _round(layout, free, Dice(number), length, steps, polishing, here)
            layout, done = Layout(board, list(here.at), ground), done + steps
        if not here.hard:
            here, done = _by_fours(ground, free, effort, done, here)
        best = min(best, here, key=lambda each: each.rank)
        number += 1
    return best, done


def _by_fours(ground: Ground, free: tuple[int, ...], effort: int, done: int, best: Found) -> tuple[Found, int]:
    """Takes out four things at a time and lays them as well as can be, until that betters nothing any more."""
    since = 0
    fours = tuple(combinations(free, min(_OUT, len(free))))
    for out in cycle(fours):
        few = FewThings(Layout(ground.board, list(best.at), ground), out)
        few.search(min(_EACH_OUT, effort - done))
        done, since = done + few.steps, since + 1
        if few.found:
            best, since = few.best(), 0
        if since == len(fours) or done >= effort:
            break
    return best, done


def _few_things(layout: Layout, free: tuple[int, ...], steps: int, best: Found) -> tuple[Found, int, bool]:
    """The best layout on a grid, what that took, and whether no better one is left on the board's own grid. On a coarser
    grid it gives up early."""
    few = FewThings(layout, free)
    few.search(min(steps, _OWN if few.on_own_grid else _COARSE))
    return few.best() if few.found else best, few.steps, few.proved


def _round(
    layout: Layout, free: tuple[int, ...], dice: Dice, length: int, steps: int, polishing: bool, best: Found
) -> Found:
    """Cools down over `length` steps, or breaks off after `steps` of them."""
    hot = _WARM if polishing else _HOT
    heat, weight = float(hot), _STRICT if polishing else _MILD / layout.board.step
    cooling = (_COLD / hot) ** (1 / length)
    growing = (_STRICT / weight) ** (1 / length)
    for _ in range(steps):
        heat, weight = heat * cooling, weight * growing
        changes = some_change(layout, free, dice)
        ready = heat * _READINESS[dice.below(_SIZES)] / 1000
        if not changes:
            continue
        limit = weight * (layout.hard + layout.missed) + layout.cost + ready
        hard, missed, at = layout.faults_with(changes, (limit - layout.cost * _LEAST) / weight)
        wrong = weight * (hard + missed)
        if wrong + layout.cost * _LEAST > limit or wrong + layout.cost_at_sight(at, changes) > limit:
            continue
        cost, broken = layout.cost_with(at, changes)
        if wrong + cost <= limit:
            layout.take(changes, at, hard, missed)
            if (hard + broken, missed, cost) < best.rank:
                best = Found(tuple(at), hard + broken, missed, cost)
    return best
