"""Values of two texts that differ little: what an edit did not touch is the same, goes where its words go, and holds nothing that is not so."""

from __future__ import annotations

import random
import weakref
from functools import partial
from typing import Any

import pytest
from cases import ROOT

from rigc.model.fact import Fact, Quantity
from rigc.model.rig import Rig
from rigc.model.seen_rig import SeenRig, differing
from rigc.model.things import Unit
from rigc.model.twins import MovedPlaces, Places, is_same, joined
from rigc.source import InCommon, Source, Span
from rigc.traced.figure import figure
from rigc.traced.given import stated
from rigc.traced.shown import PLAIN

OLD = Source("a.rig", "unit tern {\n  mass 400 g\n}\nunit fen {\n  mass 420 g\n}\n")


def fact(source: Source, word: str) -> Quantity:
    """A mass that stands in a text."""
    start = source.text.index(word)
    return Fact(float(word), word, Span(source, start, start + len(word)))


def unit(name: str, mass: Quantity | None) -> Unit:
    return Unit("unit", name, "", Span(OLD, 0, 4), mass_kg=mass)


@pytest.mark.parametrize("seed", range(40))
def test_what_two_texts_have_in_common_is_the_same_text(seed: int) -> None:
    """After three edits far apart, of lines and of single letters; each line that is moved is so in the other direction."""
    dice = random.Random(seed)
    old = (ROOT / "examples" / "back-bedroom" / "board.rig").read_text("utf-8")[:3000]
    new = old
    for _ in range(3):
        at = dice.randrange(len(new))
        new = new[:at] + dice.choice(("", "\n", "# x\n", "7", "mill\nfen")) + new[at + dice.randrange(0, 40) :]
    common = InCommon(old, new)
    kept = 0
    for _ in range(200):
        start = dice.randrange(len(old))
        end = min(len(old), start + dice.randrange(60))
        by = common.moved(start, end)
        if by is not None:
            kept += 1
            assert old[start:end] == new[start + by : end + by]
            assert common.came(start + by, end + by) is not None
    assert kept > 50


def test_a_place_goes_with_its_words_and_with_the_twin_that_it_follows() -> None:
    now = Source("a.rig", f"# a remark\n{OLD.text}")
    before, twin = fact(OLD, "420"), fact(now, "420")
    made_of = before.span.behind, before.span.up_to(before.span)
    assert is_same(before, twin, MovedPlaces())
    assert (before.span.source, before.span.text, before.span.line) == (now, "420", 6)
    assert [(each.start, each.end, each.source) for each in made_of] == [
        (twin.span.end, twin.span.end, now),
        (twin.span.start, twin.span.end, now),
    ]
    later = Source("a.rig", f"\n{now.text}")
    twin.span.move(fact(later, "420").span)
    assert (before.span.source, before.span.line) == (later, 7)


@pytest.mark.parametrize("each_other", [False, True])
def test_a_place_that_follows_another_goes_where_that_follows_a_third(each_other: bool) -> None:
    """What was dropped and came back has a place of its own, which a value of before follows; an edit later that is the place of before."""
    came_back = fact(OLD, "420")
    value = fact(OLD, "420")
    assert is_same(value, came_back, MovedPlaces())
    if each_other:
        assert is_same(came_back, value, MovedPlaces())
    for text in (f"# a remark\n{OLD.text}", f"\n\n{OLD.text}"):
        now = fact(Source("a.rig", text), "420").span
        assert is_same(came_back.span, now, MovedPlaces())
        for each in (value.span, came_back.span):
            assert (each.source, each.start, each.end) == (now.source, now.start, now.end)


def test_a_place_that_nobody_holds_follows_no_other() -> None:
    """In an editor the places that are followed stay as long as it is open."""
    stays, passes = fact(OLD, "420").span, fact(OLD, "420").span
    passes.follow(stays)
    gone = weakref.ref(passes)
    del passes  # it is in no circle that would have to be searched for
    assert gone() is None


def test_a_place_that_was_edited_or_stands_elsewhere_is_another() -> None:
    changed = Source("a.rig", OLD.text.replace("420", "4200"))
    assert not is_same(fact(OLD, "420"), fact(changed, "4200"), MovedPlaces())
    twice = Source("a.rig", OLD.text.replace("420", "400"))
    first, second = (
        Fact(400.0, "400", Span(twice, at, at + 3)) for at in (twice.text.index("400"), twice.text.rindex("400"))
    )
    assert is_same(fact(OLD, "400"), first, MovedPlaces())
    assert not is_same(fact(OLD, "400"), second, MovedPlaces())
    assert is_same(fact(OLD, "400"), second, Places())


def test_figures_are_the_same_only_with_all_that_they_were_reckoned_from() -> None:
    def load(mass: Quantity) -> Any:
        return figure("board.mass", stated("mass", mass) + stated("mass", mass), PLAIN, rule="r", source="s")

    mass = fact(OLD, "400")
    assumed = mass.replace(typed="0.4 kg")
    assert is_same(load(mass), load(mass), Places())
    assert float(load(mass)) == float(load(assumed))
    assert not is_same(load(mass), load(assumed), Places())


def test_functions_are_the_same_with_the_same_values_bound() -> None:
    def made(number: int) -> Any:
        return (lambda: number), partial(max, number)

    assert is_same(made(1), made(1), Places())
    assert not is_same(made(1)[0], made(2)[0], Places())
    assert not is_same(made(1)[1], made(2)[1], Places())
    assert not is_same(object(), object(), Places())


def test_what_is_new_has_places_of_its_own() -> None:
    """The places of what was read stay where they are, whatever moves the others."""
    places = MovedPlaces()
    now = Source("a.rig", OLD.text.replace("420 g", "430 g"))
    here, there = (fact(OLD, "400"), fact(OLD, "420")), (fact(now, "400"), fact(now, "430"))
    both = joined(here, there, places)
    assert both == there
    assert both[0] is here[0]
    assert both[1].span is not there[1].span


def rig(**fields: Any) -> Rig:
    """A rig of which nothing but these is there."""
    made = object.__new__(Rig)
    made.__dict__.update({name: fields.get(name, {}) for name in Rig.FIELDS})
    return made


def test_of_things_it_is_written_down_which_facts_were_read() -> None:
    mass = fact(OLD, "400")
    one = rig(units={"tern": unit("tern", mass), "fen": unit("fen", None)})
    reads: set[str] = set()
    seen = SeenRig(one, reads, finely=True)
    assert [each.name for each in seen.units.values() if each.mass_kg] == ["tern"]
    assert reads == {"units", "units.name", "units.mass_kg"}
    heavier = rig(units={**one.units, "fen": one.units["fen"].replace(mass_kg=mass)})
    louder = rig(units={**one.units, "fen": one.units["fen"].replace(gain_db=mass)})
    fewer = rig(units={"tern": one.units["tern"]})
    assert [reads.isdisjoint(differing(other, one)) for other in (heavier, louder, fewer)] == [False, True, False]
    again = SeenRig(louder, reads, finely=True)
    assert again.sees(seen)
    assert seen.units["tern"] == one.units["tern"] == again.units["tern"]
    seen.look_at(louder)
    assert seen.units["fen"].gain_db is mass
