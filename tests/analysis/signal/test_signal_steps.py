"""The order in which a tech follows the sound, loops expanded. Rigs are invented."""

from __future__ import annotations

from cases import ROOT, results
from small_rigs import block, results_of, unit

from rigc.analysis.leads.leads import Leads
from rigc.analysis.signal.signal_steps import SignalSteps, Step

GUITAR, COMBO = block("instrument", "guitar"), block("amp", "combo", "input in ts")
BOX = unit("box", "output s1..s2 ts", "input r1..r2 ts", "loop 1..2 send s1..s2 return r1..r2")


def steps(text: str) -> list[tuple[Step, ...]]:
    return [chain.steps for chain in results_of(text).get(SignalSteps).chains]


def test_a_switcher_is_passed_once_for_its_input_and_once_for_each_return() -> None:
    text = GUITAR + COMBO + BOX + unit("marl") + unit("lant") + unit("hedge")
    text += "chain guitar -> box -> combo\nloop 2 of box holds hedge\nloop 1 of box holds marl -> lant\n"
    (chain,) = steps(text)
    assert [(step.loop, step.thing, step.ins, step.outs) for step in chain] == [
        ("", "guitar", (), ("out",)),
        ("", "box", ("in",), ("s1",)),
        ("loop 1", "marl", ("in",), ("out",)),
        ("loop 1", "lant", ("in",), ("out",)),
        ("loop 1", "box", ("r1",), ("s2",)),
        ("loop 2", "hedge", ("in",), ("out",)),
        ("loop 2", "box", ("r2",), ("out",)),
        ("", "combo", ("in",), ()),
    ]


def test_a_blender_goes_out_and_comes_back_for_each_wet_way() -> None:
    text = GUITAR + COMBO + BOX + unit("marl") + unit("lant") + "chain guitar -> box -> combo\n"
    text += block("blend", "box", "dry 50 %", "wet 25 % through marl", "wet 25 % through lant")
    (chain,) = steps(text)
    assert [(step.loop, step.thing) for step in chain] == [
        ("", "guitar"),
        ("", "box"),
        ("wet 1", "marl"),
        ("wet 1", "box"),
        ("wet 2", "lant"),
        ("wet 2", "box"),
        ("", "combo"),
    ]


def test_each_chain_takes_its_own_leads() -> None:
    text = block("scenario", "van") + block("scenario", "stage") + GUITAR + COMBO + unit("marl") + unit("lant")
    text += "chain for van: guitar -> marl -> combo\nchain for stage: guitar -> lant -> combo\n"
    assert [[step.leads for step in chain] for chain in steps(text)] == [[(), ("A1",), ("A2",)], [(), ("A3",), ("A4",)]]


def test_every_audio_lead_of_the_touring_rig_stands_in_one_step() -> None:
    made = results(ROOT / "examples/long-haul/board.rig")
    told = [lead for chain in made.get(SignalSteps).chains for step in chain.steps for lead in step.leads]
    expected = [lead.mark for lead in made.get(Leads).all if lead.signal == "audio"]
    assert sorted(told) == sorted([*expected, "wireless"])


def test_a_stereo_hop_has_two_leads() -> None:
    made = results(ROOT / "examples/long-haul/board.rig")
    step = next(step for step in made.get(SignalSteps).chains[0].steps if step.thing == "lantxl")
    assert (step.ins, step.outs, step.leads) == (("inl", "inr"), ("outl", "outr"), ("A21", "A22"))


def test_a_branch_off_a_switcher_does_not_pass_its_loops_again() -> None:
    box = BOX.replace("output out ts", "output out ts\n  output tun ts")
    text = GUITAR + COMBO + box + unit("marl") + unit("plumb") + "loop 1 of box holds marl\n"
    text += "chain guitar -> box.in\nchain box.tun -> plumb\nchain box.out -> combo\n"
    assert [[step.thing for step in chain] for chain in steps(text)] == [
        ["guitar", "box", "marl", "box"],
        ["box", "plumb"],
        ["box", "combo"],
    ]


def test_a_loop_that_a_blend_goes_through_is_passed_once() -> None:
    both = (
        GUITAR
        + unit("mixer", "output s ts", "input r ts", "loop 1 send s return r parallel")
        + unit("hum")
        + COMBO
        + "chain guitar -> mixer -> combo\nloop 1 of mixer holds hum\n"
        + block("blend", "mixer", "dry 50 %", "wet 50 % loop 1 through hum")
    )
    (found,) = steps(both)
    assert [(step.thing, step.loop, step.ins, step.outs) for step in found] == [
        ("guitar", "", (), ("out",)),
        ("mixer", "", ("in",), ("s",)),
        ("hum", "wet 1", ("in",), ("out",)),
        ("mixer", "wet 1", ("r",), ("out",)),
        ("combo", "", ("in",), ()),
    ]


def test_a_jack_that_a_stereo_hop_names_stands_for_its_pair() -> None:
    """Both leads of each hop are told, whichever of the pair is named; a mono hop has the one that it names."""
    both = "output outl ts", "output outr ts", "pair outl, outr", "input inl ts", "input inr ts", "pair inl, inr"
    text = block("unit", "lant", *both) + block("unit", "hum", *both, "input side ts") + block("desk", "foh", *both[3:])
    text += "chain lant.outl => hum.inr\nchain hum.outr => foh\nchain lone: lant.outr -> hum.side\n"
    assert [[(step.thing, step.ins, step.outs) for step in chain] for chain in steps(text)] == [
        [("lant", (), ("outl", "outr")), ("hum", ("inl", "inr"), ())],
        [("hum", (), ("outl", "outr")), ("foh", ("inl", "inr"), ())],
        [("lant", (), ("outr",)), ("hum", ("side",), ())],
    ]
