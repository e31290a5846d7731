"""A revision -> a short fingerprint pair: of what is stated, and of what follows from it."""

from __future__ import annotations

import hashlib
from typing import Any

from rigc.analysis.deck.unplaced import as_stated
from rigc.analysis.revision.aspects import Aspects
from rigc.analysis.revision.compared.aspect import COMPUTED
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Span

_DIGITS = 6
_SHIPPED = "stock/"
_UNSAID = ("typed", "premade_mm")
"""How a number was written; and the lengths that can be bought, of which a part may ship with rigc."""
_RECORDED = {"as_built": (), "field_notes": (), "readings": (), "accepts": ()}
"""What is written down about a released revision without changing its design."""


class Seal(Record):
    """Six hexadecimal digits each: `stated` changes with every statement of the design, `computed` with every figure that
    follows. Comments, spacing, the order of declarations and how a number was typed change neither."""

    stated: str
    computed: str

    def __str__(self) -> str:
        return f"{self.stated}-{self.computed}"


def seal(rig: Rig, aspects: Aspects) -> Seal:
    """The stock that ships with rigc belongs to the rules: it counts only through what follows from it."""
    own: Rig = as_stated(rig).replace(head=rig.head.replace(frozen=None), **_RECORDED)
    computed = sorted(
        "\t".join((*each.key, _said(each.value)))
        for each in aspects.by_key.values()
        if each.origin == COMPUTED or each.kind == "premade lengths"
    )
    return Seal(_digest(_said(own)), _digest("\n".join(computed)))


def _digest(text: str) -> str:
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:_DIGITS]


def _said(value: Any) -> str:
    """A text that is the same for the same statements. What says nothing is left out, so that a field which the language
    gains later breaks no seal."""
    if isinstance(value, (Record, Port)):
        names = value._fields if isinstance(value, Port) else value.FIELDS
        fields = ((name, getattr(value, name)) for name in names if name not in _UNSAID)
        return "(" + "; ".join(f"{name} {_said(part)}" for name, part in fields if _says(part)) + ")"
    if isinstance(value, dict):
        return (
            "{" + "; ".join(f"{key} {_said(value[key])}" for key in sorted(value, key=str) if _says(value[key])) + "}"
        )
    if isinstance(value, frozenset):
        return "<" + "; ".join(sorted(map(_said, value))) + ">"
    if isinstance(value, tuple):
        return "[" + "; ".join(_said(part) for part in value if not isinstance(part, Span)) + "]"
    return f"{value:.9g}" if isinstance(value, float) else repr(value)


def _says(value: Any) -> bool:
    if isinstance(value, Span):
        return False
    declared = getattr(value, "declared", None)
    if isinstance(declared, Span) and declared.source.name.startswith(_SHIPPED):
        return False
    return value is not None and value is not False and value not in ((), "", frozenset(), {})


COMPUTE = seal
