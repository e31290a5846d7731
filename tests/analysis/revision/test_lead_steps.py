"""Steps of leads: nothing stays plugged into a unit while what feeds it is changed; Y leads are one piece; stage leads
follow their own lengths."""

from __future__ import annotations

from cases import ROOT
from two_boards import LONG_HAUL, results_after

from rigc.analysis.revision.plan.leads.plan import KEEP, NEW, REMAKE
from rigc.analysis.revision.rework import Rework

HOME = (ROOT / "examples/back-bedroom/board.rig").read_text("utf-8")


def _after(old: str, *pairs: tuple[str, str]) -> Rework:
    new = old.replace("  revision C", "  revision D").replace("  revision A", "  revision B")
    for before, now in pairs:
        assert before in new, before
        new = new.replace(before, now)
    return results_after(old, new).get(Rework)


def _told(rework: Rework, *actions: str) -> list[tuple[str, tuple[str, ...], str]]:
    return [(step.action, step.what, step.end or step.start) for step in rework.steps if step.action in actions]


def test_a_lead_is_out_of_its_unit_while_its_outlet_is_set_otherwise_and_measured() -> None:
    rework = _after(
        LONG_HAUL, ("lapwing from weir8.b6 at 18 V", "lapwing from weir8.b6 at 12 V"), ("accepts 17.4", "accepts 8.6"),
        ("needs 18 V dc", "needs 12 V dc"),
    )  # fmt: skip
    assert _told(rework, "unplug", "set volts", "measure", "plug in") == [
        ("unplug", ("D14",), "lapwing"),
        ("set volts", ("weir8.b6",), "12 V"),
        ("measure", ("5 at weir8.b6",), ""),
        ("plug in", ("D14",), "lapwing"),
    ]


def test_a_lead_that_goes_to_another_outlet_is_measured_before_its_unit_gets_it() -> None:
    rework = _after(
        LONG_HAUL, ("plumb from mill8.a6", "plumb from mill8.a7"), ("echomill from mill8.a7", "echomill from mill8.a6"),
        ("D06 mill8.a6", "D06 mill8.a7"), ("D07 mill8.a7 -> echomill", "D07 mill8.a6 -> echomill"),
    )  # fmt: skip
    order = [(action, where) for action, _, where in _told(rework, "unplug", "measure", "plug in")]
    assert order.index(("unplug", "plumb")) < order.index(("measure", "")) < order.index(("plug in", "plumb"))


def test_a_plug_is_pulled_out_before_another_is_fitted() -> None:
    lead = "A08 signalbox.s4 -> marl.in barrel-angle to "
    rework = _after(LONG_HAUL, (f"{lead}barrel-angle", f"{lead}flat-angle"))
    assert _told(rework, "unplug", "refit plug", "plug in") == [
        ("unplug", ("A08",), "marl"),
        ("refit plug", ("A08",), ", fit flat-angle"),
        ("plug in", ("A08",), "marl"),
    ]


def test_one_leg_more_makes_a_y_lead_anew_and_its_own_label_too() -> None:
    """D2 had legs to marl and millpond; a third one can't be put on at the show."""
    rework = _after(
        HOME,
        ("  plumb from mill5.o3\n", ""),
        ("marl, millpond from mill5.o2 shared", "marl, millpond, plumb from mill5.o2 shared"),
        ("D3 mill5.o3 -> plumb.dc", "D2c mill5.o2 -> plumb.dc"),
    )
    verdicts = {
        plan.mark: plan.verdict for plan in rework.leads if plan.after is not None and plan.after.leg_of == "D2"
    }
    assert verdicts == {"D2a": REMAKE, "D2b": REMAKE, "D2c": NEW}
    assert {plan.mark for plan in rework.leads if plan.after is None} == {"D2a", "D2b", "D3"}
    assert [(each.destroy, each.text) for each in rework.labels if each.mark == "D2"] == [
        ("D2 Y 9 V DC mill5.o2 to marl + millpond ONLY", ""),
        ("", "D2 Y 9 V DC mill5.o2 to marl + millpond + plumb ONLY"),
    ]


def test_a_longer_stage_lead_is_made_anew() -> None:
    lead = "A30 rear-panel.l -> left-amp.in straight to straight of stage-coax made "
    rework = _after(LONG_HAUL, (f"{lead}6 m", f"{lead}9 m"))
    plan = rework.lead("A30")
    assert plan is not None and (plan.verdict, plan.why) == (REMAKE, "too short")
    assert not _told(rework, "power off", "pull out", "fit")  # it is no part of the board


def test_the_player_s_lead_stays_where_another_unit_is_first() -> None:
    """Its number is stated no more; it is the lead to the first unit all the same, and not made anew."""
    rework = _after(HOME, ("guitar -> plumb -> hedge", "guitar -> hedge -> plumb"),
        ("  A1 guitar.out -> plumb.in straight", "  A9 guitar.out -> hedge.in straight"),
        ("A2 plumb.out -> hedge.in", "A2 hedge.out -> plumb.in"), ("A3 hedge.out -> marl.in", "A3 plumb.out -> marl.in"),
    )  # fmt: skip
    plan = rework.lead("A9")
    assert plan is not None and plan.before is not None
    assert (plan.verdict, plan.before.mark, plan.moved) == (KEEP, "A1", (1,))


THREE_LEGS = (
    HOME.replace("marl, millpond from mill5.o2 shared", "marl, millpond, plumb from mill5.o2 shared")
    .replace("  plumb from mill5.o3\n", "")
    .replace("  D3 mill5.o3 -> plumb.dc\n", "  D2c mill5.o2 -> plumb.dc\n")
)


def test_a_leg_goes_and_the_others_stay_on_the_board() -> None:
    """The Y lead is made anew with two legs; both are laid, measured at their outlet and plugged in. The old one is of no
    use: it goes into the bin, and is not bagged."""
    rework = results_after(THREE_LEGS, HOME.replace("  revision A", "  revision B")).get(Rework)
    verdicts = {plan.mark: plan.verdict for plan in rework.leads if plan.after is not None and plan.verdict != KEEP}
    assert verdicts == {"D2a": REMAKE, "D2b": REMAKE, "D3": NEW}
    assert _told(rework, "pull out", "measure", "bag") == [
        ("pull out", ("D2a", "D2b", "D2c"), "the bin"),
        ("measure", ("5 at mill5.o2", "5 at mill5.o3"), ""),
    ]
    assert _told(rework, "fit") == [
        ("fit", ("D2a",), "marl.dc"),
        ("fit", ("D2b",), "millpond.dc"),
        ("fit", ("D3",), "plumb.dc"),
    ]


def test_what_is_stored_is_bagged_and_what_is_binned_is_not() -> None:
    """D3 would serve as a spare of 300 mm; the legs of the old Y lead would not."""
    rework = results_after(HOME, THREE_LEGS.replace("  revision A", "  revision B")).get(Rework)
    assert _told(rework, "pull out", "bag") == [
        ("pull out", ("D2a", "D2b"), "the bin"),
        ("pull out", ("D3",), ""),
        ("bag", (), ""),
    ]


def test_a_series_lead_whose_outlets_change_comes_out_once_and_goes_in_once() -> None:
    """Both leads of the pair go to other outlets; what they end in is one thing with one plug in its unit."""
    old = """language 1
rig toy {
  revision A 2026-03-02
}
unit elder {
  input in ts
  inlet dc barrel 5.5 x 2.1 mm
  needs 18 V dc
}
supply mill {
  outlet o1..o4 9 V dc 200 mA isolated
}
power {
  elder from mill.o1, mill.o2 series
}
leads {
  D1 mill.o1 -> elder.dc made 400 mm in "A"
  D2 mill.o2 -> elder.dc made 400 mm in "A"
}
"""
    new = (
        old.replace("revision A", "revision B")
        .replace("mill.o1, mill.o2", "mill.o3, mill.o4")
        .replace("D1 mill.o1", "D1 mill.o3")
        .replace("D2 mill.o2", "D2 mill.o4")
    )
    steps = results_after(old, new).get(Rework).steps
    told = [(step.action, step.what, step.minutes) for step in steps if "elder" in (step.start, step.end)]
    assert told == [("unplug", ("Y1",), 0.5), ("plug in", ("Y1",), 0.5)]


def test_a_mains_lead_is_in_and_tested_before_anything_is_measured_behind_it() -> None:
    """The board's inlet moves: its lead goes into both ends, a competent person tests it, and only then the mains lead goes in."""
    moved = ("inlet mains C14 at 790, 470 mm", "inlet mains C14 at 760, 470 mm")
    rework = _after(LONG_HAUL, moved, ("lapwing from weir8.b6 at 18 V", "lapwing from weir8.b5 at 18 V"), ("heron from weir8.b5 at 12 V", "heron from weir8.b6 at 12 V"), ("D13 weir8.b5 -> heron", "D13 weir8.b6 -> heron"), ("D14 weir8.b6 -> lapwing", "D14 weir8.b5 -> lapwing"))  # fmt: skip
    actions = [step.action for step in rework.steps]
    assert actions.index("set jack") < actions.index("mains test") < actions.index("measure")
    assert [step.what for step in rework.steps if step.action == "mains test"] == [
        ("1 at rear-panel.mains", "2 at rear-panel.mains")
    ]
    assert not any(
        name.startswith(("1 at", "2 at")) for step in rework.steps if step.action == "test" for name in step.what
    )
