"""What the rules of the deck tell of a layout that rigc chose, without what no place could mend."""

from __future__ import annotations

from rigc.analysis.every_check import check
from rigc.analysis.laying.place_finder import quiet_finder
from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.model.rig import Rig

RULES = (
    "bodies_overlap",
    "plugs_collide",
    "plug_over_edge",
    "switches_too_near",
    "too_tall",
    "covered_drop_line",
    "unfit_lead_length",
    "weak_strip",
    "tips_over",
    "too_warm",
    "coil_near_transformer",
    "lead_beside_power",
)


def told(rig: Rig) -> list[Diagnostic]:
    """All errors and warnings of these rules."""
    made = Results(rig, given=(quiet_finder(),))
    every = (finding for name in RULES for finding in made.call(check(name)))
    return [finding for finding in every if finding.level in (Level.ERROR, Level.WARNING)]


def of_places(laid: Rig, by_hand: Rig) -> list[str]:
    """What is told of the chosen places: not that a lead that exists is too long, nor that a unit's own jacks or switches are too near
    to each other, nor what strips lack that lack it by hand, too."""
    known = {finding.fingerprint for finding in told(by_hand)}
    return [finding.message for finding in told(laid) if not _of_facts(finding, known)]


def _of_facts(finding: Diagnostic, known: set[str]) -> bool:
    name, things = finding.kind.name, set(finding.subject)
    if name == "unfit-lead-length":
        return finding.level is Level.WARNING
    if name in ("plugs-collide", "switches-too-near"):
        return len(things) == 1 or (name == "plugs-collide" and "plugs of '" in finding.message)
    return name == "weak-strip" and finding.fingerprint in known
