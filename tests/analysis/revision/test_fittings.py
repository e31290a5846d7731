"""Decks, holes, panel jacks, cases and selectors between two revisions of the touring rig: what is done by hand for them."""

from __future__ import annotations

from two_boards import LONG_HAUL, results_after

from rigc.analysis.revision.plan.bench_phases import BEFORE
from rigc.analysis.revision.rework import Rework

LATER = LONG_HAUL.replace("  revision C", "  revision D")


def _changed(*pairs: tuple[str, str]) -> Rework:
    new = LATER
    for before, now in pairs:
        assert before in new, before
        new = new.replace(before, now)
    return results_after(LONG_HAUL, new).get(Rework)


def _steps(rework: Rework) -> list[tuple[str, tuple[str, ...], str, str]]:
    return [(step.action, step.what, step.start, step.end) for step in rework.steps if step.action != "test"]


def test_a_hole_is_drilled_with_the_power_off() -> None:
    rework = _changed(("  feet 20 mm in\n", "  feet 20 mm in\n  hole 25 mm at 500, 300 mm\n"))
    assert _steps(rework) == [
        ("power off", (), "", ""),
        ("drill", ("25 mm in plate",), "", "500, 300 mm"),
    ]
    assert not rework.retests


def test_an_inlet_that_moves_is_a_mains_part_and_tested() -> None:
    rework = _changed(("inlet mains C14 at 790, 470 mm", "inlet mains C14 at 750, 470 mm"))
    inlet = "rear-panel.mains (mains part: a competent person)"
    assert _steps(rework) == [
        ("power off", (), "", ""),
        ("take out", (inlet,), "C14 at 790, 470 mm", "; close its hole"),
        ("set jack", (inlet,), "", "C14 at 750, 470 mm"),
        ("mains test", ("1 at rear-panel.mains", "2 at rear-panel.mains"), "", ""),
    ]
    assert [(each.test, each.points) for each in rework.retests] == [
        (1, ("rear-panel.mains",)),
        (2, ("rear-panel.mains",)),
    ]


def test_a_jack_beside_an_inlet_asks_for_no_earth_test() -> None:
    rework = _changed(("  pair l, r\n  inlet", "  jack fx ts insulated at 700, 470 mm\n  pair l, r\n  inlet"))
    assert ("set jack", ("rear-panel.fx",), "", "ts at 700, 470 mm") in _steps(rework)
    assert not [each for each in rework.retests if each.test in (1, 2)]


def test_a_selector_that_is_set_otherwise() -> None:
    rework = _changed(("  country EU\n  selector mill8 230 V", "  country EU\n  selector mill8 115 V"))
    assert ("set selector", ("mill8 where it plays in eu",), "230 V", "115 V") in _steps(rework)


def test_a_new_scenario_asks_for_nothing_but_its_transformer() -> None:
    rework = _changed(
        (
            "scenario jp-east",
            'scenario br "Brazil" {\n  mains 127 V 60 Hz\n  country BR\n  selector mill8 115 V\n'
            "  transformer 127 V to 115 V 50 VA before mill8\n}\n\nscenario jp-east",
        )
    )
    assert not rework.steps
    assert [(each.kind, each.after) for each in rework.fittings] == [
        ("transformer", "127 V to 115 V, 50 VA, before mill8")
    ]


def test_another_case_is_tried() -> None:
    rework = _changed(("inside 960 x 520 x 210 mm", "inside 980 x 520 x 210 mm"))
    assert _steps(rework) == [("case", ("trunk",), "inside 960 x 520 x 210", "inside 980 x 520 x 210")]


def test_all_that_stands_on_a_deck_that_is_exchanged_goes_over_to_the_other() -> None:
    """No place differs, and yet each of the twenty is taken off and set down; the old strip stays on the old deck, new
    strip is laid; every lead of the board is laid anew, the two to the amps are not; each panel jack is set."""
    rework = _changed(("size 920 x 480 mm", "size 1000 x 480 mm"))
    done = [(step.action, len(step.what)) for step in rework.steps]
    assert sum(count for action, count in done if action == "take off") == 20
    assert sum(count for action, count in done if action == "mount") == 20
    assert "peel" not in dict(done) and dict(done)["strip deck"] == 16  # four of the twenty have brackets
    left = [plan.mark for plan in rework.leads if not plan.touched]
    assert left == ["A30", "A31"]
    assert [step.what for step in rework.steps if step.action == "set jack"] == [
        ("rear-panel.l",),
        ("rear-panel.r",),
        ("rear-panel.mains (mains part: a competent person)",),
    ]
    assert [step.start for step in rework.steps if step.phase == BEFORE and step.action == "put deck"] == ["920 x 480"]


def test_other_strip_under_a_base_takes_the_unit_off_and_sets_it_down() -> None:
    """Its base is at hand only when it is off: the new strip is not laid beforehand. On a plate the deck's pieces are other ones, too."""
    rework = _changed(("  all with mushroom\n", "  all with mushroom\n  marl with hook\n"))
    place = "227, 175 mm"
    assert _steps(rework) == [
        ("power off", (), "", ""),
        ("take off", ("marl",), place, ""),
        ("peel base", ("marl",), "", ""),
        ("peel", ("marl",), "", ""),
        ("strip base", ("marl",), "", ""),
        ("strip deck", ("marl",), "", ""),
        ("mount", ("marl",), place, place),
    ]
    assert not [step for step in rework.steps if step.phase == BEFORE]


def test_bolts_in_place_of_strip() -> None:
    rework = _changed(("  mill8, weir8,", "  marl bolted\n  mill8, weir8,"))
    place = "227, 175 mm"
    assert _steps(rework) == [
        ("power off", (), "", ""),
        ("take off", ("marl",), place, ""),
        ("peel base", ("marl",), "", ""),
        ("peel", ("marl",), "", ""),
        ("drill for it", ("marl",), "", "bolted"),
        ("mount", ("marl",), place, f"{place}, bolted"),
    ]


def test_screws_in_place_of_brackets() -> None:
    rework = _changed(("canaltwo, fan4 brackets", "canaltwo brackets\n  fan4 screwed"))
    place = "under 560, 200 mm"
    assert _steps(rework) == [
        ("power off", (), "", ""),
        ("take off", ("fan4",), place, ""),
        ("drill for it", ("fan4",), "", "screwed"),
        ("mount", ("fan4",), place, f"{place}, screwed"),
    ]


def test_leads_of_a_deck_that_is_exchanged_are_laid_and_measured_again() -> None:
    """All were freed with the old deck: each supply stands before its outlets are read, no DC plug goes into a unit before that, and what the
    sound goes through is tested."""
    rework = _changed(("size 920 x 480 mm", "size 940 x 480 mm"))
    steps = _steps(rework)
    assert ("dress", ("D01",), "", "") not in steps
    at = {
        action: [place for place, step in enumerate(steps) if step[:2] == action] for action in {s[:2] for s in steps}
    }
    seat, laid = at["mount", ("mill8",)][0], at["fit", ("D01",)][0]
    read = next(place for place, step in enumerate(steps) if step[0] == "measure" and "5 at mill8.a1" in step[1])
    plugged = next(place for place, step in enumerate(steps) if step[0] == "plug in" and step[3] == "teeter")
    assert seat < laid < read < plugged
    assert {9, 11, 12} <= {each.test for each in rework.retests}
    assert not [each for each in rework.retests if each.test in (3, 4)]
