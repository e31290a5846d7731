"""Findings and the builder's `accept` statements -> findings with those accepted marked; and what is wrong with an accept."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Acceptance, Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.model.records import Accept
from rigc.near import nearest

USELESS = Kind(
    "useless-accept",
    Level.WARNING,
    """An `accept` stands for a finding, or a rule, that is not there.

    Why it matters: it would silently swallow the next real finding of that rule.
    What to do: delete the line, or correct the rule's name.
    Source: common practice, no source.
    """,
    "an accepted finding exists",
    "common practice, no source",
)
ENDED = Kind(
    "ended-accept",
    Level.WARNING,
    """An `accept` has passed its end date.

    Why it matters: what was tolerable for one run of shows is not so for ever.
    What to do: mend what it stands for, or sign it anew with a later date.
    Source: common practice, no source.
    """,
    "the end date is not before the date of the revision (or the day given with --on)",
    "common practice, no source",
)
FIRM = Kind(
    "firm-finding",
    Level.ERROR,
    """An `accept` names an error that no signature can make good.

    Why it matters: a short, an overload, a supply or mains fault, a wrong name or fact damages something or spoils a sheet.
    What to do: mend it; remarks, warnings, can't-checks and the errors open-chain, jack-mismatch, unsettled-loop, bodies-overlap, plugs-collide, too-tall, unfit-lead-length, tangled-midi can be accepted.
    Source: common practice, no source.
    """,
    "only errors that endanger nothing can be accepted",
    "common practice, no source",
)
ACCEPTABLE_ERRORS = frozenset(
    (
        "open-chain",
        "jack-mismatch",
        "unsettled-loop",
        "bodies-overlap",
        "plugs-collide",
        "too-tall",
        "unfit-lead-length",
        "tangled-midi",
    )
)


def accepted(findings: tuple[Diagnostic, ...], accepts: tuple[Accept, ...], day: str) -> tuple[Diagnostic, ...]:
    """The findings, those accepted marked so, with the faults of the accepts themselves; `day` is an ISO date."""
    told = list(findings)
    extra: list[Diagnostic] = []
    for accept in accepts:
        mine = [at for at, finding in enumerate(told) if _means(accept, finding) and finding.accepted is None]
        if not mine:
            extra.append(_useless(accept))
        elif day and accept.until < day:
            extra.append(_ended(accept, told[mine[0]], day))
        else:
            signed = Acceptance(accept.reason, accept.by, accept.until, accept.span)
            firm = [told[at] for at in mine if _is_firm(told[at])]
            for at in mine:
                if not _is_firm(told[at]):
                    told[at] = told[at].replace(accepted=signed)
            if firm:
                extra.append(_firm(accept, firm))
    return (*told, *extra)


def _is_firm(finding: Diagnostic) -> bool:
    return finding.level is Level.ERROR and finding.kind.name not in ACCEPTABLE_ERRORS


def _means(accept: Accept, finding: Diagnostic) -> bool:
    about = {part for name in finding.subject for part in (name, name.split(".")[0])}
    return finding.kind.name == accept.rule and (accept.target is None or accept.target in about)


def _useless(accept: Accept) -> Diagnostic:
    from rigc.diagnostics.explain import all_kinds  # walks many modules: only when something is wrong

    names = [kind.name for kind in all_kinds()]
    if accept.rule not in names:
        near = nearest(accept.rule, names)
        return USELESS.at(
            accept.rule_span,
            f"{accept.rule} is accepted, but there is no such rule",
            subject=(accept.rule, accept.target or ""),
            label=f"did you mean {near}?" if near else "no rule",
            help="" if near else "`rigc explain` lists the rules",
            mends=(Mend(f"write {near}", (Replace(accept.rule_span, near),)),) if near else (),
        )
    on = f" on {accept.target}" if accept.target else ""
    return USELESS.at(
        accept.span,
        f"{accept.rule}{on} is accepted, but there is no such finding",
        subject=(accept.rule, accept.target or ""),
        label="accepts nothing",
        mends=(Mend("delete this line", (Delete(accept.span),)),),
    )


def _ended(accept: Accept, finding: Diagnostic, day: str) -> Diagnostic:
    return ENDED.at(
        accept.span,
        f"{accept.rule} was accepted until {accept.until}, and this is {day}",
        subject=(accept.rule, accept.target or ""),
        label="has ended",
        also=(Label(finding.span, "what it stood for"),) if finding.span else (),
        help="mend what it stands for, or sign it anew with a later date",
    )


def _firm(accept: Accept, firm: list[Diagnostic]) -> Diagnostic:
    more = f" (and {len(firm) - 1} more)" if len(firm) > 1 else ""
    return FIRM.at(
        accept.span,
        f"{accept.rule} can't be accepted: {firm[0].message}{more}",
        subject=(accept.rule, accept.target or ""),
        label="this error must be mended" if len(firm) == 1 else "these errors must be mended",
        also=tuple(Label(finding.span, "the error") for finding in firm if finding.span),
        help=firm[0].advice or "mend it",
    )
