"""Changed things -> the tables of a list of changes: one for the player, one for each kind of work."""

from __future__ import annotations

from collections.abc import Callable

from rigc.analysis.revision.compared.aspect import PAPER, RELABEL
from rigc.analysis.revision.compared.changed import ADDED, REMOVED, ChangedThing, Difference
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.revision.changes.changes import Changes
from rigc.reports.revision.changes.words import MEANING, cause_words, field_words, thing_words

PLAYED = ("loop", "blend", "chain", "intent", "preset", "song", "MIDI channel", "instrument")
"""Kinds that the player's hands and feet meet."""
PLAYED_OF_A_UNIT = ("", "name", "switches", "knobs", "treadle", "bypass", "latency", "gain")

NOTHING = "–"


def player_table(changes: Changes) -> Table:
    """What the player will notice."""
    rows = _rows(changes, _is_played)
    return Table("player", f"For the player: {_counted(rows)}", _columns(changes, "before", "now"), rows)


def work_table(changes: Changes, work: str) -> Table:
    """What has to be done of one kind; on paper without what the player's table has."""
    rows = _rows(changes, lambda thing, each: _is_work(thing, each, work))
    heads = ("take off", "print") if work == RELABEL else ("before", "now")
    return Table(work, f"{work.capitalize()}: {MEANING[work]}", _columns(changes, *heads), rows)


def held_table(changes: Changes) -> Table:
    """What is held back, and why."""
    columns = (Column("thing"), Column("what"), Column("before"), Column("now"), Column("why it is held back"))
    rows = tuple(
        Row(tuple(map(Cell, (*_texts(thing, each), each.held))))
        for thing in changes.things
        for each in thing.differences
        if each.held
    )
    return Table("held", "Held back: nothing has to be done", columns, rows)


def detail_table(changes: Changes) -> Table:
    """What is only told when everything is asked for."""
    rows = _rows(changes, lambda _, each: each.detail and not each.held)
    return Table("details", "Details", _columns(changes, "before", "now"), rows)


def brief_table(changes: Changes) -> Table:
    """One line a thing."""
    columns = (Column("thing"), Column("work"), Column("what differs"))
    rows = tuple(
        Row(
            tuple(
                map(Cell, (thing_words(each), ", ".join(each.work), _brief(each), *_cause(changes, each, each.causes)))
            )
        )
        for each in changes.things
    )
    return Table("things", "What differs", columns if changes.cause else (*columns, Column("cause")), rows)


def _counted(rows: tuple[Row, ...]) -> str:
    """How many changes there are."""
    return f"{len(rows)} change{'' if len(rows) == 1 else 's'} to know of" if rows else "nothing changes"


def _columns(changes: Changes, before: str, now: str) -> tuple[Column, ...]:
    """Without the cause where there is one for all."""
    columns = (Column("thing"), Column("what"), Column(before, key="before"), Column(now, key="now"))
    return columns if changes.cause else (*columns, Column("cause"))


def _rows(changes: Changes, wanted: Callable[[ChangedThing, Difference], bool]) -> tuple[Row, ...]:
    return tuple(
        Row(tuple(map(Cell, (*_texts(thing, each), *_cause(changes, thing, each.causes)))))
        for thing in changes.things
        for each in thing.differences
        if wanted(thing, each)
    )


def _cause(changes: Changes, thing: ChangedThing, causes: tuple[str, ...]) -> tuple[str, ...]:
    return () if changes.cause else (cause_words(thing, causes),)


def _texts(thing: ChangedThing, each: Difference) -> tuple[str, str, str, str]:
    before, now = (NOTHING if text is None else text for text in (each.before, each.now))
    return thing_words(thing), field_words(thing, each), before, now


def _is_played(thing: ChangedThing, each: Difference) -> bool:
    if not each.told:
        return False
    return thing.kind in PLAYED or (thing.kind == "unit" and each.field in PLAYED_OF_A_UNIT)


def _is_work(thing: ChangedThing, each: Difference, work: str) -> bool:
    if not each.told or work not in each.work:
        return False
    return work != PAPER or not _is_played(thing, each)


def _brief(thing: ChangedThing) -> str:
    """What differs of a thing in a few words: a lone text itself, else the names of the fields."""
    parts = []
    for each in thing.differences:
        if thing.how not in (ADDED, REMOVED) and each.field == "":
            parts.append(f"{each.before} -> {each.now}")
        elif each.field == "name":
            parts.append(f"{field_words(thing, each)} {each.before}")
        else:
            parts.append("labels" if each.field.startswith("label") else field_words(thing, each))
    return ", ".join(dict.fromkeys(parts[:1] if thing.how in (ADDED, REMOVED) else parts))
