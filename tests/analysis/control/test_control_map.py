"""The control map of the touring board (worked by hand) and of small chains; the bytes as `mido`, an independent reader, reads them."""

from __future__ import annotations

import mido
import pytest
from cases import ROOT, results
from hypothesis import given
from hypothesis import strategies as some
from small_rigs import block, results_of, unit
from written import changed

from rigc.analysis.control.control_map import ControlMap
from rigc.analysis.control.midi_channel import free_channels, in_runs, shared_channels
from rigc.analysis.control.program_change import ProgramChange, exists, preset_time, program_change
from rigc.facts.midi import BYTE_US
from rigc.model.wishes import Channel
from rigc.source import Source, Span
from rigc.traced.term import known

TOURING = "examples/long-haul/board.rig"
NOWHERE = Span(Source("nowhere.rig", ""), 0, 0)


def change(channel: int, shown: int, first: int = 0) -> ProgramChange:
    return program_change(1, "lant", shown, Channel("lant", channel, first, False, NOWHERE), NOWHERE)


def wire_ms(*changes: ProgramChange) -> float | None:
    return preset_time(1, changes)


def test_the_touring_board() -> None:
    """One thru stage to each of three units, by the splitter; bought, 600 + 600, 600 + 600, 600 + 900 mm."""
    control = results(ROOT / TOURING).get(ControlMap)
    found = {
        way.unit: (
            way.source,
            [link.lead for link in way.links],
            list(map(str, way.thrus)),
            round(known(way.leads) or 0),
        )
        for way in control.ways
    }
    assert found == {
        "fan4": ("signalbox", ["M01"], [], 6000),
        "weathervane": ("signalbox", ["M01", "M02"], ["fan4.t1"], 12000),
        "lantxl": ("signalbox", ["M01", "M03"], ["fan4.t2"], 12000),
        "rotundaxl": ("signalbox", ["M01", "M04"], ["fan4.t3"], 15000),
    }
    assert control.rings == ()


def test_a_preset_change_of_the_touring_board() -> None:
    """Three program changes = 6 bytes x 0.32 ms = 1.92 ms; rotundaxl counts from 1, so its 6 is sent as 5."""
    control = results(ROOT / TOURING).get(ControlMap)
    assert {number: round(time, 6) for number, time in control.times.items()} == dict.fromkeys((1, 2, 3, 4), 1.92)
    assert [each.hexadecimal for each in control.programs[3]] == ["C0 02", "C1 04", "C2 05"]


def test_planted_mistake_of_the_touring_board() -> None:
    """lantxl and rotundaxl both on channel 3: free are 2 and 4 to 16."""
    made = results(ROOT / "tests" / "rigs" / "long-haul-as-ordered.rig")
    shared = shared_channels(made.rig, made.get(ControlMap))
    assert [[channel.unit for channel in group] for group in shared] == [["lantxl", "rotundaxl"]]
    assert in_runs(free_channels(made.rig)) == "2, 4…16"
    right = results(ROOT / TOURING)
    assert shared_channels(right.rig, right.get(ControlMap)) == ()


def test_the_byte_time() -> None:
    """Ten bits at 31.25 kBd (MIDI 1.0, IEC 63035:2017 cl. 4.1)."""
    assert BYTE_US.value == pytest.approx(10 / 31_250 * 1e6)


@pytest.mark.parametrize(("program", "channel", "text"), [(0, 1, "C0 00"), (127, 16, "CF 7F"), (5, 10, "C9 05")])
def test_bytes_as_text(program: int, channel: int, text: str) -> None:
    """Example bytes of MIDI 1.0, confirmed with mido."""
    assert change(channel, program).hexadecimal == text
    assert mido.Message("program_change", channel=channel - 1, program=program).hex() == text


@given(channel=some.integers(1, 16), first=some.integers(0, 1), sent=some.integers(0, 127))
def test_mido_reads_what_is_sent(channel: int, first: int, sent: int) -> None:
    """Every channel and program: mido reads the bytes as that program on that channel (which it counts from 0)."""
    read = mido.Message.from_bytes(list(change(channel, sent + first, first).octets))
    assert (read.type, read.channel, read.program) == ("program_change", channel - 1, sent)


@pytest.mark.parametrize("shown", [-1, 0, 1, 64, 127, 128, 129])
@pytest.mark.parametrize("first", [0, 1])
def test_which_programs_exist(shown: int, first: int) -> None:
    """A program exists if mido takes its number: it rejects what is not 0 to 127."""
    try:
        mido.Message("program_change", program=shown - first)
        taken = True
    except ValueError:
        taken = False
    assert exists(shown, first) is taken


@pytest.mark.parametrize(
    ("shown", "known"), [(-1, False), (0, None), (1, True), (127, True), (128, None), (129, False)]
)
def test_programs_of_a_unit_that_counts_nobody_knows_from_where(shown: int, known: bool | None) -> None:
    assert exists(shown, None) is known
    assert {exists(shown, 0), exists(shown, 1)} == ({True, False} if known is None else {known})


def test_channels_are_those_that_mido_takes() -> None:
    """1 to 16 on paper, 0 to 15 on the wire: mido takes the highest and rejects the next."""
    highest = free_channels(results_of("").rig)[-1]
    mido.Message("program_change", channel=highest - 1)
    with pytest.raises(ValueError, match="channel"):
        mido.Message("program_change", channel=highest)


def test_offset_not_stated() -> None:
    """Without `programs from` the number on the wire is not known, and no byte is made up."""
    made = changed(TOURING, ("lantxl channel 2 programs from 0", "lantxl channel 2"))
    first, second, third = made.get(ControlMap).programs[1]
    assert (second.unit, second.sent, second.octets, second.hexadecimal) == ("lantxl", None, (), "")
    assert first.octets and third.octets
    # Two of three messages are known: 2 x 0.64 = 1.28 ms, and the third is named.
    time = made.get(ControlMap).times[1]
    assert time.formula() == "0.64 + 0.64 = 1.28, without the number from which lantxl counts"


def test_what_is_sent_to_two_units_at_once_is_sent_once() -> None:
    """Two units on one channel with one program: one message, 0.64 ms; with two programs: two."""
    assert wire_ms(change(3, 5), change(3, 6, first=1)) == pytest.approx(0.64)
    assert wire_ms(change(3, 5), change(3, 6)) == pytest.approx(1.28)


DAISY = (
    unit("lant", "midi in midi din", "midi thru thru din")
    + unit("hum", "midi in midi din", "midi thru thru din")
    + unit("mere", "midi in midi din", "midi out answer din")
    + unit("fen", "midi in midi din")
    + block("unit", "box", "midi out midi din")
)


def test_stages_of_a_daisy() -> None:
    """Each thru passed is a stage; an out sends afresh, so the chain begins again behind `mere`."""
    links = ("box.midi -> lant.midi", "lant.thru -> hum.midi", "hum.thru -> mere.midi", "mere.answer -> fen.midi")
    control = results_of(DAISY + "midi {\n" + "\n".join(links) + "\n}\n").get(ControlMap)
    assert [(way.unit, way.source, len(way.thrus)) for way in control.ways] == [
        ("lant", "box", 0),
        ("hum", "box", 1),
        ("mere", "box", 2),
        ("fen", "mere", 0),
    ]
    assert all(known(way.leads) is None for way in control.ways)
    assert control.heard("mere") == {"box"}


def test_a_ring_ends_the_search() -> None:
    """A ring of thru jacks is found once, from its first link, and is no way from any sender."""
    links = ("lant.thru -> hum.midi", "hum.thru -> lant.midi", "box.midi -> mere.midi")
    control = results_of(DAISY + "midi {\n" + "\n".join(links) + "\n}\n").get(ControlMap)
    assert [[link.start.thing for link in ring] for ring in control.rings] == [["lant", "hum"]]
    assert [way.unit for way in control.ways] == ["mere"]


@pytest.mark.parametrize(
    ("numbers", "text"),
    [
        ((), ""),
        ((7,), "7"),
        ((1, 2), "1, 2"),
        ((1, 2, 3), "1…3"),
        ((2, *range(4, 17)), "2, 4…16"),
        ((1, 3, 5), "1, 3, 5"),
    ],
)
def test_runs(numbers: tuple[int, ...], text: str) -> None:
    assert in_runs(numbers) == text
