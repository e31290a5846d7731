"""What becomes of a lead that is pulled: a spare where it would serve on the new board as it is, whatever its cable, else waste."""

from __future__ import annotations

import pytest
from two_boards import results_after

from rigc.analysis.revision.board import BoardLead
from rigc.analysis.revision.comparison import Comparison
from rigc.analysis.revision.plan.bench_phases import BEFORE
from rigc.analysis.revision.plan.leads.fit import Bench
from rigc.analysis.revision.plan.leads.plan import BIN, KEEP, NEW, REMAKE, STORE
from rigc.analysis.revision.plan.successors import NONE
from rigc.analysis.revision.rework import Rework
from rigc.model.fact import Fact
from rigc.model.stock import Cable
from rigc.source import Source, Span

HERE = Span(Source("cables.rig", "cable"), 0, 5)


def cable(name: str, conductors: int | None, area_mm2: float | None = None) -> Cable:
    area = None if area_mm2 is None else Fact(area_mm2, f"{area_mm2:g} mm2", HERE)
    return Cable(name, name, HERE, conductors=conductors, area_mm2=area)


CABLES = {
    each.name: each
    for each in (
        cable("thin", 1),
        cable("thick", 1),
        cable("pair", 2),
        cable("bare", None),
        cable("dc-24", 2, 0.2),
        cable("dc-20", 2, 0.5),
        cable("dc-17", 2, 0.5),
        cable("dc-x", 2),
    )
}


@pytest.mark.parametrize(
    ("signal", "have", "need", "does"),
    [
        ("audio", "thin", "thick", True),
        ("audio", "pair", "thin", True),
        ("audio", "thin", "pair", False),  # one conductor for two
        ("audio", "bare", "thin", False),  # nobody says how many it has
        ("audio", "bare", "bare", True),
        ("dc", "dc-20", "dc-24", True),
        ("dc", "dc-17", "dc-20", True),  # just as thick
        ("dc", "dc-24", "dc-20", False),  # thinner
        ("dc", "dc-x", "dc-24", False),  # of unknown gauge
        ("audio", "none", "thin", False),
    ],
)
def test_another_cable_that_does_as_well(signal: str, have: str, need: str, does: bool) -> None:
    one, other = (BoardLead("A1", signal, None, ("flat", "flat"), name, 3000, ("", "")) for name in (have, need))
    assert Bench({}, NONE, CABLES).carries_as_much(one, other) is does


UNITS = """language 1
use "stock/plugs.rig"
use "stock/cables.rig"
rig sample {
  revision A 2026-03-02
}
unit knot {
  body 70 x 120 x 50 mm
  input in ts right 80 mm up 25 mm
  output out ts left 80 mm up 25 mm
}
unit spit like knot {
  body 70 x 120 x 50 mm
  input in ts right 80 mm up 25 mm
  output out ts left 80 mm up 25 mm
}
deck board {
  size 600 x 300 mm
  thickness 10 mm
  drop 150 mm
}
chain knot -> spit
"""
LEADS = "place {{\n  knot at {} mm\n  spit at 20, 20 mm\n}}\nleads {{\n  audio cable {}\n  audio plug {}\n  A1 knot.out -> spit.in made {} mm\n}}\n"


def became(old: str, new: str) -> dict[str, str]:
    """The verdicts on what was there and on what shall be there."""
    later = new.replace("revision A 2026-03-02", "revision B 2026-06-02")
    return {
        f"{plan.mark} {'goes' if plan.after is None else 'comes'}": plan.verdict
        for plan in results_after(old, later).get(Rework).leads
    }


FIRST = UNITS + LEADS.format("300, 20", "mini-coax", "flat-angle", 380)


@pytest.mark.parametrize(
    ("now", "old"),
    [
        (("300, 20", "stage-coax", "flat-angle", 380), STORE),  # of another cable: it fits as it is
        (("300, 20", "mic-pair", "flat-angle", 380), BIN),  # one conductor where two are wanted
        (("500, 20", "mini-coax", "flat-angle", 600), BIN),  # too short for the only place on the board
    ],
)
def test_what_is_pulled(now: tuple[object, ...], old: str) -> None:
    assert became(FIRST, UNITS + LEADS.format(*now)) == {"A1 comes": REMAKE, "A1 goes": old}


WARTS = (
    "".join(
        f"supply {name} {{\n  plug-top C\n  outlet o1 9 V dc 600 mA connector barrel 5.5 x 2.1 mm isolated captive 1.8 m\n}}\n"
        for name in ("wart", "brick")
    )
    + "".join(
        f"unit {name} {{\n  inlet dc barrel 5.5 x 2.1 mm\n  needs 9 V dc\n  draws 20 mA\n}}\n"
        for name in ("dell", "fell", "glen")
    )
    + 'place {\n  wart, brick off board "in the strip"\n}\n'
)
STOCK = UNITS.partition("unit")[0]


def fed(*feeds: str) -> str:
    return STOCK + WARTS + "power {\n" + "".join(f"  {feed}\n" for feed in feeds) + "}\n"


def test_a_lead_that_grows_out_of_a_brick_is_never_made_anew_nor_plugged_into_another() -> None:
    """One of three on the wart's lead goes: the others stay on it. Where it hangs on the other brick then, that one's lead comes with it."""
    three, two = fed("dell, fell, glen from wart.o1 shared"), fed("dell, fell from wart.o1 shared")
    assert became(three, two) == {"D1a comes": KEEP, "D1b comes": KEEP, "D1c goes": STORE}
    other = fed("dell, fell from wart.o1 shared", "glen from brick.o1")
    assert became(three, other) == {"D1a comes": KEEP, "D1b comes": KEEP, "D1c goes": STORE, "D2 comes": NEW}
    told = {
        plan.mark: plan.why
        for plan in results_after(three, other.replace("A 2026-03-02", "B 2026-06-02")).get(Rework).leads
    }
    assert (told["D1c"], told["D2"]) == ("it hangs on wart.o1, tie it back", "it comes with brick")


def test_plugs_of_a_stage_lead_are_fitted_beforehand_and_it_is_measured() -> None:
    """Both plugs at 10 min (facts.rework); tests 3 and 4 of it."""
    amp = "amp combo {\n  double-insulated\n  input in ts\n}\nchain spit -> combo\n"
    lead = "leads {{\n  A2 spit.out -> combo.in {0} to {0} of stage-coax made 6 m\n}}\n"
    old, new = (FIRST + amp + lead.format(kind) for kind in ("straight", "flat-angle"))
    rework = results_after(old, new.replace("A 2026-03-02", "B 2026-06-02")).get(Rework)
    refits = [(step.phase, step.what, step.minutes) for step in rework.steps if step.action == "refit plug"]
    assert refits == [(BEFORE, ("A2",), 10.0), (BEFORE, ("A2",), 10.0)]  # one at each end
    assert {each.test for each in rework.retests if "A2" in each.points} == {3, 4}


def test_no_channel_is_set_on_what_goes() -> None:
    midi = "unit box {\n  midi out mo din\n}\nunit hum {\n  midi in mi din\n}\nunit knob {\n  midi in mi din\n}\nmidi {\n  master box\n"
    old = STOCK + midi + "  box.mo -> hum.mi\n  hum channel 2\n}\n"
    new = STOCK + midi + "  box.mo -> knob.mi\n  knob channel 2\n}\n"
    rework = results_after(old, new.replace("A 2026-03-02", "B 2026-06-02")).get(Rework)
    assert [(each.unit, each.after) for each in rework.channels] == [("knob", 2)]


DECKS = """unit knot {
  input in ts right 80 mm up 25 mm
  output out ts left 80 mm up 25 mm
  body 70 x 120 x 50 mm
}
unit spit like knot {
  body 70 x 120 x 50 mm
}
unit reef like knot {
  body 70 x 120 x 50 mm
}
deck board {
  size 600 x 300 mm
  thickness 10 mm
  drop 150 mm
}
deck shelf like board {
  size 600 x 300 mm
}
place on board {
  knot at 400, 20 mm
  spit at %s mm
}
place on shelf {
  reef at 20, 20 mm
}
chain knot -> spit -> reef
leads {
  audio cable mini-coax
  audio plug flat-angle
  A1 knot.out -> spit.in barrel-angle to flat-angle
  A2 spit.out -> reef.in made 1.6 m
}
join board to shelf by A2
"""


def test_no_lead_is_made_of_the_one_that_joins_two_decks() -> None:
    """A1 is too short for the new place of spit, and A2, cut and with another plug, would do: it has no way over a deck, and stays itself."""
    assert became(STOCK + DECKS % "290, 20", STOCK + DECKS % "20, 20") == {
        "A1 comes": REMAKE,
        "A2 comes": KEEP,
        "A1 goes": BIN,
    }


PANEL = """supply mill {
  mains 230 V within 10 %% 50 Hz
  outlet o1 9 V dc 100 mA isolated
  inlet mains %s
}
unit dell {
  inlet dc barrel 5.5 x 2.1 mm
  needs 9 V dc
  draws 20 mA
}
unit glow {
  mains 230 V within 10 %% 50 Hz
  inlet mains C14
  input in ts
  output out ts
}
deck board {
  size 600 x 300 mm
}
panel rear on board {
  inlet one C14 at 500, 290 mm
  inlet two C14 at 550, 290 mm
}
power {
  dell from mill.o1
}
"""
MAINS = "leads {\n  N1 rear.one -> mill.mains\n%s}\n"
GLOW = "amp combo {\n  double-insulated\n  input in ts\n}\nchain glow -> combo\n"


def mains_rework(old: str, new: str) -> Rework:
    rework: Rework = results_after(STOCK + old, STOCK.replace("A 2026-03-02", "B 2026-06-02") + new).get(Rework)
    return rework


def test_a_mains_lead_that_is_pulled_is_kept_and_what_it_was_plugged_into_is_tested() -> None:
    """It is a lead set as it was bought: nobody makes it anew for the way back."""
    old = PANEL % "C14" + GLOW
    gone = old[: old.index("unit glow")] + old[old.index("deck board") : old.index("amp combo")]
    rework = mains_rework(old + MAINS % "  N2 rear.two -> glow.mains\n", gone + MAINS % "")
    assert [(plan.mark, plan.verdict) for plan in rework.leads if plan.after is None and plan.mark == "N2"] == [
        ("N2", STORE)
    ]
    assert {(each.test, point) for each in rework.retests if each.test in (1, 2) for point in each.points} >= {
        (1, "rear.two"),
        (2, "rear.two"),
    }
    assert not [line for line in rework.spared if "mains" in line]


def test_a_mains_lead_does_not_go_into_another_inlet() -> None:
    rework = mains_rework(PANEL % "C14" + GLOW + MAINS % "", PANEL % "C8" + GLOW + MAINS % "")
    (plan,) = (plan for plan in rework.leads if plan.mark == "N1" and plan.after is not None)
    assert (plan.verdict, plan.why) == (REMAKE, "for another inlet")
    assert plan.after is not None and plan.after.inlets == ("C14", "C8")


def test_the_mains_lead_of_what_goes_is_pulled_though_no_lead_tells_of_it() -> None:
    old = PANEL % "C14" + GLOW
    gone = old[: old.index("unit glow")] + old[old.index("deck board") : old.index("amp combo")]
    rework = mains_rework(old, gone)
    assert [step.what for step in rework.steps if step.action == "pull out" and "mains" in step.what[0]] == [
        ("the mains lead of glow",)
    ]
    assert not [line for line in rework.spared if "mains" in line]


def test_a_mains_lead_is_compared_by_the_inlets_that_it_is_for() -> None:
    old, new = (STOCK + PANEL % kind + GLOW + MAINS % "" for kind in ("C14", "C8"))
    found = results_after(old, new.replace("A 2026-03-02", "B 2026-06-02")).get(Comparison)
    told = [(each.before, each.now) for thing in found.things for each in thing.differences if each.field == "plugs"]
    assert told == [("lead set for C14 and C14", "lead set for C14 and C8")]
