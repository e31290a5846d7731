"""Canonical text: the same statements and comments, once and for all; random rigs and real ones made untidy."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import pytest
from cases import ROOT
from derivations import derived, rig_texts
from grammars import parsed, rules
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from rigc.edit.canonical import canonical
from rigc.edit.chain_lines import WIDTH
from rigc.edit.remarks import remarks

few = settings(max_examples=3, deadline=None, database=None, derandomize=True, suppress_health_check=list(HealthCheck))
some = settings(few, max_examples=6)

EXAMPLES = sorted((ROOT / "examples").rglob("*.rig"))
RIGS = [*EXAMPLES, *sorted((ROOT / "rigc" / "stock").glob("*.rig"))]

UNTIDY = """

# top
language   1   # one


chain a->b   => c.out -> # why
   # own

   d
unit x "a # b" {   # open


  mass   3g # m


  input in ts 10kohm   right 70mm  up  24mm
  body 75x115 x48 mm
  # last

}   # end
unit y{}
unit z { mass 3 g
}
accept silent-without-power on x "it is"   by "R.K." until 2026-12-31
"""
TIDY = """\
# top
language 1  # one

chain a -> b => c.out ->  # why
  # own
  d
unit x "a # b" {  # open
  mass 3 g  # m

  input in ts 10 kohm right 70 mm up 24 mm
  body 75 x 115 x 48 mm
  # last
}  # end
unit y {
}
unit z {
  mass 3 g
}
accept silent-without-power on x "it is" by "R.K." until 2026-12-31
"""


def canonical_of(text: str) -> str:
    """The canonical text of a file without mistakes."""
    read = parsed(text)
    assert [finding.message for finding in read.findings] == []
    return canonical(read.file)


def holds(text: str) -> str:
    """The canonical text, after the three promises: nothing lost, nothing said otherwise, nothing left to do."""
    made = canonical_of(text)
    assert [each.text for each in remarks(made)] == [each.text for each in remarks(text)]
    assert parsed(made).file == parsed(text).file
    assert canonical_of(made) == made
    return made


def test_an_untidy_file() -> None:
    assert holds(UNTIDY) == TIDY


def test_nothing_is_canonical() -> None:
    assert canonical_of("") == canonical_of("\n\n") == ""
    assert canonical_of("# alone") == "# alone\n"


@pytest.mark.parametrize("stops", [2, 12, 40])
def test_a_chain_breaks_behind_an_arrow_when_it_is_too_long(stops: int) -> None:
    """Each line is as full as it can be: the next stop would not have fitted."""
    names = [f"unit-{number}" for number in range(stops)]
    lines = holds(f"chain {' -> '.join(names)}\n").splitlines()
    assert all(len(line) <= WIDTH for line in lines)
    for line, after in pairwise(lines):
        assert line.endswith(" ->") and after.startswith("  unit-")
        assert len(line) + len(" ".join(after.split()[:2])) + 1 > WIDTH
    assert (len(lines) == 1) == (len(f"chain {' -> '.join(names)}") <= WIDTH)


@pytest.mark.parametrize("path", RIGS, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_what_is_shipped_is_canonical(path: Path) -> None:
    text = path.read_text("utf-8")
    assert holds(text) == text


@pytest.mark.parametrize("rule", [name for name in derived() if name in rules()])
def test_random_rigs(rule: str) -> None:
    @few
    @given(rig_texts(rule))
    def one(text: str) -> None:
        holds(text)

    one()


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.parent.name)
def test_examples_made_untidy(path: Path) -> None:
    """Wider gaps, more blank lines, comments at the ends of lines and between them: the statements come out the same."""
    lines = path.read_text("utf-8").splitlines()
    plain = [line for line in canonical_of(path.read_text("utf-8")).splitlines() if line]

    @some
    @given(st.data())
    def one(data: st.DataObject) -> None:
        untidy = []
        for line in lines:
            what = data.draw(st.sampled_from(["", "", "", "gaps", "blank", "above"]))
            quoted = '"' in line or "#" in line
            untidy += [""] * 3 if what == "blank" else ["\t# more {"] if what == "above" else []
            untidy.append(re.sub(" +", "   ", line) if what == "gaps" and not quoted else line)
        made = holds("\n".join(untidy))
        kept = [line for line in made.splitlines() if line and line.strip() != "# more {"]
        assert kept == plain

    one()
