"""A rig with open places -> several good layouts that differ, each with what it is better at: the objective is made least with other weights,
and each answer is judged by the rig's own."""

from __future__ import annotations

from rigc.analysis.deck.unplaced import as_stated
from rigc.analysis.laying.choices.task import Task, task_of
from rigc.analysis.laying.chosen_places import chosen_layout, laid, searched, usual_effort
from rigc.analysis.laying.objective import Objective, terms
from rigc.analysis.laying.search.found import Found, as_it_is
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.known import KNOWN
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.weights import weights
from rigc.model.deck import Weight
from rigc.model.fact import Fact
from rigc.model.rig import Rig
from rigc.record import Record

LEANINGS: tuple[dict[str, int], ...] = (
    {},
    {"bare deck": 400, "stamped": 400},
    {"bare deck": 25, "stamped": 25, "behind": 25, "front lines": 0, "gaps": 0},
    {"front lines": 500, "gaps": 500},
    {"onward": 1000},
    {"other leads": 500},
    {"behind": 500, "front lines": 200},
)
"""What of the weights is taken in turn, in percent of the rig's own: as they are; nearer to the foot; the shortest leads; neater; sound
from right to left; shorter leads of power and control; all else to the rear."""
_FAR = 300  # a thing stands elsewhere if it moved by so much, in tenths of a millimetre
_OTHERS = 4  # and two layouts differ if one in so many does
_NOTICED = 100  # in tenths of a millimetre, as it is counted and as the rig weighs it
_GOOD = 150  # percent of the best's cost at most


class Better(Record):
    """By how much a layout has less of a term (its name in `LayoutTerm`) than the one beside which it is told: in tenths of a millimetre or,
    of lines and crossings, in pieces."""

    term: str
    less: int


class Alternative(Record):
    """A layout: the rig with it, what it costs, and of what it has less than the best; the best itself of what it has less than each of the
    others, and by how much at least."""

    rig: Rig
    objective: Objective
    better_at: tuple[Better, ...]


class _Answer(Record):
    at: tuple[At, ...]
    objective: Objective


def alternatives(rig: Rig, count: int, effort: int | None) -> tuple[Alternative, ...]:
    """At most so many, the best by the rig's own weights first; what is chosen in the rig is chosen anew. Fewer where all that is
    tried comes to the same or is worse at everything, none where nothing is open."""
    open_task = task_of(as_stated(rig))
    if open_task is None or not open_task.free:
        return ()
    best = chosen_layout(open_task, effort)
    task, sides = best.task, dict(best.sides)
    found: list[_Answer] = []
    for leaning in LEANINGS:
        made = _leant(task.otherwise(_leaning(task.rig, leaning), sides), effort) if leaning else best.found
        if not made.hard:
            at = KNOWN.rest(task.board, as_it_is(Layout(task.board, list(made.at)))).at
            found = _good(task, [*found, _Answer(at, Objective(tuple(terms(task.rig, task.board, list(at)))))])
        if len(found) == count:
            break
    return tuple(_alternative(task, answer, found) for answer in found)


def _leant(task: Task, effort: int | None) -> Found:
    """With half the steps: it need not be the best by these weights, only a good one by the rig's own."""
    return searched(task.board, (usual_effort(task.board) if effort is None else effort) // 2)


def _good(task: Task, answers: list[_Answer]) -> list[_Answer]:
    """The best first, and of the others those that differ from all before them, cost not much more, and have less of something than
    each of these."""
    kept: list[_Answer] = []
    for answer in sorted(answers, key=lambda each: each.objective.cost):
        if kept and 100 * answer.objective.cost > _GOOD * kept[0].objective.cost:
            break
        if all(_differ(task, answer.at, each.at) and _less(answer, each) for each in kept):
            kept.append(answer)
    return kept


def _less(one: _Answer, other: _Answer) -> tuple[Better, ...]:
    """Of what one has so much less that one would notice, and that it counts by the rig's own weights."""
    here = {term.name: term for term in one.objective.terms}
    found = []
    for there in other.objective.terms:
        term = here.get(there.name)
        less, cheaper = there.counted - (term.counted if term else 0), there.cost - (term.cost if term else 0)
        if less >= (1 if there.pieces else _NOTICED) and cheaper >= 100 * _NOTICED:
            found.append(Better(there.name, less))
    return tuple(found)


def _alternative(task: Task, answer: _Answer, found: list[_Answer]) -> Alternative:
    best = found[0]
    others = found[1:] if answer is best else [best]
    beside = [{each.term: each.less for each in _less(answer, other)} for other in others]
    better = tuple(
        Better(name, min(each[name] for each in beside))
        for name in (beside[0] if beside else ())
        if all(name in each for each in beside)
    )
    return Alternative(laid(task, answer.at)[0], answer.objective, better)


def _leaning(rig: Rig, leaning: dict[str, int]) -> Rig:
    """The rig with so many percent of its own weights."""
    weighed = weights(rig)
    changed = {term: weighed[term] * percent / 100 for term, percent in leaning.items()}
    kept = tuple(weight for weight in rig.weights if weight.term not in changed)
    others = (Weight(term, Fact(share, f"{share:g} %", rig.end), rig.end) for term, share in changed.items())
    leaning_rig: Rig = rig.replace(weights=(*kept, *others))
    return leaning_rig


def _differ(task: Task, one: tuple[At, ...], other: tuple[At, ...]) -> bool:
    """Whether so many of the open things stand elsewhere or otherwise."""
    moved = sum(
        one[item][2] != other[item][2]
        or max(abs(one[item][0] - other[item][0]), abs(one[item][1] - other[item][1])) >= _FAR
        for item in task.free
    )
    return _OTHERS * moved >= len(task.free)
