"""What hangs on a unit of the touring board, by hand from its statements."""

from __future__ import annotations

from written import changed

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Leads
from rigc.analysis.signal.touched import touched

TOURING = "examples/long-haul/board.rig"


def test_a_unit_in_a_loop() -> None:
    """marl is in loop 4: presets 2 and 3 switch it in; preset 3 is played in one song."""
    results = changed(TOURING)
    found = touched(results.rig, results.get(Leads), results.get(PowerAssignment), "marl")
    assert [lead.mark for lead in found.leads] == ["A08", "A09", "D04"]
    assert found.feed is not None
    assert [str(port) for port in found.feed.outlets] == ["mill8.a4"]
    assert [preset.number for preset in found.presets] == [2, 3]
    assert [song.title for song in found.songs] == ["Night Ferry"]


def test_a_unit_with_programs_and_one_without_anything() -> None:
    results = changed(TOURING)
    leads, power = results.get(Leads), results.get(PowerAssignment)
    assert [preset.number for preset in touched(results.rig, leads, power, "lantxl").presets] == [1, 2, 3, 4]
    lever = touched(results.rig, leads, power, "lever")
    assert [lead.mark for lead in lever.leads] == ["C01"]
    assert (lever.feed, lever.presets, lever.songs) == (None, (), ())
