"""The rig of a stereo keyboard and a voice (invented): each thing about it that is odd stands on the sheets on which a hand acts."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from typing import Any

import pytest
from cases import ROOT, results

from rigc.analysis.ground.ground_systems import GroundSystems
from rigc.analysis.results import Results
from rigc.reports.content import Table
from rigc.reports.sheets.bench.label_sheet import label_sheet
from rigc.reports.sheets.bench.pull_list import pull_list
from rigc.reports.sheets.bench.test_record import test_record as the_test_record
from rigc.reports.sheets.bench.unit_schedule import unit_schedule
from rigc.reports.sheets.power.ground_sheet import ground_sheet
from rigc.reports.sheets.power.mains_sheet import mains_sheet
from rigc.reports.sheets.stage.wiring_sheet import wiring_sheet


@lru_cache(maxsize=1)
def made() -> Results:
    return results(ROOT / "examples" / "harbour-keys" / "board.rig")


def lines(sheet: Callable[..., Any], *tables: str) -> list[str]:
    """The rows of a sheet's tables, or of those of these names: the cells joined, marks in brackets."""
    blocks = [block for block in made().call(sheet).blocks if isinstance(block, Table)]
    found = [row for block in blocks if not tables or block.name in tables for row in block.rows]
    return [
        " | ".join(" ".join(filter(None, (cell.text, f"[{cell.mark}]" if cell.mark else ""))) for cell in row.cells)
        for row in found
    ]


# Zones: 900 mm / 8 = 112.5 mm a column from the left, 320 mm / 6 = 53.3 mm a row from the rear.
@pytest.mark.parametrize(
    "row",
    [
        # the keyboard: two leads to its pair, and on in stereo
        "1 | keys |  |  | outl, outr |  | stereo | line | ",
        "2 | millpond | E7 | inl, inr | outl, outr | A1, A2 | stereo | line | buffered; without power: passes",
        # the microphone, and the desk's switch that feeds it
        "1 | voice |  | out |  | mono | microphone | ",
        "2 | front-desk | in3 |  | A13 | mono |  | ",
        "front-desk.in3 | on, 48 V | voice.out | needs 48 V",
        # lifts that leave their maker closed
        "twin-di.outl | C3 | ground lift | open [tape over] | all | closed",
        "twin-di.outr | B3 | ground lift | open [tape over] | all | closed",
        # the Y lead, the reversed feed, the a.c. unit on the captive brick, the crossed treadle lead
        "D1a | mill5.o1 | millpond.dc | B6 → D7 | 9 | DC | leg of the Y lead D1 | centre-negative",
        "D1 | mill5.o1 | millpond, ember | B6 → D6, D7 | 9 | DC | Y lead: legs D1a, D1b | centre-negative",
        "D2 | mill5.o4 | lant.dc | B7 → A5 | 9 | DC | REVERSED: + and − change places between its plugs | centre-positive",
        "AC1 | brick.o1 | tern.dc | B5 → D4 | 9 | AC | straight | captive at brick, 1.5 m",
        # what goes into the mains strip
        "keys | bar",
        "C1 | lever.out | lant.exp | C2 → A5 | CROSSED: tip to ring, ring to tip, sleeve to sleeve | expression, tip-wiper to ring-wiper, 10 kΩ",
    ],
)
def test_the_wiring_sheet_carries_it(row: str) -> None:
    assert row in lines(wiring_sheet)


@pytest.mark.parametrize(
    "label",
    [
        "keys.outl / far millpond.inl",
        "millpond.inr / far keys.outr",
        "voice.out / far front-desk.in3",
        "lever.out / far lant.exp / CROSSED",
        "mill5.o1 / far millpond.dc / 9 V DC LEG OF Y D1",
        "Y 9 V DC / mill5.o1 / to millpond + ember ONLY",
        "lant.dc / far mill5.o4 / 9 V DC REVERSED",
        "tern.dc / far brick.o1 / 9 V AC",
    ],
)
def test_the_label_sheet_carries_it(label: str) -> None:
    assert any(label in line for line in lines(label_sheet))


def test_the_pull_list_hands_out_no_straight_lead_for_them() -> None:
    """AC1 grows out of its brick and the stage leads are there: neither is pulled."""
    told = [line.split(" | ")[0] for line in lines(pull_list) if "lead" in line.split(" | ")[0]]
    assert [item for item in told if item[:2] in ("C1", "D1", "D2", "AC")] == [
        "C1: control lead 680 mm, CROSSED",
        "D2: dc lead 450 mm, REVERSED",
        "D1: dc Y lead, legs of 450 mm and 300 mm",
    ]
    assert not any("A13" in item or "AC1" in item for item in told)


@pytest.mark.parametrize(
    "row",
    [
        "twin-di.outl | ground lift | open",
        "A13 | voice.out | front-desk.in3",
        "mill5.o1 | D1a to millpond, leg of Y D1, 9 V, centre-negative; D1b to ember, leg of Y D1, 9 V, centre-negative",
        "A11 | twin-di.outl | front-desk.in1 | pin 2–pin 2, pin 3–pin 3, pin 1–pin 1",
        "bar | mains strip: the earth of each socket",
        "mill5.o4 | D2 to lant, REVERSED, 9 V, centre-positive",
        "brick.o1 | AC1 to tern, 9 V AC, no polarity",
        "C1 | lever.out to lant.exp, CROSSED: tip–ring, ring–tip, sleeve–sleeve",
    ],
)
def test_the_test_record_carries_it(row: str) -> None:
    assert any(line.startswith(row) for line in lines(the_test_record))


def test_the_other_sheets() -> None:
    """Mains strip; lifts of the ground sheet; sources of the unit schedule."""
    # S of mill5: 9 V × (40 + 24 + 180) mA = 2.196 W, / 0.40 / 0.70 = 7.843 VA; of brick: 9 V × 700 mA = 6.3 W, / 0.75 / 0.80 = 10.5 VA; / 230 V = 0.080 A
    assert "bar | 4 | 3 | 0.5 | mill5, brick, keys | 18.34 | 0.080 | keys" in lines(mains_sheet)
    assert "hall | twin-di.outl | transformer, lift open | A11 | front-desk | open" in lines(ground_sheet)
    assert "voice | microphone | 150 ohm | −40 dBu | 10 m of stage-pair | no mains | " in lines(
        unit_schedule, "sources"
    )


def test_each_system_of_grounds_has_one_earth() -> None:
    """The keyboard earths the board, the desk itself: the transformers keep the two apart."""
    (state,) = made().get(GroundSystems).states
    assert sorted(system.earths for system in state.systems) == [("front-desk",), ("keys",)]
