"""Wishes of every kind, many of them at once, are met in full where there is room; a treadle goes to the front, behind the player's heel."""

from __future__ import annotations

import pytest
from cases import READER
from small_rigs import HEAD, block

from rigc.analysis.laying.chosen_places import with_chosen_places
from rigc.analysis.laying.wishes.place_wishes import PlaceWishes
from rigc.analysis.results import Results
from rigc.compile import read_rig
from rigc.model.rig import Rig
from rigc.source import Source

EFFORT = 3_000  # steps
IO = block("instrument", "git") + block("amp", "combo", "input in ts 1 Mohm")
PLUG = block("plug", "flat", "fits ts", "stands out 19 mm", "leaves at 10 mm", "wide 16 mm", "tall 16 mm")
SIX = ("a1", "b2", "c3", "d4", "e5", "f6")
POWER = (
    block("supply", "mill", "body 150 x 80 x 40 mm", "outlet o1 9 V dc 500 mA isolated front 20 mm up 15 mm")
    + "power {\n  others from mill\n}\n"
)
KNOBS = "bypass true", "switch at 35, 20 mm", "knob at 20, 90 mm", "knob at 50, 90 mm"


def pedal(name: str, depth: int, *more: str) -> str:
    jacks = "input in ts right 80 mm up 25 mm", "output out ts left 80 mm up 25 mm"
    return block("unit", name, f"body 70 x {depth} x 50 mm", "passive", *jacks, *more)


def laid(units: str, names: tuple[str, ...], deck: tuple[str, ...], wishes: tuple[str, ...]) -> Rig:
    text = PLUG + units + IO + f"chain git -> {' -> '.join(names)} -> combo\n" + POWER
    text += block("deck", "plank", "size 700 x 350 mm", "thickness 12 mm", "drop 175 mm", *deck)
    text += "place {\n" + "".join(f"  {wish}\n" for wish in wishes) + "}\n"
    read = read_rig(lambda name: Source(name, HEAD + text), "sample.rig", READER)
    assert read.resolved.rig is not None and not read.findings
    rig, told = with_chosen_places(read.resolved.rig, EFFORT)
    assert not told
    return rig


@pytest.mark.parametrize(
    "wishes",
    [
        ("a1, b2, c3 in order", "a1 row front", "b2 row front", "c3 row front", "d4 knobs free", "d4 row rear", "mill beneath plank", "mill away from a1 by 200 mm", "f6 near right edge"),
        ("a1 within reach of left foot while on f6", "f6 within reach of right foot", "a1 clear 120 mm", "b2 on back", "c3 side middle", "d4, e5 symmetric", "mill jacks rear", "mill beneath back"),
        ("a1 left of b2 gap 50 mm", "c3 front of d4", "e5, f6 together", "e5 near left edge", 'reserve 120 x 130 mm "later"'),
    ],
)  # fmt: skip
def test_all_are_met(wishes: tuple[str, ...]) -> None:
    tier = ("clearance 60 mm", "tier back 180..350 mm raised 40 mm")
    rig = laid("".join(pedal(name, 110, *KNOBS) for name in SIX), SIX, tier, wishes)
    missed = [(wish.hint.words, wish.missed) for wish in Results(rig).get(PlaceWishes).all if wish.missed]
    assert not missed


def test_nothing_stands_before_a_treadle_but_a_heel() -> None:
    names = ("a1", "wah", "b2", "c3")
    units = "".join(pedal(name, 110, *KNOBS) for name in ("a1", "b2", "c3")) + pedal("wah", 240, "treadle 50..75 mm")
    places = laid(units, names, ("heel 40 mm",), ()).places
    wah = places["wah"]
    assert 40 <= wah.y_mm <= 100  # 40 mm for the heel, and 60 at most behind that
    before = [each for name, each in places.items() if name != "wah" and not each.under and each.y_mm < wah.y_mm]
    assert all(each.x_mm + 70 <= wah.x_mm or each.x_mm >= wah.x_mm + 70 for each in before)
