"""A sheet of a rig, made once however often it is asked for: by the folder, and by the sheet that compares two folders."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any
from weakref import WeakKeyDictionary

from rigc.analysis.results import Results
from rigc.reports.content import NoSheet, Sheet

_made: WeakKeyDictionary[Results, dict[Callable[..., Any], Sheet | NoSheet]] = WeakKeyDictionary()


def made(results: Results, sheet: Callable[..., Any]) -> Sheet | NoSheet:
    """What a `SHEET` function makes of these results."""
    known = _made.setdefault(results, {})
    if sheet not in known:
        known[sheet] = results.call(sheet)
    return known[sheet]
