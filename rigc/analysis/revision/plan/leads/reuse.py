"""Leads that are needed and leads that are there -> which is made of which, so that as few as possible are made anew.

A lead stays itself where it can. What is pulled, and spares, may take the place of a lead that must be made, but a lead whose
number the new design has never bears another: a chain of new labels saves minutes and costs whoever reads the old sheet an
evening. Among these, an assignment of least cost, in this order: fewest new leads; the least length of new leads; fewest plugs to fit;
fewest ends to move; fewest labels to print; fewest leads whose number changes.
"""

from __future__ import annotations

from rigc.analysis.leads.lengths.cable_lengths import Length
from rigc.analysis.revision.board import BoardLead
from rigc.analysis.revision.plan.leads.fit import Bench, Fit
from rigc.analysis.revision.plan.leads.fits import all_fits
from rigc.record import Record
from rigc.solvers.cheapest_matching import OUT, Matching, Row

Cost = tuple[int, int, int, int, int, int]


class Reused(Record):
    """The lead of the rank `have` among those that are there, and how it serves."""

    have: int
    fit: Fit


def reused(
    needs: tuple[BoardLead, ...],
    windows: dict[str, Length],
    haves: tuple[BoardLead, ...],
    bench: Bench,
) -> dict[str, Reused]:
    """By number, the lead that each needed lead is made of; those that are made anew are left out.

    `windows` has every needed lead. The legs of Y leads only ever serve as themselves.
    """
    fits = all_fits(needs, windows, haves, bench)
    found = {}
    for need in needs:
        own = min((at for at in fits[need.mark] if haves[at].mark == need.mark), default=None)
        if own is not None:
            found[need.mark] = Reused(own, fits[need.mark][own])
    taken = {each.have for each in found.values()}
    rest = [need for need in needs if need.mark not in found]
    needed = {need.mark for need in needs}
    free = {at for at, have in enumerate(haves) if at not in taken and have.mark not in needed}
    rows = [{at: one for at, one in fits[need.mark].items() if at in free} for need in rest]
    for need, row, at in zip(rest, rows, _matched(rest, rows, windows, haves), strict=True):
        if at != OUT:
            found[need.mark] = Reused(at, row[at])
    return found


def cost(need: BoardLead, have: BoardLead | None, one: Fit | None, window: Length) -> Cost:
    """What it costs to have a needed lead: made anew (None), or from one that is there."""
    if have is None or one is None:
        return 1, window.supplied, 0, 0, 0, 0
    return (0, 0, *one.work, int(have.mark != need.mark))


def _matched(
    needs: list[BoardLead], fits: list[dict[int, Fit]], windows: dict[str, Length], haves: tuple[BoardLead, ...]
) -> list[int]:
    out = [cost(need, None, None, windows[need.mark]) for need in needs]
    kinds = [
        {at: (id(one), haves[at].mark == need.mark) for at, one in row.items()}
        for need, row in zip(needs, fits, strict=True)
    ]  # strangers of a kind have one fit between them: each is weighed once
    costs: dict[tuple[int, bool], Cost] = {}
    for need, row, keys in zip(needs, fits, kinds, strict=True):
        for at, key in keys.items():
            if key not in costs:
                costs[key] = cost(need, haves[at], row[at], windows[need.mark])
    steps = _steps([*out, *costs.values()], len(needs))
    weights = {key: _weighed(each, steps) for key, each in costs.items()}
    rows: list[Row] = [{at: weights[key] for at, key in keys.items()} for keys in kinds]
    prices: list[int | None] = [_weighed(each, steps) for each in out]
    matching = Matching(rows, prices, len(haves))
    solved = matching.solve()
    assert solved, "every lead may be made anew"
    return [OUT if at is None else at for at in matching.of]


def _steps(costs: list[Cost], rows: int) -> Cost:
    """What one of each level weighs: more than all rows together can cost on the levels below it."""
    weights = [1]
    for level in range(5, 0, -1):
        most = max((each[level] for each in costs), default=0)
        weights.insert(0, weights[0] * (rows * most + 1))
    return tuple(weights)  # type: ignore[return-value]


def _weighed(each: Cost, steps: Cost) -> int:
    return sum(amount * step for amount, step in zip(each, steps, strict=True))
