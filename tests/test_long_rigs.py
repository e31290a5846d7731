"""Rigs longer than anyone builds: what is computed of them does not descend unit by unit, nor go each of all ways through them."""

from __future__ import annotations

import inspect
import sys
from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from cases import READER
from small_rigs import HEAD, block, results_of, unit

from rigc.analysis.findings.findings import Findings
from rigc.analysis.signal.levels.standing_pads import losses_before
from rigc.compile import compile_rig
from rigc.diagnostics.explain import all_kinds
from rigc.model.jacks import Port
from rigc.source import Source

ENDS = block("instrument", "guitar") + block("amp", "combo", "input in ts 1 Mohm")
FRAMES = 250
LENGTH = 150


@contextmanager
def few_frames() -> Iterator[None]:
    """So few calls may stand in each other that a descent through `LENGTH` units, two calls each, fails."""
    before = sys.getrecursionlimit()
    sys.setrecursionlimit(len(inspect.stack(0)) + FRAMES)
    try:
        yield
    finally:
        sys.setrecursionlimit(before)


def nested_switchers(count: int) -> str:
    """Each switcher stands in the loop of the one before."""
    jacks = ("output send ts 1 kohm", "input back ts 1 Mohm", "loop 1 send send return back")
    units = "".join(unit(f"s{at}", *jacks) for at in range(count))
    holds = "".join(f"loop 1 of s{at} holds s{at + 1}\n" for at in range(count - 1))
    return f"{ENDS}{units}chain guitar -> s0 -> combo\n{holds}"


def row(count: int) -> str:
    """Units with a true bypass and a gain, one behind the other."""
    units = "".join(unit(f"s{at}", "bypass true", "gain -1 dB") for at in range(count))
    return f"{ENDS}{units}chain guitar -> {' -> '.join(f's{at}' for at in range(count))} -> combo\n"


def treadles(count: int) -> str:
    """Passive units with a straight path, one behind the other."""
    units = "".join(unit(f"s{at}", "passive", "path in -> out straight") for at in range(count))
    return f"{ENDS}{units}chain guitar -> {' -> '.join(f's{at}' for at in range(count))} -> combo\n"


def split_and_joined(count: int, *facts: str) -> str:
    """The sound goes two ways side by side and comes together again, so many times: 2 to the power of `count` ways."""
    text = ENDS
    for at in range(count):
        split = ("input in ts 1 Mohm", "output one ts 1 kohm", "output two ts 1 kohm")
        text += block("unit", f"s{at}", *split, "path in -> one straight", "path in -> two straight", *facts)
        text += block("unit", f"j{at}", "input one ts 1 Mohm", "input two ts 1 Mohm", "output out ts 1 kohm")
        text += f"chain {f'j{at - 1}' if at else 'guitar'} -> s{at}\n"
        text += f"chain s{at}.one -> j{at}.one\nchain s{at}.two -> j{at}.two\n"
    return f"{text}chain j{count - 1} -> combo\n"


LONG = {
    "nested switchers": lambda: nested_switchers(LENGTH),
    "a row of units": lambda: row(LENGTH),
    "a row of passive units": lambda: treadles(LENGTH),
    "ways side by side": lambda: split_and_joined(30),
    "passive ways side by side": lambda: split_and_joined(30, "passive"),
}


@pytest.mark.parametrize("name", LONG)
def test_findings_of_a_long_rig(name: str) -> None:
    text = LONG[name]()
    results_of("").get(Findings)  # what is imported on the way needs frames of its own
    with few_frames():
        assert results_of(text).get(Findings).all


def test_pads_on_a_thousand_million_ways() -> None:
    """30 pads of 3 dB in a row, each with two ways out: every one of the 2 to the power of 30 ways takes 90 dB."""
    rig = results_of(split_and_joined(30, "gain -3 dB")).rig
    assert losses_before(rig, Port("j29", "out")) == frozenset((90.0,))


def test_many_acceptances_of_nothing() -> None:
    """Each is told, and the rules are looked for once: that walks all modules."""
    all_kinds.cache_clear()
    accepts = "".join(f'accept old-f{at} on plumb "ok" by "x" until 2027-01-01\n' for at in range(300))
    made = compile_rig(lambda name: Source(name, f"{HEAD}unit plumb {{\n}}\n{accepts}"), "board.rig", READER)
    assert [finding.kind.name for finding in made.findings].count("useless-accept") == 300
    assert all_kinds.cache_info().misses == 1


def test_many_files_each_of_which_uses_the_next() -> None:
    """The hundredth is told to be one too many; what it would have used is not asked for."""
    asked = []

    def load(name: str) -> Source:
        asked.append(name)
        number = int(name.removesuffix(".rig"))
        head = HEAD if number == 0 else "language 1\n"
        return Source(name, f'{head}use "{number + 1}.rig"\n')

    made = compile_rig(load, "0.rig", READER)
    (finding,) = (each for each in made.findings if each.kind.name == "unusable-file")
    assert finding.message == "'100.rig' is not read: files use each other more than 100 deep"
    assert "101.rig" not in asked
