"""Leads that are laced together: those that lie within 10 mm of each other for 80 mm or more."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from rigc.analysis.routes.bundles import bundles
from rigc.analysis.routes.route_paths import RoutePath, RoutePaths
from rigc.traced.figure import Answer


@pytest.mark.parametrize(
    ("long_mm", "apart_mm", "laced"),
    [(79.9, 10.0, False), (80.0, 10.0, True), (80.1, 10.0, True), (80.0, 10.1, False), (80.0, 9.9, True)],
)
def test_exactly_at_the_limits(long_mm: float, apart_mm: float, laced: bool) -> None:
    """Two leads below the deck from x = 0: as long as the shorter of them they lie side by side."""
    leads: Any = SimpleNamespace(all=tuple(SimpleNamespace(mark=mark, signal="audio") for mark in ("A1", "A2")))
    paths = {
        "A1": RoutePath("A1", ((0.0, 0.0), (200.0, 0.0)), (False,), 1),
        "A2": RoutePath("A2", ((0.0, apart_mm), (long_mm, apart_mm)), (False,), 1),
    }
    told = {mark: Answer(f"{mark}.path", "", "by hand", rule="", source="") for mark in paths}
    found = bundles(leads, RoutePaths(paths, told)).all
    assert [(each.marks, float(each.together)) for each in found] == ([(("A1", "A2"), long_mm)] if laced else [])
