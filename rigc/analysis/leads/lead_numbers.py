"""Numbers for the leads that have none: those that the source gives and retires never change, nor are they used again."""

from __future__ import annotations

import re
from collections.abc import Iterable

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.lead_make import Via
from rigc.analysis.results import Results
from rigc.model.rig import Rig

LETTERS = {"audio": "A", "control": "C", "dc": "D", "midi": "M", "usb": "U", "ac": "AC", "mains": "N"}
_MARK = re.compile(r"([A-Z]+)(\d+)([a-z]?)")


class LeadNumbers:
    """Gives numbers above every one that is in use or retired, letter by letter, as wide as those that are in use."""

    def __init__(self, taken: Iterable[str]) -> None:
        self._highest: dict[str, int] = {}
        self._width: dict[str, int] = {}
        for letter, digits, _ in filter(None, map(mark_parts, taken)):
            self._highest[letter] = max(self._highest.get(letter, 0), int(digits))
            if digits.startswith("0"):
                self._width[letter] = max(self._width.get(letter, 1), len(digits))

    def next(self, signal: str) -> str:
        """A fresh mark for a lead of that signal."""
        letter = LETTERS[signal]
        self._highest[letter] = self._highest.get(letter, 0) + 1
        return f"{letter}{self._highest[letter]:0{self._width.get(letter, 1)}d}"


def mark_parts(mark: str) -> tuple[str, str, str] | None:
    """Letters, digits and leg (`D2a` -> `D`, `2`, `a`); None for a mark that is not made so."""
    found = _MARK.fullmatch(mark)
    return None if found is None else (found[1], found[2], found[3])


def without_leg(mark: str) -> str:
    """The number that the legs of a Y lead share (`D2a` -> `D2`)."""
    parts = mark_parts(mark)
    return mark if parts is None else parts[0] + parts[1]


def in_order(mark: str) -> tuple[str, int, str]:
    """Key that sorts marks as people count: `A2` before `A10`."""
    parts = mark_parts(mark)
    return (mark, 0, "") if parts is None else (parts[0], int(parts[1]), parts[2])


def adaptors_of(rig: Rig, power: PowerAssignment, before: Results | None) -> dict[str, tuple[Via, ...]]:
    """By unit, the adaptors that stand between its inlet and the leads from its outlets. Where the source numbers none it bears the number
    that a unit's adaptor of that kind had `before`, else one above all that are and were in use."""
    found: dict[str, tuple[Via, ...]] = {}
    for each in rig.lead_wishes.adaptors:
        found[each.unit] = (*found.get(each.unit, ()), Via(each.mark, each.kind))
    had = {} if before is None else adaptors_of(before.rig, before.get(PowerAssignment), None)
    taken = {each.mark for each in rig.lead_wishes.adaptors} | {mark for mark, _ in rig.lead_wishes.retired}
    known = {(unit, each.kind): each.mark for unit, of in had.items() for each in of if each.mark not in taken}
    older = 0 if before is None else highest_adaptor(before.rig)
    number = max(highest_adaptor(rig), older, *(_adaptor_number(each.mark) for of in had.values() for each in of))
    for feed in power.feeds:
        kinds = [each.kind for each in found.get(feed.unit, ())]
        if feed.how in ("series", "parallel") and feed.how not in kinds:
            mark = known.get((feed.unit, feed.how))
            if mark is None:
                number += 1
                mark = f"Y{number}"
            found[feed.unit] = (*found.get(feed.unit, ()), Via(mark, feed.how))
    return found


def highest_adaptor(rig: Rig) -> int:
    """The highest number that an adaptor or a Y lead of the source bears or bore (`Y3` is 3); 0 without any."""
    marks = [each.mark for each in rig.lead_wishes.adaptors] + [mark for mark, _ in rig.lead_wishes.retired]
    marks += [lead.mark for lead in rig.lead_wishes.leads]
    return max(map(_adaptor_number, marks), default=0)


def _adaptor_number(mark: str) -> int:
    parts = mark_parts(mark)
    return 0 if parts is None or parts[0] != "Y" else int(parts[1])
