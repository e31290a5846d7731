"""Findings and the builder's `accept` statements -> findings with those accepted marked; and what is wrong with an accept.

An accept is bound to its finding by a seal: eight hexadecimal digits of the rule, its subject and its words without figures, and
behind them the figures that were signed: `3f9c1a07 165 mA, 160 mA`. Several findings of one accept stand in one seal, parted by
semicolons.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from rigc.diagnostics.diagnostic import Acceptance, Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.diagnostics.near import nearest
from rigc.model.records import Accept
from rigc.record import Record

_FIGURE = re.compile(r"[-−]?\d+(?:\.\d+)? ?(?:[mkMµ]?(?:V|A|W|Ω|m|g|Hz)|VA|dBu?|pF|nF|%|ms|h|Ω|cm²)(?!\w)")
_PART = re.compile(r"([0-9a-f]{8})(?: (.+))?")
_SAME = 1e-6
_LIMITS = {"limit", "needed", "rating", "most", "ceiling", "room", "clearance", "accepted", "marker"}


class Signed(Record):
    """One finding as it was signed: its state's digits, and its figures with their units."""

    state: str
    figures: tuple[tuple[float, str], ...]

    @property
    def text(self) -> str:
        """As it stands in a seal."""
        told = ", ".join(f"{value:g} {unit}".strip() for value, unit in self.figures)
        return f"{self.state} {told}".strip()

    def covers(self, finding: Diagnostic) -> bool:
        """Whether who signed this has signed the finding as it is now: the same state, and no figure farther beyond its limit."""
        now = signature(finding)
        if self.state != now.state or [unit for _, unit in self.figures] != [unit for _, unit in now.figures]:
            return False
        if all(map(_alike, self.figures, now.figures)):
            return True
        if not _judged(finding):
            return False
        was, is_now = _beyond(self), _beyond(now)
        return was * is_now >= 0 and abs(is_now) <= abs(was)


def signature(finding: Diagnostic) -> Signed:
    """What is signed when a finding is accepted as it is now."""
    import hashlib  # its import costs more than most checks, and few runs need it

    words = _FIGURE.sub("#", finding.message) if finding.numbers else finding.message
    text = "\n".join((finding.kind.name, finding.level.word, *finding.subject, words))
    digits = hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:8]
    return Signed(digits, tuple((float(f"{each.value:g}"), each.unit) for each in finding.numbers))


def seal_of(findings: list[Diagnostic]) -> str:
    """The seal that binds an `accept` to these findings."""
    return "; ".join(sorted({signature(finding).text for finding in findings}))


def read_seal(seal: str) -> tuple[Signed, ...]:
    """The parts of a seal; what is no part of one binds nothing."""
    found = []
    for text in seal.split(";"):
        part = _PART.fullmatch(text.strip())
        if part is not None:
            figures = (each.strip().partition(" ") for each in (part[2] or "").split(",") if each.strip())
            found.append(Signed(part[1], tuple((_number(number), unit) for number, _, unit in figures)))
    return tuple(found)


def _number(text: str) -> float:
    try:
        return float(text)
    except ValueError:
        return float("nan")  # equals nothing: who wrote it signed for no figure


def _alike(one: tuple[float, str], other: tuple[float, str]) -> bool:
    return abs(one[0] - other[0]) <= _SAME * max(1.0, abs(one[0]))


def _judged(finding: Diagnostic) -> bool:
    """Whether its figures are a value and the limit that it is beyond."""
    return len(finding.numbers) == 2 and finding.numbers[1].name.split()[0] in _LIMITS


def _beyond(signed: Signed) -> float:
    """How far the value lies beyond the limit, on which side."""
    return signed.figures[0][0] - signed.figures[1][0]


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
UNSIGNED = Kind(
    "unsigned-accept",
    Level.WARNING,
    """An `accept` is not signed for what is found now: it bears no seal, or that of another state or of a lesser figure.

    Why it matters: who accepts 165 mA on an outlet, or a loss with one unit on, has not accepted what a later edit makes of it.
    What to do: look at the finding as it is now; if it may stay, put the seal that is told here behind the date. A seal is
    the rule, the subject and the words of the finding without figures in eight digits, and its figures as they were: a figure that
    comes nearer to its limit stays accepted, one that goes farther beyond does not.
    Source: common practice, no source.
    """,
    "an accept bears the seal of each finding that it accepts",
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
    about = _by_what_they_are_about(told) if accepts else {}
    for accept in accepts:
        mine = [at for at in about.get((accept.rule, accept.target), ()) if told[at].accepted is None]
        if not mine:
            extra.append(_useless(accept))
        elif day and accept.until < day:
            extra.append(_ended(accept, told[mine[0]], day))
        else:
            firm = [told[at] for at in mine if _is_firm(told[at])]
            soft = [at for at in mine if not _is_firm(told[at])]
            open_ones = [at for at in soft if not _is_signed(accept, told[at])]
            if open_ones:
                extra.append(_unsigned(accept, [told[at] for at in soft], told[open_ones[0]]))
            signed = Acceptance(accept.reason, accept.by, accept.until, accept.span)
            for at in soft:
                told[at] = told[at].replace(accepted=None if at in open_ones else signed)
            if firm:
                extra.append(_firm(accept, firm))
    return (*told, *extra)


def _is_signed(accept: Accept, finding: Diagnostic) -> bool:
    return any(part.covers(finding) for part in read_seal(accept.seal))


def _is_firm(finding: Diagnostic) -> bool:
    return finding.level is Level.ERROR and finding.kind.name not in ACCEPTABLE_ERRORS


def _by_what_they_are_about(findings: Sequence[Diagnostic]) -> dict[tuple[str, str | None], list[int]]:
    """The numbers of the findings that an `accept` may stand for, by its rule and target; one without a target means all of its rule."""
    found: dict[tuple[str, str | None], list[int]] = {}
    for at, finding in enumerate(findings):
        for target in {None, *(part for name in finding.subject for part in (name, name.split(".")[0]))}:
            found.setdefault((finding.kind.name, target), []).append(at)
    return found


def _useless(accept: Accept) -> Diagnostic:
    from rigc.diagnostics.explain import renamed, rule_names  # walks many modules: only when something is wrong

    if accept.rule not in rule_names():
        now = renamed().get(accept.rule)
        near = now or nearest(accept.rule, rule_names())
        said = f"is called {now} now" if now else "is accepted, but there is no such rule"
        return USELESS.at(
            accept.rule_span,
            f"{accept.rule} {said}",
            subject=(accept.rule, accept.target or ""),
            label="its name before" if now else f"did you mean {near}?" if near else "no rule",
            help="" if near else "`rigc explain` lists the rules",
            mends=(Mend(f"write {near}", (Replace(accept.rule_span, near),)),) if near else (),
            otherwise=f"write {near}, and behind its date the seal that is asked for then" if near else "",
        )
    on = f" on {accept.target}" if accept.target else ""
    return USELESS.at(
        accept.span,
        f"{accept.rule}{on} is accepted, but there is no such finding",
        subject=(accept.rule, accept.target or ""),
        label="accepts nothing",
        mends=(Mend("delete this line", (Delete(accept.span),)),),
    )


def _unsigned(accept: Accept, findings: list[Diagnostic], first: Diagnostic) -> Diagnostic:
    """`first` is one that is not signed for, `findings` are all that the accept may accept."""
    now, on = signature(first), f" on {accept.target}" if accept.target else ""
    before = next((part for part in read_seal(accept.seal) if part.state == now.state), None)
    if not accept.seal:
        said, label = f"what {accept.rule}{on} accepts is not signed for", "bears no seal"
    elif before is None:
        said, label = (
            f"{accept.rule}{on} was accepted in another state, or of something else, than is found now",
            "another seal",
        )
    else:
        said = f"{accept.rule}{on} was accepted at {_figures(before)}; now it is {_figures(now)}"
        label = "signed for a lesser figure"
    place = "behind its date" if accept.seal_span is None else "in place of its seal"
    return UNSIGNED.at(
        accept.span,
        said,
        subject=(accept.rule, accept.target or ""),
        label=label,
        also=(Label(first.span, "what is found now"),) if first.span else (),
        help=f'look at it; if it may stay, write {place}: seal "{seal_of(findings)}"',
    )


def _figures(signed: Signed) -> str:
    return ", ".join(f"{value:g} {unit}".strip() for value, unit in signed.figures) or "other figures"


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
