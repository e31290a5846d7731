"""What can't be meant, over all statements of the language: each is told at its place, with one thing to do, and what is told to be done
does it. Nothing is computed here: names and quantities alone say that it can't be."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from typing import Any

import pytest
from cases import READER, ROOT

from rigc.compile import Read, read_rig
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.mend import Mend
from rigc.edit.mended import mended
from rigc.files.disk import Disk

BOARD = ROOT / "tests/reach/board.rig"
LINES = BOARD.read_text("utf-8").splitlines()
NUMBER = re.compile(r'(?<![\w."-])-?\d+(?:\.\d+)?(?![\w.]|-\d)')
MEANT_TWICE = ("note", "reserve")
EITHER_SIGN = re.compile(r"\s*(level|gain|.* turned 0|.* through|.*test 5|[a-z]+ (under )?at)\b")
"""Lines of numbers that may be below nothing, or that what is computed judges."""

OTHERWISE = """
limit load 60 % source "this bench" | limit load 80 %
mains 230 V within 5 % 50..60 Hz | mains 120 V 60 Hz
country DE | country FR
selector tarn 230 V | selector tarn 115 V
lift ferry.di open | lift ferry.di closed
amps combo, front-desk | amps combo
transformer 100 V to 115 V 50 VA before tarn | transformer 100 V to 110 V 50 VA before tarn
measured 2026-02-14 by "Z.Z." | assumed
class touring | class home
marker 60 characters | marker 20 characters
client "player Z" | client "player Q"
show 90 min | show 60 min
tone 500 kohm 22 nF at 80 % | tone 250 kohm
inverts | non-inverting
analogue | digital
passive | digital
passive | bypass buffered
bypass true | bypass buffered
pair outl, outr | pair outr, outl
pair l, r | pair r, l
path inl -> thru straight | path inl -> thru buffer
battery "9 V block" 400 mAh | battery "9 V block" 400 mAh only
linear | switch-mode
core 50 Hz | core 60 Hz
earthed | double-insulated
carries dc | carries audio
colour RD | colour BU
poles 3 | poles 2
mates loop | mates itself
order box before shingle "less hiss" | order shingle before box
loop 1 of box holds marl | loop 1 of box empty
feedback lant "self-oscillates" | feedback lant "other"
mute slipway tails ring | mute slipway tails stop
bypass guitar -> combo "past the board" | bypass guitar -> combo "another way"
dry 60 % | dry 40 %
wet 40 % loop 1 inverted through groyne | wet 40 % loop 1 through groyne
on groyne | off groyne
program 3 on lant | program 4 on lant
floor 15 % on slipway | floor 20 % on slipway
tempo 96 bpm | tempo 97 bpm
tuning "half a step down" | tuning "all down"
set marl "gain" at 2 oclock | set marl "gain" at 3 oclock
master box | master lant
box.midi -> lant.midi crossover shield at both ends | box.midi -> lant.midi
lant channel 2 programs from 0 deliberate | lant channel 3
lever.out -> lant.exp crossover | lever.out -> lant.exp
marl from tarn.t1 reversed | marl from tarn.t1
spare 1 of mere | spare 2 of mere
size 900 x 480 mm | size 800 x 480 mm
tier back 300..480 mm raised 30 mm | tier back 300..480 mm raised 40 mm
hole 25 mm at 860, 440 mm "mains lead" | hole 20 mm at 860, 440 mm
bare metal | insulating
jack l ts insulated at 820, 470 mm up 20 mm | jack l ts insulated at 810, 470 mm up 20 mm
inside 940 x 520 x 260 mm | inside 900 x 520 x 260 mm
shingle at 420, 156 mm turned 0 deg | shingle under at 420, 156 mm
audio cable thin | audio cable stage
audio plug angle | audio plug three
audio cut | audio premade
tie A2 and A3 | tie A3 and A2
Y1 series for groyne | Y2 series for groyne
all with hook | all with wide
slipway, lever bolted | slipway screwed
tier back 300..480 mm raised 30 mm | tier rear 350..480 mm raised 10 mm
marl with hook | marl with wide
groyne bridged "plate 60 x 120 mm" | groyne bridged "plate 70 x 120 mm"
test 5 at mere.o5 expects 12.1 V | test 5 at mere.o5 expects 9.1 V
every 10 shows "clean the contacts" | every 20 shows "clean the contacts"
field-note 1 2026-02-20 "A2 chafed" by "Z.Z." folded | field-note 1 2026-02-20 "A2 chafed" by "Z.Z." open
accept too-heavy on reach "two of us carry it" by "Z.Z." until 2026-12-31 | accept too-heavy on reach "two" by "Z.Z." until 2026-11-30
"""
"""A line of the rig, and one that says otherwise beside it."""

INSTEAD = """
band 823..832 MHz allowed DE, FR | band 832..823 MHz allowed DE, FR
band 823..832 MHz allowed DE, FR | band 823..832 MHz allowed DE, DE
band 823..832 MHz allowed DE, FR | band 823..832 MHz allowed DE, ZZ
origin PL | origin ZZ
accepts 8.7..9.9 V | accepts 9.9..8.7 V
accepts 8.7..9.9 V | accepts 10..12 V
treadle 60..85 mm | treadle 85..60 mm
treadle 60..85 mm | treadle 60..60 mm
mains 100..240 V 50..60 Hz | mains 240..100 V 50..60 Hz
mains 100..240 V 50..60 Hz | mains 100..240 V 60..50 Hz
rail 0..60 mm tape 40 mm | rail 60..0 mm tape 40 mm
rail 0..60 mm tape 40 mm | rail 0..60 mm tape 80 mm
tier back 300..480 mm raised 30 mm | tier back 480..300 mm raised 30 mm
tier back 300..480 mm raised 30 mm | tier back 300..900 mm raised 30 mm
premade audio 150, 300, 600, 1200 mm price 5, 6, 7, 9 EUR | premade audio 150, 150, 600, 1200 mm price 5, 6, 7, 9 EUR
premade audio 150, 300, 600, 1200 mm price 5, 6, 7, 9 EUR | premade audio 150, 300, 600, 1200 mm price 5, 6 EUR
amps combo, front-desk | amps combo, front-desk, combo
slipway, lever bolted | slipway, lever, slipway bolted
lant, shingle may share | lant, shingle, lant may share
on groyne | on groyne, groyne
loops 1 of box | loops 1, 1 of box
others from mere | others from mere, mere
chain short for bay with lute: lute -> combo | chain short for bay, bay with lute: lute -> combo
strip jacket 15 mm screen 10 mm core 5 mm | strip jacket 5 mm screen 10 mm core 15 mm
strip jacket 15 mm screen 10 mm core 5 mm | strip jacket 15 mm screen 10 mm core 0 mm
lid 110 mm | lid 260 mm
tie A2 and A3 | tie A2 and A2
order box before shingle "less hiss" | order box before box
every 10 shows "clean the contacts" | every 0 shows "clean the contacts"
every 10 shows "clean the contacts" | every 10 shows ""
label "{id} {here} > {far}" | label ""
label "{id} {here} > {far}" | label "{nonsense}"
client "player Z" | client ""
drawn by "Z.Z." | drawn by "  "
serial "S-1" | serial ""
battery "9 V block" 400 mAh | battery "" 400 mAh
tuning "half a step down" | tuning ""
song "Weir" { | song "" {
unit marl "overdrive" { | unit marl "" {
measured 2026-02-14 by "Z.Z." | measured 2026-02-14 by ""
1 of "fuse T 630 mA" in "lid" | 1 of "fuse T 630 mA" in ""
knob "gain" at 20, 90 mm | knob "" at 20, 90 mm
revision A 2026-03-02 "first" | revision A 2026-03-02 ""
2 audio lead 900 mm in "lid" | 0 audio lead 900 mm in "lid"
2026-03-01 test 5 at mere.o5 reads 12.05 V by "Z.Z." | 1026-03-01 test 5 at mere.o5 reads 12.05 V by "Z.Z."
2026-03-01 test 5 at mere.o5 reads 12.05 V by "Z.Z." | 2026-03-01 test 5 at mere.o5 reads 12.05 ohm by "Z.Z."
revision A 2026-03-02 "first" | revision A 0001-01-01 "first"
revision A 2026-03-02 "first" | revision A 2026-02-30 "first"
accept too-heavy on reach "two of us carry it" by "Z.Z." until 2026-12-31 | accept too-heavy on reach "" by "" until 2026-12-31
accept too-heavy on reach "two of us carry it" by "Z.Z." until 2026-12-31 | accept too-heavy on reach "two" by "Z.Z." until 9999-12-31
set marl "gain" at 2 oclock | set marl "gain" at 13 oclock
program 3 on lant | program 999 on lant
lant channel 2 programs from 0 deliberate | lant channel 17
lant channel 2 programs from 0 deliberate | lant channel 2 programs from 5
box.midi -> lant.midi crossover shield at both ends | box.midi -> box.midi
dry 60 % | dry 110 %
angle 5 deg | angle -5 deg
angle 5 deg | angle 61 deg
keep-out 60 x 40 mm at 820, 20 mm "handle" | keep-out 60 x 40 mm at 870, 20 mm "handle"
reserve 60 x 60 mm at 150, 200 mm "next year" | reserve 60 x 60 mm at -150, 200 mm "next year"
battery-door 30 x 55 mm at 20, 40 mm | battery-door 30 x 55 mm at 250, 40 mm
knob "tone" at 60, 80 mm | knob "tone" at 360, 80 mm
knob "tone" at 60, 80 mm | knob "tone" at 0, 80 mm
switch at 20, 20 mm latching | switch at 20, 0 mm latching
output s1..s2 ts 1 kohm rear 50..90 mm up 30 mm insulated | output s1..s2 ts 1 kohm rear 50..50 mm up 30 mm insulated
output s1..s2 ts 1 kohm rear 50..90 mm up 30 mm insulated | output s2..s1 ts 1 kohm rear 50..90 mm up 30 mm insulated
output out ts 1 kohm left 80 mm up 25 mm insulated | output out ts 1 kohm left 80 mm up 250 mm insulated
output out ts 1 kohm left 80 mm up 25 mm insulated | output out ts 1 kohm left 0 mm up 25 mm insulated
output out ts 1 kohm left 80 mm up 25 mm insulated | output out ts 1 kohm left 80 mm up 0 mm insulated
inlet mains C8 left 30 mm up 20 mm | inlet mains C99 left 30 mm up 20 mm
inlet mains C14 at 870, 470 mm up 20 mm | inlet mains Z at 870, 470 mm up 20 mm
insured 640 EUR | insured 640 mm
mass 400 g | mass 40 kg
mass 20 g/m | mass 2 g/m
warm 1.5 W | warm 30 W
draws 8 mA | draws 8 mA +- 200 %
draws 8 mA | draws from 8 to 4 mA
draws 8 mA | draws 8 mA +- -5 %
draws 100 mA | draws 100 A
starts 150 mA measured 2026-03-01 by "Y.Y." | starts 1 mA measured 2026-03-01 by "Y.Y."
level out -20 dBu peak 4 dBu | level out 4 dBu peak -20 dBu
efficiency 80 % | efficiency 800 %
power factor 0.55 | power factor 5.5
power factor 0.55 | power factor 0
colour BU | colour ZZ
fits barrel 5.5 x 2.1 mm | fits barrel 2.1 x 5.5 mm
lasts 1000 cycles | lasts 0 cycles
roll 5 m | roll 5 mm
poles 2 | poles 0
conductors 2 | conductors 999
stands out 19 mm | stands out 0 mm
wide 16 mm | wide 0 mm
tall 16 mm | tall 0 mm
A1 heron.out -> box.in angle to angle of thin over slack 60 mm made 900 mm in "A" | A1 heron.out -> heron.out
lane audio 150 mm | lane audio 900 mm
spare 1 of mere | spare 0 of mere
groyne from mere.o3, mere.o4 series | groyne from mere.o3, mere.o3 series
groyne from mere.o3, mere.o4 series | groyne from mere.o3 series
lant from mere.o2 | lant from mere.o99
marker 60 characters | marker 0 characters
preset 1 "Plain" { | preset -1 "Plain" {
language 1 | language 0
output out ts 1 kohm rear 25 mm up 20 mm insulated | output out ts 1 kohm rear 25 mm up 20 mm insulated stereo
level out -20 dBu peak 4 dBu | level out max 4 dBu
level in max 11 dBu | level in 14 dBu peak 20 dBu max 11 dBu
insured 640 EUR | insured 640 XXX
price 590 EUR | price 590 eur
loop 1..2 send s1..s2 return r1..r2 | loop 1..2 send s1..s2 return r1..r3
loop 1..2 send s1..s2 return r1..r2 | loop 1..2 send s1..s2 return s1..s2
midi out midi mini-trs rear 200 mm up 20 mm type a | midi out midi din rear 200 mm up 20 mm type a
impedance in 500 kohm bypassed | impedance midi 500 kohm bypassed
expression out out trs tip-wiper 10 kohm linear rear 47 mm up 20 mm insulated | expression out out ts tip-wiper 10 kohm linear rear 47 mm up 20 mm insulated
outlet o1..o4 9 V dc 300 mA isolated front 20..110 mm up 20 mm | outlet o4..o1 9 V dc 300 mA isolated front 20..110 mm up 20 mm
outlet o5 9 V dc 300 mA or 12 V dc 250 mA isolated front 140 mm up 20 mm | outlet o5 9 V dc 300 mA or 9 V dc 250 mA isolated front 140 mm up 20 mm
lift ferry.di open | lift guitar.out open
conductor 24 awg stranded | conductor 24 mm2 stranded
fits barrel 5.5 x 2.1 mm | fits barrel 5.5 x 5.5 mm
leaves at 10 mm | leaves at 100 mm
premade dc 600, 900 mm price 6, 8 EUR mass 30, 40 g | premade dc 600, 900 mm price 8, 6 EUR mass 40, 30 g
bypass guitar -> combo "past the board" | bypass guitar -> guitar "past the board"
bypass guitar -> combo "past the board" | bypass mere -> combo "past the board"
wet 40 % loop 1 inverted through groyne | wet 40 % loop 1 inverted through groyne -> groyne
floor 15 % on slipway | floor 15 % on marl
set marl "gain" at 2 oclock | set marl "Gain" at 2 oclock
master box | master marl
box.midi -> lant.midi crossover shield at both ends | lant.midi -> box.midi
lever.out -> lant.exp crossover | lant.exp -> lever.out
heron from mere.o5 at 12 V | slipway from mere.o5
box alone | box may share
spare 1 of mere | spare 99 of mere
level r -20 dBu peak 4 dBu max 11 dBu | level mains -20 dBu
loop 1..2 send s1..s2 return r1..r2 | loop 1..2 send r1..r2 return s1..s2
body 105 x 95 x 40 mm | body 105 x 95 x 40 x 20 mm
vents rear | vents top
band 823..832 MHz allowed DE, FR | band 823..832 MHz allowed
drop 70, 154, 290, 390 mm | drop 70, 154, 290, 290 mm
heel 10 mm | heel 490 mm
feet 20 mm in | feet 300 mm in
A1 heron.out -> box.in angle to angle of thin over slack 60 mm made 900 mm in "A" | A1 heron.out -> box.in over through 70 mm
Y1 series for groyne | Y1 series for marl
audio plug angle | audio plug pin
1 of "fuse T 630 mA" in "lid" | marl in "lid"
"""
"""A line of the rig, and what stands in its place."""


def sampled(these: Sequence[Any], step: int) -> list[Any]:
    """One in so many every day, the others where there is time."""
    marks = [() if number % step == 1 else pytest.mark.long for number in range(len(these))]
    return [
        pytest.param(*(each if isinstance(each, tuple) else (each,)), marks=mark)
        for each, mark in zip(these, marks, strict=True)
    ]


def pairs(text: str) -> list[tuple[str, str]]:
    return [(old, new) for old, _, new in (line.partition(" | ") for line in text.strip().splitlines())]


def read(text: str) -> Read:
    disk = Disk(BOARD, root=ROOT, given=text.encode())
    return read_rig(disk, disk.name, READER)


@cache
def before() -> frozenset[tuple[str, str]]:
    return frozenset((each.kind.name, each.message) for each in read("\n".join(LINES)).findings)


def told(lines: list[str]) -> tuple[Read, list[Diagnostic]]:
    """The rig, and what is wrong with it and was not before."""
    made = read("\n".join(lines))
    return made, [each for each in made.findings if (each.kind.name, each.message) not in before()]


def with_line(number: int, *lines: str) -> list[str]:
    return [*LINES[:number], *lines, *LINES[number + 1 :]]


def line_of(begin: str) -> int:
    return next(number for number, line in enumerate(LINES) if line.strip().partition("  #")[0].startswith(begin))


def check(lines: list[str], near: range) -> None:
    """That it is told on one of these lines, with something to do; and that an edit which is told does it."""
    made, found = told(lines)
    here = [each for each in found if each.span is not None and each.span.line - 1 in near]
    assert here, "nothing is told in its place"
    for finding in here:
        assert finding.help or any(works(made, mend, len(found)) for mend in finding.mends), finding.message


def works(made: Read, mend: Mend, before: int) -> bool:
    """Whether less is wrong with it done."""
    texts = mended(mend, made.gathered.sources, lambda source: READER.parse(source).file)
    return len(told(texts[made.gathered.sources[0].name].split("\n"))[1]) < before


@pytest.mark.parametrize(("old", "new"), sampled(pairs(OTHERWISE), 5))
def test_what_is_said_again_otherwise_is_told(old: str, new: str) -> None:
    number = line_of(old)
    check(with_line(number, LINES[number], f"  {new}"), range(number, number + 2))


@pytest.mark.parametrize(("old", "new"), sampled(pairs(INSTEAD), 5))
def test_what_cannot_be_is_told(old: str, new: str) -> None:
    number = line_of(old)
    check(with_line(number, new), range(number, number + 1))


ALONE = """
loop 1..2 send s1..s2 return r1..r2 | loop 1..2 send s1..s2 return r1..r3
loop 1..2 send s1..s2 return r1..r2 | loop 1..2 send r1..r2 return s1..s2
outlet o1..o4 9 V dc 300 mA | outlet o4..o1 9 V dc 300 mA
output s1 ts 1 kohm rear 20 mm up 25 mm insulated | output ts 1 kohm rear 20 mm up 25 mm insulated
"""
"""A line of the rig, and one in its place that leaves others without their jacks."""


@pytest.mark.parametrize(("old", "new"), pairs(ALONE))
def test_one_mistake_is_told_once(old: str, new: str) -> None:
    number = line_of(old)
    found = told(with_line(number, LINES[number].replace(old, new)))[1]
    assert [each.span is not None and each.span.line - 1 for each in found] == [number]


STATED = [number for number, line in enumerate(LINES) if line.strip(" }") and not line.lstrip().startswith("#")]
AGAIN = [number for number in STATED if not LINES[number].endswith("{") and LINES[number].split()[0] not in MEANT_TWICE]


@pytest.mark.parametrize("number", sampled(AGAIN, 30))
def test_a_line_that_stands_twice_is_told(number: int) -> None:
    check(with_line(number, LINES[number], LINES[number]), range(number, number + 2))


@pytest.mark.parametrize("number", sampled(STATED, 50))
def test_no_number_is_taken_for_granted(number: int) -> None:
    line = LINES[number].partition("  #")[0]
    bare = re.sub(r'"[^"]*"|\d{4}-\d\d-\d\d', lambda found: "_" * len(found[0]), line)
    for found in NUMBER.finditer(bare):
        for other in ("lots", f"{found[0].lstrip('-')[:1]}9{'0' * 14}", f"-{found[0].lstrip('-')}"):
            if other.startswith("-") and EITHER_SIGN.match(line):
                continue
            changed = f"{line[: found.start()]}{other}{line[found.end() :]}"
            assert told(with_line(number, changed))[1], changed
