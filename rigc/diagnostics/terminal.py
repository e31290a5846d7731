"""Findings -> text for people: the sentence, the lines it is about, the numbers, what to do, the rule."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from itertools import groupby

from rigc.diagnostics.diagnostic import Acceptance, Diagnostic, Label, Level, Number
from rigc.diagnostics.excerpt import excerpt, visible
from rigc.diagnostics.order import count
from rigc.diagnostics.wording import of_any

_COLOURS = {Level.ERROR: "1;31", Level.WARNING: "1;33", Level.REMARK: "1;36", Level.CANT_CHECK: "1;35"}

Shown = Callable[[str], str]
"""Turns a source's name into the path to print."""


def text(findings: Iterable[Diagnostic], *, colour: bool = False, shown: Shown = str) -> str:
    """Every finding with its excerpt, an empty line between; findings that say the same are told once, with all places.

    So are remarks and can't-checks that say the same of several things, each with its name: to write one fact of five units is one
    thing to do, five times.
    """
    same: dict[tuple[object, ...], list[Diagnostic]] = {}
    for finding in findings:
        same.setdefault(_sort(finding), []).append(finding)
    return "\n".join(_finding(group, colour, shown) for group in same.values())


def short(findings: Iterable[Diagnostic], *, colour: bool = False, shown: Shown = str) -> str:
    """One line for each finding: `file:line:col: level: message [rule]`."""
    return "".join(f"{_head(finding, colour, shown)}\n" for finding in findings)


def summary(findings: Iterable[Diagnostic]) -> str:
    """How many findings there are of each of the five sorts, as one line without its end."""
    counts = count(findings)
    plain = [
        f"{number} {level.word}{'' if number == 1 else 's'}" for level, number in counts.items() if level in _PLURAL
    ]
    return ", ".join((*plain, f"{counts[Level.CANT_CHECK]} {Level.CANT_CHECK.word}", f"{counts[None]} accepted"))


_PLURAL = (Level.ERROR, Level.WARNING, Level.REMARK)


def _sort(finding: Diagnostic) -> tuple[object, ...]:
    """What findings have in common that are told once: for the gentler levels all that is said but the thing's name."""
    kind, level, accepted = finding.kind.name, finding.level, finding.accepted
    if level not in _GENTLE or accepted or not finding.subject or finding.span is None:
        return kind, level, finding.message, accepted
    said = (finding.message, finding.note, finding.advice)
    return kind, level, finding.numbers, tuple(of_any(each, finding.subject[0]) for each in said)


_GENTLE = (Level.REMARK, Level.CANT_CHECK)


def _finding(group: list[Diagnostic], colour: bool, shown: Shown) -> str:
    finding = group[0]
    lines = [_head(finding, colour, shown)]
    if finding.accepted:
        lines.append(_accepted(finding.accepted))
    else:
        lines += _excerpts(finding, colour, shown)
    lines += _others(finding, group[1:], shown)
    if not finding.accepted:
        lines += _advice(finding)
    return "".join(f"{line}\n" for line in lines)


def _others(finding: Diagnostic, others: list[Diagnostic], shown: Shown) -> list[str]:
    if not others:
        return []
    if all(other.message == finding.message for other in others):
        return [f"  the same at {', '.join(_place(other, shown) for other in others)}"]
    named = (f"'{visible(other.subject[0])}' ({_place(other, shown)})" for other in others)
    return [f"  the same of {', '.join(named)}"]


def _head(finding: Diagnostic, colour: bool, shown: Shown) -> str:
    level = f"accepted {finding.level.word}" if finding.accepted else finding.level.word
    level = _painted(level, "1" if finding.accepted else _COLOURS[finding.level], colour)
    place = _place(finding, shown)
    return f"{f'{place}: ' if place else ''}{level}: {visible(finding.message)} [{finding.kind.name}]"


def _place(finding: Diagnostic, shown: Shown) -> str:
    if finding.span is None:
        return ""
    line, column = finding.span.source.position(finding.span.start)
    return f"{visible(shown(finding.span.source.name))}:{line}:{column}"


def _accepted(acceptance: Acceptance) -> str:
    return f'  accepted by {visible(acceptance.by)} until {acceptance.until}: "{visible(acceptance.reason)}"'


def _excerpts(finding: Diagnostic, colour: bool, shown: Shown) -> list[str]:
    """The finding's own file first, then the others by name, each under its name."""
    own = finding.span.source.name if finding.span else ""
    labels = [*([Label(finding.span, finding.label)] if finding.span else []), *finding.also]
    lines: list[str] = []
    for name, group in groupby(sorted(labels, key=lambda label: _file_order(label, own)), key=_file):
        if name != own:
            lines.append(f"  {visible(shown(name))}:")
        lines += excerpt(group, lambda mark: _painted(mark, _COLOURS[finding.level], colour))
    return lines


def _file(label: Label) -> str:
    return label.span.source.name


def _file_order(label: Label, own: str) -> tuple[bool, str]:
    return _file(label) != own, _file(label)


def _advice(finding: Diagnostic) -> list[str]:
    rule = "; ".join(filter(None, (finding.kind.rule, finding.kind.source)))
    told = {
        "numbers": ", ".join(_number(each) for each in finding.numbers),
        "note": finding.note,
        "do": finding.advice,
        "rule": rule,
    }
    return [f"  {word}: {visible(said)}" for word, said in told.items() if said]


def _number(number: Number) -> str:
    value = f"{number.value:.4f}".rstrip("0").rstrip(".")
    return (
        f"{number.name} {value if float(value) or not number.value else f'{number.value:.3g}'} {number.unit}".rstrip()
    )


def _painted(text: str, code: str, colour: bool) -> str:
    return f"\x1b[{code}m{text}\x1b[0m" if colour else text
