"""Both worked rigs (invented) left free: what any good choice of outlets must be, worked by hand; and their planted mistakes."""

from __future__ import annotations

import pytest
from cases import ROOT, compiled, results

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.power.supply_totals import SupplyTotals
from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic

HOME = ROOT / "examples" / "back-bedroom" / "board.rig"
TOURING = ROOT / "examples" / "long-haul" / "board.rig"
AS_ORDERED = ROOT / "tests" / "rigs" / "back-bedroom-as-ordered.rig"


def left_free(path: str, pinned: bool) -> Results:
    """Every stated outlet struck out; its leads, which pin the last choice, kept or not."""
    made = results(ROOT / path).rig
    wishes = made.lead_wishes if pinned else made.lead_wishes.replace(leads=())
    power = made.power.replace(feeds=(), others=tuple(made.supplies))
    return Results(made.replace(power=power, lead_wishes=wishes))


def outlets_of(power: PowerAssignment) -> dict[str, str]:
    return {feed.unit: " ".join(port.jack for port in feed.outlets) for feed in power.feeds}


@pytest.mark.parametrize("pinned", [True, False])
def test_home_rig(pinned: bool) -> None:
    """Six units on five outlets: hedge (positive ground) alone, only marl and millpond share, lant and rotunda on o4 and o5.
    2 + 8 + 22 + 30 + 120 + 160 = 342 mA, x 9 V = 3.078 W, 51.3 % of 6 W."""
    made = left_free("examples/back-bedroom/board.rig", pinned)
    power = made.get(PowerAssignment)
    where = outlets_of(power)
    assert power.proved and not power.unfed
    assert sorted(set(where.values())) == ["o1", "o2", "o3", "o4", "o5"]
    assert where["marl"] == where["millpond"] != where["hedge"]
    assert {where["lant"], where["rotunda"]} == {"o4", "o5"}
    assert (power.objective.warnings, power.objective.sharing, power.objective.strangers) == (0, 2, 0)
    (total,) = made.get(SupplyTotals).all
    assert total.drawn_ma == pytest.approx(342)
    assert total.drawn_w == pytest.approx(3.078)
    assert total.drawn_w / 6 == pytest.approx(0.513)


def test_home_rig_pinned_is_the_stated_choice() -> None:
    """hedge o1, marl and millpond o2, plumb o3, lant o4, rotunda o5: nothing needs to move. 30 / 100, 120 / 250, 160 / 250."""
    power = left_free("examples/back-bedroom/board.rig", True).get(PowerAssignment)
    assert outlets_of(power) == {
        "hedge": "o1", "marl": "o2", "millpond": "o2", "plumb": "o3", "lant": "o4", "rotunda": "o5"
    }  # fmt: skip
    assert power.objective.moves == 0
    percent = {port.jack: load.percent for port, load in power.loads.items()}
    assert percent == pytest.approx({"o1": 2, "o2": 30, "o3": 30, "o4": 48, "o5": 64})


def test_touring_rig_pinned_is_the_stated_choice() -> None:
    """The percentages of the worked rig, by outlet; b8 is spare. A: 433 mA, 3.897 W. B: 11.160 + 3.600 + 0.450 = 15.210 W.
    Two switches are moved, for heron at 12 V and lapwing at 18 V."""
    made = left_free("examples/long-haul/board.rig", True)
    power = made.get(PowerAssignment)
    assert (power.proved, power.objective.warnings, power.objective.sharing, power.objective.moves) == (True, 2, 0, 0)
    assert outlets_of(power) == outlets_of(results(TOURING).get(PowerAssignment))
    percent = {port.jack: load.percent for port, load in power.loads.items() if load.units}
    assert percent == pytest.approx({
        "a1": 5, "a2": 12, "a3": 3, "a4": 8, "a5": 15, "a6": 40, "a7": 64, "a8": 76,
        "b1": 70, "b2": 50, "b3": 60, "b4": 60, "b5": 80, "b6": 10, "b7": 16,
    })  # fmt: skip
    totals = {each.supply: each for each in made.get(SupplyTotals).all}
    assert totals["mill8"].drawn_ma == pytest.approx(433)
    assert totals["mill8"].drawn_w == pytest.approx(3.897)
    assert totals["weir8"].drawn_w == pytest.approx(15.21)


def test_touring_rig_free_is_shorter_and_as_clean() -> None:
    """Without pins the leads may be shorter, never longer; heron needs 12 V and lapwing 18 V, so b5 and b6, whose switches
    are moved: two warnings, which no choice avoids."""
    pinned = left_free("examples/long-haul/board.rig", True).get(PowerAssignment)
    free = left_free("examples/long-haul/board.rig", False).get(PowerAssignment)
    assert free.proved and (free.objective.warnings, free.objective.sharing) == (2, 0)
    assert free.objective.length_mm <= pinned.objective.length_mm
    where = outlets_of(free)
    assert {where["heron"], where["lapwing"]} == {"b5", "b6"}
    assert {where[name] for name in ("signalbox", "lantxl", "rotundaxl", "weathervane")} == {"b1", "b2", "b3", "b4"}


def planted(code: str) -> Diagnostic:
    (told,) = [each for each in compiled(AS_ORDERED).findings if each.kind.name == code]
    return told


def test_positive_ground_in_company() -> None:
    told = planted("shared-positive-ground")
    assert told.message == (
        "the audio ground of 'hedge' is its + pole, that of 'marl' is its − pole; on mill5.o1 the shield of A3 shorts 9 V"
    )
    assert told.advice == "feed 'hedge' from mill5.o2 (2 %) and 'millpond' from mill5.o1"


def test_overloaded_outlet() -> None:
    """160 / 100 = 160 %; on o5 160 / 250 = 64 %. No outlet that would do is free, so that another unit moves for it."""
    told = planted("overloaded-outlet")
    assert told.message == "'rotunda' wants 160 mA, mill5.o3 gives 100 mA (160 %)"
    assert told.advice == "feed 'rotunda' from mill5.o5 (64 %) and 'plumb' from mill5.o3"


def test_the_corrected_home_rig_has_neither() -> None:
    assert not [
        each for each in compiled(HOME).findings if each.kind.name in ("overloaded-outlet", "shared-positive-ground")
    ]
