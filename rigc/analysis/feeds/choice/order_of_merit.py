"""What a choice of outlets costs: levels of which the first counts before all others, packed into one whole number and back."""

from __future__ import annotations

from rigc.analysis.feeds.choice.outlet_problem import OutletProblem
from rigc.record import Record

SHARE_PARTS = 60  # a unit that shares, in parts, so that a half, a third ... a sixth of one is whole
GRAIN = 1 << 10  # room below the last level for the prices of the search
SETTINGS = 8  # settings of an outlet that the names tell apart


class Levels(Record):
    """Rule warnings that the choice adds; units that share and would not if it were not for it; pairs that share without being
    neighbours in the chain; units away from where they were pinned; lead length in mm; names (unit and outlet, in order)."""

    warnings: int = 0
    sharing: int = 0
    strangers: int = 0
    moves: int = 0
    length_mm: int = 0
    names: int = 0


class Scale:
    """How levels of one problem are packed: each level has room for the most it can come to."""

    def __init__(self, problem: OutletProblem) -> None:
        units, sites = len(problem.units), len(problem.sites)
        tenants = max((len(site.tenants) for site in problem.sites), default=0)
        longest = max(problem.lengths_mm.values(), default=0)
        self.names = 1 + units * (units + 1) * (sites + 1) * (sites + 1) * SETTINGS
        self.length = 1 + units * longest
        self.moves = 1 + units
        self.strangers = 1 + units * (units + tenants)
        self.sharing = 1 + 2 * units * SHARE_PARTS

    def pack(self, levels: Levels) -> int:
        """One number; `sharing` counts in parts here."""
        packed = levels.warnings
        for value, room in (
            (levels.sharing, self.sharing),
            (levels.strangers, self.strangers),
            (levels.moves, self.moves),
            (levels.length_mm, self.length),
            (levels.names, self.names),
        ):
            packed = packed * room + value
        return packed * GRAIN

    def unpack(self, packed: int) -> Levels:
        """The levels of a complete choice, sharing in whole units (rounded up where the number is only a bound)."""
        packed, names = divmod(packed // GRAIN, self.names)
        packed, length = divmod(packed, self.length)
        packed, moves = divmod(packed, self.moves)
        packed, strangers = divmod(packed, self.strangers)
        warnings, sharing = divmod(packed, self.sharing)
        return Levels(warnings, -(-sharing // SHARE_PARTS), strangers, moves, length, names)
