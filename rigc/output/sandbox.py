"""The engine's sandbox for templates, quick where a name is a field of our own values: those need no guard."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

from jinja2.compiler import CodeGenerator
from jinja2.exceptions import SecurityError
from jinja2.nodes import Expr, Impossible, TemplateData
from jinja2.runtime import LoopContext
from jinja2.sandbox import ImmutableSandboxedEnvironment

from rigc.record import Record

_OURS = (Record, SimpleNamespace)
_COUNTS = frozenset(("index", "index0", "first", "last", "length"))
_MOST_EXPONENT = 64
"""No layout needs a higher power; one of some millions is a single step that nothing can interrupt."""


class AsWritten(CodeGenerator):
    """Reckons nothing while a template is read: what takes too long or too much then has a line that can be named, and the code hangs on
    the template alone."""

    def _output_child_to_const(self, node: Expr, frame: Any, finalize: Any) -> str:
        if not isinstance(node, TemplateData):
            raise Impossible
        return super()._output_child_to_const(node, frame, finalize)


class Sandbox(ImmutableSandboxedEnvironment):
    """As its base, with the same answers. A document asks for a hundred thousand names, nearly all of them fields of
    records, macros of `put` or the counts of a loop; the base tries each name and value against a dozen types of
    Python's own, none of which these are.
    """

    intercepted_binops = frozenset(("**",))
    code_generator_class = AsWritten

    def call_binop(self, context: Any, operator: str, left: Any, right: Any) -> Any:
        """The base's answer, if it takes a moment only."""
        if not isinstance(right, int | float) or abs(right) > _MOST_EXPONENT:
            raise SecurityError(f"a power above {_MOST_EXPONENT} is not allowed")
        return super().call_binop(context, operator, left, right)

    def getattr(self, obj: Any, attribute: str) -> Any:
        """The field, macro or count of that public name; all else is for the guard to allow or forbid."""
        if isinstance(obj, _OURS):
            held = obj.__dict__
            if attribute in held and attribute[0] != "_":
                return held[attribute]
        elif isinstance(obj, LoopContext) and attribute in _COUNTS:
            return getattr(obj, attribute)
        return super().getattr(obj, attribute)
