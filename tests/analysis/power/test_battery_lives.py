"""How long batteries last, in hours and in shows."""

from __future__ import annotations

import pytest
from written import compiled_text, written

from rigc.analysis.power.battery_lives import BatteryLives
from rigc.analysis.reasoning import Reasoning
from rigc.analysis.results import Results
from rigc.facts.power import SHOW_H

UNIT = """
instrument guitar {
}
unit avocet {
  input in ts
  output out ts
  battery "9 V block" 400 mAh only
  draws 40 mA
}
chain guitar -> avocet
"""


def with_show(line: str) -> Results:
    path = "tests/analysis/checks/cases/battery-only/lasts-exactly-its-show.rig"
    made = compiled_text(path, lambda text: text.replace("  show 150 min\n", line))
    assert made.results is not None
    return made.results


def test_shows_as_usual() -> None:
    """400 mAh / 40 mA = 10 h; 10 h / 4 h = 2.5, whole shows: 2."""
    (life,) = written(UNIT).get(BatteryLives).all
    assert [life.show, life.hours, life.shows] == [SHOW_H.value, 10, 2]


@pytest.mark.parametrize(
    ("line", "hours", "shows"), [("  show 45 min\n", 0.75, 3), ("  show 2.5 h\n", 2.5, 1), ("", 4, 0)]
)
def test_shows_of_a_stated_length(line: str, hours: float, shows: int) -> None:
    """100 mAh / 40 mA = 2.5 h: 2.5 / 0.75 = 3.33, three whole shows; 2.5 / 2.5 = 1; without the statement 2.5 / 4 is less than one."""
    (life,) = with_show(line).get(BatteryLives).all
    assert [life.show, life.hours, life.shows] == [hours, 2.5, shows]


def test_why_tells_the_length_and_where_it_is_stated() -> None:
    told = Reasoning(with_show("  show 45 min\n")).by_name
    assert (told["rig.show"].value, told["rig.show"].formula) == ("0.75", "45 / 60 = 0.75")
    assert told["rig.show"].inputs[0].span is not None
    assert told["avocet.battery.shows"].formula == "2.5 / 0.75 = 3.33333 → 3"
