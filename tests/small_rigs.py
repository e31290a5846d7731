"""Small rigs from text, invented, for tests that need no files."""

from __future__ import annotations

from cases import READER

from rigc.analysis.results import Results
from rigc.compile import compile_rig
from rigc.source import Source

HEAD = "language 1\nrig sample {\n  revision A 2026-03-02\n}\n"
"""Four lines that every rig needs."""


def results_of(text: str, head: str = HEAD) -> Results:
    """What follows from a head and a text that must compile without errors of names and quantities."""
    made = compile_rig(lambda name: Source(name, head + text), "sample.rig", READER)
    assert made.results is not None, [finding.message for finding in made.findings]
    return made.results


def unit(name: str, *lines: str) -> str:
    """A unit with a mono input and output, and these lines more."""
    return block("unit", name, "input in ts", "output out ts", *lines)


def block(kind: str, name: str, *lines: str) -> str:
    """A block of statements, one a line."""
    return f"{kind} {name} {{\n" + "".join(f"  {line}\n" for line in lines) + "}\n"
