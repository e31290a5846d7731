"""The fault tree: each single break is walked down to, and each patch is tried, on ways that are reckoned anew. Rigs are invented."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from dealt_ways import dealt_ways
from fault_walk import Bench
from small_rigs import block, results_of, unit
from written import written

from rigc.analysis.faults.fault_tree import Culprits, FaultTree, FaultTrees, Symptom
from rigc.analysis.faults.questions import may_join
from rigc.analysis.faults.single_breaks import SingleBreaks
from rigc.analysis.results import Results
from rigc.model.jacks import Port
from rigc.solvers.halving import least_depth

EXAMPLES = ("back-bedroom", "harbour-keys", "long-haul", "long-haul-d", "tide-line")
GUITAR, COMBO = block("instrument", "guitar"), block("amp", "combo", "input in ts")


def trees(made: Results) -> tuple[FaultTree, ...]:
    return made.get(FaultTrees).all


def names(culprits: Culprits | None) -> list[str]:
    return [] if culprits is None else [each.name for each in culprits.breaks]


def halves(symptom: Symptom) -> int:
    """How many questions it takes if each leaves half of the breaks."""
    return least_depth(sum(len(each.breaks) for each in symptom.culprits))


def test_no_good_lead_goes_where_phantom_power_is_missing_or_does_harm() -> None:
    rig = written(
        """
source voice {
  microphone
  output out xlr 150 ohm balanced
  phantom out needs 48 V
}
source player {
  line
  output out xlr 150 ohm balanced
  phantom out never
}
desk front {
  input a xlr 2 kohm balanced
  input b xlr 2 kohm balanced
  input c xlr 2 kohm balanced
  phantom a gives 48 V
  phantom b none
}
chain voice -> front.a
chain player -> front.b
"""
    ).rig
    into = {name: Port("front", name) for name in "abc"}
    assert [may_join(rig, Port("voice", "out"), into[name]) for name in "abc"] == [True, False, False]
    assert [may_join(rig, Port("player", "out"), into[name]) for name in "abc"] == [False, True, True]


def walk_all(made: Results, beyond: int = 0) -> None:
    """Every break of every hookup is found, within the halves of what it may be and so many questions more, and what helps helps."""
    for tree in trees(made):
        bench = Bench(made, tree)
        placed = {each.key for symptom in tree.symptoms for c in symptom.culprits for each in c.breaks}
        unheard = {each.key for group in tree.heard for each in group.breaks}
        assert not placed & unheard
        for broken in made.get(SingleBreaks).all:
            symptom, found, asked = bench.walk(broken)
            if symptom is None or found is None:
                assert broken.key not in placed
                continue
            assert broken in found.breaks, broken.name
            assert asked <= symptom.most
            assert asked <= halves(symptom) + beyond, (broken.name, asked, halves(symptom))
            helped = found.repair
            now = bench.heard(broken, helped.out, helped.patches)
            assert now >= helped.back
            if helped.minutes is not None:
                assert helped.back > bench.heard(broken)


@pytest.mark.parametrize("example", EXAMPLES)
def test_every_single_break_of_an_example_is_found(example: str) -> None:
    walk_all(results(ROOT / "examples" / example / "board.rig"))


@pytest.mark.parametrize(
    "seeds", [range(20), pytest.param(range(20, 300), marks=pytest.mark.long)], ids=["20", "280-more"]
)
def test_every_single_break_of_a_dealt_rig_is_found(seeds: range) -> None:
    """Where no question halves what is left the tree is deeper than the halves: by one question at most, as tried."""
    for seed in seeds:
        made = results_of(dealt_ways(seed))
        assert trees(made), seed
        walk_all(made, beyond=1)


@pytest.mark.parametrize("example", EXAMPLES)
def test_what_stays_together_sounds_alike_whatever_is_asked(example: str) -> None:
    """No question of the tree parts a group: each answers alike for all of it."""
    made = results(ROOT / "examples" / example / "board.rig")
    for tree in trees(made):
        bench = Bench(made, tree)
        for symptom in tree.symptoms:
            for line in symptom.lines:
                asked = line.question
                for culprits in symptom.culprits:
                    patches = () if asked.patch is None else (asked.patch,)
                    said = {asked.end in bench.heard(each, asked.out, patches) for each in culprits.breaks}
                    assert len(said) == 1, names(culprits)


def row(count: int, *more: str) -> Results:
    """A guitar, so many units in a row, a combo."""
    own = [f"u{number}" for number in range(count)]
    chain = " -> ".join(("guitar", *own, "combo"))
    return results_of("".join((GUITAR, *(unit(name, "passive") for name in own), COMBO, f"chain {chain}\n", *more)))


def test_a_row_of_three() -> None:
    """Guitar, three units, four leads, combo: nine breaks. A lead in its place finds each lead; guitar and combo, that is asked by a lead
    from the one to the other and is silent with both, stay together: eight groups. But no question parts them four and four (a lead
    into u1 sounds with three of them, into u2 with five): four questions, not three."""
    (tree,) = trees(row(3))
    (symptom,) = tree.symptoms
    assert [names(each) for each in symptom.culprits if len(each.breaks) > 1] == [["guitar", "combo"]]
    assert len(symptom.culprits) == 8
    assert symptom.most == 4
    assert (least_depth(len(symptom.culprits)), halves(symptom)) == (3, 4)
    walk_all(row(3))


def test_the_shortest_patch_goes_round_the_broken_unit_alone() -> None:
    """A lead from its bag 1 min, two plugs out and two in at half a minute each: 3 min (facts of rework)."""
    (tree,) = trees(row(3))
    told = {names(each)[0]: each.repair for each in tree.symptoms[0].culprits}
    assert str(told["u1"].patches[0]) == "u0.out → u2.in"
    assert told["u1"].without == ("u1",)
    assert told["u1"].minutes == 3
    assert str(told["A2"].patches[0]) == "u0.out → u1.in"
    assert told["A2"].without == ()
    assert told["guitar"].minutes is None


def test_an_outlet_is_heard_only_if_a_unit_mutes() -> None:
    """Of two fed units one passes without power: its outlet and lead are never heard; those of the other sound like itself."""
    inlet = ("inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "polarity centre-negative", "draws 10 mA")
    supply = block(
        "supply",
        "weir",
        "connector barrel 5.5 x 2.1 mm",
        "polarity centre-negative",
        "outlet o1..o2 9 V dc 100 mA isolated",
    )
    parts = (
        GUITAR,
        unit("marl", *inlet, "unpowered mutes"),
        unit("hedge", *inlet, "unpowered passes"),
        COMBO,
        supply,
        "chain guitar -> marl -> hedge -> combo\n",
        "power {\n  marl from weir.o1\n  hedge from weir.o2\n}\n",
    )
    made = results_of("".join(parts))
    (tree,) = trees(made)
    assert ["marl", "D1", "weir.o1", "weir or its mains lead"] in [names(each) for each in tree.symptoms[0].culprits]
    assert [[each.name for each in group.breaks] for group in tree.heard] == [["D2", "weir.o2"]]
    walk_all(made)


def test_a_unit_that_does_not_say_is_taken_to_mute() -> None:
    inlet = ("inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "polarity centre-negative", "draws 10 mA")
    supply = block(
        "supply",
        "weir",
        "connector barrel 5.5 x 2.1 mm",
        "polarity centre-negative",
        "outlet o1 9 V dc 100 mA isolated",
    )
    made = results_of(
        "".join(
            (
                GUITAR,
                unit("marl", *inlet),
                COMBO,
                supply,
                "chain guitar -> marl -> combo\n",
                "power {\n  marl from weir.o1\n}\n",
            )
        )
    )
    assert {each.name: each.unsure for each in made.get(SingleBreaks).all if each.dark} == {
        "D1": ("marl",),
        "weir.o1": ("marl",),
        "weir or its mains lead": ("marl",),
    }


def test_no_instrument_no_tree() -> None:
    assert trees(results_of(unit("marl") + COMBO + "chain marl -> combo\n")) == ()


@pytest.mark.parametrize("count", [25, 50, 100])
def test_a_long_row_costs_in_proportion(count: int) -> None:
    """A row of n passive units has 2n + 3 breaks. Each is walked five times for the questions, and of each group at most some twenty
    patches are tried with six walks each: counted, not timed."""
    (tree,) = trees(row(count))
    assert tree.walks <= 130 * (2 * count + 3)
    assert tree.symptoms[0].most <= halves(tree.symptoms[0])


def test_a_lead_past_a_broken_unit_begins_where_its_sound_came_from() -> None:
    """The reverb's outputs are farther along the sound and bring the ends back too, but with its own sound, not that of the mixer."""
    amp = block("amp", "stack", "input l ts", "input r ts", "pair l, r")
    mixer = block(
        "unit", "mixer", "input in ts", "input back ts", "input backr ts", "pair back, backr", "output main ts", "output mainr ts",
        "pair main, mainr", "output aux ts", "path in -> main buffer", "path in -> mainr buffer", "path back -> main buffer",
        "path backr -> mainr buffer", "path in -> aux buffer", "bypass always-on",
    )  # fmt: skip
    hall = block("unit", "hall", "input in ts", "output l ts", "output r ts", "pair l, r", "reverb", "set wet")
    sides = ("input a ts", "input b ts", "pair a, b", "output l ts", "output r ts", "pair l, r")
    bay = block("unit", "bay", *sides, "path a -> l straight", "path b -> r straight", "passive")
    chains = "chain guitar -> mixer.in\nchain wet: mixer.aux -> hall => mixer.back\nchain mixer => bay => stack\n"
    made = results_of(GUITAR + amp + mixer + hall + bay + chains)
    found = [each for tree in trees(made) for symptom in tree.symptoms for each in symptom.culprits]
    (repair,) = (each.repair for each in found if names(each) == ["bay"])
    assert [(str(patch.start), str(patch.end)) for patch in repair.patches] == [
        ("mixer.main", "stack.l"),
        ("mixer.mainr", "stack.r"),
    ]
