"""All fits at once are those that each pair gives by itself."""

from __future__ import annotations

from random import Random

from windows_by_hand import window_of

from rigc.analysis.leads.lengths.cable_lengths import Length
from rigc.analysis.revision.board import BoardLead
from rigc.analysis.revision.plan.leads.fit import Bench, Fit, fit
from rigc.analysis.revision.plan.leads.fits import all_fits
from rigc.analysis.revision.plan.successors import Successors
from rigc.model.fact import Fact
from rigc.model.jacks import Port
from rigc.model.stock import Plug
from rigc.source import Source, Span

HERE = Span(Source("plugs.rig", "plug"), 0, 4)
PLUGS = {
    name: Plug(name, name, HERE, soldered=soldered, cut_in_mm=None if mm is None else Fact(mm, f"{mm:g} mm", HERE))
    for name, soldered, mm in (("angle", False, 14.0), ("straight", True, 22.0), ("moulded", False, None))
}


def crowd(seed: int) -> tuple[tuple[BoardLead, ...], dict[str, Length], tuple[BoardLead, ...], Bench]:
    """Few jacks, lengths and labels, so that all of them meet; spares, legs and successors among them."""
    dice = Random(seed)

    def port() -> Port:
        return Port(dice.choice("abcd"), str(dice.randint(0, 3)))

    def lead(mark: str) -> BoardLead:
        ends = (port(), port())
        labels = dice.choice([(f"{mark} {ends[0]}", f"{mark} {ends[1]}"), ("", ""), ("out", "in")])
        plugs = (dice.choice([*PLUGS, None]), dice.choice(list(PLUGS)))
        return BoardLead(
            mark,
            dice.choice(("audio", "audio", "dc")),
            ends,
            plugs,
            dice.choice(("thin", "thick")),
            dice.choice((None, 100, 150, 200, 300)),
            labels,
            (dice.choice(("", "K1")), ""),
            leg_of=dice.choice(("A1", None, None, None)),
        )

    haves = tuple(lead(f"A{at}") for at in dice.sample(range(30), dice.randint(0, 14)))
    haves = tuple(have.replace(ends=None) if dice.random() < 0.15 else have for have in haves)
    needs = tuple(lead(f"A{at}") for at in dice.sample(range(30), dice.randint(0, 14)))
    windows = {}
    for need in needs:
        least, more = dice.choice((60, 120, 180)), dice.choice((20, 200))
        windows[need.mark] = window_of(need.mark, least, least + more, least + 1)
    ports = {Port(thing, str(jack)): port() for thing in "ab" for jack in range(3) if dice.random() < 0.5}
    return needs, windows, haves, Bench(PLUGS, Successors({}, ports), {})


def test_all_at_once_as_one_by_one() -> None:
    for seed in range(300):
        needs, windows, haves, bench = crowd(seed)
        alone: dict[str, dict[int, Fit]] = {need.mark: {} for need in needs}
        for need in needs:
            for at, have in enumerate(haves):
                if (have.leg_of or need.leg_of) and have.mark != need.mark:
                    continue  # a leg of a Y lead only serves as itself
                one = fit(have, need, windows[need.mark], bench)
                if isinstance(one, Fit):
                    alone[need.mark][at] = one
        assert all_fits(needs, windows, haves, bench) == alone, seed
