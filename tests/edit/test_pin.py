"""Pinning: what was chosen becomes statements, nothing else moves, no number and no finding changes, twice is once."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
from cases import READER, ROOT
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from rigc.analysis.deck.placement import Placement
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.lengths.cable_routes import CableRoutes
from rigc.compile import Compiled, compile_rig
from rigc.edit.cannot_pin import CannotPin
from rigc.edit.pin import KINDS, pinned
from rigc.files.disk import Disk

some = settings(max_examples=5, deadline=None, database=None, derandomize=True, suppress_health_check=list(HealthCheck))
EFFORT = 3000  # steps of the search for places: enough that everything finds one
BEDROOM = ROOT / "examples" / "back-bedroom" / "board.rig"
HAUL = ROOT / "examples" / "long-haul" / "board.rig"
LEAD = re.compile(r"  ([A-Z]\d+[a-z]?) (\S+) -> (\S+)( \S+ to \S+)?( .*)?")


def compiled(board: Path, text: str) -> Compiled:
    """A rig whose file holds that text."""
    disk = Disk(board, root=ROOT, given=text.encode())
    made = compile_rig(disk, disk.name, READER, effort=EFFORT)
    assert made.results is not None, [finding.message for finding in made.findings]
    return made


def pin(made: Compiled, kinds: tuple[str, ...] = KINDS) -> str:
    """The text of the named file with its chosen values."""
    assert made.results is not None
    return pinned(READER.parse(made.sources[0]).file, made.results, kinds)


def numbers(made: Compiled) -> list[Any]:
    """All that is computed of places, outlets and leads, but for what says that a thing was stated."""
    assert made.results is not None
    get = made.results.get
    leads = [
        (each.mark, each.signal, each.start, each.end, each.stage, each.ends, each.cable, each.leg_of)
        for each in get(Leads).all
    ]
    taps = sorted((name, each.outlets, each.volts, each.how) for name, each in get(PowerAssignment).taps.items())
    outlines, loads = get(Placement).outlines, get(PowerAssignment).loads
    routes = {mark: route.replace(chosen=False) for mark, route in get(CableRoutes).routes.items()}
    lengths = [
        (mark, each.way, each.slack, each.shortest, each.longest, each.made, each.cutting, each.bought, each.lies)
        for mark, each in get(CableLengths).lengths.items()
    ]
    return [leads, taps, loads, outlines, lengths, routes]


def findings(made: Compiled) -> list[tuple[str, str, int]]:
    """The findings without their places, in any order."""
    return sorted((each.kind.name, each.message, each.level) for each in made.findings)


def holds(board: Path, text: str, kinds: tuple[str, ...] = KINDS) -> str:
    """The pinned text, after all promises."""
    before = compiled(board, text)
    made = pin(before, kinds)
    after = compiled(board, made)
    assert numbers(after) == numbers(before)
    assert findings(after) == findings(before)
    assert pin(after, kinds) == made
    old = iter(made.splitlines())
    for line in text.splitlines():
        assert any(new.startswith(line) or (LEAD.fullmatch(line) and _is_of(new, line)) for new in old), line
    return made


def _is_of(new: str, old: str) -> bool:
    """Whether a lead's line is the old one, perhaps with plugs."""
    found, before = LEAD.fullmatch(new), LEAD.fullmatch(old)
    return found is not None and before is not None and found.group(1, 2, 3, 5) == before.group(1, 2, 3, 5)


def opened(text: str, lines: set[int], plugs: set[int], feeds: bool, supplies: str) -> str:
    """The text with some leads (counted from 0) unstated, some without their plugs, and the outlets left open."""
    count = -1
    kept = []
    for line in text.splitlines():
        found = LEAD.fullmatch(line)
        if found is None:
            kept.append(line)
            continue
        count += 1
        if count in lines or (feeds and line.startswith("  D")):
            continue
        kept.append(f"  {found[1]} {found[2]} -> {found[3]}{found[5] or ''}" if count in plugs else line)
    whole = "\n".join(kept) + "\n"
    if feeds:
        whole = re.sub(r"\npower \{\n.*?\n\}\n", f"\npower {{\n  others from {supplies}\n}}\n", whole, flags=re.DOTALL)
    return whole


@pytest.mark.parametrize(("board", "supplies"), [(BEDROOM, "mill5"), (HAUL, "mill8, weir8")], ids=["bedroom", "haul"])
def test_examples_left_open(board: Path, supplies: str) -> None:
    """Any of their leads, plugs and outlets."""
    text = board.read_text("utf-8")

    @some
    @given(st.sets(st.integers(0, 50)), st.sets(st.integers(0, 50)), st.booleans())
    def one(lines: set[int], plugs: set[int], feeds: bool) -> None:
        holds(board, opened(text, lines, plugs, feeds, supplies))

    one()


@pytest.mark.parametrize("board", [BEDROOM, HAUL], ids=["bedroom", "haul"])
def test_what_is_stated_already(board: Path) -> None:
    """Examples state all: nothing changes."""
    text = board.read_text("utf-8")
    assert pin(compiled(board, text)) == text


def test_everything_is_chosen() -> None:
    """Places, outlets, leads: statements at the ends of the blocks, or in new blocks at the end."""
    text = opened(BEDROOM.read_text("utf-8"), set(range(50)), set(), True, "mill5")
    text = re.sub(r"\nplace \{\n.*?\n\}\n", "\n", text, flags=re.DOTALL)
    made = holds(BEDROOM, text)
    assert re.search(r"\n\nplace \{\n(  [a-z0-9]+( under)? at [\d.]+, [\d.]+ mm( turned \d+ deg)?\n){7}\}\n$", made)
    power = re.search(r"\npower \{\n  others from mill5\n((  .*\n)+)\}\n", made)
    assert power is not None
    fed = re.findall(r"[a-z]+(?=.* from mill5\.o[1-5])", " ".join(re.findall(r".* from mill5\.o[1-5]", power[1])))
    assert {"plumb", "hedge", "marl", "millpond", "lant", "rotunda"} <= set(fed)
    with pytest.raises(CannotPin):
        pin(compiled(BEDROOM, text), ("outlets",))


@pytest.mark.parametrize(
    ("power", "line"),
    [
        (
            "marl from mill5.o1\n  plumb from mill5.o2\n  lant from mill5.o4\n  rotunda from mill5.o5\n  marl, millpond may share",
            "marl, millpond from mill5.o1 shared",
        ),
        ('reserve 9 V dc 50 mA "later"\n  plumb, marl, millpond may share', "plumb, marl, millpond from mill5.o"),
        ("spare 1 of mill5\n  plumb, marl, millpond may share", "plumb, marl, millpond from mill5.o"),
    ],
    ids=["joins-a-stated-feed", "reserved", "spare"],
)
def test_shared_outlets(power: str, line: str) -> None:
    """Units that share stand in one statement; what is kept free stays free."""
    text = opened(BEDROOM.read_text("utf-8"), set(), set(), True, "mill5")
    text = text.replace("  others from mill5\n", f"  {power}\n  others from mill5\n")
    before = compiled(BEDROOM, text)
    made = pin(before)
    after = compiled(BEDROOM, made)
    assert line in made
    assert numbers(after)[1:] == numbers(before)[1:]
    assert findings(after) == findings(before)
    assert pin(after) == made


def test_a_squeeze_is_told_as_one_finding_before_and_after() -> None:
    """Two digital units want the one outlet of 250 mA: that no choice could avoid it holds for stated feeds, too."""
    case = ROOT / "tests" / "analysis" / "checks" / "cases" / "nearly-full-outlet" / "two-want-one-strong-outlet.rig"
    made = holds(case, case.read_text("utf-8"), ("outlets",))
    assert made.count(" from mill.o") == 3
    assert [code for code, _, _ in findings(compiled(case, made))].count("nearly-full-outlet") == 1


def test_outlets_are_not_pinned_while_there_are_too_few() -> None:
    """What is stated is no rival any more: the finding about the rest would say otherwise."""
    text = opened(BEDROOM.read_text("utf-8"), set(), set(), True, "mill5")
    text = text.replace("  others from mill5\n", "  spare 2 of mill5\n  others from mill5\n")
    with pytest.raises(CannotPin, match="there are not outlets for all of"):
        pin(compiled(BEDROOM, text))


def test_places_are_not_pinned_while_something_has_none() -> None:
    """What has no room would be tried again among the pinned ones, and might find some: numbers would change."""
    text = re.sub(r"\nplace \{\n.*?\n\}\n", "\n", BEDROOM.read_text("utf-8"), flags=re.DOTALL)
    text = text.replace("body 46 x 94 x 50 mm", "body 600 x 94 x 50 mm")
    with pytest.raises(CannotPin, match="no room yet for 'plumb'"):
        pin(compiled(BEDROOM, text))


@pytest.mark.parametrize("kinds", [("outlets",), ("leads",), ("plugs",), ("outlets", "leads")], ids="-".join)
def test_only_some_kinds(kinds: tuple[str, ...]) -> None:
    """Numbers do not change either; outlets alone leave the leads unstated, leads alone those of chosen outlets."""
    text = opened(BEDROOM.read_text("utf-8"), {3, 4}, {2}, True, "mill5")
    made = holds(BEDROOM, text, kinds)
    added = [line for line in made.splitlines() if line not in text.splitlines()]
    assert any(" from mill5.o" in line for line in added) == ("outlets" in kinds)
    assert any(line.startswith("  D") for line in added) == (kinds == ("outlets", "leads"))
    assert any(" to " in line for line in added) == ("plugs" in kinds)


def test_line_ends_and_a_block_on_one_line() -> None:
    text = BEDROOM.read_text("utf-8")
    text = re.sub(r"\nleads \{\n.*?\n\}\n", "\nleads { audio cable mini-coax\n}\n", text, flags=re.DOTALL)
    windows = text.replace("\n", "\r\n")
    made = pin(compiled(BEDROOM, windows))
    assert made.replace("\r\n", "\n") == pin(compiled(BEDROOM, text))
    assert "\n" not in made.replace("\r\n", "")


def test_a_room_for_a_later_thing_is_pinned_behind_its_size() -> None:
    text = """language 1
rig sample {
  revision A 2026-01-01
}
deck pan {
  size 130 x 80 mm
}
place {
  reserve 100 x 60 mm "next year"  # its leads come from the left
}
"""
    once = pin(compiled(BEDROOM.with_name("later.rig"), text))
    (line,) = set(once.splitlines()) - set(text.splitlines())
    assert re.fullmatch(r'  reserve 100 x 60 mm at \S+, \S+ mm "next year"  # its leads come from the left', line)
    again = compiled(BEDROOM.with_name("later.rig"), once)
    assert again.results is not None
    assert [room.chosen for room in again.results.rig.reserved_rooms] == [False]
    assert pin(again) == once
