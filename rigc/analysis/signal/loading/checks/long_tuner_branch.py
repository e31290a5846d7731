"""The tuner jack of a passive treadle is used before the first buffer, and too much cable hangs on it.

Why it matters: the branch is cable on the pickup whether or not anyone tunes, and the noise of the tuner's display leaks
back through it.
What to do: put the tuner in line, before the treadle.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.at_limit import over
from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Section
from rigc.analysis.signal.loading.state_words import wire_remedy, worst_told
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.facts.loading import TUNER_BRANCH_PF
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.traced.term import Term, known

KIND = Kind(
    "long-tuner-branch",
    Level.WARNING,
    __doc__,
    f"the branch from a passive treadle's tuner jack before the first buffer ≤ {TUNER_BRANCH_PF}",
    "common practice, no source",
)


def long_tuner_branch(rig: Rig, loading: Loading) -> Iterator[Diagnostic]:
    """One finding for each such jack; can't-check where the branch's cable is not known."""
    branches: dict[Port, list[tuple[Section, Term | None]]] = {}
    for section in loading.played:
        if section.from_pickup and section.branch:
            for port, pf in loading.figures(section).branches.items():
                branches.setdefault(port, []).append((section, known(pf)))
    for port, found in branches.items():
        sizes = [pf for _, pf in found if pf is not None]
        excess = [section for section, pf in found if pf is not None and over(pf, TUNER_BRANCH_PF.value)]
        if excess:
            worst = [section for section, pf in found if pf == max(sizes)]
            yield _told(rig, port, max(sizes), worst[0], worst_told(loading, worst, excess))
        elif len(sizes) < len(found):
            yield KIND.cant_check(
                rig.units[port.thing].declared,
                f"how much cable hangs on '{port}' can't be checked: {'; '.join(found[0][0].missing_wire)}",
                subject=(port.thing, str(port)),
                help=wire_remedy(found[0][0].missing_wire, (found[0][0],)),
            )


def _told(rig: Rig, port: Port, pf: Term, section: Section, when: str) -> Diagnostic:
    source = section.source.thing
    return KIND.at(
        rig.units[port.thing].declared,
        f"{pf:.4g} pF of cable hang on '{port}' before the first buffer, more than {TUNER_BRANCH_PF.value:g} pF; "
        f"'{source}' drives them too ({when})",
        subject=(port.thing, str(port), source),
        label="its tuner jack is used",
        numbers=(Number("branch", pf, "pF"), Number("limit", TUNER_BRANCH_PF.value, "pF")),
        help=f"put the tuner in line before '{port.thing}', or use a shorter lead",
    )


CHECK = long_tuner_branch
