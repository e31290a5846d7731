"""Jack panels: each jack with its place on the deck."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, REDRILL, Aspect
from rigc.analysis.revision.compared.facts import fact_aspects, jack_aspects, knowledge, paper_aspects, seat_words
from rigc.model.rig import Rig


def panels(rig: Rig) -> Iterator[Aspect]:
    """A jack that sits elsewhere is a new hole."""
    for panel in rig.panels.values():
        yield Aspect("panel", panel.name, "", panel.title or "panel", True, DESIGN, (REDRILL,), panel.declared)
        yield from fact_aspects("panel", panel)
        yield knowledge("panel", panel)
        yield from paper_aspects("panel", panel)
        for each in jack_aspects("panel", panel.name, panel.jacks):
            if each.field.startswith("signal at"):
                yield each
        for jack in panel.jacks:
            text = f"{seat_words(jack)} at {jack.x_mm:g}, {jack.y_mm:g} mm"
            yield Aspect("panel", panel.name, f"jack {jack.name}", text, text, DESIGN, (REDRILL,), jack.span)


ASPECTS = panels
