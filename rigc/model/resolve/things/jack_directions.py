"""misused-name: two jacks that a block joins run the way that the statement says."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Label
from rigc.model.jacks import AUDIO_IN, AUDIO_OUT, Jack
from rigc.model.resolve.context import Context
from rigc.model.scope import MISUSED
from rigc.source import Span


def is_pair(context: Context, left: Jack, right: Jack, span: Span) -> bool:
    """Whether left and right of a stereo pair are both inputs or both outputs; a finding where not."""
    if left.role == right.role and left.name != right.name:
        return True
    same = left.name == right.name
    context.report(
        MISUSED.at(
            span,
            f"'{left.name}' and '{right.name}' are {'one jack' if same else f'{_a(left.role)} and {_a(right.role)}'}; "
            "a stereo pair is two inputs or two outputs",
            label="no pair",
            also=_declared(left, right),
            help="name the left and the right jack of one direction",
        )
    )
    return False


def is_way(context: Context, start: Jack, end: Jack, span: Span) -> bool:
    """Whether a path inside a thing goes from an input to an output; a finding where not."""
    if start.role == AUDIO_IN and end.role == AUDIO_OUT:
        return True
    turned = start.role == AUDIO_OUT and end.role == AUDIO_IN
    context.report(
        MISUSED.at(
            span,
            f"this path goes from '{start.name}', {_a(start.role)}, to '{end.name}', {_a(end.role)}; "
            "it goes from an input to an output",
            label="this path",
            also=_declared(start, end),
            help=f"turn it round: path {end.name} -> {start.name}" if turned else "name an input and an output",
        )
    )
    return False


def _a(role: str) -> str:
    return f"an {role}" if role[0] in "aeiou" else f"a {role} jack"


def _declared(one: Jack, other: Jack) -> tuple[Label, ...]:
    spans = dict.fromkeys((one.span, other.span))
    return tuple(Label(span, "declared here") for span in spans)
