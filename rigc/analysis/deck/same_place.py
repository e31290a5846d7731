"""SamePlaces: what is not known of a jack's place -> the same of every jack that the same line of the source declares, of units that are like
one another."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.record import Record


def place_of(thing: str, jack: str) -> str:
    """`where 'tern.out' is on its body`: alike in every finding that asks for it or wants it."""
    return f"where '{thing}.{jack}' is on its body"


class SamePlaces(Record):
    """By the want of each jack's place, those that are stated with it by one line."""

    by_want: dict[str, list[str]]

    def of(self, want: str) -> tuple[str, ...]:
        """The want, and those that go with it once it is written."""
        return (want, *(other for other in self.by_want.get(want, ()) if other != want))


def same_places(rig: Rig) -> SamePlaces:
    """Looks at every jack once."""
    by_line: dict[int, list[str]] = {}
    by_want: dict[str, list[str]] = {}
    for thing in rig.things.values():
        for jack in thing.jacks:
            want = place_of(thing.name, jack.name)
            by_want[want] = by_line.setdefault(id(jack.span), [])
            by_want[want].append(want)
    return SamePlaces(by_want)


COMPUTE = same_places
