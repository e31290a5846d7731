"""What differs between two revisions of the touring rig, with the work that follows and the causes."""

from __future__ import annotations

import pytest
from comparison_rigs import TOURING, TOURING_D, compared, results_against, text_of, thing

from rigc.analysis.revision.comparison import Comparison
from rigc.analysis.revision.seal import Seal

OLD = text_of(TOURING)


def test_nothing_before_nothing_differs() -> None:
    from written import changed

    assert changed(TOURING).get(Comparison).things == ()


def test_a_rig_does_not_differ_from_itself() -> None:
    assert compared(OLD, OLD) == ()


def test_comments_and_spacing_are_no_difference() -> None:
    loose = OLD.replace("\n  mass", "\n\n  # weighed\n    mass")
    assert compared(OLD, loose) == ()


def test_another_spelling_of_a_number_is_no_difference() -> None:
    assert compared(OLD, text_of(TOURING, ("mass 1.60 kg", "mass 1600 g"), ("1 Mohm", "1000 kohm"))) == ()


def test_the_exchanged_pitch_unit() -> None:
    """Worked by hand: A14 is 830 mm and may be 736 to 926.6 (way 706: + 30, and 1.1 x 706 + 150), A15 710 in 648 to 829.8,
    D07 900 in 648 to 900, D08 900 in 621 to 900; so one lead is new, D16, and one adaptor, and no lead is made anew."""
    new = text_of(TOURING_D).replace("../../examples/", "../")
    things = compared(OLD, new)
    replaced = thing(things, "unit", "stepladder-ii")
    assert (replaced.how, replaced.was) == ("replaced", "stepladder")
    assert replaced.why == "in loop 7 of signalbox and in one place"
    leads = {each.name: each for each in things if each.kind == "lead"}
    assert {name: each.how for name, each in leads.items()} == {
        "A14": "changed",
        "A15": "changed",
        "D07": "changed",
        "D08": "changed",
        "D16": "added",
    }
    held = {each.name: one.held for each in things for one in each.differences if one.field == "length" and one.held}
    assert held["A14"] == "the lead that is there, 830 mm, still does: 736 to 926.6 mm"
    assert set(held) == {"A14", "A15"}  # D07 and D08 are bought as long as they were
    assert thing(things, "feed", "echomill").work == ("repower",)
    assert thing(things, "place", "stepladder-ii").work == ("redrill",)
    assert thing(things, "special lead", "Y1").work == ("rewire", "relabel")
    assert {each.name for each in things if each.told and "rewire" in each.work} == {*leads, "Y1"}
    assert {cause for each in things for cause in each.causes} == {"design"}


def test_a_shorter_way_orders_no_lead() -> None:
    """Ten millimetres nearer: what was made still does."""
    things = compared(OLD, text_of(TOURING, ("echomill at 580, 325", "echomill at 590, 325")))
    lengths = [one for each in things if each.kind == "lead" for one in each.differences if one.field == "length"]
    assert lengths and all(one.held for one in lengths)
    assert {each.kind for each in things if each.told} == {"place"}  # a gram of cable is not told


def test_a_lead_that_is_too_short_now() -> None:
    """A17 goes from echomill to the switcher; half the deck further to the right its lead does not reach."""
    things = compared(
        OLD,
        text_of(TOURING, ("echomill at 580, 325", "echomill at 820, 325"), ("heron at 690, 325", "heron at 580, 325")),
    )
    assert "rewire" in thing(things, "lead", "A17").work


def test_a_measured_lead_counts_more_than_a_reckoned_one() -> None:
    """A14 was made 700 mm long instead of 830: too short for a way that asks for at least 736."""
    built = 'as-built C {\n  A14 700 mm 2026-03-03 by "R.K."\n}\n'
    new = text_of(TOURING_D).replace("../../examples/", "../")
    length = {one.field: one for one in thing(compared(OLD + built, new), "lead", "A14").differences}["length"]
    assert not length.held


def test_a_renamed_unit() -> None:
    new = OLD.replace("marl", "loam").replace('unit loam "overdrive" {', 'unit loam "overdrive" {\n  was marl')
    things = compared(OLD, new)
    assert thing(things, "unit", "loam").how == "renamed"
    assert {each.how for each in things} == {"renamed", "changed"}
    labels = {each.name for each in things if each.kind == "lead"}
    assert labels == {"A08", "A09", "D04"}
    assert all(each.work == ("relabel",) for each in things if each.kind == "lead")
    first = thing(things, "lead", "A08").differences[0]
    assert (first.before, first.now) == ("A08 signalbox.s4 / far marl.in", "A08 signalbox.s4 / far loam.in")


def test_a_unit_without_a_successor() -> None:
    """It comes into a place and a loop where nothing was: nothing is guessed."""
    new = text_of(TOURING, ("unit bramble like", 'unit gorse like marl "spare" {\n}\n\nunit bramble like'))
    things = compared(OLD, new)
    assert thing(things, "unit", "gorse").how == "added"
    assert thing(compared(new, OLD), "unit", "gorse").how == "removed"


@pytest.mark.parametrize(
    ("change", "key", "cause"),
    [
        (("draws 190 mA", "draws 195 mA"), ("sum", "supply mill8"), ("facts",)),
        (("limit lift 23 kg", "limit lift 25 kg"), ("limit", "lift"), ("rules",)),
        (("echomill at 580, 325", "echomill at 585, 325"), ("place", "echomill"), ("design",)),
        (('"Salt Road"', '"Salt Lane"'), ("song", "Salt Lane"), ("design",)),
    ],
)
def test_one_cause(change: tuple[str, str], key: tuple[str, str], cause: tuple[str, ...]) -> None:
    assert thing(compared(OLD, text_of(TOURING, change)), *key).causes == cause


def test_the_stock_changed() -> None:
    """Strip of 40 g/m in place of 30 makes the board heavier, and nothing else does."""
    things = compared(OLD, OLD, stock=("mass 30 g/m", "mass 40 g/m"))
    assert thing(things, "strip", "mushroom").causes == ("stock",)
    assert thing(things, "sum", "board").causes == ("stock",)


def test_several_causes_are_told_apart() -> None:
    """The current moves what the supply gives, the place the ways of the leads, the strip and a unit the mass together."""
    new = text_of(
        TOURING,
        ("draws 190 mA", "draws 195 mA"),
        ("echomill at 580, 325", "echomill at 590, 325"),
        ("mass 1.90 kg", "mass 2.00 kg"),
    )
    things = compared(OLD, new, stock=("mass 30 g/m", "mass 40 g/m"))
    assert thing(things, "sum", "supply mill8").causes == ("facts",)
    assert thing(things, "lead", "A17").causes == ("design",)
    assert thing(things, "place", "echomill").causes == ("design",)
    mass = {one.field: one for one in thing(things, "sum", "board").differences}["mass"]
    assert mass.causes == ("design", "facts", "stock")  # the shorter leads of the moved unit weigh less


def test_stated_changes_stand_beside_what_they_touch() -> None:
    said = '  change 1 design "further left" touches echomill\n  marker 40 characters'
    new = text_of(TOURING, ("  marker 40 characters", said), ("echomill at 580, 325", "echomill at 575, 325"))
    assert thing(compared(OLD, new), "place", "echomill").stated == (1,)


def test_a_lead_without_a_number_keeps_its_place_under_another_number() -> None:
    """A unit more at the head of a chain whose leads have no numbers: each lead lies where it lay, and its label is wrong."""
    head = 'language 1\nuse "stock/plugs.rig"\nuse "stock/cables.rig"\nrig n {\n  revision A 2026-03-02\n}\n'
    unit = (
        "unit a {\n  input in ts right 20 mm\n  output out ts left 20 mm\n}\nunit b like a {\n}\nunit c like a {\n}\n"
    )
    things = compared(f"{head}{unit}chain a -> b\n", f"{head}{unit}chain c -> a -> b\n")
    leads = {each.name: each for each in things if each.kind == "lead"}
    assert {name: (each.how, each.was, each.work) for name, each in leads.items()} == {
        "A1": ("added", "", ("rewire", "relabel")),
        "A2": ("renumbered", "A1", ("relabel",)),
    }


def test_a_seal_stays_where_the_design_does() -> None:
    one = results_against(OLD, OLD).get(Seal)
    again = results_against(OLD, OLD.replace("\n  mass", "\n\n    mass").replace("1 Mohm", "1000 kohm")).get(Seal)
    noted = OLD + 'note "x"\n'
    built = OLD + 'as-built C {\n  A14 700 mm 2026-03-03 by "R.K."\n}\n'
    frozen = OLD.replace("  marker 40", '  frozen 2026-03-03 by "R.K."\n  marker 40')
    assert str(one) == str(again)
    assert results_against(OLD, built).get(Seal) == one == results_against(OLD, frozen).get(Seal)
    assert results_against(OLD, noted).get(Seal).stated != one.stated
    assert results_against(OLD, noted).get(Seal).computed == one.computed


def test_what_only_rounding_hides_is_held_back() -> None:
    """0.1 g more in 21.758 kg is the same to ten grams."""
    things = compared(OLD, text_of(TOURING, ("mass 1.20 kg", "mass 1.2001 kg")))
    mass = thing(things, "sum", "board").differences[0]
    assert (mass.before, mass.now, mass.held) == ("21.82 kg", "21.82 kg", "the figure is the same when it is rounded")
    assert not thing(things, "sum", "board").told


def test_a_deck_of_another_size_is_another_deck() -> None:
    """80 mm more is no correction of a measurement, 4 mm are."""
    for width, work, causes in (("1000", ("redrill",), ("design",)), ("924", ("paper",), ("facts",))):
        deck = thing(compared(OLD, text_of(TOURING, ("size 920 x 480", f"size {width} x 480"))), "deck", "plate")
        assert (deck.work, {one.field: one.causes for one in deck.differences}["width"]) == (work, causes)


ODD = "tests/rigs/odd-leads.rig"


def odd_work(*changes: tuple[str, str], stock: tuple[str, str] = ("", "")) -> dict[tuple[str, str], tuple[str, ...]]:
    """By kind and name the work that such changes of the odd leads ask for."""
    return {(each.kind, each.name): each.work for each in compared(text_of(ODD), text_of(ODD, *changes), ODD, stock)}


@pytest.mark.parametrize(
    ("change", "lead"),
    [
        (("bulrush.midi crossover", "bulrush.midi"), "M1"),
        (("bulrush.exp crossover", "bulrush.exp"), "C1"),
        (
            ("up 15 mm type b", "up 15 mm type a"),
            "M1",
        ),  # the leaflet was wrong: the lead that is there must be looked at
        (("rush from mill.o2 reversed", "rush from mill.o2"), "D2"),
        (("bulrush.midi crossover", "bulrush.midi crossover shield at both ends"), "M1"),
    ],
)
def test_other_conductors_are_no_paper(change: tuple[str, str], lead: str) -> None:
    assert odd_work(change)["lead", lead][0] == "rewire"


def test_another_lower_outlet_is_no_paper() -> None:
    """The series lead takes its two leads the other way round, and all that names the lower one bears another label."""
    found = odd_work(("series lower mill.o4", "series lower mill.o3"))
    relabelled = (("lead", "D3"), ("lead", "D4"), ("special lead", "Y1"))
    assert found == {("feed", "iris"): ("repower",), **dict.fromkeys(relabelled, ("relabel",))}


def test_a_lead_that_carries_ac_no_longer_is_another_lead() -> None:
    """`needs 9 V ac` stands at one unit, `9 V ac 500 mA` at one outlet: AC1 goes, its labels on, and D5 comes."""
    found = odd_work(("needs 9 V ac", "needs 9 V dc"), ("outlet w 9 V ac 500 mA", "outlet w 9 V dc 500 mA"))
    assert (found["lead", "AC1"], found["lead", "D5"]) == (("rewire",), ("rewire", "relabel"))


def test_a_cable_of_other_conductors_is_no_paper() -> None:
    assert odd_work(stock=("  conductors 3\n", "  conductors 2\n"))["cable", "control-3"] == ("rewire",)


def test_a_preset_that_names_no_switcher_means_the_only_one() -> None:
    """Of two revisions that say it so and so none differs; where there is no switcher, the loop's number stands alone."""
    named = "language 1\nrig b {\n  revision A 2026-03-02\n}\nunit box {\n  output s ts\n  input r ts\n  loop 1 send s return r\n}\npreset 1 {\n  loops 1 of box\n}\n"
    assert compared(named, named.replace("loops 1 of box", "loops 1")) == ()
    without = named.replace("  loop 1 send s return r\n", "").replace(" of box", "")
    (preset,) = (each for each in compared(without, without.replace("loops 1", "loops 2")) if each.kind == "preset")
    assert [(each.before, each.now) for each in preset.differences] == [("1", "2")]
