"""A spreadsheet -> its units, what must be asked, and every word that is neither."""

from __future__ import annotations

import re
from collections.abc import Iterator

from rigc.files.intake.books.book import Book, BookRow, BookSheet, letters
from rigc.files.intake.cells.amounts import is_blank
from rigc.files.intake.cells.days import day
from rigc.files.intake.cells.numbers import has_decimal_comma
from rigc.files.intake.cells.unclear import Unclear
from rigc.files.intake.cells.words import word
from rigc.files.intake.found import FoundList, FoundUnit, Question
from rigc.files.intake.heads import Heads, heads, near_heading
from rigc.files.intake.names import free_name, name_of
from rigc.files.intake.row_facts import RowFacts

HOW_TO = "How to fill in this list"
"""What the first cell of a sheet says that explains the list; such a sheet is not read."""
_TOTAL = re.compile(
    r"(?:sub-?\s?|grand |in )?(?:totals?|sums?|all)(?: (?:mass|weight|price|value|current|power|of .*))?", re.IGNORECASE
)
_ASIDE = re.compile(r"(?:\*+|#|//|nb\b|n\.b\.|notes?\b|remarks?\b|see\b|p\.?s\.?[:\s])", re.IGNORECASE)
_LONG = 48
"""A name is not longer than this; what is stands in a row of its own as a remark."""


def list_found(book: Book, reserved: frozenset[str]) -> FoundList:
    """All that the list holds. `reserved` are the words of the language that can't be names."""
    search = _Search(book, reserved)
    for sheet in book.sheets:
        search.sheet(sheet)
    return FoundList(tuple(search.units), tuple(search.kept), tuple(search.questions), book.remarks)


class _Search:
    def __init__(self, book: Book, reserved: frozenset[str]) -> None:
        self.book, self.reserved = book, reserved
        self.units: list[FoundUnit] = []
        self.kept: list[str] = []
        self.questions: list[Question] = []
        self._first: dict[str, str] = {}
        self._titles: dict[int, str] = {}

    def sheet(self, sheet: BookSheet) -> None:
        """Reads one sheet: what stands above its headings is kept, below them each row is a unit or is asked about."""
        if not sheet.rows or next((cell.text for row in sheet.rows for cell in row.cells.values()), HOW_TO) == HOW_TO:
            return
        found, groups = ({}, frozenset[int]()) if sheet.out else _headings(sheet.rows)
        commas = any(has_decimal_comma(cell.text) for row in sheet.rows for cell in row.cells.values())
        known: Heads | None = None
        for row in sheet.rows:
            if row.number in found:
                known = found[row.number]
                self._titles = _titles(sheet.rows, known, groups)
                self._strange(sheet, known)
            elif row.number not in groups and known is None:
                self._keep(sheet, row)
            elif row.number not in groups and known is not None:
                self._row(sheet, row, known, commas)
        if known is None:
            self._no_list(sheet)

    def _no_list(self, sheet: BookSheet) -> None:
        where = f"sheet '{sheet.name}'" if sheet.name else "all rows"
        why = "it is hidden" if sheet.out else "no row of it has headings that are known: a column 'Name' and another"
        do = (
            "show it if it is a part of the list, else delete it"
            if sheet.out
            else "name its columns as `rigc intake --template gear.xlsx` does"
        )
        self.questions.append(Question(where, "", why, do))

    def _place(self, sheet: BookSheet, place: str) -> str:
        return f"{sheet.name} {place}" if sheet.name else place

    def _keep(self, sheet: BookSheet, row: BookRow) -> None:
        if _words(row):
            self.kept.append(f"{self._place(sheet, f'row {row.number}')}: {_words(row)}")

    def _strange(self, sheet: BookSheet, found: Heads) -> None:
        for at, typed in found.strange.items():
            if any(typed == each.said for each in self.questions):
                continue  # headings that stand again further down
            near = near_heading(typed)
            held = sum(1 for row in sheet.rows if row.number > found.row and at in row.cells)
            if held:
                self.questions.append(
                    Question(
                        self._place(sheet, f"column {letters(at)}"),
                        typed,
                        "it is the heading of none of the known columns; its cells are kept as comments",
                        f"name it '{near}' if it is that"
                        if near
                        else "give it the heading of a known column, or leave it",
                    )
                )

    def _row(self, sheet: BookSheet, row: BookRow, known: Heads, commas: bool) -> None:
        if all(is_blank(cell.text) and not cell.formula and not cell.remark for cell in row.cells.values()):
            return
        reason = self._not_a_unit(row, known)
        if reason is not None:
            why, do = reason
            self._keep(sheet, row)
            if why:
                self.questions.append(Question(self._place(sheet, f"row {row.number}"), _words(row), why, do))
            return
        self._unit(sheet, row, known, commas)

    def _not_a_unit(self, row: BookRow, known: Heads) -> tuple[str, str] | None:
        """Why a row is no unit, and what to do if it is one all the same; empty where nobody would take it for one."""
        at = known.at("name")
        assert at is not None
        cell = row.cells.get(at)
        name = cell.text if cell is not None else ""
        if row.out:
            return (
                f"its row is {row.out}; it was left out",
                "show it plainly if it is a part of the rig, else delete it",
            )
        if any(_TOTAL.fullmatch(each.text.strip(" :")) for each in row.cells.values()):
            return "it looks like a total; it was left out", "delete it, or give the unit another name"
        if cell is not None and cell.across > 2:
            return "", ""
        alone = len({each.place for each in row.cells.values()}) == 1
        if alone and (len(name) > _LONG or _ASIDE.match(name) or name.endswith(":")):
            return "", ""
        if not name_of(name) or is_blank(name):
            return "it has no name; it was left out", "write what it is called, or delete the row"
        if len(name) > _LONG:
            return (
                "its name is longer than any; it was left out",
                "write a short name, and the rest into a column 'Note'",
            )
        return None

    def _unit(self, sheet: BookSheet, row: BookRow, known: Heads, commas: bool) -> None:
        read = RowFacts(row, known, self._titles, lambda place: self._place(sheet, place), commas)
        questions = list(read.questions)
        typed, place = read.text("name"), self._place(sheet, f"{getattr(read.cell('name'), 'place', '')}")
        name = self._name(typed, place, questions)
        if len(row.cells) == 1 and len(known.known) > 1:
            why, do = "nothing stands in its row but the name", "write what is known of it; delete it if it is no unit"
            questions.append(Question(place, typed, why, do))
        again = self._again(read, sheet, name, questions)
        facts = read.facts
        kind, when, by = self._source(read, sheet, questions)
        title = read.text("what") or (typed if typed != name else "")
        kept = (
            []
            if _line(title) == _line(typed) or name == "-".join(typed.lower().split())
            else [f'named "{_line(typed)}"']
        )
        kept += [*(self._place(sheet, each) for each in read.kept), *self._unread(sheet, row, known)]
        notes = (read.text("note"),) if read.text("note") else ()
        named = tuple(each.replace(name=name) for each in questions)
        self.units.append(
            FoundUnit(name, title, sheet.name, row.number, facts, kind, when, by, tuple(kept), named, notes, again)
        )

    def _name(self, typed: str, place: str, questions: list[Question]) -> str:
        wanted = name_of(typed)
        if wanted in self.reserved:
            wanted = f"{wanted}-unit"
        name = free_name(wanted, frozenset(self._first))
        if name != wanted:
            why = f"{self._first[wanted]} makes the same name; this one is called {name}"
            questions.append(
                Question(place, typed, why, "give each a name of its own; delete one row if they are the same thing")
            )
        self._first[name] = f'"{_line(typed)}" in {place}'
        return name

    def _again(self, read: RowFacts, sheet: BookSheet, name: str, questions: list[Question]) -> tuple[str, ...]:
        """The names of the others, where there are several."""
        held = read.cell("quantity")
        if held is None:
            return ()
        count = re.fullmatch(r"(\d{1,2})(?:[.,]0+)?\s*(?:x|×|pcs?\.?|off)?", held.text.strip(), re.IGNORECASE)
        if count is None or int(count[1]) < 1:
            questions.append(
                Question(
                    self._place(sheet, held.place),
                    held.text,
                    "it is no number of units; one was taken",
                    "write a whole number, such as 2",
                )
            )
            return ()
        others = []
        for _ in range(int(count[1]) - 1):
            other = free_name(name, frozenset(self._first))
            self._first[other] = f"{name}, of which there are {count[1]},"
            others.append(other)
        serial = read.cell("serial")
        if others and serial is not None:
            questions.append(
                Question(
                    self._place(sheet, serial.place),
                    serial.text,
                    f"it stands for {count[1]} units, and each has a serial of its own",
                    "give each a row of its own",
                )
            )
        return tuple(others)

    def _source(self, read: RowFacts, sheet: BookSheet, questions: list[Question]) -> tuple[str, str, str]:
        """How the facts of a row are known, the day, and by whom. What the list does not say is assumed, on the day on which it was saved."""
        kind, when = "", ""
        for key in ("source", "date"):
            held = read.cell(key)
            if held is None:
                continue
            try:
                if key == "date":
                    when = (
                        held.text
                        if held.kind == "date" and re.fullmatch(r"\d{4}-\d\d-\d\d", held.text)
                        else day(held.text)
                    )
                else:
                    kind = word(held.text, ("measured", "leaflet", "assumed"), "source")
            except Unclear as fault:
                questions.append(Question(self._place(sheet, held.place), held.text, str(fault), fault.do))
        kind = kind or "assumed"
        return kind, when or (self.book.saved if kind == "assumed" else ""), read.text("by")

    def _unread(self, sheet: BookSheet, row: BookRow, known: Heads) -> Iterator[str]:
        """What stands in columns that are none of ours, in hidden ones, and what was pinned to cells."""
        for at, cell in sorted(row.cells.items()):
            if at not in known.known and cell.text:
                head = known.strange.get(at, "")
                yield f"{self._place(sheet, cell.place)}{f' {_line(head)}' if head else ''}: {_line(cell.text)}"
            if cell.remark:
                yield f"{self._place(sheet, cell.place)}, pinned to it: {_line(cell.remark)}"


def _headings(rows: tuple[BookRow, ...]) -> tuple[dict[int, Heads], frozenset[int]]:
    """The rows of headings by their number, and the numbers of those above that name groups of columns: they change how the row below is read."""
    found: dict[int, Heads] = {}
    groups: set[int] = set()
    for above, row in zip((None, *rows), rows, strict=False):
        alone = heads(row, None)
        both = (
            heads(row, above)
            if above is not None and all(cell.kind == "text" for cell in above.cells.values())
            else None
        )
        if both is not None and above is not None and (alone is None or both.known != alone.known):
            groups.add(above.number)
            found.pop(above.number, None)
            found[row.number] = both
        elif alone is not None:
            found[row.number] = alone
    return found, frozenset(groups)


def _titles(rows: tuple[BookRow, ...], known: Heads, groups: frozenset[int]) -> dict[int, str]:
    """All that stands above each column in its heading, the group's first."""
    told = [row for row in rows if row.number == known.row or (row.number == known.row - 1 and row.number in groups)]
    columns = {at for row in told for at in row.cells}
    return {at: " ".join(row.cells[at].text for row in told if at in row.cells) for at in columns}


def _line(text: str) -> str:
    return " / ".join(
        " ".join("".join(sign if sign.isprintable() else " " for sign in line).split())
        for line in text.splitlines()
        if line.strip()
    )


def _words(row: BookRow) -> str:
    cells = {cell.place: cell for _, cell in sorted(row.cells.items())}
    return " | ".join(
        _line(cell.text) + (f" [{_line(cell.remark)}]" if cell.remark else "")
        for cell in cells.values()
        if cell.text or cell.remark
    )
