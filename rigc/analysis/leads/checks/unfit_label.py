"""A label's text is longer than the printed marker, or two leads bear the same text.

Why it matters: a text that is cut off, or is found on two leads, sends the wrong plug into the wrong jack in the dark.
What to do: shorten names or the template (`label "{id} {far}"`), use longer markers, or set {id} apart from the rest in the template.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.labels import Labels
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.model.rig import Rig

KIND = Kind(
    "unfit-label",
    Level.WARNING,
    __doc__,
    "label text <= characters of the marker, and no text on two leads",
    "common practice, no source",
)


def unfit_label(rig: Rig, labels: Labels) -> Iterator[Diagnostic]:
    """One finding for all that are too long, one for each text that several leads bear."""
    yield from _too_long(rig, labels)
    bearers: dict[str, dict[str, None]] = {}
    for mark, texts in labels.texts.items():
        for text in texts:
            bearers.setdefault(text, {})[mark] = None
    for text, marks in bearers.items():
        if len(marks) > 1:
            yield KIND.at(
                rig.head.span,
                f'{" and ".join((", ".join(list(marks)[:-1]), list(marks)[-1]))} bear the same label "{text}"',
                subject=tuple(marks),
                help="set {id} apart from the rest in the rig's label template",
            )


def _too_long(rig: Rig, labels: Labels) -> Iterator[Diagnostic]:
    holds = rig.head.marker_characters
    lengths = {mark: labels.longest(mark) for mark in labels.texts}
    if holds is None:
        if lengths:
            yield KIND.cant_check(
                rig.head.span,
                f"whether labels of up to {max(lengths.values())} characters fit is not known, for want of the marker's length",
                subject=(rig.head.name, "marker"),
                help="state it in the rig block, for example `marker 24 characters`",
            )
        return
    over = {mark: length for mark, length in lengths.items() if length > holds}
    if over:
        worst = max(over, key=lambda mark: over[mark])
        text = max((*labels.texts[worst], labels.flags.get(worst, "")), key=len)
        yield KIND.at(
            rig.head.span,
            f"a marker holds {holds} characters; the labels of {', '.join(over)} are longer, up to {over[worst]} "
            f'("{text}")',
            subject=tuple(over),
            numbers=(Number("longest", over[worst], "characters"), Number("marker", holds, "characters")),
            help="shorten the rig's label template or the names, or take longer markers",
        )


CHECK = unfit_label
