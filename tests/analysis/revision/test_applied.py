"""A rework carried out on the board that was built gives the board that is designed, whatever was changed."""

from __future__ import annotations

import re
from collections.abc import Callable

from cases import ROOT
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from two_boards import LONG_HAUL, LONG_HAUL_D, results_after

from rigc.analysis.revision.board import Board, BoardLead
from rigc.analysis.revision.plan.applied import applied
from rigc.analysis.revision.plan.leads.plan import KEEP
from rigc.analysis.revision.rework import Rework

PHASES = (Phase.explicit, Phase.generate)  # a rig takes too long to compile for its shrinking
Edit = Callable[[str], str]
LOOPED = ("teeter", "settle", "bramble", "marl", "lapwing", "claypit", "stepladder", "echomill")
PLACED = (*LOOPED, "plumb", "lever", "slipway", "rotundaxl", "lantxl", "weathervane", "heron", "fan4", "mill8", "weir8")


def test_the_larger_successor() -> None:
    _works(LONG_HAUL, LONG_HAUL_D)
    _works(LONG_HAUL_D.replace("revision D", "revision C"), LONG_HAUL.replace("revision C", "revision D"))


def moved(unit: str, dx: int, dy: int) -> Edit:
    """The unit stands elsewhere."""

    def edit(text: str) -> str:
        found = re.search(rf"^  {unit} (under )?at (\d+), (\d+) mm", text, re.MULTILINE)
        if found is None:
            return text
        place = f"  {unit} {found[1] or ''}at {int(found[2]) + dx}, {int(found[3]) + dy} mm"
        return text.replace(found[0], place)

    return edit


def other_plug(number: int, plug: str) -> Edit:
    """A lead ends in another plug."""
    pattern = re.compile(rf"^(  A{number:02} .* to )barrel-angle$", re.MULTILINE)
    return lambda text: pattern.sub(rf"\g<1>{plug}", text)


def swapped_outlets(one: str, other: str) -> Edit:
    """Two units change outlets, and their stated leads."""

    def edit(text: str) -> str:
        feeds = {unit: re.search(rf"^  {unit} from (\S+)$", text, re.MULTILINE) for unit in (one, other)}
        if one == other or any(feed is None for feed in feeds.values()):
            return text
        first, second = (feed[1] for feed in feeds.values() if feed is not None)
        text = text.replace(f"  {one} from {first}\n", f"  {one} from {second}\n")
        text = text.replace(f"  {other} from {second}\n", f"  {other} from {first}\n")
        text = re.sub(rf"^(  D\d+ )\S+ -> {one}\.dc", rf"\g<1>{second} -> {one}.dc", text, flags=re.MULTILINE)
        return re.sub(rf"^(  D\d+ )\S+ -> {other}\.dc", rf"\g<1>{first} -> {other}.dc", text, flags=re.MULTILINE)

    return edit


def dropped(unit: str) -> Edit:
    """The unit goes, and its loop is empty."""

    def edit(text: str) -> str:
        text = re.sub(
            rf"^loop (\d) of signalbox holds {unit}$", r"loop \1 of signalbox empty", text, flags=re.MULTILINE
        )
        text = re.sub(rf"^  {unit} (from|at) .*\n", "", text, flags=re.MULTILINE)
        text = re.sub(rf"^  set {unit} .*\n", "", text, flags=re.MULTILINE)
        return re.sub(rf"^  [AD]\d+ .*\b{unit}\..*\n", "", text, flags=re.MULTILINE)

    return edit


def renamed(unit: str) -> Edit:
    """The unit bears another name."""

    def edit(text: str) -> str:
        text = re.sub(rf"\b{unit}\b(?!\")", f"{unit}-two", text)
        return re.sub(rf"^(unit {unit}-two .*\{{)$", rf"\g<1>\n  was {unit}", text, flags=re.MULTILINE)

    return edit


def on_channel(unit: str, channel: int) -> Edit:
    """The unit listens elsewhere."""
    return lambda text: re.sub(rf"^  {unit} channel \d+", f"  {unit} channel {channel}", text, flags=re.MULTILINE)


def unnumbered(number: int, letter: str) -> Edit:
    """A lead's number is left to the compiler."""
    return lambda text: re.sub(rf"^  {letter}{number:02} .*\n", "", text, flags=re.MULTILINE)


def fewer_spares(text: str) -> str:
    """One spare lead less is carried."""
    return text.replace('  2 audio lead 1300 mm in "lid pocket"\n', '  1 audio lead 1300 mm in "lid pocket"\n')


def other_preset(text: str) -> str:
    """A preset switches other loops."""
    return text.replace("loops 3, 6 of signalbox", "loops 3, 5 of signalbox")


EDITS = st.one_of(
    st.builds(moved, st.sampled_from(PLACED), st.integers(-60, 60), st.integers(-25, 25)),
    st.builds(other_plug, st.integers(1, 26), st.sampled_from(("straight", "flat-angle"))),
    st.builds(swapped_outlets, st.sampled_from(LOOPED), st.sampled_from(LOOPED)),
    st.builds(dropped, st.sampled_from(LOOPED)),
    st.builds(renamed, st.sampled_from(LOOPED)),
    st.builds(on_channel, st.sampled_from(("weathervane", "lantxl")), st.integers(5, 16)),
    st.builds(unnumbered, st.integers(1, 28), st.sampled_from("AD")),
    st.sampled_from((fewer_spares, other_preset)),
)


@given(st.lists(EDITS, max_size=3), st.lists(EDITS, min_size=1, max_size=4))
@settings(max_examples=25, deadline=None, derandomize=True, phases=PHASES, suppress_health_check=list(HealthCheck))
def test_whatever_is_changed(earlier: list[Edit], later: list[Edit]) -> None:
    old = LONG_HAUL
    for edit in earlier:
        old = edit(old)
    new = old
    for edit in later:
        new = edit(new)
    _works(old, new.replace("  revision C", "  revision D"))


OTHERS = tuple(
    (ROOT / name).read_text("utf-8").replace("../../examples/bench", "../bench")
    for name in ("examples/back-bedroom/board.rig", "examples/tide-line/board.rig", "tests/rigs/salt-pan.rig")
)
PLACE = re.compile(r"^  (?!switch|knob|jack|inlet)[a-z][\w-]* (?:under )?at (\d+), (\d+) mm", re.MULTILINE)
FEED = re.compile(r"^  [a-z][\w-]* from (\S+)$", re.MULTILINE)
LEAD = re.compile(r"^  [AD]\d+\w? .*->(?!.* made ).*\n", re.MULTILINE)
POWER_LEAD = re.compile(r"^  D\d+\w? .*->.*\n", re.MULTILINE)


def one_moved(which: int, dx: int) -> Edit:
    """One thing stands further right."""

    def edit(text: str) -> str:
        found = list(PLACE.finditer(text))
        at = found[which % len(found)]
        return f"{text[: at.start(1)]}{int(at[1]) + dx}{text[at.end(1) :]}"

    return edit


def one_unnumbered(which: int) -> Edit:
    """One lead's number is left to the compiler."""

    def edit(text: str) -> str:
        found = list(LEAD.finditer(text))
        return text if not found else text.replace(found[which % len(found)][0], "", 1)

    return edit


def two_fed_crosswise(which: int, other: int) -> Edit:
    """Two units change outlets, and every DC lead's number is left to the compiler."""

    def edit(text: str) -> str:
        found = list(FEED.finditer(text))
        one, two = sorted((found[which % len(found)], found[other % len(found)]), key=lambda each: each.start())
        if one.start() == two.start():
            return text
        crossed = text[: one.start(1)] + two[1] + text[one.end(1) : two.start(1)] + one[1] + text[two.end(1) :]
        return POWER_LEAD.sub("", crossed)

    return edit


NUMBERS = st.integers(0, 20)
SMALL_EDITS = st.one_of(
    st.builds(one_moved, NUMBERS, st.integers(0, 80)),
    st.builds(one_unnumbered, NUMBERS),
    st.builds(two_fed_crosswise, NUMBERS, NUMBERS),
)


@given(st.sampled_from(OTHERS), st.lists(SMALL_EDITS, max_size=2), st.lists(SMALL_EDITS, min_size=1, max_size=3))
@settings(max_examples=30, deadline=None, derandomize=True, phases=PHASES, suppress_health_check=list(HealthCheck))
def test_rigs_with_shared_and_series_outlets(old: str, earlier: list[Edit], later: list[Edit]) -> None:
    for edit in earlier:
        old = edit(old)
    new = old
    for edit in later:
        new = edit(new)
    _works(old, new.replace("  revision A", "  revision B"))


def _works(old: str, new: str) -> None:
    results = results_after(old, new)
    rework, board = results.get(Rework), results.get(Board)
    assert rework.built is not None
    after = applied(rework, rework.built)
    _same_leads(rework, after, board)
    assert after.replace(leads={}) == board.replace(leads={})


def _same_leads(rework: Rework, after: Board, board: Board) -> None:
    assert set(after.leads) == set(board.leads)
    for mark, lead in board.leads.items():
        made, plan = after.leads[mark], rework.lead(mark)
        assert plan is not None
        assert made.replace(length=None) == lead.replace(length=None)
        if plan.verdict == KEEP and plan.least is not None and plan.most is not None:
            assert made.length is not None and plan.least <= made.length <= plan.most
        else:
            assert made.length == lead.length


def test_half_done_boards_can_be_finished() -> None:
    """What is done, then the rest, is the whole."""
    changes = '  change 1 design "a" touches stepladder-ii\n  change 2 design "b" touches echomill\n'
    new = LONG_HAUL_D + "\nas-built C {\n  done 2\n}\n"
    results = results_after(LONG_HAUL, new, changes)
    rework = results.get(Rework)
    assert rework.built is not None
    done, rest = (
        rework.replace(**{name: tuple(p for p in getattr(rework, name) if p.done is so) for name in PIECES})
        for so in (True, False)
    )
    half = applied(done, rework.built)
    assert half.feeds["echomill"].outlets[0].jack == "b8" and "stepladder" in half.units
    assert isinstance(half.leads["D16"], BoardLead)
    assert applied(rest, half).replace(leads={}) == results.get(Board).replace(leads={})


PIECES = (
    "leads",
    "adaptors",
    "outlets",
    "feeds",
    "units",
    "strips",
    "labels",
    "programs",
    "channels",
    "spares",
    "fittings",
)
