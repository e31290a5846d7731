"""A unit exchanged for another in the statements of a rig: jacks by role, what falls away, what is refused. Rigs are invented."""

from __future__ import annotations

import pytest
from cases import READER
from small_rigs import HEAD, block, unit

from rigc.gather import gather
from rigc.model.resolve import resolve
from rigc.model.resolve.exchange.exchange import Exchange, exchanged
from rigc.model.rig import Rig
from rigc.source import Source, Span

PLAYED = "instrument guitar {\n}\namp combo {\n  input in ts\n}\n"
STEREO = ("input inl ts", "input inr ts", "output outl ts", "output outr ts", "pair inl, inr", "pair outl, outr")


def changed(text: str, out: str = "old", into: str = "new") -> tuple[Exchange, Rig]:
    """The exchange in a rig of this text, and the rig that it gives, which must hold together."""
    gathered = gather(lambda name: Source(name, HEAD + text), "sample.rig", READER)
    assert not gathered.findings, [each.message for each in gathered.findings]
    end = Span(gathered.sources[0], 0, 0)
    exchange = exchanged(gathered.statements, out, into, READER.reserved, end)
    rig, told = resolve(exchange.statements, READER.reserved, end)
    assert rig is not None
    assert not told, [each.message for each in told]
    return exchange, rig


def joined(rig: Rig) -> list[str]:
    return [f"{each.start} {each.end}" for each in rig.connections]


def test_same_jacks() -> None:
    """Chain, place, mounting, hints, intents, presets and lead follow; what was measured and accepted stays with the old unit."""
    text = unit("old", "inlet dc barrel 5.5 x 2.1 mm") + unit("new", "inlet dc barrel 5.5 x 2.1 mm") + PLAYED
    text += block("supply", "brick", "outlet o1 9 V dc 100 mA isolated")
    text += 'chain guitar -> old -> combo\nmute old tails ring\nbypass guitar -> combo "round it"\n'
    text += 'preset 1 {\n  on old\n}\nsong "One" {\n  preset 1\n  set old "gain" at 2 oclock\n}\n'
    text += "power {\n  old from brick.o1\n  old alone\n}\nplace {\n  old at 10, 20 mm\n}\n"
    text += "mounting {\n  old bolted\n}\nleads {\n  A1 guitar.out -> old.in\n  D1 brick.o1 -> old.dc\n}\n"
    text += 'tests {\n  test 5 at old.dc expects 9 V\n  2026-03-01 test 5 at old.dc reads 9.1 V by "R.K."\n}\n'
    exchange, rig = changed(text)
    assert (exchange.refused, exchange.lines) == ("", ())
    assert joined(rig)[:2] == ["guitar.out new.in", "new.out combo.in"]
    assert [intent.unit for intent in rig.intents] == ["new"]
    assert [name for name, _ in rig.presets[1].on] == ["new"]
    assert rig.songs[0].settings == (("new", "gain", 2),)
    assert (rig.power.feeds[0].units, rig.power.alone) == (("new",), ("new",))
    assert (rig.places["new"].x_mm, rig.places["new"].y_mm) == (10, 20)  # the front-left corner stays
    assert rig.mounting.fixing_of("new") == "bolted"
    assert [str(lead.end) for lead in rig.lead_wishes.leads] == ["new.in", "new.dc"]
    assert rig.expected[0].point == "new.dc"
    assert rig.readings[0].point == "old.dc"
    assert "old" not in rig.places


def test_jacks_by_role_and_order() -> None:
    """A stereo pair by its sides, whatever the order of declaration; MIDI and expression by what they are for."""
    old = block("unit", "old", *STEREO, "midi in midi mini-trs", "expression in exp trs tip-wiper 10 kohm")
    new = block(
        "unit", "new", "expression in treadle trs tip-wiper 10 kohm", "midi in five din", "output right ts", "output left ts",
        "input b ts", "input a ts", "pair a, b", "pair left, right",
    )  # fmt: skip
    text = (
        old
        + new
        + PLAYED
        + block("unit", "wide", *STEREO)
        + block("unit", "foot", "expression out out trs tip-wiper 10 kohm")
    )
    text += block("unit", "head", "midi out out din")
    text += "chain guitar -> old => wide\nmidi {\n  master head\n  head.out -> old\n  old channel 2\n}\n"
    text += "control {\n  foot.out -> old.exp\n}\n"
    exchange, rig = changed(text)
    assert exchange.jacks == {
        "inl": "a", "inr": "b", "outl": "left", "outr": "right", "midi": "five", "exp": "treadle",
    }  # fmt: skip
    assert exchange.lines == ()
    assert joined(rig) == [
        "guitar.out new.a", "new.left wide.inl", "new.right wide.inr", "head.out new.five", "foot.out new.treadle",
    ]  # fmt: skip
    assert rig.channels[0].unit == "new"


def test_mono_for_stereo() -> None:
    text = (
        block("unit", "old", *STEREO)
        + unit("new")
        + block("unit", "wide", *STEREO)
        + block("unit", "far", *STEREO)
        + PLAYED
    )
    text += "chain guitar -> wide => old => far\nleads {\n  A2 wide.outl -> old.inl\n  A3 wide.outr -> old.inr\n}\n"
    exchange, rig = changed(text)
    assert joined(rig) == ["guitar.out wide.inl", "wide.outl new.in", "new.out far.inl"]
    assert [lead.mark for lead in rig.lead_wishes.leads] == ["A2"]
    assert exchange.lines == (
        "wide => old: 'new' has no pair of inputs; mono from here on",
        "old => far: 'new' has no pair of outputs; mono from here on",
        "A3 wide.outr -> old.inr: 'new' has no audio input for 'old.inr'",
    )


def test_loops_blends_and_presets_of_a_switcher() -> None:
    """Loops go by their numbers; the third has no counterpart."""
    old = unit("old", "output s1..s3 ts", "input r1..r3 ts", "loop 1..3 send s1..s3 return r1..r3")
    crossed = ("loop 1 send s2 return r2", "loop 2 send s1 return r1")
    new = unit("new", "output s1..s2 ts", "input r1..r2 ts", *crossed)
    text = old + new + unit("one") + unit("two") + unit("three") + PLAYED + "chain guitar -> old -> combo\n"
    text += "loop 1 of old holds one\nloop 2 of old holds two\nloop 3 of old holds three\n"
    text += "preset 1 {\n  loops 1, 3 of old\n}\npreset 2 {\n  loops 3 of old\n}\n"
    exchange, rig = changed(text)
    assert "new.s2 one.in" in joined(rig) and "two.out new.r1" in joined(rig)
    assert [(number, [loop[1] for loop in preset.loops]) for number, preset in rig.presets.items()] == [
        (1, [1]),
        (2, []),
    ]
    assert exchange.lines == (
        "loop 3 of old holds three: 'new' has no loop 3",
        "preset 1: loops 1, 3 of old: 'new' has no loop 3",
        "preset 2: loops 3 of old: 'new' has no loop 3",
    )


def test_a_jack_is_named_where_the_substitute_leaves_it_open() -> None:
    """The old unit is entered by its only input; the new one has two that could be meant."""
    text = unit("old") + block("unit", "new", "input first ts", "input second ts", "output out ts") + PLAYED
    _, rig = changed(text + "chain guitar -> old -> combo\n")
    assert joined(rig) == ["guitar.out new.first", "new.out combo.in"]


def test_a_thing_of_another_family_may_bear_the_name() -> None:
    text = unit("old") + unit("new") + PLAYED + "cable old {\n  carries audio\n}\nchain guitar -> old -> combo\n"
    _, rig = changed(text + "leads {\n  audio cable old\n}\n")
    assert dict(rig.lead_wishes.cables) == {"audio": "old"}


def test_a_spare_that_travels_is_free_and_then_on_the_board() -> None:
    text = unit("old") + unit("new") + PLAYED + 'chain guitar -> old -> combo\nspares {\n  new in "lid"\n}\n'
    exchange, rig = changed(text)
    assert (exchange.refused, exchange.lines) == ("", ("new in \"lid\": 'new' is on the board now",))
    assert joined(rig) == ["guitar.out new.in", "new.out combo.in"]
    assert rig.spares == ()


def test_no_power() -> None:
    text = (
        unit("old", "inlet dc barrel 5.5 x 2.1 mm")
        + unit("new")
        + unit("other", "inlet dc barrel 5.5 x 2.1 mm")
        + PLAYED
    )
    text += block("supply", "brick", "outlet o1 9 V dc 100 mA isolated")
    exchange, rig = changed(
        text + "chain guitar -> old -> other -> combo\npower {\n  old, other from brick.o1 shared\n}\n"
    )
    assert rig.power.feeds[0].units == ("other",)
    assert exchange.lines == ("old, other from brick.o1 shared: 'new' takes no power; tie that lead back",)


@pytest.mark.parametrize(
    ("out", "into", "said"),
    [
        ("old", "old", "'old' can't stand in for itself"),
        ("gone", "new", "nothing declares 'gone'"),
        ("old", "gone", "nothing declares 'gone'"),
        ("guitar", "new", "'guitar' is an instrument, no unit"),
        ("old", "combo", "'old' is a unit, 'combo' is an amp"),
        ("new", "old", "'new' is declared, but nothing of this rig uses it"),
        ("old", "busy", "'busy' is in use already: chain guitar -> old -> busy -> combo"),
    ],
)
def test_refused(out: str, into: str, said: str) -> None:
    text = unit("old") + unit("new") + unit("busy") + PLAYED + "chain guitar -> old -> busy -> combo  # the chain\n"
    exchange, _ = changed(text, out, into)
    assert exchange.refused == said
    assert exchange.lines == ()
