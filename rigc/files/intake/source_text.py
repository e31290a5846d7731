"""What was found in a list -> a file of units as `rigc fmt` lays it out: each fact with its cell, each open word as a comment, what is missing."""

from __future__ import annotations

import re
from collections.abc import Iterator

from rigc.compile import read_rig
from rigc.diagnostics.diagnostic import Level
from rigc.edit.canonical import canonical
from rigc.files.intake.books.book import Book
from rigc.files.intake.found import FoundList, FoundUnit, Question, Taken
from rigc.files.intake.list_found import list_found
from rigc.files.intake.row_facts import quoted
from rigc.model.asked_facts import FACTS, AskedFact
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Source
from rigc.syntax.parsed import Reader

_HEAD = "\nrig taken-in {\n  revision A 2099-12-31\n}\n"
"""Beside the units, what a file must have to be resolved; it is not written."""


class Intake(Record):
    """What became of a list: its units as source text, what must be asked about it, and of each unit the facts that are missing."""

    text: str
    found: FoundList
    missing: dict[str, tuple[AskedFact, ...]]

    @property
    def questions(self) -> tuple[Question, ...]:
        """All that must be asked, in the order of the list."""
        return (*self.found.questions, *(each for unit in self.found.units for each in unit.questions))


def intake(book: Book, reader: Reader) -> Intake:
    """Takes a list in. A fact that the language refuses, such as a mass of 400 kg, is asked about like one that can't be understood."""
    found = list_found(book, reader.reserved)
    while True:
        text, lines = _text(book, found, {})
        rig, refused = _refused(text, reader)
        if not refused:
            break
        found = _without(found, lines, refused)
    missing = {} if rig is None else {name: _missing(rig, name) for name in _names(found) if name in rig.units}
    text, _ = _text(book, found, missing)
    source = Source("units.rig", text)
    return Intake(canonical(reader.parse(source, reader.parse(source)).file), found, missing)


def _refused(text: str, reader: Reader) -> tuple[Rig | None, dict[int, str]]:
    """The units of the text, and by its line the message of each error in it."""
    read = read_rig(lambda name: Source(name, text + _HEAD), "units.rig", reader)
    errors = [each for each in read.findings if each.level is Level.ERROR and each.span is not None]
    return read.resolved.rig, {each.span.line: each.message for each in errors if each.span is not None}


def _without(found: FoundList, lines: dict[int, tuple[str, Taken | None]], refused: dict[int, str]) -> FoundList:
    """The list without the facts in lines that are refused, which are asked about. Raises `AssertionError` for a line that is no fact: a bug."""
    units = list(found.units)
    for line, message in refused.items():
        name, fact = lines[line]
        assert fact is not None, f"line {line}: {message}"
        at, unit = next((at, each) for at, each in enumerate(units) if each.name == name)
        place = ", ".join(fact.places)
        question = Question(
            f"{unit.sheet} {place}".strip(),
            fact.typed,
            message,
            "correct it in the list, or what it contradicts",
            name,
        )
        units[at] = unit.replace(
            facts=tuple(each for each in unit.facts if each is not fact), questions=(*unit.questions, question)
        )
    return FoundList(tuple(units), found.kept, found.questions, found.remarks)


def _missing(rig: Rig, name: str) -> tuple[AskedFact, ...]:
    return tuple(fact for fact in FACTS if fact.needed and not fact.known(rig.units[name]))


def _names(found: FoundList) -> tuple[str, ...]:
    return tuple(name for unit in found.units for name in (unit.name, *unit.again))


def _text(
    book: Book, found: FoundList, missing: dict[str, tuple[AskedFact, ...]]
) -> tuple[str, dict[int, tuple[str, Taken | None]]]:
    """The text, and by its line which unit and which fact it states."""
    lines: list[str] = []
    held: dict[int, tuple[str, Taken | None]] = {}
    for line, name, fact in _lines(book, found, missing):
        lines.append(line)
        held[len(lines)] = (name, fact)
    return "".join(f"{line}\n" for line in lines), held


def _lines(
    book: Book, found: FoundList, missing: dict[str, tuple[AskedFact, ...]]
) -> Iterator[tuple[str, str, Taken | None]]:
    saved = f", saved {book.saved}" if book.saved else ""
    yield (
        f"# Taken in from {_safe(book.name)}{saved}. What the list does not call measured or out of a leaflet is assumed.",
        "",
        None,
    )
    for each in found.remarks:
        yield f"# The file {_safe(each)}.", "", None
    yield "language 1", "", None
    if found.kept or found.questions:
        yield "", "", None
    yield from ((f"# {_safe(line)}", "", None) for line in found.kept)
    for question in found.questions:
        if not any(_safe(question.said) in _safe(line) for line in found.kept):
            yield _asked(question), "", None
    for unit in found.units:
        yield "", "", None
        for line, fact in _unit_lines(book, unit, missing.get(unit.name, ())):
            yield line, unit.name, fact
        for other in unit.again:
            yield "", "", None
            yield f"unit {other} like {unit.name} {{", other, None
            yield "}", other, None


def _unit_lines(book: Book, unit: FoundUnit, missing: tuple[AskedFact, ...]) -> Iterator[tuple[str, Taken | None]]:
    where = f"{unit.sheet}, row {unit.row}" if unit.sheet else f"row {unit.row}"
    yield f"# {_safe(where)}", None
    yield f"unit {unit.name}{f' {quoted(unit.title)}' if unit.title else ''} {{", None
    for fact in unit.facts:
        said = f"  # {_safe(fact.typed)}" if fact.differs else ""
        yield f"  {fact.text} {_provenance(book, unit, fact)}{said}", fact
    for note in unit.notes:
        yield f"  note {quoted(note)}", None
    for line in unit.kept:
        yield f"  # {_safe(line)}", None
    for question in unit.questions:
        yield f"  {_asked(question)}", None
    for lacking in missing:
        yield f"  # missing: {lacking.blank}", None
    yield "}", None


def _provenance(book: Book, unit: FoundUnit, fact: Taken) -> str:
    """What the language says of where a fact comes from. What its writer was not sure of is assumed, whatever the row says."""
    kind = "assumed" if fact.about else unit.kind
    cells = ", ".join(fact.places)
    by = f"{f'{unit.by}, ' if unit.by else ''}{book.name} {f'{unit.sheet} ' if unit.sheet else ''}{cells}"
    return f"{kind}{f' {unit.day}' if unit.day else ''} by {quoted(by)}"


def _asked(question: Question) -> str:
    return _safe(f"# asked: {question.asked}")


def _safe(text: str) -> str:
    """A text on one line of a comment."""
    return re.sub(r"\s+", " ", "".join(sign if sign.isprintable() else " " for sign in text)).strip()
