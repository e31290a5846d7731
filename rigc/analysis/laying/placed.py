"""A rig -> the same rig with a place for everything that stands on its deck."""

from __future__ import annotations

from collections.abc import Callable

from rigc.analysis.deck.unplaced import open_rooms, unplaced
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.model.rig import Rig


def placed(
    rig: Rig,
    effort: int | None,
    watch: Callable[[int, int], None] | None = None,
    before: Rig | None = None,
    advice: bool = True,
    near: Rig | None = None,
) -> tuple[Rig, tuple[Diagnostic, ...]]:
    """The rig, and what found no place. What stood in a revision `before` stands there still, as long as nothing is in its way. `effort` is how many steps the search takes (None: the usual number); it is loaded
    only if there is something to place. Without `advice` nothing is sought that would let all stand. What is only tried stands as in a rig `near` it. `watch` is told now and then how many steps of how many were taken."""
    if not unplaced(rig) and not open_rooms(rig):
        return rig, ()
    if near is not None:
        from rigc.analysis.laying.choices.tried_places import tried_places

        return tried_places(rig, near)
    if before is not None:
        from rigc.analysis.laying.kept_places import kept_places

        kept = kept_places(rig, before, effort, watch, advice)
        return kept.rig, kept.told
    from rigc.analysis.laying.chosen_places import with_chosen_places

    return with_chosen_places(rig, effort, watch, advice)
