"""A board -> a layout: single changes are tried, of which worse ones are kept ever more seldom, and things are taken out and put back. Always the
same way.

A step is one change that is judged. The steps of a longer search begin with those of a shorter one and the best layout is kept, so that more
steps are never worse.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import inf

from rigc.analysis.laying.search.asked import Asked
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.found import Found, as_it_is
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.glue import Glue
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.left_out import left_out
from rigc.analysis.laying.search.moves import Dice, some_change
from rigc.analysis.laying.search.refill import MANY, Refill
from rigc.analysis.laying.search.rows.ejection import Ejection, dealt_rows
from rigc.analysis.laying.search.rows.few import Few
from rigc.analysis.laying.search.rows.first_layout import first_layout
from rigc.analysis.laying.search.rows.settling import settled
from rigc.analysis.laying.search.rows.sides import Sides
from rigc.analysis.laying.search.standing.room import PLACES, Room, least_lacking

_MILD = 10_000  # what a step of the grid in the way costs at first, in hundredths of a tenth of cable
_STRICT = 50_000  # and at last, but for a tenth of a millimetre
_ROUND, _ROUND_EACH = 300, 100  # steps of the first round, and more for each thing to place
_ROUNDS = 8  # every so many rounds a board is begun anew,
_ROUNDS_OF_SOME = 3  # of `SOME` things in all rounds but one in so many
_HOT, _WARM, _COLD = 100_000, 20_000, 1_500  # what a worse layout may cost more: at first, when polishing, at last
_FILLED = 30_000  # steps at most until all stand
_MENDED = 3_000  # and until leads that break rules do not
_ASKED_EACH = 1_000  # steps for each thing, after which it is asked whether all have room at all
_SETTLED = 4_000  # steps without a better layout, once all ways of a few things were tried,
_PROVED = 500  # once all their sides were
_WAYS, _SIDES = 700, 2_500  # steps of trying ways in turn, and sides, before something else is done
_LOOSE = 30  # of a hundred leads that hold no things together when they are laid anew,
_ALL_LOOSE = 100  # and on a board so full that they found no room together
SOME = 7  # so few things
_REFILL_SOME = 70  # steps of taking out and putting back of a few things, for the square of their number
_NEAR = 108  # of a hundred that the best layout costs: of one that is begun anew and costs no more the sides are tried
_REFILL, _AFRESH = 4_000, 12_000  # steps of taking out and putting back: of the best layout, of one that is begun anew,
_LONG, _LONG_EACH = 10_000, 500  # and of the best one of many things: so many at most, and as many for each
_SEVERAL = 45  # things are begun with in all, of many things in two ways or more, which are compared,
_BEGUN = 3_000  # each when it was bettered for so many steps, because after fewer the best of them does not show,
_STANDS, _STANDS_AGAIN = 5_000, 2_000  # steps in which the first must stand, or there is little room; each other
_SETTLE_EACH = 75  # shifts of many things at most, for each of them
_SHARE = 4  # of what each of many things costs, a worse layout may cost that part more at first
_COOL = 5_000  # what a worse layout may cost more at its end
_LEAST = 0.7  # of what a layout costs: no change of a few things is hoped to save more
_TOLD_EACH = 250  # steps, to whoever watches


Watch = Callable[[int, int], None]
"""Is told now and then how many steps of how many were taken."""


def search(
    board: Board,
    effort: int,
    patience: int = 0,
    watch: Watch | None = None,
) -> Found:
    """The best layout after so many steps; while something is wrong with it, after so many more as there is patience for. Where not all can
    be made to stand it ends at once. An interrupt (`KeyboardInterrupt`) ends it with the best so far, which then says that it was `stopped`."""
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
        self._settled, self._bettered = inf, 0
        self._asked_room = False
        self.ground, self.best = layout.ground, as_it_is(layout)
        self._all_stand: Found | None = None
        self._glue = Glue(FreeRoom(self.ground, PLACES))
        self._asked = Asked(self._glue.room) if board.wishes else None
        self.length = _ROUND + _ROUND_EACH * len(self.free)

    def run(self, patience: int) -> None:
        """Round after round: as long as not all stand they are made to; then by single changes and by taking out and putting back, in turn;
        now and then from another beginning."""
        number = 0
        many = len(self.free) >= MANY
        turns = self._turns_of_some() if 1 < len(self.free) <= SOME else ()
        each = len(turns) + 1
        while self.free and not self._is_enough():
            turn = number // each
            asked_at = min(self.effort, self.length + _ASKED_EACH * len(self.free))
            if self._lacks_room() and self.done >= asked_at and not self._makes_room():
                break
            if self.done >= self.effort:
                if not self.best.hard or not patience:
                    break
                self.effort, patience = self.effort + patience, 0
            if many and number and not self.best.hard and not self._is_awry(number):
                if number % 2 == 1:
                    self._refilled(list(self.best.at), number, self._long)
                    self._settle(self.best)
                else:
                    self._of_several(number)
            elif number == 0:
                if many and self.best.hard:
                    self._of_several(0)
                if self.best.hard or not many:
                    self._round(first_layout(self.board), 0, self.length, _HOT, self.best)
            elif (
                (place := number % each) < len(turns) and not self._has_to_fill(number) and self._at_best(*turns[place])
            ):
                pass
            elif many and not self._asked_room and self.best.hard and left_out(self.board, self.best.at):
                self._of_several(number)
                number += 1  # what stands then is bettered next
            elif self.best.hard and (self._asked_room or left_out(self.board, self.best.at)):
                self._afresh(number, self.best.at if self._asked_room and number % 3 == 1 else None)
            elif self._is_awry(turn):
                self._afresh(number, self.best.at if turn % 4 == 1 else None)
            elif turn % _ROUNDS_OF_SOME if turns else turn % _ROUNDS == _ROUNDS // 2:
                self._afresh(number, None)
            elif turn % 2:
                self._refilled(list(self.best.at), number, _REFILL_SOME * len(self.free) ** 2 if turns else _REFILL)
            else:
                self._round(list(self.best.at), number, self.length, _WARM, self.best)
            number += 1
        if self._lacks_room() and self._all_stand is not None:
            self.best = self._all_stand

    def _lacks_room(self) -> bool:
        """Whether something of the best layout has to be left out."""
        if not self.best.hard or self.best is self._all_stand:
            return False
        if left_out(self.board, self.best.at):
            return True
        self._all_stand = self.best
        return False

    def _makes_room(self) -> bool:
        """All stand, whatever their leads cost then; else as many as have room, and the others where they lack least. Whether all do. What it takes
        is not taken off the steps of the search."""
        if self._asked_room or not self.effort:
            return self._all_stand is not None
        self._asked_room, begun = True, self.done
        room = Room(self.board)
        for steps in room.fill_all():
            self._count(steps)
        at = list(room.at)
        for item in room.outside:
            standing = set(range(len(at))).difference(room.outside)
            at[item] = least_lacking(self.ground, item, at, standing)[1]
        found = as_it_is(Layout(self.board, at, self.ground))
        stand = not left_out(self.board, found.at)
        if stand:
            self._all_stand = found
        if stand or len(left_out(self.board, self.best.at)) > len(room.outside):
            self.best, self._bettered = found, self.done
        self.effort += self.done - begun
        return stand

    def _is_awry(self, turn: int) -> bool:
        """Whether it is time to bring things to where they are asked to stand."""
        asked = self._asked
        return turn % 2 == 1 and self.best.missed > 0 and asked is not None and bool(asked.awry(self.best.at))

    def _turns_of_some(self) -> tuple[tuple[Few | Sides, Iterator[int], int, int], ...]:
        """What betters a few things by going through the ways in which they may stand, its steps, and after how many without a better layout it is
        enough once it has been through all."""
        few, sides = Few(self._glue, self.free, self.best), Sides(self._glue.room, self.best)
        return (few, few.run(), _WAYS, _SETTLED), (sides, sides.run(), _SIDES, _PROVED)

    def _has_to_fill(self, number: int) -> bool:
        """Whether all is to stand first: where something is in the way still, by turns."""
        return self.best.hard > 0 and number > 2 and number % 2 == 1

    def _in_turn(self, some: Few | Sides, ways: Iterator[int], steps_each: int, enough: int) -> bool:
        """Some of the ways in which a few things may stand, for about so many steps; whether there were any left."""
        before, most = self.done, self.done + steps_each
        for steps in ways:
            self._count(min(steps, self.effort - self.done))
            self._keep(some.found)
            if self.done >= min(most, self.effort) or self._is_enough():
                return True
        self._settled = min(self._settled, enough)
        return self.done > before

    def _at_best(self, some: Few | Sides, ways: Iterator[int], steps_each: int, enough: int) -> bool:
        """The same of the best layout."""
        some.found = min(some.found, self.best, key=lambda each: each.rank)
        return self._in_turn(some, ways, steps_each, enough)

    def _afresh(self, number: int, begun: tuple[At, ...] | None) -> None:
        """All stand in another way, or, of a layout that was begun, what is in the way of something stands elsewhere; and that is bettered."""
        some = 1 < len(self.free) <= SOME
        if some and begun is None and number % 2 == 1 and not self.best.hard:
            here = self._filled(number, self.best.at, _FILLED, self._half(Dice(number)))
        else:
            here = self._filled(number, begun, _FILLED if begun is None else _MENDED)
        if here is None:
            return
        if not some:
            self._refilled(list(here.at), number, _AFRESH)
            return
        here = self._refilled(list(here.at), number, _REFILL_SOME * len(self.free) ** 2) or here
        here = self._settle(here)
        if here.hard or here.rank[:2] > self.best.rank[:2] or 100 * here.cost <= _NEAR * self.best.cost:
            sides = Sides(self._glue.room, here)
            self._in_turn(sides, sides.run(), _SIDES, _PROVED)

    def _half(self, dice: Dice) -> tuple[int, ...]:
        """A dealt half of the free things: with all others as they are in the best layout most of what is good about it stays, and no single change
        leads so far."""
        left = list(self.free)
        return tuple(sorted(left.pop(dice.below(len(left))) for _ in range(-(-len(left) // 2))))

    def _of_several(self, number: int) -> None:
        """All stand in several other ways, each of which is bettered, and then the best of these; of a full board in one."""
        best: Found | None = None
        ways = max(2, _SEVERAL // len(self.free))
        for dice in range(number * ways + 1, (number + 1) * ways + 1):
            before = self.done
            most = _FILLED if number else _STANDS if best is None else _STANDS_AGAIN
            here = self._filled(dice, None, most)
            slow = self.done - before > _STANDS
            if here is not None:
                if here.missed:
                    here = self._round(list(here.at), dice, self.length, _WARM, here)
                here = self._refilled(list(here.at), dice, _BEGUN) or here
                best = here if best is None or here.rank < best.rank else best
            elif number == 0 and best is None:
                return
            if slow or self.done >= self.effort:
                break
        if best is not None:
            self._settle(self._refilled(list(best.at), number, self._long) or best)

    @property
    def _long(self) -> int:
        return max(_REFILL, min(_LONG, _LONG_EACH * len(self.free)))

    def _settle(self, found: Found) -> Found:
        """What is found, bettered by small shifts, if nothing is in the way in it."""
        if found.hard:
            return found
        most = min(self.done + _SETTLE_EACH * len(self.free), self.effort)
        better = settled(Layout(self.board, list(found.at), self.ground), self.free)
        while self.done < most and (here := next(better, None)) is not None:
            self._keep(here)
            self._count(1)
            found = here
        return found

    def _filled(self, number: int, begun: tuple[At, ...] | None, most: int, half: tuple[int, ...] = ()) -> Found | None:
        """All standing in another way, or, of a layout that was begun, `half` of it, else what is in the way of something; None where that can't
        be found in so many steps."""
        dice, board = Dice(number), self.board
        if begun is None or half:
            waiting = half or self.free
            rows = dealt_rows(self._glue, waiting, dice, _ALL_LOOSE if self._asked_room else _LOOSE)
        else:
            awry = [] if self._asked is None else self._asked.awry(begun)
            waiting = tuple(dict.fromkeys((*left_out(board, begun), *self._at_broken_leads(begun), *awry)))
            rows = [((item, 0, 0, begun[item][2]),) for item in waiting]
        standing = set(range(len(board.items))).difference(waiting)
        filling = Ejection(self._glue, dice, self.best.at, standing, rows, self._asked)
        for steps in filling.run(most):
            self._count(min(steps, self.effort - self.done))
            if self.done >= self.effort:
                break
        if filling.waiting:
            return None
        here = as_it_is(Layout(board, filling.at, self.ground))
        self._keep(here)
        if here.hard:  # out of balance, say
            here = self._round(filling.at, number, self.length, _HOT, here)
        return here

    def _at_broken_leads(self, at: tuple[At, ...]) -> Iterator[int]:
        """The free things at the ends of leads that break a rule."""
        layout = Layout(self.board, list(at), self.ground)
        for link, run in zip(self.board.links, layout.runs(), strict=True):
            if run[1]:
                yield from (end.item for end in (link.start, link.end) if end.item in self.free)

    def _round(self, begun: list[At], dice: int, length: int, hot: int, since: Found) -> Found:
        """The best of a round and of what was known before it, which is kept if it is the best of all."""
        layout, here = Layout(self.board, begun, self.ground), since
        steps = min(length, self.effort - self.done)
        for done, found in enumerate(_cooling(layout, self.free, Dice(dice), length, hot), start=1):
            if found is not None and found.rank < here.rank:
                here = found
                self._keep(found)
            self._count(1)
            if done >= steps or self._is_enough():
                break
        return here

    def _keep(self, found: Found) -> None:
        if found.rank < self.best.rank:
            self.best, self._bettered = found, self.done

    def _count(self, steps: int) -> None:
        before, self.done = self.done // _TOLD_EACH, self.done + steps
        if self._watch is not None and self.done // _TOLD_EACH > before:
            self._watch(self.done, self.effort)

    def _refilled(self, begun: list[At], dice: int, length: int) -> Found | None:
        """The best that taking out and putting back makes of a layout; None if that still has faults."""
        refill = Refill(Layout(self.board, begun, self.ground), self.free, self._glue, Dice(dice), self._asked)
        heat = _HOT if len(self.free) < MANY else max(_COOL, refill.layout.cost // (_SHARE * len(self.free)))
        for steps in refill.run(length, heat, _COOL):
            self._count(min(steps, self.effort - self.done))
            if refill.found is not None:
                self._keep(refill.found)
            if self.done >= self.effort or self._is_enough():
                break
        return refill.found

    def _is_enough(self) -> bool:
        """Whether all ways of a few things were tried, and long nothing better came."""
        return self.done - self._bettered >= self._settled and not self.best.hard


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
        cost, broken = layout.cost_with(at, changes, limit - wrong)
        if wrong + weight * broken + cost > limit:
            yield None
            continue
        layout.take(changes, at, hard, missed)
        yield Found(tuple(at), hard + broken, missed, cost)
