"""A rig with open places -> a layout and what is proved of it: how much less the best possible can cost, by the solver (an optional extra)."""

from __future__ import annotations

from rigc.analysis.laying.choices.task import Task
from rigc.analysis.laying.chosen_places import laid, searched
from rigc.analysis.laying.search.found import Found, as_it_is
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.solver.model import proof
from rigc.model.rig import Rig
from rigc.record import Record


class Proved(Record):
    """The rig with the better of two layouts, the search's and the solver's; what that costs and what every layout costs at least, in
    hundredths of tenths of a millimetre of audio lead; and whether it was proved that there is none."""

    rig: Rig
    cost: int
    bound: int
    impossible: bool
    by_solver: bool

    @property
    def within_percent(self) -> int:
        """By how many percent of its bound a layout costs more at most, part ones counted as whole; -1 where no bound is known."""
        return -(-100 * (self.cost - self.bound) // self.bound) if self.bound > 0 else -1


def proved_places(task: Task, effort: int | None, work: float) -> Proved:
    """`work` is what the solver may do, in its own measure: about a second each."""
    found = searched(task.board, effort)
    result = proof(task.board, work, None if found.hard else found.at)
    own = found if result.at is None else as_it_is(Layout(task.board, list(result.at)))
    best: Found = min(found, own, key=lambda each: each.rank)
    return Proved(laid(task, best.at)[0], best.cost, result.bound, result.impossible, best is not found)
