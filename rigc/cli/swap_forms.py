"""The page of a swap -> its text in the format that was asked for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.cli.seam import rendered as documents_rendered

if TYPE_CHECKING:
    from rigc.model.rig import Rig
    from rigc.reports.revision.swap.page import SwapPage
    from rigc.source import Source


def rendered(page: SwapPage, rig: Rig, sources: tuple[Source, ...], form: str, paper: str) -> str:
    """As `text` (the verdict is its first line), `md`, `html` or `json`."""
    if form == "json":
        from rigc.output.json import render_page

        return render_page(page.sheet, page.answer, page.verdict)
    if form == "text":
        from rigc.output.whole_text import render

        first, *others = page.sheet.blocks
        return render(page.sheet.replace(title=page.verdict, blocks=(first.replace(heading=""), *others)))
    from rigc.compile import Compiled
    from rigc.reports.content import Document, TitleBlock

    head, digest = rig.head, Compiled((), None, sources).hash
    title = TitleBlock(
        head.title, head.name, head.client, page.sheet.title, head.letter, head.date, head.drawn, head.checked, digest
    )
    return documents_rendered((Document(page.sheet, title, 1, 1),), form, paper)
