"""Where a ring is best broken, by its kind; a mains earth is never the place. Rigs are invented."""

from __future__ import annotations

from small_rigs import block, results_of, unit

from rigc.analysis.ground.ground_systems import GroundSystems
from rigc.analysis.ground.where_to_break import NOT_THE_EARTH, where_to_break
from rigc.analysis.leads.leads import Leads

GUITAR, COMBO = block("instrument", "guitar"), block("amp", "combo", "earthed", "input in ts")
SPLIT = unit("split", "output y ts") + unit("lant") + unit("mixer", "input b ts")
ROUND = (
    "chain guitar -> split\nchain dry: split.out -> mixer.in\nchain wet: split.y -> lant\nchain back: lant -> mixer.b\n"
)


def advice(text: str) -> list[str]:
    """What is said of each ring of the one state."""
    made = results_of(text)
    (state,) = made.get(GroundSystems).states
    return [where_to_break(made.rig, made.get(Leads), ring) for ring in state.rings]


def test_a_pair_is_left_alone() -> None:
    text = GUITAR + COMBO + unit("box", "output s ts", "input r ts", "loop 1 send s return r") + unit("marl")
    assert advice(text + "chain guitar -> box -> combo\nloop 1 of box holds marl\n") == [""]


def test_parallel_ways_of_sound_are_tied_together() -> None:
    assert advice(GUITAR + COMBO + SPLIT + ROUND + "chain out: mixer -> combo\n") == [
        "lay its leads side by side and tie them together"
    ]


def test_an_expression_lead_is_laid_beside_the_audio_leads() -> None:
    text = GUITAR + COMBO + unit("lever", "expression out out2 trs tip-wiper 10 kohm") + unit("marl")
    text += unit("lant", "expression in exp trs tip-wiper 10 kohm")
    text += "chain guitar -> lever -> marl -> lant -> combo\ncontrol {\n  lever.out2 -> lant.exp\n}\n"
    (said,) = advice(text)
    assert said == "lay C1 beside the audio leads of the ring and tie it to them"


def test_two_earths_are_broken_in_the_signal_only() -> None:
    text = GUITAR + COMBO + block("amp", "other", "earthed", "input in ts") + unit("split", "output y ts")
    (said,) = advice(text + "chain guitar -> split\nchain a: split.out -> combo\nchain b: split.y -> other\n")
    assert said.startswith("put a transformer isolator")
    assert said.endswith(NOT_THE_EARTH)


def test_a_usb_lead_gets_an_isolator() -> None:
    text = GUITAR + COMBO + unit("box", "usb port") + unit("hem") + unit("lant", "usb port")
    text += "chain guitar -> box -> hem -> lant -> combo\ncontrol {\n  box.port -> lant.port\n}\n"
    assert advice(text) == ["put a USB isolator into U1"]
