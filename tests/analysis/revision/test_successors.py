"""Which unit that comes stands in for which that goes, and by what: on the same ground, in a loop, beside the same neighbours, at an outlet."""

from __future__ import annotations

import pytest
from comparison_rigs import compared, thing
from small_rigs import HEAD, block, results_of, unit

from rigc.analysis.revision.plan.successors import same_ground, successors
from rigc.model.jacks import Port
from rigc.model.rig import Rig

SMALL = "tests/rigs/small-pair.rig"


def standing(name: str, body: str, place: str) -> Rig:
    """A unit at a place on one of two decks."""
    lines = (f"body {body} mm",) if body else ()
    decks = "".join(block("deck", each, "size 900 x 900 mm") for each in ("own", "other"))
    deck, _, at = place.rpartition(": ")
    placed = block(f"place on {deck or 'own'}", "", f"{name} {at}") if place else ""
    rig = results_of(unit(name, *lines) + decks + placed).rig
    return rig.replace(places={each: there for each, there in rig.places.items() if not there.chosen})  # type: ignore[no-any-return]


OLD = "70 x 120 x 50"
NEW = "60 x 100 x 50"


@pytest.mark.parametrize(
    ("was", "now", "same"),
    [
        # the middle of what goes is at 100 + 35, 100 + 60 = 135, 160; what comes reaches from its corner to 60, 100 more
        ("at 100, 100 mm", "at 135, 160 mm", True),
        ("at 100, 100 mm", "at 136, 160 mm", False),
        ("at 100, 100 mm", "at 135, 161 mm", False),
        ("at 100, 100 mm", "at 75, 60 mm", True),
        ("at 100, 100 mm", "at 74, 60 mm", False),
        ("at 100, 100 mm", "at 75, 59 mm", False),
        ("at 100, 100 mm", "at 110, 400 mm", False),
        ("at 100, 100 mm", "at 400, 110 mm", False),
        # half way round it is as wide as before; turned by a quarter its middle is at 100 + 60, 100 + 35 = 160, 135
        ("at 100, 100 mm turned 180 deg", "at 75, 60 mm", True),
        ("at 100, 100 mm turned 90 deg", "at 100, 35 mm", True),
        ("at 100, 100 mm turned 90 deg", "at 99, 35 mm", False),
        ("at 100, 100 mm turned 270 deg", "at 160, 135 mm", True),
        ("at 100, 100 mm turned 270 deg", "at 160, 136 mm", False),
        # what comes is 100 x 60 then
        ("at 100, 100 mm", "at 35, 100 mm turned 90 deg", True),
        ("at 100, 100 mm", "at 34, 100 mm turned 270 deg", False),
        ("at 100, 100 mm", "at 75, 60 mm turned 180 deg", True),
        ("at 100, 100 mm", "under at 110, 110 mm", False),
        ("at 100, 100 mm", "other: at 110, 110 mm", False),
        ("at 100, 100 mm", "", False),
        ("", "at 110, 110 mm", False),
    ],
)  # fmt: skip
def test_the_same_ground(was: str, now: str, same: bool) -> None:
    old, new = standing("goes", OLD, was), standing("comes", NEW, now)
    assert same_ground(old, new, "goes", "comes") is same
    assert successors(old, new, ("goes",), ("comes",)).units == ({"goes": "comes"} if same else {})


def test_no_ground_without_a_body() -> None:
    place = "at 100, 100 mm"
    assert not same_ground(standing("goes", "", place), standing("comes", NEW, place), "goes", "comes")
    assert not same_ground(standing("goes", OLD, place), standing("comes", "", place), "goes", "comes")


BODY = "body 70 x 120 x 50 mm"
INLET = ("inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc")
BOX = block("unit", "box", "output s1..s2 ts", "input r1..r2 ts", "loop 1..2 send s1..s2 return r1..r2")
BRICK = block("supply", "brick", "connector barrel 5.5 x 2.1 mm", "outlet o1..o2 9 V dc 200 mA isolated")
ROUND = unit("head") + unit("tail") + BOX + BRICK


def wired(*units: str, power: tuple[str, ...] = (), place: tuple[str, ...] = (), more: str = "") -> Rig:
    """A board with these units, of which some may have places; all else is there on both sides."""
    more += block("deck", "own", "size 900 x 900 mm") if place else ""
    made = "".join(unit(name, BODY, *INLET) for name in units) + ROUND + more
    return results_of(made + block("power", "", *power) + block("place", "", *place)).rig


@pytest.mark.parametrize(
    ("old", "first", "second", "winner"),
    [
        # a loop counts 4, the ground 3, a neighbour 2, an outlet 1; each row has the better one second
        ({"more": "loop 1 of box holds goes\nchain head -> tail\n", "place": ("goes at 100, 100 mm",)},
         {"place": ("one at 100, 100 mm",)}, {"more": "loop 1 of box holds two\nchain head -> tail\n"}, "two"),
        ({"more": "chain head -> goes\n", "place": ("goes at 100, 100 mm",)},
         {"more": "chain head -> one\n"}, {"place": ("two at 100, 100 mm",)}, "two"),
        ({"more": "chain head -> goes\n", "power": ("goes from brick.o1",)},
         {"power": ("one from brick.o1",)}, {"more": "chain head -> two\n"}, "two"),
        # two neighbours, 4, before the ground
        ({"more": "chain head -> goes -> tail\n", "place": ("goes at 100, 100 mm",)},
         {"place": ("one at 100, 100 mm",)}, {"more": "chain head -> two -> tail\n"}, "two"),
        # a neighbour and an outlet are 3, as much as the ground: among equals the first
        ({"more": "chain head -> goes\n", "power": ("goes from brick.o1",), "place": ("goes at 100, 100 mm",)},
         {"place": ("one at 100, 100 mm",)}, {"more": "chain head -> two\n", "power": ("two from brick.o1",)}, "one"),
        ({"power": ("goes from brick.o1",)}, {}, {"power": ("two from brick.o1",)}, "two"),
        ({"power": ("goes from brick.o1",)}, {}, {"power": ("two from brick.o2",)}, None),
    ],
)  # fmt: skip
def test_what_shares_most_stands_in(
    old: dict[str, object], first: dict[str, object], second: dict[str, object], winner: str | None
) -> None:
    before = wired("goes", **old)  # type: ignore[arg-type]
    parts = {key: (*first.get(key, ()), *second.get(key, ())) for key in ("power", "place")}  # type: ignore[misc]
    after = wired("one", "two", more=str(first.get("more", "")) + str(second.get("more", "")), **parts)
    found = successors(before, after, ("goes",), ("one", "two"))
    assert found.units == ({} if winner is None else {"goes": winner})


def test_each_stands_in_once_and_a_supply_for_a_supply() -> None:
    """Both that go share the outlet of the one that comes: the first has it. A unit does not stand in for a supply that fed what it feeds on."""
    before = wired("goes", "leaves", power=("goes, leaves from brick.o1 shared",))
    after = wired("comes", power=("comes from brick.o1",))
    assert successors(before, after, ("goes", "leaves"), ("comes",)).units == {"goes": "comes"}
    assert successors(before, after, ("brick",), ("comes",)).units == {}


def jacks(name: str, *lines: str) -> Rig:
    return results_of(block("unit", name, *lines, "stands in for goes") if name != "goes" else block("unit", name, *lines)).rig  # fmt: skip


def test_a_jack_takes_the_part_of_that_of_its_name_else_of_as_many_th_of_its_part() -> None:
    """`b` is an input on both; `a`, the first input, becomes the first one, and `c`, the third, has none: there are two."""
    before = jacks("goes", "input a ts", "input b ts", "input c ts", "output out ts")
    after = jacks("comes", "input b ts", "input d ts", "output left ts")
    found = successors(before, after, ("goes",), ("comes",))
    ports = {old.jack: new.jack for old, new in found.ports.items()}
    assert ports == {"a": "b", "b": "b", "out": "left"}
    assert found.port(Port("goes", "c")) == Port("goes", "c")


@pytest.mark.parametrize(
    ("old", "new", "why"),
    [
        ("chain guitar -> gate -> iris -> combo", "chain guitar -> gate -> reed -> combo", "between gate and combo"),
        ("chain guitar -> gate -> iris", "chain guitar -> gate -> reed", "behind gate"),
        ("chain iris -> gate -> combo", "chain reed -> gate -> combo", "before gate"),
        ("chain iris -> gate", "chain reed -> gate", "before gate"),
        ("chain guitar -> gate -> combo\nloop 1 of gate holds iris", "chain guitar -> gate -> combo\nloop 1 of gate holds reed", "in loop 1 of gate"),
        ("chain guitar -> gate -> combo", "chain guitar -> gate -> combo", "joined to mill"),
        # behind the same, but before another: one neighbour is shared, and that is no one place in the chain
        ("chain guitar -> gate -> iris -> combo", "chain guitar -> gate -> reed -> sedge -> combo", "joined to gate and mill"),
    ],
)  # fmt: skip
def test_why_it_is_taken_for_a_successor(old: str, new: str, why: str) -> None:
    """The only thing that comes for the only one that goes, both fed by the same outlet."""

    def text(name: str, chain: str) -> str:
        played = block("instrument", "guitar") + block("amp", "combo", "input in ts")
        box = block(
            "unit", "gate", "input in ts", "output out ts", "output s ts", "input r ts", "loop 1 send s return r"
        )
        supply = block("supply", "mill", "connector barrel 5.5 x 2.1 mm", "outlet o1 9 V dc 200 mA isolated")
        others = unit(name, *INLET) + unit("sedge")
        return HEAD + played + box + supply + others + chain + "\n" + block("power", "", f"{name} from mill.o1")

    assert thing(compared(text("iris", old), text("reed", new), SMALL), "unit", "reed").why == why
