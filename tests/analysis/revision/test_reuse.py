"""Which lead is made of which: optimal against an independent assignment, and the same every time."""

from __future__ import annotations

import random

from scipy.optimize import linear_sum_assignment
from windows_by_hand import window_of

from rigc.analysis.leads.lengths.cable_lengths import Length
from rigc.analysis.revision.board import BoardLead
from rigc.analysis.revision.plan.leads.fit import Bench, Fit, fit
from rigc.analysis.revision.plan.leads.reuse import Reused, cost, reused
from rigc.analysis.revision.plan.successors import Successors
from rigc.model.fact import Fact
from rigc.model.jacks import Port
from rigc.model.stock import Plug
from rigc.source import Source, Span

HERE = Span(Source("plugs.rig", "plug"), 0, 4)
CUT_IN = {"angle": 14.0, "straight": 22.0, "moulded": None}
PLUGS = {
    name: Plug(name, name, HERE, cut_in_mm=None if mm is None else Fact(mm, f"{mm:g} mm", HERE))
    for name, mm in CUT_IN.items()
}
BENCH = Bench(PLUGS, Successors({}, {}), {})
LEVELS = 6
STEP = 1000  # more than any level comes to here: at most 7 leads of at most 100 mm
NEVER = float(STEP**LEVELS)


def lead(mark: str, length: int | None, plugs: tuple[str, str], start: int, end: int) -> BoardLead:
    ends = (Port("out", str(start)), Port("in", str(end)))
    labels = (f"{mark} {ends[0]} / {ends[1]}", f"{mark} {ends[1]} / {ends[0]}")
    return BoardLead(mark, "audio", ends, plugs, "thin", length, labels)


def window(need: BoardLead, least: int) -> Length:
    return window_of(need.mark, least, least + 20, least + 1)


def crowd(seed: int) -> tuple[tuple[BoardLead, ...], dict[str, Length], tuple[BoardLead, ...]]:
    """Up to seven of each, numbers and jacks half in common."""
    dice = random.Random(seed)
    kinds = [("angle", "angle"), ("angle", "straight"), ("moulded", "moulded"), ("straight", "moulded")]

    def some(marks: list[str], length: bool) -> tuple[BoardLead, ...]:
        chosen = dice.sample(marks, dice.randint(0, 7))
        return tuple(
            lead(
                mark,
                dice.randint(10, 500) if length else None,
                dice.choice(kinds),
                dice.randint(0, 5),
                dice.randint(0, 5),
            )
            for mark in chosen
        )

    haves = some([f"A{n}" for n in range(1, 12)], True)
    needs = some([f"A{n}" for n in range(6, 18)], False)
    return needs, {need.mark: window(need, dice.randint(10, 99)) for need in needs}, haves


def allowed(
    have: BoardLead,
    need: BoardLead,
    needs: tuple[BoardLead, ...],
    windows: dict[str, Length],
    haves: tuple[BoardLead, ...],
) -> bool:
    """Whether a lead may become another at all: as itself, or where nothing serves as itself, one that no number needs."""
    if have.mark == need.mark:
        return True
    own = any(one.mark == need.mark and isinstance(fit(one, need, windows[need.mark], BENCH), Fit) for one in haves)
    return not own and have.mark not in {each.mark for each in needs}


def total(
    needs: tuple[BoardLead, ...], windows: dict[str, Length], haves: tuple[BoardLead, ...], found: dict[str, Reused]
) -> int:
    """All levels in one whole number."""
    costs = [
        cost(need, haves[found[need.mark].have], found[need.mark].fit, windows[need.mark])
        if need.mark in found
        else cost(need, None, None, windows[need.mark])
        for need in needs
    ]
    return sum(amount * STEP ** (LEVELS - 1 - level) for each in costs for level, amount in enumerate(each))


def test_it_costs_as_little_as_an_independent_assignment() -> None:
    """scipy's assignment solver on the same costs, each lead's making a column of its own. Its floats are exact up to
    2^53, so that the levels below the third are compared one by one in the next test."""
    for seed in range(300):
        needs, windows, haves = crowd(seed)
        found = reused(needs, windows, haves, BENCH)
        assert len({each.have for each in found.values()}) == len(found), seed
        if not needs:
            continue
        costs = [[NEVER] * (len(haves) + len(needs)) for _ in needs]
        for row, need in enumerate(needs):
            costs[row][len(haves) + row] = _upper(cost(need, None, None, windows[need.mark]))
            for column, have in enumerate(haves):
                one = fit(have, need, windows[need.mark], BENCH) if allowed(have, need, needs, windows, haves) else ""
                if isinstance(one, Fit):
                    costs[row][column] = _upper(cost(need, have, one, windows[need.mark]))
        rows, columns = linear_sum_assignment(costs)
        mine = total(needs, windows, haves, found) // STEP**3
        assert mine == round(sum(costs[row][column] for row, column in zip(rows, columns, strict=True))), seed


def _upper(each: tuple[int, ...]) -> float:
    return float(sum(amount * STEP ** (2 - level) for level, amount in enumerate(each[:3])))


def test_no_assignment_of_few_leads_costs_less_on_any_level() -> None:
    """Every assignment is tried, in whole numbers."""
    for seed in range(120):
        needs, windows, haves = crowd(seed)
        needs, haves = needs[:4], haves[:5]
        found = reused(needs, windows, haves, BENCH)
        assert total(needs, windows, haves, found) == _least(needs, windows, haves, frozenset(), needs), seed


def _least(
    needs: tuple[BoardLead, ...],
    windows: dict[str, Length],
    haves: tuple[BoardLead, ...],
    taken: frozenset[int],
    every: tuple[BoardLead, ...],
) -> int:
    if not needs:
        return 0
    first, rest = needs[0], needs[1:]
    own = any(
        have.mark == first.mark and isinstance(fit(have, first, windows[first.mark], BENCH), Fit) for have in haves
    )
    anew = total((first,), windows, haves, {}) + _least(rest, windows, haves, taken, every)
    best = STEP ** (LEVELS + 1) if own else anew
    for at, have in enumerate(haves):
        one = fit(have, first, windows[first.mark], BENCH)
        if at not in taken and isinstance(one, Fit) and allowed(have, first, every, windows, haves):
            here = total((first,), windows, haves, {first.mark: Reused(at, one)})
            best = min(best, here + _least(rest, windows, haves, taken | {at}, every))
    return best


def test_a_lead_that_serves_stays_itself() -> None:
    """A1 as it is serves both; that A2 would rather have it (it lies between A2's jacks) does not count."""
    have = (lead("A1", 60, ("angle", "angle"), 2, 2),)
    needs = (lead("A1", None, ("angle", "angle"), 1, 1), lead("A2", None, ("angle", "angle"), 2, 2))
    windows = {need.mark: window(need, 50) for need in needs}
    assert set(reused(needs, windows, have, BENCH)) == {"A1"}


def test_no_chain_of_numbers() -> None:
    """A1 is too short for its new way and A2 would do, but A2 is needed as A2; A9, which nobody needs, takes its place."""
    haves = (lead("A1", 40, ("angle", "angle"), 1, 1), lead("A2", 60, ("angle", "angle"), 2, 2))
    needs = tuple(lead(mark, None, ("angle", "angle"), at, at) for at, mark in ((1, "A1"), (2, "A2")))
    windows = {"A1": window(needs[0], 50), "A2": window(needs[1], 50)}
    assert {mark: haves[one.have].mark for mark, one in reused(needs, windows, haves, BENCH).items()} == {"A2": "A2"}
    more = (*haves, lead("A9", 60, ("angle", "angle"), 3, 3))
    assert {mark: more[one.have].mark for mark, one in reused(needs, windows, more, BENCH).items()} == {
        "A1": "A9",
        "A2": "A2",
    }


def test_a_plug_takes_its_length() -> None:
    """Straight takes in 22.0 mm = 220 tenths: of 720 tenths 500 are left, just the least; of 719 they are too few."""
    need = lead("A1", None, ("angle", "straight"), 1, 1)
    for length, fits in ((720, True), (719, False)):
        one = fit(lead("A1", length, ("angle", "angle"), 1, 1), need, window(need, 500), BENCH)
        assert isinstance(one, Fit) is fits
        if isinstance(one, Fit):
            assert (one.plugged, one.length) == ((1,), 500)


def test_an_end_that_is_cut_anyway_is_cut_to_length() -> None:
    """9000 tenths are too long for 500..520, but with a new plug the lead is cut to the 501 that it is made."""
    need = lead("A1", None, ("angle", "straight"), 1, 1)
    one = fit(lead("A1", 9000, ("angle", "angle"), 1, 1), need, window(need, 500), BENCH)
    assert isinstance(one, Fit) and one.length == 501


def test_a_lead_that_is_too_long_is_shortened_under_its_own_number_only() -> None:
    """9000 tenths with the right plugs: the straight plug takes in 220, and 9000 − 220 − 501 = 8279 more are cut off; the
    label at that end goes with it. As A2, or where an end moves, it is left whole; a leg of a Y lead, and one with moulded plugs, never cut. 521
    less the 140 of an angle plug is too little for the 500 that it must have, so that it is simply too long."""
    need = lead("A1", None, ("angle", "straight"), 1, 1)
    have = lead("A1", 9000, ("angle", "straight"), 1, 1)
    one = fit(have, need, window(need, 500), BENCH)
    assert isinstance(one, Fit) and (one.length, one.cut, one.plugged, one.labelled) == (501, 8279, (1,), (1,))
    assert fit(have.replace(mark="A2"), need, window(need, 500), BENCH) == "too long"
    elsewhere = lead("A1", 9000, ("angle", "straight"), 1, 2)
    assert fit(elsewhere, need, window(need, 500), BENCH) == "too long"
    leg = need.replace(leg_of="A")
    assert fit(have.replace(leg_of="A"), leg, window(leg, 500), BENCH) == "too long"
    moulded = ("moulded", "moulded")
    assert fit(have.replace(plugs=moulded), need.replace(plugs=moulded), window(need, 500), BENCH) == "too long"
    short = lead("A1", 521, ("angle", "angle"), 1, 1)
    assert fit(short, need.replace(plugs=("angle", "angle")), window(need, 500), BENCH) == "too long"


def test_the_window_includes_both_its_ends() -> None:
    need = lead("A1", None, ("angle", "angle"), 1, 1)
    told = {
        mm: fit(lead("A1", mm, ("angle", "angle"), 1, 1), need, window(need, 500), BENCH) for mm in (499, 500, 520, 521)
    }
    assert (told[499], told[521]) == ("too short", "too long")
    assert isinstance(told[500], Fit) and isinstance(told[520], Fit)


def test_a_lead_may_be_turned_round() -> None:
    """From in 3 to out 3 instead of out 3 to in 3: no end moves."""
    need = lead("A1", None, ("angle", "straight"), 3, 3)
    have = lead("A1", 505, ("straight", "angle"), 0, 0).replace(ends=(Port("in", "3"), Port("out", "3")))
    one = fit(have, need, window(need, 500), BENCH)
    assert isinstance(one, Fit) and (one.ends, one.moved, one.plugged) == ((1, 0), (), ())


def test_a_moulded_plug_is_never_fitted() -> None:
    need = lead("A1", None, ("angle", "moulded"), 1, 1)
    assert fit(lead("A1", 510, ("angle", "angle"), 1, 1), need, window(need, 500), BENCH) == "other plug"
