"""Small rigs from text, invented, for tests that need no files."""

from __future__ import annotations

import cases

from rigc.analysis.results import Results
from rigc.source import Source

HEAD = "language 1\nrig sample {\n  revision A 2026-03-02\n}\n"
"""Four lines that every rig needs."""


def results_of(text: str, head: str = HEAD) -> Results:
    """What follows from a head and a text that must compile without errors of names and quantities."""
    return cases.results_of(lambda name: Source(name, head + text), "sample.rig")


def unit(name: str, *lines: str) -> str:
    """A unit with a mono input and output, and these lines more."""
    return block("unit", name, "input in ts", "output out ts", *lines)


def block(kind: str, name: str, *lines: str) -> str:
    """A block of statements, one a line."""
    return f"{kind} {name} {{\n" + "".join(f"  {line}\n" for line in lines) + "}\n"
