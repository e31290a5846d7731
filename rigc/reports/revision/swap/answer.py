"""Answer: what a swap comes to in one respect, and the row in which the page says so."""

from __future__ import annotations

from rigc.record import Record

YES, WORK, NO, UNKNOWN = "yes", "with work", "no", "not known"


class Answer(Record):
    """One respect: what it is, what the board gives or the unit has, what the substitute wants or has, and whether that will do.

    `text` says what to do, or why not; `short` is how the verdict names it, empty where it need not.
    """

    what: str
    there: str
    wanted: str
    answer: str
    text: str = ""
    short: str = ""
