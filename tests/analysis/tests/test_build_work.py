"""How long a board takes to build: each action by how often it is done."""

from __future__ import annotations

import pytest
from cases import ROOT, compiled
from small_rigs import block, results_of, unit

from rigc.analysis.leads.lead_status import status
from rigc.analysis.leads.leads import Leads
from rigc.analysis.reasoning import Reasoning
from rigc.analysis.results import Results
from rigc.analysis.stores.head_count import HeadCount
from rigc.analysis.tests.build_work import BuildWork


@pytest.fixture(scope="module")
def results() -> Results:
    made = compiled(ROOT / "examples/back-bedroom/board.rig").results
    assert made is not None
    return made


def test_minutes(results: Results) -> None:
    """Leads at 20 min each to make, 4 to lay and tie, ½ to plug each end in, of the two legs of the Y lead D2 at the
    outlet once; things at 3 min to set down; a test at 2 (facts.rework)."""
    work, leads = results.get(BuildWork), [each for each in results.get(Leads).all if not each.stage]
    steps = {step.action: step for step in work.steps}
    made = sum(status(results.rig, each) == "make" for each in leads)
    assert float(steps["make"].minutes) == 20 * made
    assert float(steps["fit"].minutes) == 4 * len(leads)
    assert float(steps["plug in"].minutes) == len(leads) - 0.5
    assert float(steps["mount"].minutes) == 3 * len(steps["mount"].what)
    assert float(steps["tests-leads"].minutes) == 2 * steps["tests-leads"].times
    assert float(work.minutes) == sum(float(step.minutes) for step in work.steps)


def test_nothing_goes_into_a_unit_before_it_was_measured(results: Results) -> None:
    actions = [step.action for step in results.get(BuildWork).steps]
    order = ["make", "tests-leads", "fit", "tests-mains", "tests-plugs", "plug in", "tests-whole"]
    assert [each for each in actions if each in order] == order


def test_counts_have_their_reasons(results: Results) -> None:
    count = results.get(HeadCount)
    (why,) = Reasoning(results).of("rig.leads")
    assert float(count.leads) == sum(not each.stage for each in results.get(Leads).all)
    assert why.formula.endswith(f"= {count.leads.text}")
    assert Reasoning(results).of("rig.build")


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        # one stated; the lead goes down and up again: two passages of a plate are drilled
        (("drop 150 mm", 'hole 20 mm at 350, 285 mm "mains"'), (("deck plank: 3 holes",), 3)),
        (("drop 150 mm",), (("deck plank: 2 holes",), 2)),
        # between rails there is a gap
        (("drop 150 mm", "rail 0..60 mm tape 40 mm", "rail 200..260 mm tape 40 mm"), ((), 0)),
        # over the deck nothing is drilled, but for what is stated; a foot is no hole of the bench's
        (('hole 20 mm at 350, 285 mm "mains"', "feet 20 mm in"), (("deck plank: 1 hole",), 1)),
    ],
)
def test_the_holes_of_the_schedule_are_drilled(lines: tuple[str, ...], told: tuple[tuple[str, ...], int]) -> None:
    body = "body 70 x 120 x 50 mm"
    rig = results_of(
        unit("marl", body, "output thru ts left 80 mm up 25 mm")
        + unit("tern", body, "input back ts right 80 mm up 25 mm")
        + block("deck", "plank", "size 400 x 300 mm", "thickness 12 mm", *lines)
        + "place {\n  marl at 300, 20 mm\n  tern at 20, 20 mm\n}\nchain marl.thru -> tern.back\n"
        + block(
            "plug", "flat", "fits ts", "stands out 15 mm", "bend 0 mm", "leaves at 8 mm", "wide 27 mm", "tall 27 mm"
        )
        + f"leads {{\n  A1 marl.thru -> tern.back {'under' if 'drop 150 mm' in lines else 'over'}\n}}\n"
    )
    steps = [(step.what, step.times) for step in rig.get(BuildWork).steps if step.action == "drill"]
    assert steps == [told] * bool(told[1])


def test_bolts_screws_and_brackets_are_drilled_from_the_thing_and_a_soldered_end_is_not_plugged_in() -> None:
    """The lead goes from a jack of the panel, where it is soldered, to tern: one plug. Reed stands on strip."""
    body = "body 70 x 120 x 50 mm"
    made = results_of(
        unit("tern", body, "input back ts right 80 mm up 25 mm")
        + unit("reed", body)
        + block("deck", "plank", "size 400 x 300 mm", "thickness 12 mm", "drop 150 mm")
        + block("panel", "rear on plank", "jack i ts at 380, 290 mm")
        + "place {\n  tern at 300, 20 mm\n  reed at 20, 20 mm\n}\nchain rear.i -> tern.back\n"
        + block(
            "plug", "flat", "fits ts", "stands out 15 mm", "bend 0 mm", "leaves at 8 mm", "wide 27 mm", "tall 27 mm"
        )
        + block("plug", "tag", "soldered")
        + "mounting {\n  tern bolted\n}\n"
    )
    steps = {step.action: step for step in made.get(BuildWork).steps}
    assert (steps["drill for it"].what, float(steps["drill for it"].minutes)) == (("tern",), 10)
    assert (steps["plug in"].times, steps["fit"].times) == (1, 1)
