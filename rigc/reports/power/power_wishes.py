"""The power block's wishes -> what stays alone, what may share, what is kept free."""

from __future__ import annotations

from rigc.diagnostics.wording import listed
from rigc.model.wishes import PowerWishes
from rigc.reports.content import Paragraph


def power_wishes(wishes: PowerWishes) -> Paragraph | None:
    """A line for each; None where there is no such wish."""
    lines = [f"{name} shares its outlet with no other unit." for name in wishes.alone]
    lines += [f"{listed(group)} may share an outlet." for group in wishes.may_share]
    lines += [
        f"{count} outlet{'s' if count > 1 else ''}{f' of {supply}' if supply else ''} {'stay' if count > 1 else 'stays'} free."
        for count, supply, _ in wishes.spare
    ]
    lines += [
        f"An outlet of {volts.typed} {current.upper()}, {milliamps.typed}, stays free{f': {text}' if text else ''}."
        for volts, current, milliamps, text in wishes.reserved
    ]
    return Paragraph("wishes", tuple(lines), heading="Wishes that are kept") if lines else None
