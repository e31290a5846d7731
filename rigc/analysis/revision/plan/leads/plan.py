"""LeadPlan: what becomes of one lead; the verdicts, and what they mean."""

from __future__ import annotations

from rigc.analysis.revision.board import BoardLead
from rigc.record import Record

KEEP, REMAKE, NEW, STORE, BIN, UNTOLD = "keep", "re-make", "new", "pull and store", "pull and bin", "can't tell"
"""The verdicts on a lead.

keep: the lead that is there serves, whatever else is done to it (its actions). re-make: its number stays, but the
lead is made anew, since the one that is there is too short, too long, or of another cable or plug, or goes into other inlets. new: a number
that was not there before. pull and store: not used, but as it is it would serve as a spare for a lead of the new board, whatever
its cable, as long as that has as many conductors, and for power as thick ones; a mains lead always. pull and bin: it would serve for none as it is. can't
tell: a length is not known.
"""


class LeadPlan(Record):
    """What becomes of one lead.

    `mark` is its number in the new design; of a pulled lead the one that it bears. `before` is the lead that is used
    (or pulled), None where a lead is made or bought; `spare` says that it comes out of the spares. `after` is the
    lead as it shall be, None where it is pulled. `least` and `most` are the window of the new route in tenths of a
    millimetre: what is there is kept inside it. `ends[i]` is the end of `before` that becomes end i (a lead can be
    turned round).

    The actions on ends 0 (start) and 1: `moved` to another jack, put on or taken off an `adaptor`, `swapped` (the
    jack is the same one of the unit's successor), a plug that is cut off and `plugged` anew, a label to print
    (`labelled`); `cut`: what is cut off beside the plug, in tenths of a millimetre (on the last end that is plugged);
    `dressed`: its way changes by more than its least slack. `why` says why the lead that bears the
    number can't stay; `assumed` that the window leans on an assumed fact.
    """

    mark: str
    verdict: str
    before: BoardLead | None
    after: BoardLead | None
    least: int | None = None
    most: int | None = None
    ends: tuple[int, int] = (0, 1)
    moved: tuple[int, ...] = ()
    adaptor: tuple[int, ...] = ()
    swapped: tuple[int, ...] = ()
    plugged: tuple[int, ...] = ()
    labelled: tuple[int, ...] = ()
    cut: int = 0
    dressed: bool = False
    spare: bool = False
    why: str = ""
    assumed: bool = False
    change: int | None = None
    done: bool = False

    @property
    def touched(self) -> bool:
        """Whether a hand has anything to do with it."""
        acts = (self.moved, self.adaptor, self.swapped, self.plugged, self.labelled)
        return self.verdict != KEEP or self.dressed or any(acts)

    @property
    def renumbered(self) -> bool:
        """Whether a lead that is there gets another number, which it should not: the design had better state the old
        one."""
        return self.before is not None and self.after is not None and not self.spare and self.before.mark != self.mark
