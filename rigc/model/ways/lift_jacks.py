"""A thing -> at which of its jacks something says that a ground lift is."""

from __future__ import annotations

from typing import Any


def lift_jacks(thing: Any) -> tuple[str, ...]:
    """By name: jacks whose block states a lift, and those where a way through a transformer ends, of which only the scenarios may tell."""
    isolated = {path.end for path in getattr(thing, "paths", ()) if path.how.startswith("transformer")}
    return tuple(jack.name for jack in thing.jacks if jack.lift or jack.name in isolated)
