"""What is not known of a jack's place -> the same of every jack that the same line of the source declares, of units that are like one another."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.model.rig import Rig


def place_of(thing: str, jack: str) -> str:
    """`where 'tern.out' is on its body`: alike in every finding that asks for it or wants it."""
    return f"where '{thing}.{jack}' is on its body"


def same_places(rig: Rig, want: str) -> tuple[str, ...]:
    """The want, and those that go with it once it is written."""
    told = list(_places(rig))
    spans = {id(span) for said, span in told if said == want}
    return (want, *(said for said, span in told if id(span) in spans and said != want))


def _places(rig: Rig) -> Iterator[tuple[str, object]]:
    for thing in rig.things.values():
        for jack in thing.jacks:
            yield place_of(thing.name, jack.name), jack.span
