"""A shop's own wording: our fixed phrases -> its own, as its file `words.json` says. Names and figures of the rig are never touched."""

from __future__ import annotations

import json
from collections.abc import Mapping
from functools import lru_cache
from types import MappingProxyType
from typing import Any

from rigc.output.own_templates import OwnTemplates
from rigc.output.template_mistake import TemplateMistake
from rigc.reports.content import Block, Document, Drawing, Paragraph, Sheet, Table

FILE = "words.json"


@lru_cache(maxsize=4)
def words(own: OwnTemplates | None) -> Mapping[str, str]:
    """What the file says; nothing where there is none. Raises `TemplateMistake`."""
    text = dict(own.files).get(FILE) if own else None
    if own is None or text is None:
        return MappingProxyType({})
    try:
        held = json.loads(text)
    except json.JSONDecodeError as fault:
        raise TemplateMistake(own.path(FILE), fault.lineno, f"this is no JSON: {fault.msg}", _FORM, text=text) from None
    except RecursionError:
        raise TemplateMistake(own.path(FILE), 1, "this is nested without end", _FORM, text=text) from None
    if not isinstance(held, dict) or not all(isinstance(value, str) for value in held.values()):
        raise TemplateMistake(own.path(FILE), 1, "this is no list of phrases", _FORM, text=text)
    return MappingProxyType({ours: theirs for ours, theirs in held.items() if theirs})


_FORM = 'write it as {"our phrase": "yours"}; `rigc templates --words RIG` prints all of ours for a rig'


def reworded(documents: tuple[Document, ...], words: Mapping[str, str]) -> tuple[Document, ...]:
    """The documents with each phrase that `words` knows in its own form; the same ones where it knows none."""
    if not words:
        return documents
    return tuple(
        each.replace(sheet=_sheet(each.sheet, words), title=each.title.replace(sheet=_of(each.title.sheet, words)))
        for each in documents
    )


def phrases(documents: tuple[Document, ...]) -> tuple[str, ...]:
    """Every phrase of these documents that `reworded` looks up, each once, in the order of the folder."""
    met = _Met()
    reworded(documents, met)
    return tuple(met.found)


class _Met(dict[str, str]):
    """Knows no phrase, and notes each that it is asked for."""

    def __init__(self) -> None:
        super().__init__()
        self.found: dict[str, None] = {}

    def __bool__(self) -> bool:
        return True

    def get(self, key: str, default: Any = None) -> Any:
        if key.strip("{} "):
            self.found[key] = None
        return default


def _of(text: str, words: Mapping[str, str]) -> str:
    return words.get(text, text)


def _sheet(sheet: Sheet, words: Mapping[str, str]) -> Sheet:
    told: Sheet = sheet.replace(
        title=_of(sheet.title, words),
        reader=_of(sheet.reader, words),
        blocks=tuple(_block(block, words) for block in sheet.blocks),
    )
    return told


def _block(block: Block, words: Mapping[str, str]) -> Any:
    if isinstance(block, Table):
        columns = tuple(
            each.replace(head=_of(each.head, words), folds=each.folds and _of(each.folds, words))
            for each in block.columns
        )
        return block.replace(caption=_of(block.caption, words), empty=_of(block.empty, words), columns=columns)
    if isinstance(block, Drawing):
        return block.replace(title=_of(block.title, words), caption=_of(block.caption, words))
    if isinstance(block, Paragraph) and block.kind in ("text", "caution"):
        return block.replace(heading=_of(block.heading, words), lines=tuple(_of(line, words) for line in block.lines))
    return block
