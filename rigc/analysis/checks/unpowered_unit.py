"""A unit that needs power gets none: nothing in the source feeds it, or no assignment of outlets serves all units.

Why it matters: a dark unit mostly mutes everything behind it.
What to do: feed it, let fewer units want the same outlet, or add a supply. Each change that is proposed has been tried.
Source: arithmetic on stated values, every assignment tried. Units may share an outlet by themselves only where both
are analogue, of ordinary gain, neighbours in the chain and of negative ground [common practice, no source].
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.load_limits import HARD
from rigc.analysis.computations.placement import Placement
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.power.mends import mends
from rigc.analysis.power.outlet_problem import RESERVE
from rigc.analysis.power.rivals_words import asked, rivals_words
from rigc.analysis.power.unfed import Unfed
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig

KIND = Kind(
    "unpowered-unit",
    Level.ERROR,
    __doc__,
    "every unit that needs power has an outlet that suits it",
    "arithmetic on stated values, every assignment tried",
)


def unpowered_unit(rig: Rig, power: PowerAssignment, places: Placement) -> Iterator[Diagnostic]:
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
        elif unfed.why in ("no word", "no outlets"):
            yield _told(unfed, *(_no_word if unfed.why == "no word" else _no_outlets)(rig, unfed))
        else:
            message = _rivals(rig, unfed) if unfed.why == "rivals" else _together(rig, unfed)
            apart = frozenset(name for each in power.unfed if each is not unfed for name in each.units)
            yield _told(unfed, message, mends(rig, places, HARD, unfed, apart) or "add a supply that suits them")


def _told(unfed: Unfed, message: str, help: str) -> Diagnostic:
    subject = (*unfed.units, *(str(port) for port in unfed.outlets))
    return KIND.at(unfed.span, message, subject=subject, label="no outlet", help=help)


def _no_word(rig: Rig, unfed: Unfed) -> tuple[str, str]:
    one = len(unfed.units) == 1
    supplies = ", ".join(rig.supplies)
    help = f"write `others from {supplies}` in the power block" if supplies else "declare a supply and feed from it"
    return f"nothing feeds {listed(unfed.units)}, and {'it needs' if one else 'they need'} power", help


def _no_outlets(rig: Rig, unfed: Unfed) -> tuple[str, str]:
    supplies = listed(rig.power.others)
    return f"{supplies} shall feed {listed(unfed.units)} and declares no outlet", f"declare the outlets of {supplies}"


def _rivals(rig: Rig, unfed: Unfed) -> str:
    if unfed.contested:
        return rivals_words(rig, unfed)
    wants = ", ".join(f"'{name.removeprefix(RESERVE)}' ({asked(rig, name)})" for name in unfed.rivals)
    return f"no free outlet of {listed(rig.power.others or rig.supplies, 'or')} suits {wants}"


def _together(rig: Rig, unfed: Unfed) -> str:
    because = {
        "kept free": "that would use outlets that are kept free",
        "ceiling": "that is more than its ceiling allows",
    }.get(unfed.why, "ceilings, kept outlets and sharing rules together forbid it")
    names = listed(name.removeprefix(RESERVE) for name in unfed.units)
    whole = "be" if len(unfed.units) == 1 else "all be"
    return f"{names} can't {whole} fed from {listed(rig.power.others or rig.supplies)}: {because}"


CHECK = unpowered_unit
