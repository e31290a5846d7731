"""Batteries: how long a show keeps one working."""

from __future__ import annotations

from rigc.facts.fact import Fact

SHOW_H = Fact(
    4, "h", "time that a unit stays plugged in for one show, sound check included", "common practice, no source"
)
