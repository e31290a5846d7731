"""A scenario states other mains than the tables list for its country.

Why it matters: one of the two is a slip; a supply that was checked against the wrong mains may be destroyed at the venue.
What to do: correct the country or the mains; where the venue really gives something else, accept this and say so.
Source: the two tables of `rigc/facts/countries.py`, which describe sockets in homes; ask the venue.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mains.country_mains import given_there
from rigc.analysis.mains.primaries import Primaries
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.facts.countries import FIRST, SECOND
from rigc.model.rig import Rig

KIND = Kind(
    "foreign-mains",
    Level.WARNING,
    __doc__,
    "a scenario's mains are those of its country in one of two tables",
    f"{FIRST}; {SECOND}",
)


def foreign_mains(rig: Rig, primaries: Primaries) -> Iterator[Diagnostic]:
    """One finding for each scenario that states both, where a table has its country; where these mains are of another voltage than something
    takes, it is told with that (unfit-mains)."""
    unfit = {each.scenario for each in primaries.all if each.in_voltage is False}
    for scenario in rig.scenarios.values():
        given = given_there(scenario)
        if given and scenario.name not in unfit and scenario.mains is not None:
            yield KIND.at(
                scenario.mains.span,
                f"'{scenario.name}' states {scenario.mains.typed}, and {scenario.country} has {given}",
                subject=(scenario.name,),
                label="not what homes there have",
                help="correct the country or the mains; ask the venue what its sockets give",
            )


CHECK = foreign_mains
