"""What differs in decks, holes, panel jacks, selectors, transformers and cases of two small rigs, kind by kind."""

from __future__ import annotations

import pytest
from small_rigs import block, results_of, unit

from rigc.analysis.revision.plan.fitting_plans import fitting_plans
from rigc.model.rig import Rig

Told = tuple[str, str, str, str, str, bool, bool]
"""Kind, name, before, after, on what, whether a mains part, whether beforehand."""


def rig(text: str) -> Rig:
    return results_of(unit("marl", "body 70 x 120 x 50 mm") + "place {\n  marl at 20, 20 mm\n}\n" + text).rig


def told(old: str, new: str) -> list[Told]:
    plans = fitting_plans(rig(old), rig(new))
    return [(each.kind, each.name, each.before, each.after, each.on, each.mains, each.beforehand) for each in plans]


def plank(size: str = "600 x 300 mm", *lines: str) -> str:
    return block("deck", "plank", f"size {size}", *lines)


RAILS = ("rail 0..60 mm tape 40 mm", "rail 80..140 mm tape 40 mm")


@pytest.mark.parametrize(
    ("old", "new", "other"),
    [
        # a tape errs by up to 5 mm
        (plank(), plank("605 x 300 mm"), False),
        (plank(), plank("605.1 x 300 mm"), True),
        (plank(), plank("600 x 294.9 mm"), True),
        (plank(), plank("595 x 295 mm"), False),
        (plank("600 x 300 mm", *RAILS), plank("600 x 300 mm", *RAILS), False),
        (plank("600 x 300 mm", *RAILS), plank("600 x 300 mm", RAILS[0], "rail 81..140 mm tape 40 mm"), True),
        (plank("600 x 300 mm", *RAILS), plank("600 x 300 mm", *(each.replace("tape 40", "tape 38") for each in RAILS)), False),
        (plank("600 x 300 mm", "tier back 200..300 mm raised 30 mm"), plank(), True),
        (plank(), plank("600 x 300 mm", "bare metal"), True),
    ],
)  # fmt: skip
def test_another_deck(old: str, new: str, other: bool) -> None:
    """One that stays in name only goes and comes: with what is on it."""
    assert [each[:2] for each in told(old, new)] == [("deck", "plank")] * other


def test_a_deck_that_comes_and_one_that_goes() -> None:
    """A deck on which nothing stands is no work, and neither is one whose size nobody states."""
    spare = block("deck", "hub", "size 300 x 200 mm")
    on_hub = spare + unit("reed", "body 70 x 120 x 50 mm") + "place on hub {\n  reed at 20, 20 mm\n}\n"
    assert told(plank(), plank() + spare) == []
    assert told(plank(), plank() + on_hub) == [("deck", "hub", "", "300 x 200", "", False, False)]
    assert told(plank() + on_hub, plank() + spare) == [("deck", "hub", "300 x 200", "", "", False, False)]
    unsized = block("deck", "plank", "thickness 12 mm")
    assert told(unsized, plank()) == told(plank(), unsized) == []


HOLE = "hole 25 mm at 500, 200 mm"


def test_holes() -> None:
    """One that stays, one that is drilled, one that is closed; what it is for is no other hole, its size and place are."""
    old = plank("600 x 300 mm", HOLE, "hole 12 mm at 100, 100 mm")
    assert told(old, old.replace(HOLE, f'{HOLE} "mains"')) == []
    assert told(plank(), old) == [
        ("hole", "25 mm", "", "500, 200 mm", "plank", False, False),
        ("hole", "12 mm", "", "100, 100 mm", "plank", False, False),
    ]
    assert told(old, old.replace("hole 12 mm at 100", "hole 12 mm at 101")) == [
        ("hole", "12 mm", "", "101, 100 mm", "plank", False, False),
        ("hole", "12 mm", "100, 100 mm", "", "plank", False, False),
    ]
    assert [each[1:4] for each in told(old, old.replace("hole 12 mm", "hole 13 mm"))] == [
        ("13 mm", "", "100, 100 mm"),
        ("12 mm", "100, 100 mm", ""),
    ]


def test_on_another_deck_all_holes_and_jacks_are_made_anew() -> None:
    panel = block("panel on plank", "", "jack l ts insulated at 500, 280 mm").replace(
        "panel on plank  {", "panel back on plank {"
    )
    old = plank("600 x 300 mm", HOLE) + panel
    assert told(old, old) == []
    assert told(old, old.replace("600 x 300", "700 x 300")) == [
        ("deck", "plank", "600 x 300", "700 x 300", "", False, False),
        ("hole", "25 mm", "", "500, 200 mm", "plank", False, True),
        ("jack", "back.l", "ts at 500, 280 mm", "ts at 500, 280 mm", "back", False, True),
    ]


def back(*lines: str, on: str = " on plank") -> str:
    return plank() + f"panel back{on} {{\n" + "".join(f"  {line}\n" for line in lines) + "}\n"


JACK, INLET = "jack l ts insulated at 500, 280 mm", "inlet mains C14 at 550, 280 mm"


@pytest.mark.parametrize(
    ("now", "before", "after"),
    [
        ("jack l ts insulated at 500.1, 280 mm", "ts at 500, 280 mm", "ts at 500.1, 280 mm"),
        ("jack l ts insulated at 500, 280.1 mm", "ts at 500, 280 mm", "ts at 500, 280.1 mm"),
        ("jack l trs insulated at 500, 280 mm", "ts at 500, 280 mm", "trs at 500, 280 mm"),
        ("jack l ts at 500, 280 mm", "ts at 500, 280 mm", "ts at 500, 280 mm"),
    ],
)
def test_a_jack_that_is_set_otherwise(now: str, before: str, after: str) -> None:
    assert told(back(JACK, INLET), back(now, INLET)) == [("jack", "back.l", before, after, "back", False, False)]


def test_jacks_that_come_and_go() -> None:
    """With their panel, too; the inlet is a mains part, whether it comes or goes."""
    assert (
        told(back(JACK, INLET), back(JACK, INLET.replace("550,", "550.04,"))) == []
    )  # nobody sets one by less than 0.05 mm
    assert told(back(JACK), back(JACK, INLET)) == [
        ("jack", "back.mains", "", "C14 at 550, 280 mm", "back", True, False)
    ]
    assert told(back(JACK, INLET), back(INLET)) == [("jack", "back.l", "ts at 500, 280 mm", "", "back", False, False)]
    assert told(plank(), back(INLET, on="")) == [("jack", "back.mains", "", "C14 at 550, 280 mm", "back", True, False)]
    assert told(back(INLET), plank()) == [("jack", "back.mains", "C14 at 550, 280 mm", "", "back", True, False)]


SUPPLY = block("supply", "mill", "outlet o1 9 V dc 200 mA isolated")


def played(*lines: str, name: str = "club") -> str:
    return SUPPLY + block("scenario", name, *lines)


BOX = unit("box", "output di xlr", "lift di open")


@pytest.mark.parametrize(
    ("old", "new", "found"),
    [
        (played("lift box.di open"), played("lift box.di closed"), [("lift", "box.di", "open", "closed", "club")]),
        (played("country DE"), played("lift box.di closed"), [("lift", "box.di", "open", "closed", "club")]),
        (played("lift box.di closed"), played("country DE"), [("lift", "box.di", "closed", "open", "club")]),
        (played("country DE"), played("lift box.di open"), []),  # as it leaves its maker
        (played("lift box.di open"), played("lift box.di closed", name="bay"), []),  # a scenario of its own
    ],
)
def test_ground_lifts(old: str, new: str, found: list[tuple[str, ...]]) -> None:
    assert [each[:5] for each in told(BOX + old, BOX + new)] == found


TRANSFORMER = "transformer 100 V to 115 V 50 VA before mill"


@pytest.mark.parametrize(
    ("old", "new", "found"),
    [
        (played("selector mill 230 V"), played("selector mill 230 V"), []),
        (played("selector mill 230 V"), played("selector mill 115 V"), [("selector", "mill", "230 V", "115 V", "club")]),
        (played("country DE"), played("selector mill 115 V"), []),
        (played("selector mill 230 V"), played("selector mill 115 V", name="bay"), []),
        (played(TRANSFORMER), played(TRANSFORMER), []),
        (played(TRANSFORMER), played(TRANSFORMER, name="bay"), []),
        (played("country DE"), played(TRANSFORMER), [("transformer", "100 V to 115 V, 50 VA, before mill", "", "100 V to 115 V, 50 VA, before mill", "")]),
        (played(TRANSFORMER), played("country DE"), [("transformer", "100 V to 115 V, 50 VA, before mill", "100 V to 115 V, 50 VA, before mill", "", "")]),
        (block("case", "trunk", "inside 700 x 400 x 200 mm"), block("case", "trunk", "inside 700 x 400 x 200 mm"), []),
        (block("case", "trunk", "inside 700 x 400 x 200 mm"), block("case", "trunk", "lid 40 mm"),
         [("case", "trunk", "inside 700 x 400 x 200", "inside not stated", "")]),
        ("", block("case", "trunk", "lid 40 mm"), [("case", "trunk", "", "inside not stated", "")]),
        (block("case", "trunk", "inside 700 x 400 x 200 mm"), "", [("case", "trunk", "inside 700 x 400 x 200", "", "")]),
    ],
)  # fmt: skip
def test_selectors_transformers_and_cases(old: str, new: str, found: list[tuple[str, ...]]) -> None:
    assert [each[:5] for each in told(old, new)] == found
