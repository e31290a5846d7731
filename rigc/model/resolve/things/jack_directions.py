"""misused-name: the jacks that a statement of a block names are of the kind and the direction that it says."""

from __future__ import annotations

from collections.abc import Mapping

from rigc.diagnostics.diagnostic import Label
from rigc.model.jacks import AUDIO_IN, AUDIO_OUT, Jack
from rigc.model.resolve.context import Context
from rigc.model.scope import MISUSED
from rigc.source import Span
from rigc.syntax import nodes


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


def in_one_pair(context: Context, fact: nodes.StereoPair, before: Mapping[tuple[str, str], nodes.StereoPair]) -> bool:
    """Whether neither jack of a pair is one of another pair `before` it; a finding where one is. The same pair again is told as a repeated line."""
    mine = {fact.left.text, fact.right.text}
    other = next((names for names in before if mine & {*names}), None)
    if other is None or mine == {*other}:
        return True
    name = next(each for each in (fact.left, fact.right) if each.text in other)
    context.report(
        MISUSED.at(
            name.span,
            f"'{name.text}' is of the pair {other[0]}, {other[1]}, too",
            subject=(name.text, *other),
            label="of two pairs",
            also=(Label(before[other].span, "and of this one"),),
            help="correct one of the two pairs: a jack is the left or the right of one",
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


def is_loop(context: Context, fact: nodes.LoopJacks, jacks: list[Jack], sends: int) -> bool:
    """Whether the first so many jacks of a loop are outputs and the others inputs; a finding where not."""
    wrong = [(jack, AUDIO_OUT) for jack in jacks[:sends] if jack.role != AUDIO_OUT]
    wrong += [(jack, AUDIO_IN) for jack in jacks[sends:] if jack.role != AUDIO_IN]
    if not wrong:
        return True
    jack, wanted = wrong[0]
    at, what = (fact.sends.span, "send") if wanted == AUDIO_OUT else (fact.returns.span, "return")
    turned = len(wrong) == len(jacks) and {each.role for each in jacks} == {AUDIO_IN, AUDIO_OUT}
    context.report(
        MISUSED.at(
            at,
            f"the {what} of a loop is an {wanted}, and '{jack.name}' is {_a(jack.role)}",
            label=f"an {wanted} goes here",
            also=(Label(jack.span, "declared here"),),
            help=f"turn them round: send {fact.returns} return {fact.sends}"
            if turned
            else f"name the {wanted} that this loop's {what} is",
        )
    )
    return False


def is_audio(context: Context, jack: Jack, span: Span, what: str) -> bool:
    """Whether sound goes through a jack of which `what` is said; a finding where not."""
    if jack.audio:
        return True
    context.report(
        MISUSED.at(
            span,
            f"'{jack.name}' is {_a(jack.role)}, through which no sound goes; {what} is said of an audio jack",
            label="no audio jack",
            also=_declared(jack, jack),
            help="name an audio jack, or delete this line",
        )
    )
    return False


def _a(role: str) -> str:
    return f"an {role}" if role[0] in "aeiou" else f"a {role} jack"


def _declared(one: Jack, other: Jack) -> tuple[Label, ...]:
    spans = dict.fromkeys((one.span, other.span))
    return tuple(Label(span, "declared here") for span in spans)
