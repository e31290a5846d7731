"""How long a supply lasts that gives from its battery, in hours and in shows; what the mains sheet then leaves out."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from written import compiled_text

from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.analysis.power.pack_lives import PackLife, PackLives
from rigc.analysis.results import Results

CASES = "tests/analysis/checks/cases/battery-only/"


def life(made: Results) -> PackLife:
    (found,) = made.get(PackLives).all
    return found


@pytest.mark.parametrize(
    ("case", "wh", "hours", "shows"),
    [("supply-lasts-exactly-its-show", 6, 3, 1), ("supply-lasts-just-less", 5.9, 2.95, 0)],
)
def test_energy_and_life(case: str, wh: float, hours: float, shows: int) -> None:
    """9 V × 200 mA = 1.8 W; / 0.9 = 2 W; 6 Wh / 2 W = 3 h, one show of 3 h; 5900 mAh × 1 V = 5.9 Wh, / 2 W = 2.95 h."""
    found = life(results(ROOT / f"{CASES}{case}.rig"))
    assert (float(found.gives), float(found.intake.watts)) == pytest.approx((1.8, 2))  # type: ignore[arg-type]
    assert (float(found.energy), found.hours) == pytest.approx((wh, hours))  # type: ignore[arg-type]
    assert found.shows == shows


def changed(old: str, new: str) -> PackLife:
    made = compiled_text(f"{CASES}supply-lasts-exactly-its-show.rig", lambda text: text.replace(old, new))
    assert made.results is not None
    return life(made.results)


@pytest.mark.parametrize(
    ("old", "new", "lacking"),
    [
        ("  draws 200 mA\n", "", "the current of avocet"),
        ("  efficiency 90 %\n", "", "its efficiency"),
        (" 6 Wh only", " only", "its energy"),
    ],
)
def test_what_is_not_known_is_not_zero(old: str, new: str, lacking: str) -> None:
    found = changed(old, new)
    assert (found.hours, found.shows, found.lacking) == (None, None, lacking)


@pytest.mark.parametrize(
    ("case", "plugged"), [("supply-lasts-exactly-its-show", []), ("supply-on-mains-too", ["bank"])]
)
def test_mains(case: str, plugged: list[str]) -> None:
    assert list(results(ROOT / f"{CASES}{case}.rig").get(MainsLoads).all) == plugged
