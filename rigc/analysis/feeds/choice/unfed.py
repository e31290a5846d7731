"""Unfed: why units are left without an outlet, or without one that the rules of thumb want; and the sentence that says so."""

from __future__ import annotations

from rigc.analysis.feeds.choice.outlet_problem import RESERVE
from rigc.diagnostics.wording import joined, listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Span


class Held(Record):
    """Units that want exactly as many outlets as they are, so that nobody else can have these, and the voltages they want."""

    units: tuple[str, ...]
    outlets: tuple[Port, ...]
    volts: tuple[float, ...]


class Unfed(Record):
    """Units without an outlet for one common reason; `outlets` are those it is about.

    `why` is `no word` (nothing in the source feeds them), `no outlets` (the supplies to choose from have none), `unknown needs`,
    `rivals` (they want only these outlets, which are too few; none at all where `outlets` is empty); or there is a way for
    all but one of them, whichever it is, and none for all, because of outlets that the source wants `kept free`, a supply's
    `ceiling`, or several such things `together`; or the search ended `undecided` after more steps than it may take.

    Of rivals, `held` have some of the outlets to themselves. `bars` says in words what bars the others from the further outlets; where it is
    their current alone, `weaker_ma` is the most that one of those gives. `at_volts` is the voltage that they want where it is one.
    `turned` where nothing but their polarity bars them from every outlet that is free: one cause for all of them.
    """

    why: str
    units: tuple[str, ...]
    outlets: tuple[Port, ...]
    span: Span
    held: tuple[Held, ...] = ()
    weaker_ma: float | None = None
    at_volts: float | None = None
    bars: str = ""
    turned: bool = False

    @property
    def rivals(self) -> tuple[str, ...]:
        """The units that are not held elsewhere."""
        held = {name for each in self.held for name in each.units}
        return tuple(name for name in self.units if name not in held)

    @property
    def contested(self) -> tuple[Port, ...]:
        """The outlets that are left to them."""
        held = {port for each in self.held for port in each.outlets}
        return tuple(port for port in self.outlets if port not in held)


_NUMBERS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"]


def rivals_words(rig: Rig, unfed: Unfed) -> str:
    """As in: five units want four outlets: ...; the other outlets at 9 V give at most 100 mA."""
    count, places = len(unfed.rivals), len(unfed.contested)
    names = ", ".join(f"'{name.removeprefix(RESERVE)}' ({asked(rig, name)})" for name in unfed.rivals)
    told = (
        f"{_number(count)} unit{'s' * (count > 1)} want{'s' * (count == 1)} {_number(places)} "
        f"outlet{'s' * (places != 1)}: {names}"
    )
    only = f"only {joined(unfed.contested)} would do"
    volts = f" at {unfed.at_volts:g} V" if unfed.at_volts is not None else ""
    weaker = "" if unfed.weaker_ma is None else f"the others{volts} give at most {unfed.weaker_ma:g} mA"
    return "; ".join(filter(None, (told, only, weaker, unfed.bars, *map(_held, unfed.held))))


def asked(rig: Rig, name: str) -> str:
    """What a unit asks of an outlet."""
    unit = rig.units.get(name)
    if unit is None:
        return "reserved"
    volts = f"{unit.volts.value:g} V" if unit.volts is not None else ""
    current = f"{unit.draws_ma.value:g} mA" if unit.draws_ma is not None else ""
    return " ".join(filter(None, (volts, (unit.current or "").upper(), current)))


def _held(held: Held) -> str:
    verb = "is" if len(held.outlets) == 1 else "are"
    units = listed(name.removeprefix(RESERVE) for name in held.units)
    return f"{joined(held.outlets)} {verb} needed by {units} at {joined(f'{each:g} V' for each in held.volts)}"


def _number(count: int) -> str:
    return _NUMBERS[count] if count < len(_NUMBERS) else str(count)
