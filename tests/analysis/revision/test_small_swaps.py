"""A unit of a small board exchanged for another: how that is fed, where it stands, which leads it keeps and what is wrong with it then, asserted whole."""

from __future__ import annotations

import pytest
from cases import READER, ROOT, ExpectedByName
from comparison_rigs import text_of
from syrupy.assertion import SnapshotAssertion

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Leads
from rigc.analysis.results import Results
from rigc.analysis.revision.rework import Rework
from rigc.analysis.revision.substitute.trial import Trial, try_out
from rigc.compile import read_rig
from rigc.diagnostics.diagnostic import Level
from rigc.files.disk import Disk
from rigc.source import Span

BASE = "tests/rigs/small-pair.rig"
Changes = tuple[tuple[str, str], ...]
OTHER = "unit cress {{\n{}}}\n\nunit sluice "
SEDGE = (
    "  body 70 x 120 x 55 mm",
    "  input in ts 1 Mohm right 80 mm up 25 mm",
    "  output out ts 1 kohm left 80 mm up 25 mm",
    "  inlet dc barrel 5.5 x 2.1 mm rear 35 mm up 30 mm",
    "  needs 9 V dc",
    "  polarity centre-negative",
    "  draws 20 mA",
)  # fmt: skip


def cress(*changes: tuple[str, str], more: tuple[str, ...] = ()) -> tuple[str, str]:
    """A unit as `sedge` is, but for these words, and with these lines more."""
    text = "".join(f"{line}\n" for line in (*SEDGE, *more))
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return "unit sluice ", OTHER.format(text)


OTHERS_JACKS = (
    cress(("input in ", "input left "), ("output out ", "output left-out "), more=("  input right ts 1 Mohm left 40 mm up 25 mm",)),
)  # fmt: skip
TWO_OUTLETS = (
    "o1..o4 9 V dc 200 mA isolated front 15..90 mm up 20 mm",
    "o1..o3 9 V dc 50 mA isolated front 15..65 mm up 20 mm\n  outlet o4 9 V dc 300 mA isolated front 90 mm up 20 mm",
)
AS_BUILT = ("power {", "as-built A {\n  A9 6.2 m\n}\n\npower {")
EARLIER = ("power {", "as-built Z {\n  A9 6.4 m\n}\n\npower {")
TIER = ("clearance 60 mm\n", "clearance 60 mm\n  tier back 150..320 mm raised 30 mm\n")
ON_TIER = ("iris at 280, 160 mm", "iris at 280, 160 mm on back")
SWAPS: dict[str, tuple[str, Changes]] = {
    "like-for-like": ("sedge", (cress(), AS_BUILT)),
    "measured-at-another-time": ("iris", (cress(more=("  midi in midi mini-trs rear 15 mm up 15 mm type a",)), EARLIER)),
    "jacks-of-other-names": ("sedge", OTHERS_JACKS),
    "more-current": ("rush", (cress(("draws 20 mA", "draws 120 mA")), TWO_OUTLETS)),
    "far-too-much-current": ("rush", (cress(("draws 20 mA", "draws 900 mA")), TWO_OUTLETS)),
    "current-not-known": ("rush", (cress(("  draws 20 mA\n", "")), TWO_OUTLETS)),
    "other-voltage": ("rush", (cress(("needs 9 V dc", "needs 18 V dc")),)),
    "no-power": ("rush", (cress(("  inlet dc barrel 5.5 x 2.1 mm rear 35 mm up 30 mm\n  needs 9 V dc\n  polarity centre-negative\n  draws 20 mA\n", "  passive\n")),)),
    "power-where-none-was": ("sluice", (cress(("  input in ts 1 Mohm right 80 mm up 25 mm\n", ""), ("  output out ts 1 kohm left 80 mm up 25 mm\n", "  expression out out trs tip-wiper 10 kohm right 60 mm up 20 mm\n")),)),
    "wider": ("rush", (cress(("body 70 x", "body 90 x")), ("rush at 420, 10 mm", "rush at 480, 10 mm"))),
    "deeper-on-a-tier": ("iris", (cress(("70 x 120 x 55", "70 x 140 x 55"), more=("  midi in midi mini-trs rear 15 mm up 15 mm type a",)), TIER, ON_TIER, ("iris at 280, 160", "iris at 280, 190"))),
    "no-place-for-it": ("rush", (cress(("body 70 x 120", "body 300 x 300")),)),
    "in-use": ("sedge", (cress(), ("holds rush", "holds rush -> cress"))),
}  # fmt: skip


def tried(text: str, out: str) -> Trial | str:
    disk = Disk(ROOT / BASE, ROOT, text.encode())
    read = read_rig(disk, disk.name, READER)
    assert read.resolved.rig is not None and not [each for each in read.findings if each.level is Level.ERROR]
    return try_out(read.gathered.statements, out, "cress", READER, Span(read.gathered.sources[0], 0, 0), None)


def told(trial: Trial | str) -> str:
    if isinstance(trial, str):
        return f"refused: {trial}\n"
    lines = [f"weak: {trial.weak}, corner: {trial.corner}", *trial.lines]
    for way in trial.ways:
        lines.append(
            f"way: {[(name, str(tap)) for name, tap in way.taps]} {way.warnings} more warnings, {way.shares} %, moves {len(way.moved)}"
        )
    for name, made in (("plugged", trial.plugged), ("mended", trial.mended)):
        lines += [f"{name}:", *state(made)]
    lines += [
        f"{plan.mark} {plan.verdict}, has {plan.before and plan.before.length}, may have {plan.least} to {plan.most}"
        for plan in trial.mended.get(Rework).leads
    ]
    lines += [f"{each.level.word}: {each.message} [{each.kind.name}]" for each in trial.findings]
    return "".join(f"{line}\n" for line in lines)


def state(made: Results) -> list[str]:
    feeds = [f"  {each.unit} from {' + '.join(map(str, each.outlets))} {each.how} {each.volts:g} V, reversed {each.reversed}" for each in made.get(PowerAssignment).feeds]  # fmt: skip
    place = made.rig.places.get("cress")
    places = (
        []
        if place is None
        else [
            f"  at {place.x_mm:g}, {place.y_mm:g} {place.turned} {place.under} {place.tier}, {len(made.rig.places)} places"
        ]
    )
    leads = [
        f"  {lead.mark} {lead.start} to {lead.end}, {lead.ends}, {lead.cable}, made {None if lead.made_mm is None else lead.made_mm.typed}"
        for lead in made.get(Leads).all
        if "cress" in (lead.start.thing, lead.end.thing) or lead.stage
    ]
    return [*places, *feeds, *leads]


@pytest.mark.parametrize("swap", SWAPS)
def test_what_a_swap_comes_to(swap: str, snapshot: SnapshotAssertion) -> None:
    out, changes = SWAPS[swap]
    assert told(tried(text_of(BASE, *changes), out)) == snapshot(extension_class=ExpectedByName)
