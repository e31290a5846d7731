"""Which cautions a sheet bears: three lines for the job where the hand is; what has no room there stands once on the front page."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.model.rig import Rig
from rigc.reports.content import Document, Paragraph
from rigc.reports.front import every_caution as every
from rigc.reports.front.every_caution import Caution

MOST = 3
"""So many lines are read where the hand is."""
MORE = "more on the front page"

JOBS: dict[str, tuple[Caution, ...]] = {
    "wiring-sheet": (
        every.EARTH,
        every.MUTED,
        every.METER,
        every.PHANTOM,
        every.JOINED,
        every.REVERSED,
        every.TREADLES,
        every.RADIO,
    ),
    "stage-hook-up": (every.EARTH, every.MUTED, every.PHANTOM, every.TAPED, every.RADIO),
    "midi-and-control-map": (every.LOOP, every.EXPRESSION, every.MERGED, every.MUTED),
    "fault-tree": (every.SMOKE, every.SOFTLY, every.KNOWN_LEAD),
    "power-table": (every.MAINS, every.OPENED, every.METER, every.AC, every.JOINED, every.REVERSED),
    "mains-sheet": (every.EARTH, every.MAINS, every.SOCKETS, every.BOND, every.OPENED, every.RESIDUAL, every.ADAPTOR, every.AC),
    "ground-sheet": (every.EARTH, every.BOND, every.RESIDUAL, every.PHANTOM),
    "mounting-strips": (every.OPENED, every.FLAMMABLE, every.TREADLES),
    "mass-and-balance": (every.LIFTED, every.TREADLES),
    "cable-list": (every.MAINS, every.SOLDERING, every.METER, every.JOINED, every.REVERSED),
    "cut-list": (every.SOLDERING, every.CLAMPED),
    "test-record": (every.BOND, every.OPENED, every.METER, every.EARTH, every.RESIDUAL, every.TONES, every.PHANTOM, every.AC),
    "level-table": (every.MUTED, every.TONES, every.SPEAKER),
    "field-notes": (every.ON_THE_ROAD, every.MUTED, every.METER),
    "maintenance": (every.OPENED, every.FLAMMABLE, every.CELLS),
}  # fmt: skip
"""What the job of each sheet can do to people, then to gear: the most dangerous first."""

_EVERYBODY = (every.EARTH, every.MAINS, every.OPENED)
"""What can kill is said on the front page, too."""


def care(sheet: str, rig: Rig, power: PowerAssignment, heading: str = "", name: str = "care") -> Paragraph:
    """The first cautions of a sheet's job that the rig calls for; its heading says where the others are."""
    lines = tuple(each.words for each in _called_for(sheet, rig, power))
    told = " · ".join(filter(None, (heading, MORE if len(lines) > MOST else "")))
    return Paragraph(name, lines[:MOST], heading=told, kind="caution")


def rest(rig: Rig, power: PowerAssignment, folder: Iterable[Document]) -> Paragraph:
    """What everybody must know, and what the sheets of the folder have no room for; last, that figures are to be verified."""
    sheets = [each.sheet for each in folder]
    there = {
        line
        for sheet in sheets
        for block in sheet.blocks
        if isinstance(block, Paragraph) and block.kind == "caution"
        for line in block.lines
    }
    called = dict.fromkeys(each for sheet in sheets for each in _called_for(sheet.name, rig, power))
    lines = _in_order((*_EVERYBODY, *(each for each in called if each.words not in there)))
    return Paragraph(
        "cautions",
        (*(each.words for each in lines), every.VERIFIED.words),
        heading="before you plug in",
        kind="caution",
    )


def _called_for(sheet: str, rig: Rig, power: PowerAssignment) -> list[Caution]:
    there = set(_has(rig, power))
    return [each for each in JOBS.get(sheet, ()) if not each.of or each.of in there]


def _has(rig: Rig, power: PowerAssignment) -> Iterator[str]:
    """What of the rig calls for a caution."""
    jacks = {jack.connector.kind for thing in rig.things.values() for jack in thing.jacks}
    if any(feed.how in ("series", "parallel") for feed in power.feeds):
        yield every.JOINED_LEADS
    if any(feed.reversed for feed in power.feeds):
        yield every.REVERSING_LEADS
    if "xlr" in jacks or any(unit.kind == "desk" for unit in rig.units.values()):
        yield every.MICROPHONE_LINES
    if "wireless" in jacks:
        yield every.RADIO_LINKS


def _in_order(told: Collection[Caution]) -> Iterator[Caution]:
    """Each once, in the order of danger."""
    return (each for each in vars(every).values() if isinstance(each, Caution) and each in told)
