"""PowerAssignment -> the paragraph that says how good the choice of outlets is, and whether that is proved."""

from __future__ import annotations

from rigc.analysis.feeds.choice.order_of_merit import Levels
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.diagnostics.wording import listed
from rigc.reports.content import Paragraph


def choice_words(power: PowerAssignment) -> Paragraph | None:
    """None where the source states every outlet, or none could be chosen."""
    chosen = [feed.unit for feed in power.feeds if not feed.stated]
    if not chosen:
        return None
    count = f"{len(chosen)} unit{'s' * (len(chosen) > 1)}"
    lines = [f"The outlets of {count} were chosen ({', '.join(chosen)}); the others are as the source states them."]
    if power.proved:
        lines.append(f"Proved best: no other choice has less than {_told(power.objective)}, counted in this order.")
    else:
        lines.append(
            f"Not proved: the search ended after {power.steps} steps. Found: {_told(power.objective)}. "
            f"Any other choice has at least {_told(power.bound)}, counted in this order."
        )
    if power.unmeasured:
        are = "is" if len(power.unmeasured) == 1 else "are"
        lines.append(f"The lead of {listed(power.unmeasured)} {are} counted as 0 mm: a place or jack is not stated.")
    return Paragraph("choice", tuple(lines), heading="How the outlets were chosen")


def _told(levels: Levels) -> str:
    return (
        f"{levels.warnings} rule warning{'s' * (levels.warnings != 1)}, {levels.sharing} units that share an outlet, "
        f"{levels.strangers} of these shares between units that are no neighbours in the chain, {levels.moves} units away "
        f"from the outlet of their stated lead, or of the revision before, {levels.length_mm} mm between outlets and inlets"
    )
