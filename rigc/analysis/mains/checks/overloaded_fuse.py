"""What has a mains lead of its own, or a supply, takes more of the mains than its own fuse carries.

Why it matters: the fuse blows in the first loud song. A maker fits none that is so small: the fuse, what the plate says, or the voltage is a slip,
and where it is the fuse, a wrong one is carried as its spare.
What to do: read the plate again, and correct what is wrong. A fuse is replaced by what the plate says, never by a larger one.
Of watts alone, without a power factor, the least current is taken: that of a power factor of 1.
Source: arithmetic on stated values: volt-amperes (or watts) / the lowest voltage that arrives.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mains.small_fuses import SmallFuses
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.figures import short

KIND = Kind(
    "overloaded-fuse",
    Level.WARNING,
    __doc__,
    "what a thing takes of the mains <= the rating of its fuse that is the right one there",
    "arithmetic on stated values",
)


def overloaded_fuse(small: SmallFuses) -> Iterator[Diagnostic]:
    """One finding for each fuse, of the first scenario in which it carries less. A fuse of a mains strip has a rule of its own."""
    for each in small.all:
        name, rating = each.fitted.thing, each.fitted.fuse.rating_ma
        yield KIND.at(
            rating.span,
            f"'{name}' takes {each.takes}, {short(each.amperes)} A at the {short(each.volts)} V of '{each.scenario}', and its fuse carries {rating.typed}",
            subject=(name, each.scenario),
            label="its fuse",
            also=() if each.stated is None else (Label(each.stated, "it takes this"),),
            numbers=(Number("takes", each.amperes, "A"), Number("fuse", rating.value / 1000, "A")),
            help=f"read the plate of '{name}' again, and correct its fuse or what it takes; put in no larger fuse than the plate says",
        )


CHECK = overloaded_fuse
