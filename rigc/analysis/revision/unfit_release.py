"""A revision is stated as frozen, but it is not fit to be released.

Why it matters: what is frozen goes to the bench, the truck and the archive; what is open on that day stays open for years.
What to do: mend or accept what is listed, fold the field notes into the design; or delete the `frozen` line and go on editing.
A frozen revision holds no open field note, no error that stands, and no limit in doubt.
A finding that is accepted with a name, a reason and a date does not stand.
Source: common practice, no source.
"""

from __future__ import annotations

from rigc.analysis.revision.checks.frozen_differs import KIND as FROZEN_DIFFERS
from rigc.diagnostics.diagnostic import MAY_BE, Diagnostic, Kind, Label, Level
from rigc.model.rig import Head

KIND = Kind(
    "not-releasable",
    Level.ERROR,
    __doc__,
    "a frozen revision holds no open field note, no error that stands, no limit in doubt",
    "common practice, no source",
)
BARRING = frozenset(("open-field-note",))
"""The rules below the level of an error that must not stand in a frozen revision, beside those by which a limit is in doubt."""


def released(findings: tuple[Diagnostic, ...], head: Head) -> tuple[Diagnostic, ...]:
    """The findings, and one more where the revision is frozen in spite of some of them; judged after acceptance.

    That it is not what was frozen is told by a rule of its own."""
    if head.frozen is None:
        return findings
    standing = (each for each in findings if each.accepted is None and _bars(each))
    reasons = sorted(standing, key=lambda each: (each.level, each.kind.name))
    return (*findings, _told(head, reasons)) if reasons else findings


def _bars(finding: Diagnostic) -> bool:
    if finding.level is Level.ERROR:
        return finding.kind is not FROZEN_DIFFERS
    if finding.level is Level.CANT_CHECK:
        return False
    return finding.kind.name in BARRING or any(number.name == MAY_BE for number in finding.numbers)


def _told(head: Head, reasons: list[Diagnostic]) -> Diagnostic:
    names: dict[str, int] = {}
    for each in reasons:
        names[each.kind.name] = names.get(each.kind.name, 0) + 1
    listed = ", ".join(f"{name} ({count} times)" if count > 1 else name for name, count in names.items())
    return KIND.at(
        head.frozen.span if head.frozen else head.span,
        f"revision {head.letter} is frozen, but {len(reasons)} finding{'s' if len(reasons) > 1 else ''} "
        f"forbid{'' if len(reasons) > 1 else 's'} its release: {listed}",
        subject=(head.name, head.letter),
        label="stated as released",
        also=tuple(Label(each.span, f"{each.kind.name}: {each.message}") for each in reasons if each.span is not None),
        note="; ".join(f"{each.kind.name}: {each.message}" for each in reasons if each.span is None),
        help="mend or accept what is listed and fold the field notes, or delete the `frozen` line until then",
    )
