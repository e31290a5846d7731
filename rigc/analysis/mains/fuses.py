"""Stated fuses of what is in use -> in which scenarios each is the right one, and the spares that fit."""

from __future__ import annotations

import re

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_things
from rigc.analysis.mains.primary import primary
from rigc.model.records import Spare
from rigc.model.rig import Rig, Scenario
from rigc.model.things import Fuse, Instrument, Supply, Thing, Unit
from rigc.record import Record
from rigc.traced.given import unstated

_RATING = re.compile(r"(\d+(?:\.\d+)?)[ \t]*(m?)A\b")
_KIND = re.compile(r"\b(FF|F|M|TT|T)(?=[ \t]*\d)")
_SIZE = re.compile(r"(\d+(?:\.\d+)?)[ \t]*(?:mm)?[ \t]*[x×][ \t]*(\d+(?:\.\d+)?)[ \t]*mm\b")


class FittedFuse(Record):
    """A fuse of a thing: the `scenarios` in which it is the right one (empty: in all), whether it is so in `any` of them, and the
    spares that fit."""

    thing: str
    fuse: Fuse
    scenarios: tuple[str, ...]
    wanted: bool
    spares: tuple[Spare, ...]

    @property
    def at(self) -> str:
        """` at 230 V`; empty where it is the right one at every mains."""
        return "" if self.fuse.at_v is None else f" at {self.fuse.at_v.typed}"

    @property
    def carried(self) -> int:
        """How many spares of it travel."""
        return sum(spare.count for spare in self.spares)


class Fuses(Record):
    """Those of units, amps, supplies in use, of keyboards and of mains strips, in the order of the source."""

    all: tuple[FittedFuse, ...]

    def of(self, thing: str) -> list[str]:
        """Its fuses in words, each with its mains where it is not the right one at all."""
        return [f"{each.fuse.words}{each.at}" for each in self.all if each.thing == thing]

    def fitting(self, spare: Spare) -> tuple[str, ...]:
        """The things whose fuse a spare is."""
        return tuple(dict.fromkeys(each.thing for each in self.all if spare in each.spares))


def fuses(rig: Rig, power: PowerAssignment) -> Fuses:
    """A spare told in words fits where its characteristic and rating are the same, and its size, if both say one."""
    found = []
    for thing in (*used_things(rig, power), *rig.instruments.values(), *rig.mains_strips.values()):
        for fuse in thing.fuses:
            right = tuple(name for name, scenario in rig.scenarios.items() if _right(thing, fuse, scenario))
            everywhere = len(right) == len(rig.scenarios)
            spares = tuple(spare for spare in rig.spares if fits(spare.what, fuse))
            found.append(FittedFuse(thing.name, fuse, () if everywhere else right, everywhere or bool(right), spares))
    return Fuses(tuple(found))


def _right(thing: Thing | Instrument, fuse: Fuse, scenario: Scenario) -> bool:
    """Whether its mains is that of the position in which the thing's selector stands, or that of the scenario."""
    mains = scenario.mains
    if fuse.at_v is None or mains is None:
        return True
    if isinstance(thing, Supply) or (isinstance(thing, Unit | Instrument) and thing.mains):
        place = primary(scenario, mains, thing, unstated(f"what {thing.name} takes")).place
        if place is not None:
            return place.low_v <= fuse.at_v.value <= place.high_v
    return mains.low_v <= fuse.at_v.value <= mains.high_v


def fits(what: str, fuse: Fuse) -> bool:
    """Whether a spare that is told so is that fuse: `fuse T 630 mA`, `fuse T 0.63 A 5 x 20 mm`."""
    kind, size = _KIND.search(what), _SIZE.search(what)
    if not same_rating(what, fuse) or (kind[1] if kind else "") != fuse.kind or not ("fuse" in what.lower() or kind):
        return False
    return size is None or fuse.size_mm is None or (float(size[1]), float(size[2])) == fuse.size_mm


def same_rating(what: str, fuse: Fuse) -> bool:
    """Whether a spare that is told so has the rating of that fuse, whatever its characteristic and size."""
    rating = _RATING.search(what)
    return rating is not None and abs(float(rating[1]) * (1 if rating[2] else 1000) - fuse.rating_ma.value) <= 1e-6


COMPUTE = fuses
