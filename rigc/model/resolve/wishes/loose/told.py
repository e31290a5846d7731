"""Stated leads that no other statement joins -> findings: one for all leads of one cause, then each by what does join its jacks."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.model.resolve.context import Context
from rigc.model.resolve.wishes.loose.detours import detours
from rigc.model.resolve.wishes.loose.loose_lead import Joints, LooseLead
from rigc.model.resolve.wishes.loose.nothing_stated import nothing_stated
from rigc.model.resolve.wishes.loose.outlets import exchanged, moved_together
from rigc.model.resolve.wishes.loose.right_sides import right_sides
from rigc.model.resolve.wishes.loose.rows import rows
from rigc.model.resolve.wishes.loose.single import single
from rigc.model.resolve.wishes.loose.tangles import tangles
from rigc.model.resolve.wishes.loose.wrong_statements import in_wrong_statements

_CAUSES = (nothing_stated, right_sides, detours, moved_together, exchanged, rows, tangles)
"""What a cause has told, those behind it do not see."""


def told(loose: Sequence[LooseLead], joints: Joints, context: Context) -> Iterator[Diagnostic]:
    """The findings by their causes; none of a lead of what stands in a statement that is wrong and told."""
    spoiled = in_wrong_statements(context) if loose else frozenset()
    left = {each.mark: each for each in loose if not {each.start.thing, each.end.thing} & spoiled}
    for cause in _CAUSES if left else ():
        for leads, finding in cause(left, joints):
            for each in leads:
                left.pop(each.mark, None)
            yield finding
    for each in left.values():
        yield single(each, joints)
