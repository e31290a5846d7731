"""What the crew tests, keeps up and carries."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, Aspect
from rigc.analysis.revision.compared.words import exact
from rigc.model.records import Spare
from rigc.model.rig import Rig


def crew(rig: Rig) -> Iterator[Aspect]:
    """Expected readings, upkeep and spares."""
    for each in rig.expected:
        name = f"{each.test} at {each.point}"
        yield Aspect("test", name, "", each.reading.typed, exact(each.reading), DESIGN, span=each.span)
    for shows, text in rig.upkeep:
        yield Aspect("upkeep", text, "", f"every {shows} shows", shows, DESIGN)
    spares: dict[str, list[Spare]] = {}
    for spare in rig.spares:
        length = "" if spare.length_mm is None else f", {spare.length_mm.value:g} mm"
        spares.setdefault(f"{spare.what}{length}", []).append(spare)
    for name, stated in spares.items():
        text = _counts(stated)
        yield Aspect("spare", name, "", text, text, DESIGN, span=stated[0].span)


def _counts(stated: list[Spare]) -> str:
    """How many there are in each bag."""
    bags = dict.fromkeys(spare.bag for spare in stated)
    counts = {bag: sum(spare.count for spare in stated if spare.bag == bag) for bag in bags}
    return ", ".join(f"{count} in {bag}" if bag else f"{count}" for bag, count in counts.items())


ASPECTS = crew
