"""A unit that needs power gets none: nothing in the source feeds it, or no assignment of outlets serves all units.

Why it matters: a dark unit mostly mutes everything behind it.
What to do: feed it, let fewer units want the same outlet, or add a supply. Each change that is proposed has been tried.
Source: arithmetic on stated values, every assignment tried. Units may share an outlet by themselves only where both
are analogue, of ordinary gain, neighbours in the chain and of negative ground [common practice, no source].
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.placement import Placement
from rigc.analysis.feeds.choice.outlet_problem import RESERVE
from rigc.analysis.feeds.choice.unfed import Unfed, asked, rivals_words
from rigc.analysis.feeds.load_limits import HARD
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.unit_needs import needs_of
from rigc.analysis.power.mends.smallest_changes import mends
from rigc.analysis.power.misread_currents import look_again, misread
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import AddTo, Mend, Replace
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
                wants=(needs_of(unfed.units[0]),),
            )
        elif unfed.why == "undecided":
            yield KIND.cant_check(
                unfed.span,
                f"no outlets for {listed(unfed.units)} were found in {power.steps} steps; whether there is a way is not known",
                subject=unfed.units,
                help="state the outlets of some units, those that draw most first",
            )
        elif unfed.why in ("no word", "no outlets"):
            if unfed.why == "no word":
                yield _no_word(rig, unfed)
            else:
                yield _told(unfed, *_no_outlets(rig, unfed))
        else:
            message = _rivals(rig, unfed) if unfed.why == "rivals" else _together(rig, unfed)
            apart = frozenset(name for each in power.unfed if each is not unfed for name in each.units)
            edits, help = mends(rig, places, HARD, unfed, apart)
            help = help or ("" if edits else "add a supply that suits them")
            yield _told(
                unfed, message, "; or ".join(filter(None, (help, _slips(rig, unfed)))), edits, _poles(rig, unfed)
            )


def _told(
    unfed: Unfed, message: str, help: str, edits: tuple[Mend, ...] = (), also: tuple[Label, ...] = ()
) -> Diagnostic:
    subject = (*unfed.units, *(str(port) for port in unfed.outlets))
    return KIND.at(unfed.span, message, subject=subject, label="no outlet", also=also, help=help, mends=edits)


def _poles(rig: Rig, unfed: Unfed) -> tuple[Label, ...]:
    """Where the polarity that bars them is stated, each place once."""
    poles = [unit.polarity for name in unfed.units if unfed.turned and (unit := rig.units.get(name)) is not None]
    spans = {(pole.span.source.name, pole.span.start): pole for pole in poles if pole is not None}
    return tuple(Label(pole.span, f"{pole.value} by this") for pole in spans.values())


def _slips(rig: Rig, unfed: Unfed) -> str:
    """A current that is several times what any outlet gives may be misread."""
    units = (rig.units.get(name) for name in unfed.units)
    return next((look_again(unit) for unit in units if unit is not None and misread(rig, unit)), "")


def _no_word(rig: Rig, unfed: Unfed) -> Diagnostic:
    message = f"nothing feeds {listed(unfed.units)}, and {'it needs' if len(unfed.units) == 1 else 'they need'} power"
    if not rig.supplies:
        return _told(unfed, message, "declare a supply and feed from it")
    line = f"others from {', '.join(rig.supplies)}"
    feed = Mend(f"write `{line}` in the power block", (AddTo("power", "", line),))
    return _told(unfed, message, "", (feed, *_on_battery(rig, unfed)))


def _on_battery(rig: Rig, unfed: Unfed) -> tuple[Mend, ...]:
    """What takes a battery may run on nothing else, if all of them do."""
    found = [(name, unit.battery) for name in unfed.units if (unit := rig.units.get(name)) is not None and unit.battery]
    edits = tuple(Replace(battery.span, f"{battery.span.text} only") for _, battery in found)
    words = f"leave {listed(name for name, _ in found)} on {'its' if len(found) == 1 else 'their'} battery alone: write `only` behind it"
    return (Mend(words, edits),) if len(found) == len(unfed.units) else ()


def _no_outlets(rig: Rig, unfed: Unfed) -> tuple[str, str]:
    supplies = listed(rig.power.others)
    return f"{supplies} shall feed {listed(unfed.units)} and declares no outlet", f"declare the outlets of {supplies}"


def _rivals(rig: Rig, unfed: Unfed) -> str:
    if unfed.contested:
        return rivals_words(rig, unfed)
    wants = " or ".join(f"'{name.removeprefix(RESERVE)}' ({asked(rig, name)})" for name in unfed.rivals)
    why = f": {unfed.bars}" if unfed.bars else ""
    if not rig.supplies:
        return f"no supply is declared that has an outlet for {wants}"
    return f"no free outlet of {listed(rig.power.others or rig.supplies, 'or')} suits {wants}{why}"


def _together(rig: Rig, unfed: Unfed) -> str:
    because = {
        "kept free": "that would use outlets that are kept free",
        "ceiling": "that is more than its ceiling allows",
    }.get(unfed.why, "ceilings, kept outlets and sharing rules together forbid it")
    names = listed(name.removeprefix(RESERVE) for name in unfed.units)
    whole = "be" if len(unfed.units) == 1 else "all be"
    return f"{names} can't {whole} fed from {listed(rig.power.others or rig.supplies)}: {because}"


CHECK = unpowered_unit
