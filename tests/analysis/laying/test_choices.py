"""Several layouts of one rig, and a layout that keeps what stood before."""

from __future__ import annotations

from cases import READER
from small_rigs import HEAD, block

from laying.test_objective import BODY, ROW, pedal
from rigc.analysis.laying.alternatives import Alternative, alternatives
from rigc.analysis.laying.chosen_places import with_chosen_places
from rigc.analysis.laying.kept_places import Kept, kept_places
from rigc.compile import compile_rig, read_rig
from rigc.model.rig import Rig
from rigc.source import Source

QUICK = 400  # steps
FLAT = block("plug", "flat", "fits ts", "stands out 15 mm", "bend 0 mm", "leaves at 8 mm", "wide 20 mm", "tall 20 mm")


def rig_of(text: str) -> Rig:
    """Nothing is placed yet."""
    rig = read_rig(lambda name: Source(name, HEAD + text), "sample.rig", READER).resolved.rig
    assert rig is not None
    return rig


def spots(rig: Rig) -> dict[str, tuple[float, float]]:
    return {name: (place.x_mm, place.y_mm) for name, place in rig.places.items()}


def test_alternatives_differ_the_best_first_and_each_is_better_at_something() -> None:
    text = ROW + "place {\n  weigh bare deck 200 %\n  weigh behind 50 %\n  weigh front lines 3000 %\n}\n"
    found = alternatives(rig_of(text), 3, QUICK)
    assert len(found) > 1
    assert [each.objective.cost for each in found] == sorted(each.objective.cost for each in found)
    assert len({tuple(spots(each.rig).values()) for each in found}) == len(found)
    assert all(each.better_at for each in found[1:])
    for each in found[1:]:
        for better in each.better_at:
            assert _counted(found[0], better.term) - _counted(each, better.term) == better.less > 0
    assert found == alternatives(rig_of(text), 3, QUICK)


def _counted(each: Alternative, name: str) -> int:
    return sum(term.counted for term in each.objective.terms if term.name == name)


def test_where_nothing_is_open_there_is_no_alternative() -> None:
    assert (
        alternatives(rig_of(ROW + "place {\n  marl at 0, 0 mm\n  hedge at 90, 0 mm\n  lant at 180, 0 mm\n}\n"), 3, 10)
        == ()
    )


LAID, _ = with_chosen_places(rig_of(ROW), QUICK)
AMP = block("amp", "stack", "input in ts 1 Mohm")
PLAYED = (
    ROW + AMP + "chain lant -> stack\n"
)  # each jack has its plug, so that none needs more room when one thing more comes
MORE = ROW + AMP + pedal("fen", "bypass true") + "chain lant -> fen -> stack\n"


def test_one_thing_more_moves_nothing() -> None:
    before, _ = with_chosen_places(rig_of(PLAYED), QUICK)
    kept = kept_places(rig_of(MORE), before, QUICK)
    assert all(move.stays for move in kept.moves)
    assert kept.new == ("fen",)
    assert {name: spots(kept.rig)[name] for name in spots(before)} == spots(before)
    assert all(place.chosen for place in kept.rig.places.values())


def test_a_rig_that_follows_another_is_laid_from_its_layout() -> None:
    """B is A with one thing more, and C is B with another: what stood in A stands there in C, whose own file names only B."""
    texts = {
        "a.rig": HEAD + PLAYED,
        "b.rig": HEAD.replace("A 2026-03-02", 'B 2026-03-03\n  follows A "a.rig"') + MORE,
        "c.rig": HEAD.replace("A 2026-03-02", 'C 2026-03-04\n  follows B "b.rig"')
        + MORE.replace("fen -> stack", "fen -> kelp -> stack")
        + pedal("kelp", "bypass true"),
    }

    def load(name: str) -> Source:
        return Source(name, texts[name])

    stood: dict[str, tuple[float, float]] = {}
    for name in texts:
        made = compile_rig(load, name, READER, effort=QUICK)
        assert made.results is not None, [finding.message for finding in made.findings]
        now = spots(made.results.rig)
        assert {thing: now[thing] for thing in stood} == stood
        stood = now
    assert len(stood) == 5


def test_what_was_wrong_before_moves_nothing() -> None:
    """Both stand on the only drop line, so that A1 has no way: a revision that says nothing of it leaves them there."""
    jacks = "input in ts rear 20 mm up 25 mm", "output out ts rear 50 mm up 25 mm"
    text = block("deck", "plank", "size 400 x 300 mm", "thickness 12 mm", "drop 150 mm") + FLAT
    text += "".join(block("unit", name, "body 70 x 110 x 50 mm", *jacks) for name in ("marl", "hedge"))
    text += "chain marl -> hedge\nleads {\n  A1 marl.out -> hedge.in under\n}\n"
    at = "place {\n  marl at 20, 100 mm\n  hedge at 200, 100 mm\n}\n"
    kept = kept_places(rig_of(text), rig_of(text + at), 4 * QUICK)
    assert not _moved(kept)
    free = kept_places(rig_of(text), rig_of(text + at.replace("100 mm", "10 mm")), 4 * QUICK)
    assert not _moved(free)


def test_what_is_built_stands_where_it_stood_under_another_name() -> None:
    """Two that are alike in all are told apart by their names alone; the one that is called otherwise now has not changed places."""
    text = block("deck", "plank", "size 400 x 300 mm")
    for name in ("amber", "ember"):
        text += block("instrument", f"g-{name}") + block("amp", f"a-{name}", "double-insulated", "input in ts")
        text += pedal(name, "bypass true") + f"chain g-{name} -> {name} -> a-{name}\n"
    texts = {
        "a.rig": HEAD + text,
        "b.rig": HEAD.replace("A 2026-03-02", 'B 2026-03-03\n  follows A "a.rig"')
        + text.replace("unit amber {", "unit zinc {\n  was amber").replace("-> amber ->", "-> zinc ->"),
    }
    made = [compile_rig(lambda name: Source(name, texts[name]), name, READER, effort=QUICK).results for name in texts]
    first, second = (spots(each.rig) for each in made if each is not None)
    assert second == {"zinc" if name == "amber" else name: spot for name, spot in first.items()}


def test_what_is_in_the_way_of_a_stated_place_moves_alone() -> None:
    """marl is stated where hedge stood."""
    x, y = spots(LAID)["hedge"]
    kept = kept_places(rig_of(ROW + f"place {{\n  marl at {x:g}, {y:g} mm\n}}\n"), LAID, QUICK)
    assert _moved(kept) == {"marl", "hedge"}


def test_a_new_wish_moves_what_it_names() -> None:
    kept = kept_places(rig_of(ROW + "place {\n  lant near right edge\n  lant row front\n}\n"), LAID, 4 * QUICK)
    assert "lant" in _moved(kept)
    x, y = spots(kept.rig)["lant"]
    assert x >= 400 - 70 - 60 and y <= 100


def test_where_nothing_is_open_what_stood_is_told_beside_what_stands() -> None:
    stated = rig_of(ROW + "place {\n  marl at 0, 0 mm\n  hedge at 90, 0 mm\n  lant at 180, 0 mm\n}\n")
    kept = kept_places(stated, LAID, QUICK)
    assert spots(kept.rig) == spots(stated)
    assert _moved(kept) == {name for name, spot in spots(stated).items() if spot != spots(LAID)[name]}


def _moved(kept: Kept) -> set[str]:
    return {move.thing for move in kept.moves if not move.stays}


def test_a_thing_without_a_body_is_no_alternative() -> None:
    assert alternatives(rig_of(ROW.replace(BODY, "mass 400 g")), 2, 10) == ()
