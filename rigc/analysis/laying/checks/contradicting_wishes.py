"""Wishes for places that no layout can meet together: left of each other, in two rows, together and away, within reach of
either foot, which a thing is only on the very line between both.

Why it matters: one of them is missed wherever all stands, and which one is left to chance.
What to do: drop the one that is no longer meant.
Source: geometry; the language reference, grammar/README.md.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.laying.wishes.contradictions import contradictions
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Delete, Mend
from rigc.model.deck import Hint
from rigc.model.rig import Rig

KIND = Kind(
    "contradicting-wishes",
    Level.WARNING,
    __doc__,
    "some layout could meet all wishes for places",
    "geometry; the language reference, grammar/README.md",
)


def contradicting_wishes(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each set of wishes of which one has to go, at the last of them."""
    for wishes in contradictions(rig.hints):
        last, *others = wishes
        yield KIND.at(
            last.span,
            f"{last.subjects} can't stand {last.words}: {_others(others)}",
            subject=tuple(name for wish in wishes for name in wish.things),
            label="contradicts what is wished elsewhere",
            also=tuple(Label(wish.span, "wished here") for wish in others),
            mends=tuple(Mend(f"drop the wish of line {wish.span.line}", (Delete(wish.span),)) for wish in wishes),
        )


def _others(others: list[Hint]) -> str:
    if len(others) == 1:
        return f"{others[0].subjects} {'are' if others[0].things[1:] else 'is'} wished {others[0].words}"
    return f"{len(others)} other wishes together say the opposite"


CHECK = contradicting_wishes
