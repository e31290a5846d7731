"""What amps and keyboards take of the mains, by scenario and by strip: by hand."""

from __future__ import annotations

from written import written

from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.analysis.mains.own_intakes import OwnIntakes
from rigc.traced.term import known

RIG = """
scenario hall {
  mains 230 V 50 Hz
}
scenario tokyo {
  mains 100 V 50..60 Hz
  amps combo
}
amp combo {
  earthed
  takes 460 VA
  input in ts
}
amp stack {
  earthed
  takes 110 W
  input in ts
}
amp other {
  earthed
  takes 999 VA
  input in ts
}
desk front {
  earthed
  input in ts
}
source keys {
  keyboard
  earthed
  takes 40 VA
  output out ts
}
mains-strip bar {
  sockets 4
}
mains-strip tail {
  sockets 2
}
power {
  combo, front, tail plug into bar
  stack, keys plug into tail
}
"""


def test_what_a_plate_says_in_watts_takes_the_lowest_usual_power_factor() -> None:
    """110 W / 0.55 = 200 VA; an amp that nothing uses is not counted."""
    own = written(RIG).get(OwnIntakes)
    assert {name: round(known(taken) or 0, 6) for name, taken in own.all.items()} == {
        "combo": 460,
        "stack": 200,
        "keys": 40,
    }
    assert own.usual == ("stack",)


def test_a_scenario_counts_what_is_used_in_it() -> None:
    """Hall: 460 + 200 + 40 = 700 VA / 230 V = 3.043 A; Tokyo without the stack: 500 VA / 100 V = 5 A."""
    loads = written(RIG).get(MainsLoads)
    assert {name: known(each) for name, each in loads.places_with_own.items()} == {"hall": 700, "tokyo": 500}
    assert [round(known(each) or 0, 3) for each in loads.amperes_with_own.values()] == [3.043, 5]


def test_a_strip_bears_the_strips_that_hang_on_it() -> None:
    """On the tail 200 + 40 = 240 VA, on the bar 460 more; in Tokyo the stack is not there: 0.4 A and 5 A."""
    loads = written(RIG).get(MainsLoads)
    assert {name: round(known(each) or 0, 6) for name, each in loads.strips.items()} == {"bar": 700, "tail": 240}
    assert [round(known(loads.strip_amperes["tokyo", name]) or 0, 6) for name in ("bar", "tail")] == [5, 0.4]
