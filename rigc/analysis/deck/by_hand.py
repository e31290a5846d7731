"""A thing -> whether it is worked by hand and never trodden on."""

from __future__ import annotations

from rigc.model.things import Thing


def worked_by_hand(thing: Thing) -> bool:
    """Whether the source says so: it needs no room for a foot and may stand behind."""
    return "worked by hand" in thing.flags
