"""A drawing -> SVG in true millimetres, on a white ground: as a file of its own, or as an element within a page."""

from __future__ import annotations

from rigc.output.escapes import xml
from rigc.output.svg_shapes import element, number
from rigc.output.typeface import FALLBACK, FAMILY, PLAIN, faces
from rigc.reports.content import Document, Drawing, Sheet, TitleBlock
from rigc.reports.drawings.means.scale_bar import BAR_HEIGHT, scale_bar
from rigc.reports.drawings.shapes import Label, Line, Shape

FONTS = f"'{FAMILY}', {FALLBACK}"
STRIP = 12.0
"""Height of the strip that a file adds under its drawing, in mm: of which rig, of which revision."""


def file_name(sheet: Sheet, drawing: Drawing) -> str:
    """The name of the file that holds a sheet's drawing."""
    return f"{sheet.name}-{drawing.name}.svg"


def drawings(document: Document) -> tuple[Drawing, ...]:
    """The drawings of a document's sheet, in order."""
    return tuple(block for block in document.sheet.blocks if isinstance(block, Drawing))


def render(document: Document, drawing: Drawing) -> str:
    """A file of its own: the drawing, and under it a strip that names rig, drawing and revision."""
    height = drawn_height(drawing)
    strip = _strip(document.title, drawing, height)
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{_svg(drawing, height + STRIP, strip, "drawing", alone=True)}'


def inline(drawing: Drawing, key: str) -> str:
    """An element within a page; `key` must be an identifier that no other drawing of the page has."""
    return _svg(drawing, drawn_height(drawing), (), key)


def drawn_height(drawing: Drawing) -> float:
    """The height of a drawing with its scale bar, in mm."""
    return drawing.height_mm + (BAR_HEIGHT if drawing.scale else 0.0)


def _svg(drawing: Drawing, height: float, more: tuple[Shape, ...], key: str, alone: bool = False) -> str:
    bar = scale_bar(drawing.scale, drawing.width_mm, drawing.height_mm + 2) if drawing.scale else ()
    size = f"{number(drawing.width_mm)} {number(height)}"
    opening = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{number(drawing.width_mm)}mm" height="{number(height)}mm"'
        f' viewBox="0 0 {size}" role="img" aria-labelledby="{key}-title {key}-desc" font-family="{FONTS}">'
    )
    named = f'<title id="{key}-title">{xml(drawing.title)}</title>\n<desc id="{key}-desc">{xml(drawing.desc)}</desc>'
    ground = f'<rect width="{number(drawing.width_mm)}" height="{number(height)}" fill="#FFFFFF"/>'
    drawn = "\n".join(element(shape) for shape in (*drawing.shapes, *bar, *more))
    letters = f"<style>{faces(drawn, PLAIN)}</style>\n" if alone else ""
    return "\n".join((opening, named, f"{letters}{ground}", drawn, "</svg>\n"))


def _strip(title: TitleBlock, drawing: Drawing, top: float) -> tuple[Shape, ...]:
    of_what = f"{title.rig} · revision {title.revision} · {title.date} · source {title.source_hash}"
    draft = "DRAFT: not to build from · " if title.draft else ""
    return (
        Line(0, top + 1.5, drawing.width_mm, top + 1.5, width_mm=0.5),
        Label(1, top + 6, f"{draft}{drawing.title}", strong=True),
        Label(1, top + 10.5, of_what),
    )
