"""What is plugged into a mains strip, and into strips that hang on it, takes more than its fuse carries.

Why it matters: the fuse blows in the first loud song, and with it goes all that hangs on the strip; one that does not blow lets the lead of
the strip grow warm.
What to do: plug some of it into another socket of the venue, or use a strip made for more; never put a larger fuse in.
Source: arithmetic on stated values: volt-amperes / the lowest voltage of the scenario. rigc lists what is plugged where; it designs no
mains wiring.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mains.fuses import Fuses
from rigc.analysis.mains.mains_loads import MainsLoads, used_behind
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.wording import listed
from rigc.model.fact import Quantity
from rigc.model.rig import Rig, Scenario
from rigc.model.things import MainsStrip
from rigc.traced.figure import Figure

KIND = Kind(
    "overloaded-mains-strip",
    Level.ERROR,
    __doc__,
    "what takes its mains from a strip <= the rating of its fuse",
    "arithmetic on stated values",
)


def overloaded_mains_strip(rig: Rig, loads: MainsLoads, fuses: Fuses) -> Iterator[Diagnostic]:
    """One finding for each strip and scenario; can't-check once for each strip with a fuse on which something hangs that does not say
    what it takes. A strip that states no fuse is not judged."""
    for strip in rig.mains_strips.values():
        silent: dict[str, None] = {}
        over = False
        for scenario in rig.scenarios.values():
            rating = _rating(fuses, strip, scenario)
            if rating is None or scenario.mains is None:
                continue
            taken = loads.strip_amperes[scenario.name, strip.name]
            if isinstance(taken, Figure) and float(taken) * 1000 > rating.value * (1 + 1e-9):
                over = True
                yield _over(strip, scenario, taken, rating, used_behind(rig, strip.name, scenario))
            silent.update(dict.fromkeys(_silent(rig, loads, strip, scenario)))
        if silent and not over:
            yield _unknown(rig, strip, tuple(silent))


def _rating(fuses: Fuses, strip: MainsStrip, scenario: Scenario) -> Quantity | None:
    """That of the fuse which is the right one there."""
    fitted = (each for each in fuses.all if each.thing == strip.name and each.wanted)
    return next((each.fuse.rating_ma for each in fitted if not each.scenarios or scenario.name in each.scenarios), None)


def _silent(rig: Rig, loads: MainsLoads, strip: MainsStrip, scenario: Scenario) -> Iterator[str]:
    """What hangs on it there and does not say what it takes."""
    for name in used_behind(rig, strip.name, scenario):
        taken = loads.all[name].volt_amperes if name in loads.all else loads.own.all.get(name)
        if not isinstance(taken, Figure):
            yield name


def _over(strip: MainsStrip, scenario: Scenario, taken: Figure, rating: Quantity, names: tuple[str, ...]) -> Diagnostic:
    return KIND.at(
        strip.declared,
        f"{listed(names)} take {taken.text} A from '{strip.name}' in '{scenario.name}', and its fuse carries {rating.typed}",
        subject=(strip.name, scenario.name),
        label="this strip",
        also=(Label(rating.span, "its fuse"),),
        numbers=(Number("takes", float(taken), "A"), Number("fuse", rating.value / 1000, "A")),
        help="plug some of it into another socket of the venue, or use a strip made for more; put in no larger fuse",
    )


def _unknown(rig: Rig, strip: MainsStrip, silent: tuple[str, ...]) -> Diagnostic:
    own = [name for name in silent if name not in rig.supplies]
    help_ = f"read it off the plate and write it in {listed(own)}, for example `takes 300 VA`"
    if not own:
        help_ = (
            f"write in {listed(silent)} its `efficiency` and its `power factor`, as its plate or its leaflet gives them"
        )
    return KIND.cant_check(
        strip.declared,
        f"whether the fuse of '{strip.name}' carries what hangs on it can't be checked: {listed(silent)} "
        f"{'does' if len(silent) == 1 else 'do'} not say how much",
        subject=(strip.name, *silent),
        help=help_,
    )


CHECK = overloaded_mains_strip
