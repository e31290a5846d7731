"""A word and a new name -> the texts of all files in which it is named; jacks and leads keep theirs."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.edit.rename import is_name, rename
from rigc.editor.draft import Draft
from rigc.editor.names import JACK, LEAD
from rigc.model.resolve import FAMILIES
from rigc.source import Source, Span


class CannotRename(Exception):
    """Why not, in one line."""


def renamed_word(draft: Draft, source: Source, offset: int) -> Span:
    """The word that would be renamed. Raises `CannotRename`."""
    word = draft.names.at(source, offset)
    if word is None:
        raise CannotRename("no name stands here")
    if word.family == JACK:
        raise CannotRename(
            "a jack bears the name that is printed on the unit; change it in its block and where it is named"
        )
    if word.family == LEAD:
        raise CannotRename("a lead's number is on its labels and is never given again; retire it and give a new one")
    return word.span


def renamed(draft: Draft, reserved: frozenset[str], source: Source, offset: int, new: str) -> dict[str, str]:
    """The new texts by the names of their sources; a unit or supply keeps its old name in a `was` clause. Raises `CannotRename`."""
    old = renamed_word(draft, source, offset)
    word = draft.names.at(source, offset)
    assert word is not None
    if not is_name(new):
        raise CannotRename(f"'{new}' is no name: lower case, digits and single hyphens are, a letter first")
    if new == old.text:
        return {}
    wrong = _wrong(draft)
    if wrong is not None:
        raise CannotRename(f"first put this right: {wrong.message}")
    kinds = {
        kind
        for statement in draft.read.gathered.statements
        if (found := FAMILIES.get(type(statement))) and found[0] == word.family and _name(statement) == old.text
        for kind in (found[1],)
    }
    result = rename(draft.read.gathered, reserved, old.text, new, next(iter(kinds), ""))
    if result.refused is not None:
        raise CannotRename(result.refused.message)
    return result.texts


def _wrong(draft: Draft) -> Diagnostic | None:
    return next((finding for finding in draft.read.findings if finding.level is Level.ERROR), None)


def _name(statement: object) -> str:
    name = getattr(statement, "name", None)
    return "" if name is None else str(name.text)
