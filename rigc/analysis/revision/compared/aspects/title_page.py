"""What every page bears, and what the source says to its readers."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, Aspect
from rigc.analysis.revision.compared.words import words
from rigc.model.rig import Rig


def title_page(rig: Rig) -> Iterator[Aspect]:
    """The rig block, without the statements that tell of changes and of the release."""
    head = rig.head
    for field, value in (
        ("name", head.name),
        ("title", head.title),
        ("revision", head.letter),
        ("date", head.date),
        ("what is new", head.revision_text),
        ("class", head.rig_class),
        ("client", head.client),
        ("drawn by", head.drawn),
        ("checked by", head.checked),
        ("follows", " ".join(head.follows or ())),
        ("label text", head.label),
        ("marker", None if head.marker_characters is None else f"{head.marker_characters} characters"),
        ("length of a show", None if head.show_min is None else head.show_min.typed),
        ("rate of an hour's work", None if head.rate is None else head.rate.typed),
        ("notes", rig.notes),
    ):
        detail = field in ("follows", "what is new")
        yield Aspect("rig", "pages", field, words(value), value or None, DESIGN, span=head.span, detail=detail)


ASPECTS = title_page
