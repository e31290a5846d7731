"""A layout in which nothing is in the way -> a cheaper one by what else may be chosen: a thing on the other side of the deck, or other plugs.

A thing is tried on its other side where all others stand; plugs that take less room everywhere, and of these only those stay whose usual
kind would be in the way then.
"""

from __future__ import annotations

from rigc.analysis.laying.at_hand import handled
from rigc.analysis.laying.board_of_rig import Sides
from rigc.analysis.laying.choices.eased import Eased, plugs_to_try, with_plugs, with_usual_plugs
from rigc.analysis.laying.choices.standing import either_side
from rigc.analysis.laying.choices.task import Task, begun
from rigc.analysis.laying.search.annealing import Watch
from rigc.analysis.laying.search.found import Found
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.known import KNOWN
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.lengths import link_bound
from rigc.analysis.laying.search.own_order import in_own_order
from rigc.analysis.leads.leads import Leads
from rigc.analysis.results import Results

_COARSE, _FINE = 400, 50  # a place on the other side is sought on this grid, then around the best one on that
_TRIED = 12  # places on each that look cheapest are judged in full


def cheaper(made: Eased, steps: int, watch: Watch | None = None) -> Eased:
    """Never one that costs more; all is laid anew, with so many steps, for other plugs alone."""
    if made.found.hard or made.found.stopped:
        return made
    best = _on_other_sides(made)
    return best if best.plugs or best.found.stopped else _with_other_plugs(best, steps, watch)


def _on_other_sides(made: Eased) -> Eased:
    task, best = made.task, made
    plugged = {each.thing for each in handled(task.rig, Results(task.rig).get(Leads))}
    things = {thing.name: thing for thing in task.things}
    for number in in_own_order(task.board).items:
        item = best.task.board.items[number]
        thing, below = things.get(item.name), item.under
        if thing is None:
            continue
        if not either_side(task.rig, thing, task.deck) or (not below and thing.name in plugged):
            continue
        sides = {**dict(best.sides), thing.name: not below}
        other = best.task.otherwise(best.task.rig, sides)
        found = _moved(other, begun(other.board, best.task.board, best.found.at), number)
        if found is not None and found.rank < best.found.rank:
            best = best.replace(task=other, found=found.replace(steps=best.found.steps), sides=tuple(sides.items()))
    return best


def _moved(task: Task, at: tuple[At, ...], item: int) -> Found | None:
    """The best place of one item where all others stand; None where it has none."""
    layout = Layout(task.board, list(at))
    best = _best(layout, item, _free_spots(layout, item, _COARSE, None))
    if best is None:
        return None
    return _best(layout, item, [best.at[item], *_free_spots(layout, item, _FINE, best.at[item])])


def _best(layout: Layout, item: int, spots: list[At]) -> Found | None:
    """The cheapest of those spots that look cheapest at sight: by what the leads of the item and its place cost at least."""
    board, ground = layout.board, layout.ground
    stood = {each: ground.stand(each, at) for each, at in enumerate(layout.at)}
    links = [link for link in board.links if item in (link.start.item, link.end.item)]

    def at_sight(there: At) -> tuple[int, At]:
        stood[item] = ground.stand(item, there)
        return stood[item].cost + sum(link_bound(board, link, stood) for link in links), there

    best: Found | None = None
    for there in sorted(spots, key=at_sight)[:_TRIED]:
        changes = [(item, *there)]
        hard, missed, stands = layout.faults_with(changes)
        cost, broken = layout.cost_with(stands, changes)
        found = Found(tuple(stands), hard + broken, missed, cost)
        if best is None or found.rank < best.rank:
            best = found
    return None if best is None or best.hard else best


def _free_spots(layout: Layout, item: int, grid: int, around: At | None) -> list[At]:
    """The corners on a grid over the whole deck, or around a place as far as the coarser one reaches, at which nothing is in the way."""
    spots: list[At] = []
    for shape, solid in enumerate(layout.solids[item]):
        if around is not None and shape != around[2]:
            continue
        if around is None:
            xs, ys = (
                range(0, layout.board.width - solid.width + 1, grid),
                range(0, layout.board.depth - solid.depth + 1, grid),
            )
        else:
            xs, ys = (range(here - _COARSE // 2, here + _COARSE // 2 + 1, grid) for here in around[:2])
        spots += [(x, y, shape) for x in xs for y in ys if not layout.fault_at(item, (x, y, shape))]
    return spots


def _with_other_plugs(made: Eased, steps: int, watch: Watch | None) -> Eased:
    task = made.task
    plugs = plugs_to_try(task)
    if not plugs:
        return made
    sides: Sides = dict(made.sides)
    other = task.otherwise(with_plugs(task.rig, plugs), sides)
    found = KNOWN.search(other.board, steps, watch=watch)
    if found.stopped or found.hard:
        stopped: Eased = made.replace(found=made.found.replace(stopped=found.stopped))
        return stopped
    fewer = with_usual_plugs(task, other, found, plugs, sides)
    return fewer if fewer.found.rank < made.found.rank else made
