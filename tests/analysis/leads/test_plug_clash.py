"""Plugs and bodies in each other's way: small boards worked by hand.

Plugs of the generic stock in mm: flat-angle stands out 15 and is 27 wide and tall; barrel-angle 19 and 16; straight 60 and 16.
"""

from __future__ import annotations

from written import written

from rigc.analysis.leads.plugs.plug_bodies import PlugBodies
from rigc.analysis.leads.plugs.plug_clash import PlugClash
from rigc.model.geometry.rectangle import Rectangle

UNITS = """
unit marl {
  body 70 x 120 x 55 mm
  input in ts right 80 mm up 25 mm
  output out ts left 80 mm up 25 mm
}
unit hedge {
  body 75 x 115 x 48 mm
  input in ts rear 20 mm up 24 mm
  output out ts left 70 mm up 24 mm
}
unit teeter {
  body 100 x 250 x 95 mm
}
deck board {
  size 600 x 400 mm
  tier back 200..400 mm raised 60 mm
}
chain hedge -> marl
"""


def clashes(places: str, plugs: str = "flat-angle to flat-angle") -> list[tuple[str, str, float, float, float | None]]:
    """(jack, what it meets, room, needed, stagger) of a board with one lead from hedge.out to marl.in."""
    text = f"{UNITS}place {{\n{places}}}\nleads {{\n  A1 hedge.out -> marl.in {plugs}\n}}\n"
    clash = written(text).get(PlugClash)
    assert not clash.unjudged
    return [
        (
            str(each.plug.port),
            str(each.other.port) if each.other else each.thing,
            each.room_mm,
            each.needed_mm,
            each.stagger_mm,
        )
        for each in clash.meetings
    ]


def test_facing_plugs_need_both_stand_outs_and_two() -> None:
    # marl's right face at x = 40 + 70 = 110, hedge's left at 141: 31; jacks at y = 90 and 10 + 70 = 80, 10 apart;
    # 15 + 15 + 2 = 32; out of the way at (27 + 27)/2 + 2 = 29 apart: 19 further
    assert clashes("  marl at 40, 10 mm\n  hedge at 141, 10 mm\n") == [("hedge.out", "marl.in", 31, 32, 19)]
    assert clashes("  marl at 40, 10 mm\n  hedge at 142, 10 mm\n") == []


def test_two_kinds_of_plug() -> None:
    # straight at hedge, flat at marl: 60 and the bend of its cable, 20, + 15 + 2 = 97; with 70 between the faces it meets marl's body
    # (80 + 2), so that no stagger helps; with 96 it does: (16 + 27)/2 + 2 = 23.5, jacks 10 apart: 13.5 further
    plugs = "straight to flat-angle"
    assert clashes("  marl at 40, 10 mm\n  hedge at 180, 10 mm\n", plugs) == [("hedge.out", "marl.in", 70, 97, None)]
    assert clashes("  marl at 40, 10 mm\n  hedge at 206, 10 mm\n", plugs) == [("hedge.out", "marl.in", 96, 97, 13.5)]
    assert clashes("  marl at 40, 10 mm\n  hedge at 207, 10 mm\n", plugs) == []


def test_staggering_does_not_help_before_a_body() -> None:
    # 15 between the faces: a flat plug alone needs 17
    assert clashes("  marl at 40, 10 mm\n  hedge at 125, 10 mm\n") == [("hedge.out", "marl.in", 15, 32, None)]


def test_staggered_plugs_need_room_before_the_bodies() -> None:
    # hedge 40 further back: jacks at y = 90 and 120, 30 apart; marl ends at 130, hedge begins at 50: each plug meets a body
    places = "  marl at 40, 10 mm\n  hedge at {} mm\n"
    assert clashes(places.format("127, 50")) == []
    assert clashes(places.format("126, 50")) == [
        ("hedge.out", "marl", 16, 17, None),
        ("marl.in", "hedge", 16, 17, None),
    ]


def test_a_plug_beside_a_body_passes() -> None:
    # hedge.out at y = 73.5 + 70 = 143.5 is 27 wide: its edge at 130, where marl ends; marl's own plug meets hedge either way
    assert [each[:2] for each in clashes("  marl at 40, 10 mm\n  hedge at 111, 73.5 mm\n")] == [("marl.in", "hedge")]
    assert [each[:2] for each in clashes("  marl at 40, 10 mm\n  hedge at 111, 73 mm\n")] == [
        ("hedge.out", "marl"),
        ("marl.in", "hedge"),
    ]


def test_what_stands_on_a_tier_passes_above() -> None:
    # hedge raised by 60: its plug from 60 + 24 − 13.5 = 70.5 up; marl ends at 55, its plug at 25 + 13.5 = 38.5
    places = "  marl at 40, 210 mm\n  hedge at 115, 210 mm"
    assert clashes(f"{places}\n") == [("hedge.out", "marl.in", 5, 32, None)]
    assert clashes(f"{places} on back\n") == []


def test_above_and_below_the_deck_do_not_meet() -> None:
    assert clashes("  marl under at 40, 10 mm\n  hedge at 115, 10 mm\n") == []
    assert clashes("  marl under at 40, 10 mm\n  hedge under at 125, 10 mm\n") == [
        ("hedge.out", "marl.in", 15, 32, None)
    ]


def test_a_treadle_in_the_way() -> None:
    # the treadle's right face at x = 100, hedge's left at 116: 16, and 17 needed
    places = "  teeter at 0, 10 mm\n  hedge at {}, 10 mm\n  marl at 300, 10 mm\n"
    assert clashes(places.format(116)) == [("hedge.out", "teeter", 16, 17, None)]
    assert clashes(places.format(117)) == []


def test_turned_units_face_each_other_from_front_to_rear() -> None:
    # a quarter turn brings marl's right to the rear: its outline is 120 × 70, its input at x = 40 + 120 − 80 = 80, y = 80;
    # hedge turned so has its left in front: output at x = 40 + 115 − 70 = 85, y = its place
    places = "  marl at 40, 10 mm turned 90 deg\n  hedge at 40, {} mm turned 90 deg\n"
    assert clashes(places.format(111)) == [("hedge.out", "marl.in", 31, 32, 24)]
    assert clashes(places.format(112)) == []


def test_the_room_of_a_plug_follows_its_face() -> None:
    text = f"{UNITS}place {{\n  marl at 40, 10 mm turned 90 deg\n  hedge at 300, 10 mm\n}}\nleads {{\n  audio plug flat-angle\n}}\n"
    rooms = {str(plug.port): plug.room() for plug in written(text).get(PlugBodies).all}
    assert rooms == {
        "hedge.out": Rectangle(285, 66.5, 15, 27),  # left face at 300, middle at y = 80
        "marl.in": Rectangle(66.5, 80, 27, 15),  # rear face at y = 80, middle at x = 80
    }


def test_jacks_round_a_corner() -> None:
    """An output at the very rear of the left side and an input at the very left of the rear."""
    text = UNITS.replace("output out ts left 70 mm", "output out ts left 110 mm").replace("rear 20 mm", "rear 6 mm")
    text += "chain marl -> hedge\nplace {\n  hedge at 300, 10 mm\n  marl at 20, 10 mm\n}\nleads {\n  audio plug flat-angle\n}\n"
    meetings = [each for each in written(text).get(PlugClash).meetings if each.thing == "hedge"]
    # out: x 285–300, y 106.5–133.5; in: x 292.5–319.5, y 125–140: 7.5 × 8.5 in common
    assert [(str(each.plug.port), each.needed_mm) for each in meetings] == [("hedge.out", 7.5)]
