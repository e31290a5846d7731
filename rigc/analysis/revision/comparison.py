"""A revision and the one before -> what differs in the computed design, thing by thing, with the work and the causes."""

from __future__ import annotations

from rigc.analysis.previous import Previous
from rigc.analysis.results import Results
from rigc.analysis.revision.aspects import Aspects
from rigc.analysis.revision.compared.changed import ChangedThing
from rigc.model.rig import Rig
from rigc.record import Record


class Comparison(Record):
    """What is said otherwise; nothing where there is no revision before, or no difference."""

    things: tuple[ChangedThing, ...] = ()


def comparison(rig: Rig, previous: Previous, results: Results) -> Comparison:
    """Compares all that can be said of both; findings are not part of it. What it takes is loaded only where there is a
    revision before."""
    if previous.results is None:
        return Comparison()
    from rigc.analysis.revision.compared.causes import with_causes
    from rigc.analysis.revision.compared.held_back import with_decks_exchanged, with_labels_left, with_leads_kept
    from rigc.analysis.revision.compared.pairs import pairs
    from rigc.analysis.revision.compared.stated import with_stated
    from rigc.analysis.revision.compared.things import changed_things

    old, new = previous.results.get(Aspects), results.get(Aspects)
    things = changed_things(old.by_key, new.by_key, pairs(previous, results))
    things = with_decks_exchanged(with_labels_left(with_leads_kept(things, results)))
    things = with_causes(things, previous.results.rig, rig, previous.effort)
    return Comparison(with_stated(things, rig.head.changes))


COMPUTE = comparison
