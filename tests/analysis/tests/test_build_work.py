"""How long a board takes to build: each action by how often it is done."""

from __future__ import annotations

import pytest
from cases import ROOT, compiled

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
    """Leads at 20 min each to make, 4 to lay and tie, twice ½ to plug in; things at 3 min to set down; a test at 2 (facts.rework)."""
    work, leads = results.get(BuildWork), [each for each in results.get(Leads).all if not each.stage]
    steps = {step.action: step for step in work.steps}
    made = sum(status(results.rig, each) == "make" for each in leads)
    assert float(steps["make"].minutes) == 20 * made
    assert float(steps["fit"].minutes) == 4 * len(leads)
    assert float(steps["plug in"].minutes) == len(leads)
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
