"""One row under its headings -> the facts of a unit, each with its cells, and what can't be told of it without guessing."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import TypeVar

from rigc.facts.countries import is_country
from rigc.files.intake.books.book import BookCell, BookRow
from rigc.files.intake.cells.amounts import Amount, amount, is_blank, unit_of
from rigc.files.intake.cells.numbers import NUMBER, number
from rigc.files.intake.cells.power_words import Power, barrel, needs, power, window
from rigc.files.intake.cells.sizes import sharing, size
from rigc.files.intake.cells.unclear import Unclear
from rigc.files.intake.cells.words import polarity, traits, word
from rigc.files.intake.found import Question, Taken
from rigc.files.intake.heads import Heads
from rigc.model.asked_facts import FACTS, SIDES

T = TypeVar("T")
Part = tuple[Amount, BookCell]
"""What a cell says, and the cell."""

_CURRENCIES = {"€": "EUR", "£": "GBP", "zł": "PLN"}


class RowFacts:
    """The facts of one row. `facts`, `questions`, and `kept`, what can't be stated, are complete once it is made."""

    def __init__(
        self, row: BookRow, heads: Heads, titles: dict[int, str], place: Callable[[str], str], decimal_commas: bool
    ) -> None:
        self._row, self._heads, self._titles, self._place, self._commas = row, heads, titles, place, decimal_commas
        self.questions: list[Question] = []
        self.kept: list[str] = []
        self._jacks: set[str] = set()
        found: list[Taken] = []
        for each in self._all():
            if each.key in (other.key for other in found) and each.key != "traits":
                self._ask(
                    each.places,
                    each.typed,
                    f"it says '{each.text}', and another cell of its row says it already",
                    "keep one of the two",
                )
            else:
                found.append(each)
        order = [fact.key for fact in FACTS]
        self.facts = tuple(sorted(found, key=lambda each: order.index(each.key)))

    def cell(self, key: str) -> BookCell | None:
        """The cell of a column of ours, if it says something."""
        at = self._heads.at(key)
        held = None if at is None else self._row.cells.get(at)
        if held is None or at is None or held.text in self._heads.known[at].ours.words:
            return held
        return None if is_blank(held.text) and not held.formula else held

    def text(self, key: str) -> str:
        """What it says."""
        held = self.cell(key)
        return "" if held is None else held.text

    def _unit(self, key: str) -> str:
        at = self._heads.at(key)
        return "" if at is None else self._heads.known[at].unit

    def _heading(self, key: str) -> str:
        """All that stands above a column of ours."""
        at = self._heads.at(key)
        return "" if at is None else self._titles.get(at, "")

    def _all(self) -> Iterator[Taken]:
        yield from self._body()
        yield from self._measured("mass", "g")
        yield from self._measured("draws", "mA", most=True)
        yield from self._measured("starts", "mA", most=True)
        yield from self._measured("latency", "ms")
        yield from self._switch()
        yield from self._power()
        for key in ("input", "output"):
            yield from self._jack(key)
        yield from self._inlet()
        yield from self._levels("level in", "in", "most in", "max")
        yield from self._levels("level out", "out", "peak out", "peak")
        for key in ("bypass", "unpowered", "ground", "feet", "base"):
            yield from self._word(key)
        yield from self._traits()
        for key in ("version", "firmware", "serial", "owner"):
            yield from self._quoted(key)
        for key in ("insured", "price"):
            yield from self._money(key)
        yield from self._origin()

    # ---- parts that several facts need -------------------------------------------------------------------------------

    def _ask(self, places: tuple[str, ...], said: str, why: str, do: str) -> None:
        self.questions.append(Question(self._place(", ".join(places)), said, why, do))

    def _read(self, key: str, reads: Callable[[str], T]) -> tuple[T, BookCell] | None:
        """What a cell says, if it says something that can be understood; else it is asked about."""
        held = self.cell(key)
        if held is None:
            return None
        try:
            if held.kind == "error" or not held.text:
                raise Unclear("its formula has no result", "write the value itself")
            if held.kind == "date":
                raise Unclear(
                    "it is a date to the program that saved it", "format the cell as text and write the value anew"
                )
            return reads(held.text), held
        except Unclear as fault:
            self._ask((held.place,), held.text or held.formula, str(fault), fault.do)
            return None

    def _say(self, key: str, reads: Callable[[str], str]) -> Part | None:
        found = self._read(key, reads)
        return None if found is None else (Amount(found[0]), found[1])

    def _amount(self, key: str, kind: str, *, most: bool = False) -> Part | None:
        return self._read(key, lambda text: amount(text, kind, self._unit(key), self._commas, most=most))

    def _taken(self, key: str, text: str, cells: tuple[BookCell, ...], about: bool = False) -> Taken:
        """A fact, with the user's words, and the formula that made them."""
        once = {each.place: each for each in cells}
        typed = ", ".join(
            f"{each.text} (={each.formula.removeprefix('=')})" if each.formula else each.text for each in once.values()
        )
        differs = any(each.formula or not _signs(each.text) <= _signs(text) for each in cells)
        return Taken(key, text, tuple(once), typed, differs, about)

    def _measured(self, key: str, kind: str, *, most: bool = False) -> Iterator[Taken]:
        found = self._amount(key, kind, most=most)
        if found is not None:
            yield self._taken(key, f"{key} {found[0].text}", (found[1],), found[0].about)

    def _word(self, key: str) -> Iterator[Taken]:
        at = self._heads.at(key)
        words = () if at is None else self._heads.known[at].ours.words
        found = self._say(key, lambda text: word(text, words, key))
        if found is not None:
            yield self._taken(key, f"{key} {found[0].text}", (found[1],))

    def _quoted(self, key: str) -> Iterator[Taken]:
        held = self.cell(key)
        if held is not None:
            yield self._taken(key, f"{key} {quoted(held.text)}", (held,))

    # ---- facts of several cells, or in words of their own ----------------------------------------------------------------

    def _body(self) -> Iterator[Taken]:
        names = ("width", "depth", "height")
        asked = len(self.questions)
        parts = [self._amount(key, "mm") for key in names]
        known = tuple(each for each in parts if each is not None)
        if len(known) == 3:
            text = f"body {sharing(' x ', [each.text for each, _ in known])}"
            yield self._taken("body", text, tuple(held for _, held in known), any(each.about for each, _ in known))
        elif known:
            lacking = " and ".join(key for key, each in zip(names, parts, strict=True) if each is None)
            self._left_over(
                known,
                asked,
                f"a body is stated whole, and its {lacking} is not known",
                "measure it and write it in its column",
            )
        found = self._read("size", lambda text: size(text, self._heading("size"), self._unit("size"), self._commas))
        if found is not None:
            yield self._taken("body", f"body {found[0].text}", (found[1],), found[0].about)

    def _switch(self) -> Iterator[Taken]:
        def reads(text: str) -> str:
            parts = re.split(r"\s*[;/x×]\s*|,\s+", text.strip())
            if len(parts) != 2:
                raise Unclear(
                    "it is not two distances",
                    "write them from the left edge and from the front edge, such as 35, 20 mm",
                )
            unit = self._unit("switch") or re.sub(rf"{NUMBER}\s*", "", parts[1])
            return f"switch at {sharing(', ', [amount(part, 'mm', unit_of(unit, 'mm'), self._commas).text for part in parts])}"

        found = self._say("switch", reads)
        if found is not None:
            yield self._taken("switch", found[0].text, (found[1],))

    def _power(self) -> Iterator[Taken]:
        pole = self._say("polarity", _pole)
        if pole is not None:
            yield self._taken("polarity", f"polarity {pole[0].text}", (pole[1],))
        stated = re.search(r"(?<![a-uw-z])(dc|ac)(?![a-z])", self._heading("needs").lower())
        kind = "dc" if pole is not None else stated[1] if stated else ""
        for found in (
            self._read("power", lambda text: power(text, self._commas, "dc" if pole is not None else "")),
            self._read("needs", lambda text: needs(text, self._unit("needs"), self._commas, kind)),
        ):
            if found is not None:
                yield from self._power_parts(*found)
        accepted = self._say("accepts", lambda text: window(text, self._unit("accepts"), self._commas))
        if accepted is not None:
            yield self._taken("accepts", f"accepts {accepted[0].text}", (accepted[1],))

    def _power_parts(self, part: Power, held: BookCell) -> Iterator[Taken]:
        for key, text in (("needs", part.needs), ("accepts", part.accepts), ("polarity", part.polarity)):
            if text:
                yield self._taken(key, f"{key} {text}", (held,))
        if part.draws is not None:
            yield self._taken("draws", f"draws {part.draws.text}", (held,), part.draws.about)
        if part.inlet:
            yield self._taken("inlet", f"inlet dc {part.inlet}", (held,))
        if part.passive:
            yield self._taken("traits", "passive", (held,))

    def _jack(self, key: str) -> Iterator[Taken]:
        asked = len(self.questions)
        at = self._heads.at(f"{key} jack")
        words = () if at is None else self._heads.known[at].ours.words
        kind = self._say(f"{key} jack", lambda text: word(text, words, "jack"))
        ohm = self._amount(f"{key} impedance", "ohm")
        where = self._where(key)
        if kind is None:
            self._no_jack(key, (*([ohm] if ohm else []), *where), asked)
            return
        self._jacks.add(key)
        parts = (kind, *([ohm] if ohm else []), *where)
        name = {"input": "in", "output": "out"}[key]
        text = f"{key} {name} {kind[0].text}{f' {ohm[0].text}' if ohm else ''}{self._location(where)}"
        yield self._taken(key, text, tuple(held for _, held in parts), any(each.about for each, _ in parts))

    def _no_jack(self, key: str, parts: tuple[Part, ...], asked: int) -> None:
        why = f"the kind of its {key} jack is not known"
        self._left_over(parts, asked, why, f"write ts, trs, mini-trs, din or xlr as its {key} jack")

    def _inlet(self) -> Iterator[Taken]:
        asked = len(self.questions)
        kind = self._say("inlet", lambda text: barrel(text, self._commas))
        where = self._where("inlet")
        if kind is None:
            self._left_over(
                where,
                asked,
                "its kind of power inlet is not known",
                "write its kind into the column of its power inlet, such as barrel 5.5 x 2.1 mm",
            )
            return
        text = f"inlet dc {kind[0].text}{self._location(where)}"
        yield self._taken(
            "inlet", text, tuple(held for _, held in (kind, *where)), any(each.about for each, _ in where)
        )

    def _where(self, key: str) -> tuple[Part, ...]:
        """Side, distance and height of a jack; none where the side or the distance is not known, since neither says anything alone."""
        asked = len(self.questions)
        side = self._say(f"{key} side", lambda text: word(text, SIDES, "side"))
        along, up = self._amount(f"{key} along", "mm"), self._amount(f"{key} up", "mm")
        if side is not None and along is not None:
            return (side, along, *([up] if up else []))
        why = f"where the {key} is must be stated by side and distance, and one of them is not known"
        self._left_over(
            tuple(each for each in (side, along, up) if each), asked, why, "measure it and write it in its column"
        )
        return ()

    def _location(self, where: tuple[Part, ...]) -> str:
        said = [each.text for each, _ in where]
        return "" if not said else f" {said[0]} {said[1]}" + (f" up {said[2]}" if len(said) > 2 else "")

    def _left_over(self, parts: tuple[Part, ...], asked: int, why: str, do: str) -> None:
        """Cells that say nothing alone: they are asked about, or only kept where a cell that they go with was asked about since there were so many questions."""
        places, said = tuple(held.place for _, held in parts), ", ".join(held.text for _, held in parts)
        if parts and len(self.questions) > asked:
            self.kept.append(f"{', '.join(places)}: {said}")
        elif parts:
            self._ask(places, said, why, do)

    def _levels(self, key: str, jack: str, most: str, said: str) -> Iterator[Taken]:
        asked = len(self.questions)
        nominal, highest = self._amount(key, "dBu"), self._amount(most, "dBu", most=True)
        parts = tuple(each for each in (nominal, highest) if each)
        if f"{jack}put" not in self._jacks:
            self._no_jack(f"{jack}put", parts, asked)
        elif parts:
            text = (f" {nominal[0].text}" if nominal else "") + (f" {said} {highest[0].text}" if highest else "")
            yield self._taken(
                key, f"level {jack}{text}", tuple(held for _, held in parts), any(each.about for each, _ in parts)
            )

    def _traits(self) -> Iterator[Taken]:
        found = self._read("traits", traits)
        if found is not None:
            yield from (Taken("traits", each, (found[1].place,), found[1].text) for each in found[0])

    def _money(self, key: str) -> Iterator[Taken]:
        found = self._say(key, lambda text: _money(text, self._heading(key), self._commas))
        if found is not None:
            yield self._taken(key, f"{key} {found[0].text}", (found[1],))

    def _origin(self) -> Iterator[Taken]:
        def reads(text: str) -> str:
            if not is_country(text.upper()):
                raise Unclear(f"'{text}' is no country's code", "write the two letters of ISO 3166-1, such as PL")
            return text.upper()

        found = self._say("origin", reads)
        if found is not None:
            yield self._taken("origin", f"origin {found[0].text}", (found[1],))


def quoted(text: str) -> str:
    """A text of the language."""
    plain = " / ".join(line.strip() for line in text.splitlines() if line.strip())
    return '"' + "".join(sign for sign in plain if sign.isprintable()).replace("\\", "\\\\").replace('"', '\\"') + '"'


def _pole(text: str) -> str:
    said = polarity(text)
    if not said:
        raise Unclear(
            "it names no pole in the middle",
            "look at the drawing beside the inlet; write centre-negative or centre-positive",
        )
    return said


def _money(text: str, heading: str, decimal_commas: bool) -> str:
    plain = re.sub(r",-+$", "", text.strip()).strip()
    words = [_CURRENCIES.get(each, each.upper()) for each in re.findall(r"[A-Za-z]{3}\b|[€£$¥]|zł", plain)] or [
        _CURRENCIES.get(each, each) for each in re.findall(r"\b[A-Z]{3}\b|[€£$¥]", heading)
    ]
    found = re.search(NUMBER, plain)
    if found is None or re.sub(rf"{NUMBER}|[A-Za-z]{{3}}\b|[€£$¥]|zł|\s|,-", "", plain):
        raise Unclear("it is no price", "write one amount with its currency, such as 590 EUR")
    if len(words) != 1 or not re.fullmatch(r"[A-Z]{3}", words[0]):
        said = f"'{words[0]}' is of several countries" if words else "it has no currency"
        raise Unclear(said, "write the three letters of the currency behind it, such as 590 EUR")
    return f"{number(found[0], decimal_commas)} {words[0]}"


def _signs(text: str) -> set[str]:
    return set(re.findall(r"\d+(?:\.\d+)?|[^\W\d_]+|[^\w\s\"]", text.lower()))
