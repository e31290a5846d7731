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
    asked = _Asked(roots)
    under: dict[int, list[Diagnostic]] = {}
    gone: set[int] = set()
    for finding in told:
        root = _root(finding, asked, set())
        if root is not None and root is not finding:
            under.setdefault(id(root), []).append(finding)
            gone.add(id(finding))
    return tuple(_with(each, tuple(under.get(id(each), ()))) for each in told if id(each) not in gone)


class _Asked:
    """Facts that findings ask for, each with who asks, in the order of the findings; what ends in `...` is asked for as a whole."""

    def __init__(self, roots: Iterable[Diagnostic]) -> None:
        self.single: dict[str, list[Diagnostic]] = {}
        self.whole: list[tuple[str, Diagnostic]] = []
        for root in roots:
            for fact in root.asks_for:
                if fact.endswith("..."):
                    self.whole.append((fact.removesuffix("..."), root))
                else:
                    self.single.setdefault(fact, []).append(root)

    def by(self, want: str, finding: Diagnostic) -> Diagnostic | None:
        """Which other finding asks for it, one that asks for the whole before one that asks for it alone."""
        wide = (root for start, root in self.whole if root is not finding and want.startswith(start))
        return next(wide, None) or next((root for root in self.single.get(want, ()) if root is not finding), None)


def _root(finding: Diagnostic, asked: _Asked, seen: set[int]) -> Diagnostic | None:
    """The finding that asks for the first of its wants, or whom that one follows; None where one of the wants is asked for nowhere."""
    if (
        finding.level is not Level.CANT_CHECK
        or finding.accepted is not None
        or not finding.wants
        or id(finding) in seen
    ):
        return None
    by = [asked.by(want, finding) for want in finding.wants]
    if any(root is None for root in by) or by[0] is None:
        return None
    return _root(by[0], asked, {*seen, id(finding)}) or by[0]


def _with(root: Diagnostic, following: tuple[Diagnostic, ...]) -> Diagnostic:
    if not following:
        return root
    names = list(dict.fromkeys(each.kind.name for each in following))
    note = f"for the same reason can't be checked: {', '.join(names)}"
    told: Diagnostic = root.replace(note="; ".join(filter(None, (root.note, note))), follow=(*root.follow, *following))
    return told
