"""Loops and blends: what each loop of a switcher holds, and the ways through a blender."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, Aspect
from rigc.model.rig import Rig
from rigc.model.wishes import BlendPath, Stop


def loops(rig: Rig) -> Iterator[Aspect]:
    """The leads that follow are told as leads."""
    for loop in rig.loops:
        text = stops_words(loop.stops) or "empty"
        yield Aspect("loop", f"{loop.number} of {loop.switcher}", "", text, text, DESIGN, span=loop.span)
    for blend in rig.blends:
        for number, path in enumerate(blend.paths, 1):
            text = _path(path)
            yield Aspect("blend", blend.unit, f"path {number}", text, text, DESIGN, span=path.span)


def stops_words(stops: tuple[Stop, ...]) -> str:
    """The stops with arrows between them."""
    return " -> ".join(stop.thing if stop.jack is None else f"{stop.thing}.{stop.jack}" for stop in stops)


def _path(path: BlendPath) -> str:
    way = f"loop {path.loop}" if path.loop is not None else stops_words(path.stops)
    parts = ("wet" if path.wet else "dry", path.share.typed, way, "inverted" if path.inverted else "")
    return ", ".join(filter(None, parts))


ASPECTS = loops
