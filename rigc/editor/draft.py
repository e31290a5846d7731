"""Draft: a rig as it is being written: read, its names and quantities resolved, nothing computed. Made anew after each edit."""

from __future__ import annotations

from functools import cached_property
from typing import Any

from rigc.compile import Read
from rigc.editor.names import Names, names
from rigc.model.fact import Fact, facts_within
from rigc.source import Source


class Draft:
    """What is known at once of a rig after an edit."""

    def __init__(self, read: Read) -> None:
        self.read = read
        self.rig = read.resolved.rig

    @cached_property
    def names(self) -> Names:
        """Every place at which something is declared or named."""
        return names(self.read.gathered.statements, self.read.resolved)

    @cached_property
    def facts(self) -> tuple[Fact[Any], ...]:
        """Every stated value of the rig that was read."""
        return () if self.rig is None else facts_within(self.rig)

    def source(self, name: str) -> Source | None:
        """The source that the rig knows by that name; None if it reads none such."""
        return next((each for each in self.read.gathered.sources if each.name == name), None)
