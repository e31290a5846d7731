"""What the player notices of a swap: facts as people say them."""

from __future__ import annotations

from written import written

from rigc.reports.revision.swap.player import _FACTS

BLOCK = """
unit lant {
  input in ts 470 kohm
  output out ts 600 ohm
  switch at 37.5, 25 mm latching
}
"""


def test_impedances_and_places_bear_their_units() -> None:
    unit = written(BLOCK).rig.units["lant"]
    said = {name: say(unit) for name, say in _FACTS.items()}
    assert (said["input impedance"], said["output impedance"]) == ("470 kΩ", "600 Ω")
    assert said["foot switch at"] == "37.5, 25 mm latching"
