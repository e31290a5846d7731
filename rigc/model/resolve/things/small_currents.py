"""What a unit is said to draw and is less than any such unit does: most often amperes that bear the sign of milliamperes."""

from __future__ import annotations

import re

from rigc.diagnostics.diagnostic import Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.facts.power import LEAST_DRAWN_MA, LEAST_DRAWN_MUCH_MA
from rigc.model.resolve.context import Context
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.things import Unit
from rigc.model.units.measures import CURRENT


def check_draws(context: Context, unit: Unit) -> None:
    """A warning where a unit draws less than its kind does; a fuzz of one transistor lives on little, what is digital or an amp does not."""
    draws = unit.draws_ma
    much = "digital" in unit.flags or unit.kind != "unit"
    least = (LEAST_DRAWN_MUCH_MA if much else LEAST_DRAWN_MA).value
    if draws is None or draws.value >= least:
        return
    what = unit.kind if unit.kind != "unit" else "digital unit" if much else "unit"
    typed = re.match(r"([\d.]+)[ \t]*mA\b", draws.typed)
    fits = typed is not None and least <= float(typed[1]) * 1000 <= CURRENT.high
    meant = f"{typed[1]} A" if typed is not None and fits else ""
    context.report(
        WRONG_QUANTITY.at(
            draws.span,
            f"'{unit.name}' draws {draws.typed}{f': did you mean {meant}?' if meant else ''}",
            subject=(unit.name,),
            label=f"{'an' if what[0] in 'aeiou' and what != 'unit' else 'a'} {what} draws at least {least:g} mA, as a rule",
            mends=(Mend(f"write {meant}", (Replace(draws.span, meant),)),) if meant else (),
            help="measure it again; if it is so, accept this",
            level=Level.WARNING,
        )
    )
