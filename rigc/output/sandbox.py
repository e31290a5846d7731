"""The engine's sandbox for templates, quick where a name is a field of our own values: those need no guard."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

from jinja2.runtime import LoopContext
from jinja2.sandbox import ImmutableSandboxedEnvironment

from rigc.record import Record

_COUNTS = frozenset(("index", "index0", "first", "last", "length"))


class Sandbox(ImmutableSandboxedEnvironment):
    """As its base, with the same answers. A document asks for a hundred thousand names, nearly all of them fields of
    records, macros of `put` or the counts of a loop; the base tries each name and value against a dozen types of
    Python's own, none of which these are.
    """

    def getattr(self, obj: Any, attribute: str) -> Any:
        """The field, macro or count of that public name; all else is for the guard to allow or forbid."""
        if isinstance(obj, (Record, SimpleNamespace)):
            if attribute in obj.__dict__ and not attribute.startswith("_"):
                return obj.__dict__[attribute]
        elif isinstance(obj, LoopContext) and attribute in _COUNTS:
            return getattr(obj, attribute)
        return super().getattr(obj, attribute)
