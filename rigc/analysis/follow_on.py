"""Findings -> the same, what can't be checked for want of facts that another finding asks for folded under that one.

One fact that is missing stands in the way of many rules: the place of one jack in that of lead lengths, plugs, cable and weight.
Whoever writes it down has seen to all of them.
"""

from __future__ import annotations

from collections.abc import Iterable

from rigc.diagnostics.diagnostic import Diagnostic, Level


def folded(findings: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """The findings without can't-checks whose every want another one asks for; that one holds them as its `follow`."""
    told = tuple(findings)
    roots = [each for each in told if each.asks_for and each.accepted is None]
    under: dict[int, Diagnostic] = {}
    asked = [(fact, root) for root in roots for fact in root.asks_for]
    for finding in told:
        root = _root(finding, asked, set())
        if root is not None and root is not finding:
            under[id(finding)] = root
    return tuple(
        _with(each, tuple(other for other in told if under.get(id(other)) is each))
        for each in told
        if id(each) not in under
    )


Asked = list[tuple[str, Diagnostic]]


def _root(finding: Diagnostic, asked: Asked, seen: set[int]) -> Diagnostic | None:
    """The finding that asks for the first of its wants, or whom that one follows; None where one of the wants is asked for nowhere."""
    if (
        finding.level is not Level.CANT_CHECK
        or finding.accepted is not None
        or not finding.wants
        or id(finding) in seen
    ):
        return None
    by = [_asked(want, asked, finding) for want in finding.wants]
    if any(root is None for root in by) or by[0] is None:
        return None
    return _root(by[0], asked, {*seen, id(finding)}) or by[0]


def _asked(want: str, asked: Asked, finding: Diagnostic) -> Diagnostic | None:
    """Which other finding asks for it; what ends in `...` is asked for as a whole."""
    covering = ((fact.endswith("..."), root) for fact, root in asked if root is not finding and _covers(fact, want))
    return max(covering, key=lambda each: each[0], default=(False, None))[1]


def _covers(fact: str, want: str) -> bool:
    return want.startswith(fact[:-3]) if fact.endswith("...") else fact == want


def _with(root: Diagnostic, following: tuple[Diagnostic, ...]) -> Diagnostic:
    if not following:
        return root
    names = list(dict.fromkeys(each.kind.name for each in following))
    note = f"for the same reason can't be checked: {', '.join(names)}"
    told: Diagnostic = root.replace(note="; ".join(filter(None, (root.note, note))), follow=(*root.follow, *following))
    return told
