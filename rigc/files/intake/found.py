"""What was found in a list: facts with the cells that they came from, and what must be asked."""

from __future__ import annotations

from rigc.record import Record


class Question(Record):
    """Something in the list that was not understood. `place` names sheet and cell, `said` is the user's own words, `why` what is unclear about them,
    `do` one thing to do. `name` is the unit that it is about, empty where none."""

    place: str
    said: str
    why: str
    do: str
    name: str = ""

    @property
    def where(self) -> str:
        """Its place and the user's words."""
        return self.place if not self.said else f'{self.place} "{" ".join(self.said.split())}"'

    @property
    def asked(self) -> str:
        """Place, words and what is unclear, on one line."""
        return f"{self.where}: {self.why}"


class Taken(Record):
    """A fact of a unit as a statement, without where it comes from. `places` are its cells, `typed` what stands in them, `differs` whether the
    statement has other words, `about` whether who wrote them was not sure, `key` the fact that is asked for."""

    key: str
    text: str
    places: tuple[str, ...]
    typed: str
    differs: bool = False
    about: bool = False


class FoundUnit(Record):
    """A row that is a unit. `kind`, `day` and `by` are where its facts come from; `again` is how many more of it there are."""

    name: str
    title: str
    sheet: str
    row: int
    facts: tuple[Taken, ...]
    kind: str
    day: str
    by: str
    kept: tuple[str, ...]
    questions: tuple[Question, ...]
    notes: tuple[str, ...]
    again: tuple[str, ...] = ()


class FoundList(Record):
    """All that a list held: its units; lines of it that are no unit, word by word; what must be asked about them; what was odd about reading it."""

    units: tuple[FoundUnit, ...]
    kept: tuple[str, ...]
    questions: tuple[Question, ...]
    remarks: tuple[str, ...]
