"""A guessed fact within a traced number -> whose it is, and what it is in words."""

from __future__ import annotations

from rigc.analysis.guesses.near_limit import Guess
from rigc.traced.given import Stated


def guess_of(each: Stated) -> Guess:
    """From the name under which it came into the number: `gain of marl`, `fen.in (stage)`, `what combo.in takes`."""
    label = each.label.partition(" (")[0]
    if label.startswith("what "):
        owner = label.split()[1]
        words = label.replace(owner, f"'{owner}'", 1)
    elif " of " in label:
        what, _, owner = label.rpartition(" of ")
        words = f"the {what} of '{owner}'"
    else:
        owner, words = label, f"the impedance of '{label}'"
    return Guess(owner.partition(".")[0], words, each.fact)
