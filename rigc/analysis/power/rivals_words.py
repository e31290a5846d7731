"""Rivals for outlets -> the sentence that names them, the few outlets that would do, and what bars them from the others."""

from __future__ import annotations

from rigc.analysis.power.outlet_problem import RESERVE
from rigc.analysis.power.unfed import Held, Unfed
from rigc.diagnostics.wording import joined, listed
from rigc.model.rig import Rig

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
