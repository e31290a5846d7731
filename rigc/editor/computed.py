"""Computed: what was last computed of a rig, asked by names, so that it serves while the text moves on."""

from __future__ import annotations

from functools import cached_property
from typing import TypeVar

from rigc.analysis.reasoning import Reasoning
from rigc.analysis.results import Results
from rigc.compile import Compiled

T = TypeVar("T")


class Computed:
    """A compiled rig whose results are there."""

    def __init__(self, compiled: Compiled, results: Results) -> None:
        self.compiled = compiled
        self.results = results

    def get(self, kind: type[T]) -> T:
        """The result of that type."""
        return self.results.get(kind)

    @cached_property
    def reasoning(self) -> Reasoning:
        """Every figure with how it came about."""
        return Reasoning(self.results)


def computed(compiled: Compiled) -> Computed | None:
    """None where nothing was computed."""
    return None if compiled.results is None else Computed(compiled, compiled.results)
