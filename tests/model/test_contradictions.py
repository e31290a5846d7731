"""Two facts of one thing that can't both be true: told just beyond, silent on the limit."""

from __future__ import annotations

import pytest
from cases import READER

from rigc.compile import compile_rig, read_rig
from rigc.source import Source

RIG = """language 1
rig sample {{
  revision A 2026-03-02
}}
unit tern {{
  input in ts
  output out ts
  inlet dc barrel 5.5 x 2.1 mm
  {lines}
}}
"""
PLUGGED = """{block}
mains-strip bar {{
  sockets 4
}}
power {{
  {name} plug into bar
}}"""
STRIPS = """mains-strip bar {{
  sockets 4
}}
mains-strip rod {{
  sockets 4
}}
mains-strip end {{
  sockets 4
}}
power {{
  {lines}
}}"""


@pytest.mark.parametrize(
    ("lines", "message"),
    [
        ("needs 12 V dc\n  accepts 8.7..9.9 V", "'tern' needs 12 V and accepts 8.7..9.9 V, which leaves that out"),
        ("needs 9.9 V dc\n  accepts 8.7..9.9 V", None),
        ("needs 8.7 V dc\n  accepts 8.7..9.9 V", None),
        ("needs 8.6 V dc\n  accepts 8.7..9.9 V", "'tern' needs 8.6 V and accepts 8.7..9.9 V, which leaves that out"),
        (
            "draws 22 mA\n  starts 21.9 mA",
            "'tern' starts with 21.9 mA and draws 22 mA: the current at switch-on is no less than that in use",
        ),
        ("draws 22 mA\n  starts 22 mA", None),
        ("level out 4 dBu peak -20 dBu", "a peak of -20 dBu is below the nominal level of 4 dBu"),
        ("level out 4 dBu peak 3.9 dBu", "a peak of 3.9 dBu is below the nominal level of 4 dBu"),
        ("level out 4 dBu peak 4 dBu", None),
        # 100 x 100 x 100 mm is one litre: 50 g to 8 kg
        ("body 100 x 100 x 100 mm\n  mass 50 g", None),
        (
            "body 100 x 100 x 100 mm\n  mass 49 g",
            "'tern' weighs 49 g and is 1 litres large: lighter than a body of rigid foam",
        ),
        ("body 100 x 100 x 100 mm\n  mass 8 kg", None),
        (
            "body 100 x 100 x 100 mm\n  mass 8.1 kg",
            "'tern' weighs 8.1 kg and is 1 litres large: heavier than a body of solid steel",
        ),
        # 10 V x 100 mA = 1 W
        ("accepts 8.7..10 V\n  draws 100 mA\n  warm 1 W", None),
        (
            "accepts 8.7..10 V\n  draws 100 mA\n  warm 1.01 W",
            "'tern' gives off 1.01 W and takes 100 mA at no more than 10 V, which is 1 W",
        ),
        # 10 V x (100 +- 10 % = 110 mA at most) = 1.1 W
        ("accepts 8.7..10 V\n  draws 100 mA +- 10 %\n  warm 1.1 W", None),
        ("output spk ts 8 ohm speaker\n  accepts 8.7..10 V\n  draws 100 mA\n  warm 20 W", None),
    ],
)
def test_what_contradicts_itself_is_told(lines: str, message: str | None) -> None:
    made = compile_rig(lambda name: Source(name, RIG.format(lines=lines)), "sample.rig", READER)
    told = [each.message for each in made.findings if each.kind.name == "wrong-quantity"]
    assert told == ([] if message is None else [message])


@pytest.mark.parametrize(
    ("block", "message"),
    [
        ("amp head {\n  earthed\n  inlet mains C14\n}", None),
        ("amp head {\n  double-insulated\n  inlet mains C8\n}", None),
        (
            "amp head {\n  earthed\n  inlet mains C8\n}",
            "'head' is earthed and has an inlet C8, which has no contact for earth",
        ),
        (
            "supply mill {\n  minus earthed\n  inlet mains C18\n}",
            "'mill' has its minus on earth and has an inlet C18, which has no contact for earth",
        ),
        (
            "source voice {\n  microphone\n  output out xlr\n  double-insulated\n}",
            "'voice' is a microphone and is double-insulated; a microphone has no mains",
        ),
        ("unit fen {\n  passive\n  input in ts\n  draws 8 mA\n}", "'fen' is passive, has no inlet and draws 8 mA"),
        (PLUGGED.format(block='supply bank {\n  battery "lithium pack" 37 Wh\n}', name="bank"), None),
        (
            PLUGGED.format(block='supply bank {\n  battery "lithium pack" 37 Wh only\n}', name="bank"),
            "'bank' gives from its battery only and takes no mains; it is not plugged into a mains strip",
        ),
        (
            PLUGGED.format(block="source voice {\n  microphone\n  output out xlr\n}", name="voice"),
            "'voice' is a microphone and takes no mains; it is not plugged into a mains strip",
        ),
        # 2 x 4 mm2 x 8.89 g/cm3 = 71.12 g a metre
        ("cable thick {\n  conductor 4 mm2\n  conductors 2\n  mass 71.2 g/m\n}", None),
        (
            "cable thick {\n  conductor 4 mm2\n  conductors 2\n  mass 71.1 g/m\n}",
            "a metre of 'thick' weighs 71.1 g/m, and 2 × 4 mm2 of copper alone 71.12 g",
        ),
        # π/4 x (4 mm)² x 8.89 g/cm3 = 111.7 g a metre
        ("cable thick {\n  outer 4 mm\n  mass 111.7 g/m\n}", None),
        (
            "cable thick {\n  outer 4 mm\n  mass 111.8 g/m\n}",
            "a metre of 'thick' weighs 111.8 g/m, and a bar of copper of 4 mm 111.7 g",
        ),
        ("source voice {\n  microphone\n  output out xlr balanced\n  phantom out needs 48 V\n}", None),
        ("source voice {\n  microphone\n  output out xlr\n  phantom out bears\n}", None),
        (
            "source voice {\n  microphone\n  output out xlr\n  phantom out needs 48 V\n}",
            "'out' needs phantom power, which comes along both conductors of a balanced jack, and is not said to be balanced",
        ),
        (STRIPS.format(lines="bar plug into rod"), None),
        (
            STRIPS.format(lines="bar plug into bar"),
            "'bar' into 'bar': a strip can't feed itself, and none of these comes to a socket in the wall",
        ),
        (
            STRIPS.format(lines="bar plug into rod\n  rod plug into end\n  end plug into bar"),
            "'end' into 'bar' into 'rod' into 'end': a strip can't feed itself, and none of these comes to a socket in the wall",
        ),
    ],
)
def test_what_another_block_contradicts_is_told(block: str, message: str | None) -> None:
    text = f"{RIG.format(lines='')}{block}\n"
    made = compile_rig(lambda name: Source(name, text), "sample.rig", READER)
    kinds = ("wrong-quantity", "said-twice", "misused-name")
    told = [each.message for each in made.findings if each.kind.name in kinds]
    assert told == ([] if message is None else [message])


def test_a_serial_number_is_of_one_thing_alone() -> None:
    text = RIG.format(lines='serial "S-1"') + "unit fen like tern {\n}\n"
    rig = read_rig(lambda name: Source(name, text), "sample.rig", READER).resolved.rig
    assert rig is not None
    assert rig.units["tern"].papers.serial is not None
    assert rig.units["fen"].papers.serial is None
