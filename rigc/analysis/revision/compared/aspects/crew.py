"""What the crew tests, keeps up and carries."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, Aspect
from rigc.analysis.revision.compared.words import exact
from rigc.model.rig import Rig


def crew(rig: Rig) -> Iterator[Aspect]:
    """Expected readings, upkeep and spares."""
    for each in rig.expected:
        name = f"{each.test} at {each.point}"
        yield Aspect("test", name, "", each.reading.typed, exact(each.reading), DESIGN, span=each.span)
    for shows, text in rig.upkeep:
        yield Aspect("upkeep", text, "", f"every {shows} shows", shows, DESIGN)
    for spare in rig.spares:
        length = "" if spare.length_mm is None else f", {spare.length_mm.typed}"
        name = f"{spare.what}{length}"
        text = f"{spare.count}" + (f" in {spare.bag}" if spare.bag else "")
        yield Aspect("spare", name, "", text, text, DESIGN, span=spare.span)


ASPECTS = crew
