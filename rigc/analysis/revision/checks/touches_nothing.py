"""A change says that it touches what neither this revision nor the one that it follows declares.

Why it matters: the rework sheet sorts its work by what each change touches; a name that nothing bears sorts nothing, and the work stands
under no change.
What to do: write the name as it is declared. What a change takes off the board is named as the revision before has it.
Source: the language reference, grammar/README.md.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.previous import Previous
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.near import nearest
from rigc.model.rig import Rig

KIND = Kind(
    "touches-nothing",
    Level.ERROR,
    __doc__,
    "what a change touches is declared, in this revision or in the one before",
    "the language reference, grammar/README.md",
)


def touches_nothing(rig: Rig, previous: Previous) -> Iterator[Diagnostic]:
    """One finding for each such name; none while the revision before can't be read, which is told."""
    if previous.results is None:
        return
    before, then = previous.results.rig, [old for _, old in previous.renamed]
    declared = {*then, *(name for each in (before, rig) for name in (*each.things, *each.decks, *each.cases))}
    for change in rig.head.changes:
        for name, span in change.gone:
            if name in declared:
                continue
            near = nearest(name, sorted(declared))
            yield KIND.at(
                span,
                f"change {change.number} touches '{name}', which neither revision {rig.head.letter} nor {previous.letter} declares",
                subject=(name,),
                label=f"did you mean '{near}'?" if near else "declared nowhere",
                mends=(Mend(f"write '{near}'", (Replace(span, near),)),) if near else (),
                help="" if near else "name what the change touches, as it is declared",
            )


CHECK = touches_nothing
