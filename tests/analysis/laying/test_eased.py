"""Where the usual plugs and sides leave no room, others are chosen: as few as will do, and never what is stated."""

from __future__ import annotations

from cases import READER
from small_rigs import HEAD, block

from rigc.analysis.laying.choices.plug_choices import PlugChoices
from rigc.analysis.laying.chosen_places import with_chosen_places
from rigc.analysis.laying.objective import board_and_places
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.leads.leads import Leads
from rigc.analysis.results import Results
from rigc.compile import read_rig
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.model.rig import Rig
from rigc.source import Source

QUICK = 1_500  # steps


def plug(name: str, out: int) -> str:
    return block("plug", name, "fits ts", f"stands out {out} mm", "leaves at 10 mm", "wide 16 mm", "tall 16 mm")


def pedal(name: str) -> str:
    return block(
        "unit",
        name,
        "body 70 x 110 x 50 mm",
        "input in ts right 80 mm up 25 mm",
        "output out ts left 80 mm up 25 mm",
        "bypass true",
    )


def deck(width: int, depth: int, *more: str) -> str:
    return block("deck", "plank", f"size {width} x {depth} mm", "thickness 12 mm", *more)


STOCK = plug("straight", 60) + plug("flat", 19)
THREE = STOCK + pedal("marl") + pedal("hedge") + pedal("lant") + "chain marl -> hedge -> lant\n"


def laid(text: str) -> tuple[Rig, tuple[Diagnostic, ...]]:
    rig = read_rig(lambda name: Source(name, HEAD + text), "sample.rig", READER).resolved.rig
    assert rig is not None
    return with_chosen_places(rig, QUICK)


def clean(rig: Rig) -> bool:
    """Whether nothing is in the way of anything, and the layout counts as the search counted."""
    assert rig.deck is not None
    board, at = board_and_places(rig, rig.deck, Results(rig).get(Leads))
    return not Layout(board, at).hard


def test_as_many_flat_plugs_as_the_row_needs() -> None:
    """Three of 70 mm in one row: 210 mm, and between two of them 60 + 2 + 60 mm by straight plugs, 41 mm less for each flat one: 454 mm with
    straight ones alone, 413 with one flat, 372 with two. The deck is 400 mm wide, and too shallow for two rows, and for bodies of 110 mm so far
    behind each other (16 + 2 mm) that their plugs pass by each other."""
    rig, told = laid(THREE + deck(400, 120))
    assert (told, len(rig.places), clean(rig)) == ((), 3, True)
    assert [(each.plug, each.instead) for each in rig.chosen_plugs] == [("flat", "straight")] * 2
    assert all(each.spares for each in rig.chosen_plugs)
    told_why = Results(rig).get(PlugChoices).all
    assert [each.name for each in told_why] == [f"{each.port}.plug" for each in rig.chosen_plugs]


def test_where_there_is_room_other_plugs_are_chosen_if_they_save_more_than_they_cost() -> None:
    """Four flat plugs make each of the two leads 50 mm shorter, 140 mm to 90: that is worth it at 20 mm each, and not at 30."""
    rig, told = laid(THREE + deck(480, 120))
    assert (told, {(each.plug, each.instead) for each in rig.chosen_plugs}) == ((), {("flat", "straight")})
    assert len(rig.chosen_plugs) == 4 and clean(rig)
    rig, told = laid(THREE + deck(480, 120) + "place {\n  weigh other plugs 3000 %\n}\n")
    assert (told, rig.chosen_plugs) == ((), ())


def test_a_stated_plug_stays_and_what_would_do_is_told() -> None:
    said = "  A1 marl.out -> hedge.in straight to straight\n  A2 hedge.out -> lant.in straight to straight\n"
    rig, told = laid(THREE + deck(380, 120) + f"leads {{\n{said}}}\n")
    assert rig.chosen_plugs == ()
    assert len(told) == 1
    assert "'flat' in place of 'straight' at '" in told[0].help and "(tried: all have room then)" in told[0].help


def brick(name: str) -> str:
    return block("supply", name, "body 150 x 80 x 40 mm", "outlet o1 9 V dc 500 mA isolated front 20 mm up 15 mm")


def test_a_supply_goes_on_top_where_the_room_below_is_taken() -> None:
    """A deck of 320 x 100 mm takes two bricks of 150 x 80 mm below; the third goes on top, beside the pedal of 70 mm."""
    text = STOCK + pedal("marl") + brick("mill") + brick("weir") + brick("race") + deck(320, 115, "clearance 60 mm")
    rig, _ = laid(text + "place {\n  mill near left edge\n  weir near right edge\n  race side middle\n}\n")
    assert sorted(place.under for place in rig.places.values() if place.thing != "marl") == [False, True, True]
    assert clean(rig)


def test_a_buffer_that_nobody_touches_hangs_where_the_top_is_full() -> None:
    buffer = block(
        "unit",
        "fen",
        "body 60 x 60 x 30 mm",
        "bypass always-on",
        "input in ts right 30 mm up 15 mm",
        "output out ts left 30 mm up 15 mm",
    )
    rig, _ = laid(
        STOCK + pedal("marl") + buffer + deck(120, 120, "clearance 60 mm", "drop 115 mm") + "chain marl -> fen\n"
    )
    assert rig.places["fen"].under and not rig.places["marl"].under
