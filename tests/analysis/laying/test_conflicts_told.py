"""Boards on which not all can stand, as people bring them: what can't stand together is told, and each change that is told lets all stand."""

from __future__ import annotations

import re

import pytest
from cases import READER
from small_rigs import HEAD, block

from rigc.analysis.laying.chosen_places import with_chosen_places
from rigc.compile import read_rig
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.source import Source

QUICK = 1_000  # steps
GRID = 10  # mm by which a larger deck is sought
IO = block("instrument", "git") + block("amp", "combo", "input in ts 1 Mohm")


def plug(name: str, out: int) -> str:
    return block("plug", name, "fits ts", f"stands out {out} mm", "leaves at 10 mm", "wide 16 mm", "tall 16 mm")


def box(name: str, width: int, depth: int, *more: str) -> str:
    """Worked by hand, with no plug in its way: there is none in the stock."""
    jacks = f"input in ts rear {width - 20} mm up 20 mm", "output out ts rear 20 mm up 20 mm"
    return block("unit", name, f"body {width} x {depth} x 40 mm", "worked by hand", "knob at 10, 10 mm", *jacks, *more)


def pedal(name: str, width: int = 70, *more: str) -> str:
    jacks = "input in ts right 80 mm up 25 mm", "output out ts left 80 mm up 25 mm"
    return block("unit", name, f"body {width} x 110 x 50 mm", "bypass true", *jacks, *more)


def row(*names: str) -> str:
    return f"{IO}chain git -> {' -> '.join(names)} -> combo\n"


def deck(width: int, depth: int, *more: str) -> str:
    return block("deck", "plank", f"size {width} x {depth} mm", "thickness 12 mm", *more)


def supply(name: str) -> str:
    return block("supply", name, "body 150 x 80 x 40 mm", "outlet o1 9 V dc 500 mA isolated front 20 mm up 15 mm")


TWO = box("marl", 100, 100) + box("hedge", 100, 100) + row("marl", "hedge")
FED = (
    box("marl", 100, 100, "needs 9 V dc", "inlet dc barrel 5.5 x 2.1 mm rear 50 mm up 20 mm")
    + row("marl")
    + supply("mill")
    + "power {\n  others from mill\n}\n"
)
STRAIGHT, FLAT = plug("straight", 60), plug("flat", 19)
STEPPED = "".join(pedal(name, 40, "switch at 20, 20 mm") for name in ("marl", "hedge", "lant")) + row(
    "marl", "hedge", "lant"
)
MANY = tuple(f"a{number}" for number in range(8))


def laid(text: str, effort: int | None = QUICK) -> tuple[Diagnostic, ...]:
    """What is told of what has no room."""
    rig = read_rig(lambda name: Source(name, HEAD + text), "sample.rig", READER).resolved.rig
    assert rig is not None
    return with_chosen_places(rig, effort)[1]


def larger_decks(told: Diagnostic) -> list[tuple[int, int]]:
    """The sizes that are advised."""
    return [(int(width), int(depth)) for width, depth in re.findall(r"a deck of (\d+) x (\d+) mm", told.help)]


def size_of(text: str) -> tuple[int, int]:
    (size,) = re.findall(r"size (\d+) x (\d+) mm", text)
    return int(size[0]), int(size[1])


def with_deck(text: str, width: int, depth: int) -> str:
    return re.sub(r"size \d+ x \d+ mm", f"size {width} x {depth} mm", text)


def mended(text: str, mend: Mend) -> str:
    (edit,) = mend.edits
    assert isinstance(edit, Delete | Replace)
    start, end = edit.span.start - len(HEAD), edit.span.end - len(HEAD)
    return text[:start] + (edit.text if isinstance(edit, Replace) else "") + text[end:]


@pytest.mark.parametrize(
    ("text", "least", "proved"),
    [
        # 100 + 5 (to lift one out) + 100 = 205, across or along; on a grid of 10 mm 210
        (TWO + deck(204, 104), [(210, 104), (204, 210)], "'marl' and 'hedge' can't stand on it together"),
        # 97 mm to the left of a hinge of 60 mm take none, so both go to its right: 157 + 205 = 362; or one behind the other
        (TWO + deck(257, 104, 'keep-out 60 x 104 mm at 97, 0 mm "hinge"'), [(370, 104), (257, 210)], "'marl' and 'hedge' can't"),
        # the straight plugs of 60 mm at both sides of 70 mm
        (STRAIGHT + pedal("marl") + row("marl") + deck(150, 120), [(190, 120)], "'marl' alone has no place"),
    ],
)  # fmt: skip
def test_the_least_larger_decks(text: str, least: list[tuple[int, int]], proved: str) -> None:
    (told,) = laid(text)
    assert told.note is not None and proved in told.note
    assert larger_decks(told) == least
    own = size_of(text)
    for width, depth in least:
        assert not laid(with_deck(text, width, depth))
        before = (width - GRID, depth) if width > own[0] else (width, depth - GRID)
        assert before <= own or laid(with_deck(text, *before))


@pytest.mark.parametrize(
    ("text", "change", "words"),
    [
        # 70 mm, a straight plug of 60 and a flat one of 19: 149 mm
        (
            STRAIGHT + FLAT + pedal("marl") + row("marl") + deck(150, 120),
            "leads {\n  A2 marl.out -> combo.in flat to straight\n}\n",
            "state 'flat' in place of 'straight' at 'marl.out' (tried",
        ),
        # straight ones at both ends of the row: 60 + 70 + 40 + 70 + 40 + 70 + 60 = 410 mm; with a flat one at one of the ends 369
        (
            STRAIGHT + FLAT + "".join(map(pedal, MANY[:3])) + row(*MANY[:3]) + deck(400, 120) + "leads {\n  audio plug straight\n}\n",
            "leads {\n  audio plug flat\n}\n",
            "state 'flat' in place of 'straight' at 'a0.in', 'a0.out', 'a1.in', 'a1.out', 'a2.in' and 'a2.out' (tried",
        ),
    ],
)  # fmt: skip
def test_other_plugs(text: str, change: str, words: str) -> None:
    (told,) = laid(text)
    assert words in told.help
    assert not laid(re.sub(r"leads \{.*?\}\n", "", text, flags=re.DOTALL) + change)


@pytest.mark.parametrize(
    ("place", "words"),
    [
        ("mill on plank", "wish 'mill' beneath 'plank'"),
        ("mill at 5, 5 mm", "delete the place of 'mill', and one is chosen with which all have room"),
    ],
)
def test_what_would_do_below_is_told(place: str, words: str) -> None:
    text = FED + deck(160, 130, "clearance 70 mm") + f"place {{\n  {place}\n}}\n"
    (told,) = laid(text)
    assert [mend.words for mend in told.mends] == [words]
    assert (told.note is not None and "'marl' and 'mill' can't" in told.note) or "'mill' and 'marl' can't" in told.note
    assert not laid(mended(text, told.mends[0]))


def test_a_stated_place_that_leaves_no_room_is_told() -> None:
    """Of 290 mm 105 are free at the left of a box of 80 mm, and 80 at its right: two of 100 mm have room if it moves aside, 290 = 80 + 5 + 100 +
    5 + 100."""
    text = (
        TWO
        + box("lant", 80, 100)
        + "chain lant: git -> lant -> combo\n"
        + deck(290, 104)
        + "place {\n  lant at 110, 0 mm\n}\n"
    )
    (told,) = laid(text.replace("chain git", "chain first: git"))
    (mend,) = told.mends
    assert mend.words.startswith("delete the place of 'lant'")
    assert not laid(mended(text, mend))


@pytest.mark.parametrize(
    "text",
    [
        # 99 mm on a tier take none of three boxes, and there are 100 mm before it and 102 behind it
        "".join(box(name, 100, 100) for name in MANY[:3]) + row(*MANY[:3]) + deck(110, 301, "tier upper 100..199 mm raised 30 mm"),
        FLAT + STEPPED + deck(190, 120),  # room for a foot
        "".join(box(name, 100, 100) for name in MANY[:5]) + row(*MANY[:5]) + deck(330, 120),
    ],
)  # fmt: skip
def test_on_the_deck_that_is_told_all_stand(text: str) -> None:
    (told,) = laid(text)
    assert "proved" in (told.note or "")
    assert larger_decks(told)
    for size in larger_decks(told):
        assert not laid(with_deck(text, *size), None)
