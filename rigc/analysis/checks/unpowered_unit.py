"""A unit that needs power gets none: nothing in the source feeds it, or no assignment of outlets serves all units.

Why it matters: a dark unit mostly mutes everything behind it.
What to do: feed it, let fewer units want the same outlet, or add a supply.
Source: arithmetic on stated values, every assignment tried. Units may share an outlet by themselves only where both
are analogue, of ordinary gain, neighbours in the chain and of negative ground [common practice, no source].
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.power.outlet_problem import RESERVE
from rigc.analysis.power.unfed import Unfed
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig

KIND = Kind(
    "P12",
    "unpowered-unit",
    Level.ERROR,
    __doc__,
    "every unit that needs power has an outlet that suits it",
    "arithmetic on stated values, every assignment tried",
)


def unpowered_unit(rig: Rig, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each cause; can't-check where a unit does not say what it needs."""
    for unfed in power.unfed:
        if unfed.why == "unknown needs":
            yield KIND.cant_check(
                unfed.span,
                f"'{unfed.units[0]}' has no outlet and does not say what it needs; none can be chosen",
                subject=unfed.units,
                help=f"write `needs` in '{unfed.units[0]}'",
            )
        elif unfed.why == "undecided":
            yield KIND.cant_check(
                unfed.span,
                f"no outlets for {listed(unfed.units)} were found in {power.steps} steps; whether there is a way is not known",
                subject=unfed.units,
                help="state the outlets of some units, those that draw most first",
            )
        else:
            told = {"no word": _no_word, "no outlets": _no_outlets, "rivals": _rivals}
            message, help = told.get(unfed.why, _together)(rig, unfed)
            yield KIND.at(
                unfed.span,
                message,
                subject=(*unfed.units, *(str(port) for port in unfed.outlets)),
                label="no outlet",
                help=help,
            )


def _no_word(rig: Rig, unfed: Unfed) -> tuple[str, str]:
    one = len(unfed.units) == 1
    supplies = ", ".join(rig.supplies)
    help = f"write `others from {supplies}` in the power block" if supplies else "declare a supply and feed from it"
    return f"nothing feeds {listed(unfed.units)}, and {'it needs' if one else 'they need'} power", help


def _no_outlets(rig: Rig, unfed: Unfed) -> tuple[str, str]:
    supplies = listed(rig.power.others)
    return f"{supplies} shall feed {listed(unfed.units)} and declares no outlet", f"declare the outlets of {supplies}"


def _rivals(rig: Rig, unfed: Unfed) -> tuple[str, str]:
    wants = ", ".join(f"'{name.removeprefix(RESERVE)}' ({_asked(rig, name)})" for name in unfed.units)
    if not unfed.outlets:
        supplies = listed(rig.power.others, "or")
        return f"no free outlet of {supplies} suits {wants}", "feed it from another supply, or add one that suits it"
    outlets = " and ".join(str(port) for port in unfed.outlets)
    count = len(unfed.units)
    suits = "suits them" if len(unfed.outlets) == 1 else "suit them"
    short = count - len(unfed.outlets)
    return (
        f"{count} units want {len(unfed.outlets)} outlet{'s' * (len(unfed.outlets) > 1)}: {wants}; only {outlets} {suits}",
        f"add {short} more such outlet{'s' * (short > 1)}, or say which of them `may share`",
    )


def _together(rig: Rig, unfed: Unfed) -> tuple[str, str]:
    supplies = listed(rig.power.others)
    because, help = {
        "kept free": ("that would use outlets that are kept free", "keep fewer outlets free, or add a supply"),
        "ceiling": ("that is more than its ceiling allows", "feed one of them from another supply"),
    }.get(unfed.why, ("ceilings, kept outlets and sharing rules together forbid it", "add a supply"))
    names = listed(name.removeprefix(RESERVE) for name in unfed.units)
    return f"{names} can't all be fed from {supplies}: {because}", help


def _asked(rig: Rig, name: str) -> str:
    unit = rig.units.get(name)
    if unit is None:
        return "reserved"
    volts = f"{unit.volts.value:g} V" if unit.volts is not None else ""
    current = f"{unit.draws_ma.value:g} mA" if unit.draws_ma is not None else ""
    return " ".join(filter(None, (volts, (unit.current or "").upper(), current)))


CHECK = unpowered_unit
