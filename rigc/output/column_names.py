"""A table's columns -> their names in data: stable, unique, in snake case, with the unit at the end (`cut_mm`)."""

from __future__ import annotations

import re

from rigc.reports.content import Column, Table

_SPELLED = {"%": " percent ", "Ω": "ohm", "µ": "u", "μ": "u", "°": "deg", "²": "2", "³": "3", "/": " per "}


def column_names(table: Table) -> tuple[str, ...]:
    """One name a column, in order; a name that is there already gets a number (`v`, `v_2`)."""
    names: list[str] = []
    for column in table.columns:
        name = _name(column)
        same = sum(1 for other in table.columns[: len(names)] if _name(other) == name)
        names.append(f"{name}_{same + 1}" if same else name)
    return tuple(names)


def _name(column: Column) -> str:
    name = column.key or _snake(column.head).lower() or "column"
    unit = _snake(column.unit)
    return f"{name}_{unit}" if unit and not name.endswith(f"_{unit}") else name


def _snake(text: str) -> str:
    spelled = "".join(_SPELLED.get(character, character) for character in text)
    return re.sub(r"\W+", "_", spelled).strip("_")
