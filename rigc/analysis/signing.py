"""A finding -> the seal by which an `accept` is bound to it: what it is about and in which state, and the figures that were signed.

A seal is eight hexadecimal digits of the rule, its subject and its words without figures, and behind them the figures:
`3f9c1a07 165 mA, 160 mA`. Several findings of one `accept` stand in one seal, parted by semicolons.
"""

from __future__ import annotations

import re

from rigc.diagnostics.diagnostic import Diagnostic
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
