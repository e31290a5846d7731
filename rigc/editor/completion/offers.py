"""A spot in a draft -> everything that can stand there, best first."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from rigc.editor.completion.countries import countries
from rigc.editor.completion.jacks import jacks
from rigc.editor.completion.leads import marks, whole_leads
from rigc.editor.completion.named import named
from rigc.editor.completion.offer import Offer
from rigc.editor.completion.spot import Spot
from rigc.editor.computed import Computed
from rigc.editor.draft import Draft
from rigc.loader import STOCK, STOCK_FILES
from rigc.model.things import FUSES

Follows = Callable[[str, str], frozenset[str]]
"""What may stand behind the beginning of a statement in a block, as the grammar has it."""

_UNIT_BEHIND = re.compile(r"\d\s*([A-Za-zµμΩ°%/]+[23]?)(?![\w.])")


def offers(spot: Spot, draft: Draft, computed: Computed | None, follows: Follows) -> tuple[Offer, ...]:
    """What can be typed there. Inside comments and texts nothing is, but the path behind `use`."""
    if spot.within:
        return tuple(_files(spot))
    if spot.thing:
        return tuple(jacks(spot, draft))
    can = follows(spot.block, spot.before)
    found = [*_words(can)]
    if "NAME" in can:
        found += named(spot, draft)
    if "MARK" in can:
        found += countries(spot)
        found += _fuses(spot)
        found += marks(spot, draft, computed)
    if "UNIT" in can:
        found += _units(spot, draft)
    if spot.block == "leads" and not spot.words:
        found += whole_leads(draft, computed)
    kept = {each.label: each for each in found}
    return tuple(sorted(kept.values(), key=lambda each: (each.rank, each.label)))


def _words(can: frozenset[str]) -> Iterator[Offer]:
    for word in can:
        if word[0].islower() or word in ("->", "=>"):
            yield Offer(word, "word", "a word of the language", rank=2)


def _fuses(spot: Spot) -> Iterator[Offer]:
    if spot.words == ("fuse",):
        yield from (Offer(letters, "word", f"{speed}, IEC 60127") for letters, speed in FUSES.items())


def _units(spot: Spot, draft: Draft) -> Iterator[Offer]:
    """The units in which statements of the same first word are written in the files of this rig."""
    first = spot.words[0] if spot.words else ""
    lines = re.compile(rf"^[ \t]*{re.escape(first)}\b(.*)$", re.MULTILINE)
    seen: dict[str, int] = {}
    for source in draft.read.gathered.sources:
        for line in lines.finditer(source.text):
            for unit in _UNIT_BEHIND.findall(re.sub(r'"[^"]*"|#.*', "", line[1])):
                seen[unit] = seen.get(unit, 0) + 1
    yield from (Offer(unit, "unit", f"as in other lines with '{first}'", rank=1) for unit in seen if unit != "x")


def _files(spot: Spot) -> Iterator[Offer]:
    if spot.within == "text" and not spot.block and spot.words[:1] == ("use",):
        yield from (Offer(f"{STOCK}{name}.rig", "file", "generic stock that ships with rigc") for name in STOCK_FILES)
