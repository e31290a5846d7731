"""Names find their places: none on another, on a line or on a closed ground; all of them together as cheap as can be found."""

from __future__ import annotations

import pytest
from shelf import Shelf

from rigc.analysis.kept import Kept
from rigc.reports.drawings.means import led_far
from rigc.reports.drawings.means.choosing import Choice, Stand
from rigc.reports.drawings.means.label_box import Room, label_box
from rigc.reports.drawings.means.label_choices import led_from
from rigc.reports.drawings.means.labelling import Ground, labelled
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.means.paper import Paper
from rigc.reports.drawings.means.wish import Wish
from rigc.reports.drawings.shapes import Box, Circle, Label, Line, Polygon, Polyline, Shape

GROUND = Room(0, 0, 60, 30)


def ground(*shapes: Shape) -> Ground:
    made = Ground(GROUND)
    made.drawn(shapes)
    return made


def wish(*choices: Choice) -> Wish:
    return Wish(lambda: choices)


LEFT, RIGHT, LOW = Choice(10, 10, "A01", 0), Choice(40, 10, "A01", 1), Choice(10, 20, "A01", 2)


def test_the_cheapest_place_that_is_free() -> None:
    here = ground()
    assert [here.place([wish(LEFT, RIGHT)])[0] for _ in range(3)] == [LEFT, RIGHT, None]


def test_within_the_ground() -> None:
    assert ground().place([wish(Choice(58, 10, "A01", 0), LOW)]) == (LOW,)


@pytest.mark.parametrize(
    "drawn",
    [
        Line(0, 10, 30, 10),
        Box(5, 5, 20, 10, fill="hatch"),
        Circle(12, 10, 2),
        Label(12, 10, "lant"),
        Box(12, 2, 30, 14),
    ],
)
def test_off_what_is_drawn(drawn: Shape) -> None:
    assert ground(drawn).place([wish(LEFT, LOW)]) == (LOW,)


def test_a_filled_box_covers_the_lines_below_it() -> None:
    assert ground(Line(0, 10, 60, 10), Box(5, 5, 30, 10, fill="white")).place([wish(LEFT, LOW)]) == (LEFT,)


def test_all_together_rather_than_one_after_the_other() -> None:
    """The first has a second place for 1 mm, the second has none for less than 50: the first gives way."""
    other = wish(Choice(11, 10, "A02", 0), Choice(11, 25, "A02", 50))
    assert [each and each.cost for each in ground().place([wish(LEFT, RIGHT), other])] == [1, 0]


def test_who_finds_no_place_near_is_led_to_one_far_off() -> None:
    """All within 50 mm is hatched but for a strip at the right."""
    found, lost = labelled(ground(Box(0, 0, 45, 30, fill="hatch")), [("marl", led_from((3, 15), "marl"))])
    assert lost == []
    (label,) = (shape for shape in found if isinstance(shape, Label))
    assert label_box(label).left > 45
    assert [type(shape) for shape in found] == [Line, Circle, Label]


def test_who_finds_no_room_anywhere_is_written_smaller() -> None:
    """A strip 3 mm high is left: letters of 2.5 mm take 0.3 mm on both sides and what hangs below their line, those of 1.8 mm fit."""
    strip = ground(Box(0, 0, 60, 12, fill="hatch"), Box(0, 15, 60, 15, fill="hatch"))
    found, lost = labelled(strip, [("marl", led_from((3, 6), "marl"))])
    assert lost == []
    assert [shape.size_mm for shape in found if isinstance(shape, Label)] == [1.8]


def test_a_leader_goes_around_a_corner_where_none_goes_straight() -> None:
    """The name belongs to (3, 14); all left of x = 19 is hatched, and no leader goes through the letters at x = 20 to 22.5, which leave
    a gap of 2.6 mm at the upper edge: what goes straight there from that point leaves the ground before there is room for letters."""
    wall = Label(21.25, 18, 12 * "H", anchor="middle", level="middle", rotation=-90)
    assert (label_box(wall).left, label_box(wall).top, label_box(wall).right) == pytest.approx(
        (20, 2.65, 22.5), abs=0.01
    )
    found, lost = labelled(ground(Box(0, 0, 19, 30, fill="hatch"), wall), [("marl", led_from((3, 14), "marl"))])
    assert lost == []
    leader, dot, label = found
    assert isinstance(leader, Polyline) and isinstance(dot, Circle) and isinstance(label, Label)
    assert leader.points[0] == (3, 14) == (dot.x, dot.y) and len(leader.points) == 3
    assert label_box(label).left > 22.5


def test_a_leader_goes_around_a_foot_switch() -> None:
    """Up and down cost the same without it; it counts as a line that would be crossed."""
    up = Choice(30, 3, "A01", 0, (30, 15), "middle")
    down = Choice(30, 28, "A01", 0, (30, 15), "middle")  # 1 mm further off
    assert ground().place([wish(up, down)]) == (up,)
    assert ground(Circle(30, 9, 1.2, fill="solid")).place([wish(up, down)]) == (down,)


def test_a_name_without_any_room_is_told() -> None:
    assert labelled(ground(Box(0, 0, 60, 30, fill="hatch")), [("marl", led_from((3, 15), "marl"))]) == ([], ["marl"])


def test_far_off_so_many_places_are_looked_at(monkeypatch: pytest.MonkeyPatch) -> None:
    """A name that is led around a corner goes without once too many places were looked at in the drawing."""
    drawn = (Box(0, 0, 19, 30, fill="hatch"), Label(21.25, 18, 12 * "H", anchor="middle", level="middle", rotation=-90))
    looked = ground(*drawn)
    assert labelled(looked, [("marl", led_from((3, 14), "marl"))])[1] == []
    taken = looked._paper.searched
    assert 100 < taken < led_far.MOST / 10
    for most, lost in ((taken + 1, []), (taken // 2, ["marl"])):
        monkeypatch.setattr(led_far, "MOST", most)
        assert labelled(ground(*drawn), [("marl", led_from((3, 14), "marl"))])[1] == lost


def test_where_the_paper_is_full_nothing_is_placed_anew(monkeypatch: pytest.MonkeyPatch) -> None:
    rounds: list[int] = []
    truly = Ground._round

    def counted(self: Ground, wanted: tuple[Wish, ...], first: tuple[int, ...], bent: bool) -> list[Stand | None]:
        rounds.append(len(wanted))
        return truly(self, wanted, first, bent)

    monkeypatch.setattr(Ground, "_round", counted)
    for lost in (30, 31):  # beside the one that has the place
        ground().place([wish(LEFT)] * (lost + 1))
    assert rounds == [31] * 5 + [32]


def test_a_sign_takes_the_room_that_it_says() -> None:
    """6 mm about (10, 10): a line at y = 12.5 is in its way, and not in that of letters 2.5 mm high."""
    here = ground(Line(0, 12.5, 60, 12.5))
    sign = Choice(10, 10, "1", 0, sign_mm=(6, 6))
    assert here.place([wish(sign)]) == (None,)
    assert here.place([wish(sign._replace(sign_mm=None))]) != (None,)
    drawn = (Polygon(((7, 23), (10, 17), (13, 23))),)
    assert labelled(here, [("1", Wish(lambda: [sign._replace(y=20)], sign=lambda *_: drawn))]) == ([*drawn], [])


def test_box_of_a_turned_label() -> None:
    """Turned to read upwards, its width runs up the paper."""
    wide = text_width("A01", 2.5)
    box = label_box(Label(10, 20, "A01", anchor="middle", level="middle", rotation=-90))
    assert (box.right - box.left, box.bottom - box.top) == pytest.approx((2.5, wide))
    assert ((box.left + box.right) / 2, (box.top + box.bottom) / 2) == pytest.approx((10, 20))
    askew = label_box(Label(10, 20, "A01", anchor="middle", level="middle", rotation=-89.999))
    assert askew == pytest.approx(box, abs=0.001)


def stroke(x: float) -> tuple[Line, tuple[Choice, ...]]:
    return Line(x, 18, x, 22), (Choice(x + 1, 20, "4", 0),)


def all_placed(kept: Kept, *more: Shape) -> list[object]:
    """Names, strokes, and a name that stands off both, on one ground."""
    here = Ground(GROUND, kept)
    here.drawn((Line(0, 5, 60, 5), Label(30, 20, "lant"), *more))
    first = labelled(here, [("marl", led_from((20, 10), "marl")), ("lant", led_from((21, 10), "lant"))])
    return [
        first,
        here.struck([(stroke(32), stroke(20)), (stroke(20), stroke(10))]),
        here.place([led_from((20, 15), "A01")]),
    ]


def test_where_names_stood_is_kept(monkeypatch: pytest.MonkeyPatch) -> None:
    """All of it by what is drawn: no place is sought for a second time, and what is asked for later stands as if it had been."""
    shelf = Shelf()
    first = all_placed(Kept(shelf))
    with monkeypatch.context() as patch:
        patch.setattr(Paper, "stand", None)
        assert all_placed(Kept(shelf)) == first
    assert all_placed(Kept()) == first
    assert {name.partition("-")[0] for name in shelf} == {"names", "strokes"}
    for name in sorted(shelf):  # whichever of them is gone is made anew, beside what is not
        data = shelf.pop(name)
        assert all_placed(Kept(shelf)) == first
        assert shelf[name] == data


def test_on_another_ground_they_are_placed_anew() -> None:
    shelf = Shelf()
    first = all_placed(Kept(shelf))
    assert (
        all_placed(Kept(shelf), Box(22, 6, 30, 20, fill="hatch"))
        == all_placed(Kept(), Box(22, 6, 30, 20, fill="hatch"))
        != first
    )
