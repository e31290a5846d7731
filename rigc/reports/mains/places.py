"""Scenarios and the tables of countries -> the mains sheet's rows by place."""

from __future__ import annotations

from rigc.analysis.mains.country_mains import agrees
from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.facts.countries import FIRST, SECOND, Mains, country
from rigc.model.rig import Rig, Scenario
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell

_COLUMNS = (
    Column("scenario"),
    Column("country"),
    Column("mains, as the scenario states"),
    Column("plug", folds="plug {}"),
    Column("the table says"),
    Column("another table says"),
    Column("all supplies", "VA", number=True),
    Column("all supplies", "A", number=True, key="all_supplies_a"),
)
_WITH_OWN = (Column("with amps", "VA", number=True), Column("with amps", "A", number=True, key="with_amps_a"))
_LAST = (
    Column("note", folds="{}"),
    Column("what it is", key="title"),
)


def place_table(rig: Rig, loads: MainsLoads) -> Table:
    """A row for every scenario; what amps and the like take stands in it where one of them says so."""
    rows = tuple(_row(scenario, loads) for scenario in rig.scenarios.values())
    columns = (*_COLUMNS, *(_WITH_OWN if loads.own.all else ()), *_LAST)
    return Table("places", "By scenario and country", columns, rows, empty="", landscape=True)


def _row(scenario: Scenario, loads: MainsLoads) -> Row:
    listed = None if scenario.country is None else country(scenario.country)
    first, second = (None, None) if listed is None else (listed.first, listed.second)
    differ = listed is not None and listed.differ
    return Row(
        (
            Cell(scenario.name, strong=True),
            Cell(scenario.country or "?"),
            Cell("?" if scenario.mains is None else scenario.mains.typed),
            Cell(_plugs(first, second), mark="tables differ" if differ else ""),
            Cell("not listed" if first is None else str(first)),
            Cell("not listed" if second is None else str(second) if differ or first is None else "the same"),
            figure_cell(loads.places[scenario.name]),
            figure_cell(loads.amperes[scenario.name]),
            *(figure_cell(each[scenario.name]) for each in (loads.places_with_own, loads.amperes_with_own) if each),
            Cell(_note(scenario, first, second)),
            Cell(scenario.title),
        )
    )


def _plugs(first: Mains | None, second: Mains | None) -> str:
    """The letters; both sets where the tables differ."""
    sets = list(dict.fromkeys(" ".join(each.plugs) for each in (first, second) if each is not None))
    return " / ".join(sets) or "?"


def _note(scenario: Scenario, first: Mains | None, second: Mains | None) -> str:
    notes = []
    if scenario.country is None:
        notes.append("no country is stated")
    elif first is None and second is None:
        what = "several countries, with different plugs" if scenario.country == "EU" else "no row in either table"
        notes.append(what)
    elif scenario.mains is not None and not agrees(scenario, first) and not agrees(scenario, second):
        notes.append("the scenario states other mains than the tables")
    return "; ".join((*notes, "ask the venue"))


SOURCES = (
    f"Tables: the first is {FIRST}; the other is {SECOND}. Where they differ, both are printed and neither is chosen. "
    "Both describe sockets in homes: a stage may have others.",
)
