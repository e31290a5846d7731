"""Makes the four cuts of the sheets' typeface, and the table of its widths, from the full fonts; see README.md beside this.

pip install 'fonttools[woff]'; npm install @ibm/plex-sans @ibm/plex-sans-condensed
PYTHONPATH=. python templates/fonts/subset.py node_modules
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

from fontTools import subset
from fontTools.pens.ttGlyphPen import TTGlyphPen

from rigc.output.typeface import ACCENTED, COMMON, FAMILY

HERE = Path(__file__).parent
WIDTHS = HERE.parents[1] / "rigc" / "reports" / "drawings" / "means" / "letter_widths.py"
CUTS = {
    "regular": "plex-sans/fonts/complete/woff2/IBMPlexSans-Regular.woff2",
    "bold": "plex-sans/fonts/complete/woff2/IBMPlexSans-Bold.woff2",
    "condensed": "plex-sans-condensed/fonts/complete/woff2/IBMPlexSansCondensed-Regular.woff2",
    "condensed-bold": "plex-sans-condensed/fonts/complete/woff2/IBMPlexSansCondensed-Bold.woff2",
}
DRAWN = "▲△■□◆✗"
"""Signs that the full fonts lack; drawn here."""

Contour = tuple[tuple[int, int], ...]


def main(modules: Path) -> None:
    """Writes the cuts beside this file, and the widths of the two that drawings are lettered in."""
    tables: dict[str, dict[int, int]] = {}
    for cut, path in CUTS.items():
        tables[cut] = {}
        for part, signs in {"": COMMON, "-accented": ACCENTED}.items():
            font = made(modules / "@ibm" / path, f"{cut}{part}", signs)
            glyphs, widths = font.getBestCmap(), font["hmtx"]
            tables[cut] |= {code: widths[glyphs[code]][0] for code in sorted(glyphs)}
    WIDTHS.write_text(module(tables["regular"], tables["bold"]), encoding="utf-8")


def made(source: Path, cut: str, signs: str) -> Any:
    """A part of one font, written under a name of its own: the licence reserves the first one's."""
    options = subset.Options()
    options.flavor, options.hinting, options.name_IDs = "woff2", False, ["*"]
    options.layout_features = [
        "kern",
        "ccmp",
        "locl",
    ]  # `mark` would set the sign ` as an accent on the letter before it
    font = subset.load_font(str(source), options)
    for sign in DRAWN:
        if ord(sign) not in font.getBestCmap():
            add(font, sign)
    named(font, cut)
    subsetter = subset.Subsetter(options)
    subsetter.populate(text=signs)
    subsetter.subset(font)
    missing = set(map(ord, signs)) - set(font.getBestCmap())
    if missing:
        raise SystemExit(f"{source} lacks {''.join(map(chr, missing))}")
    subset.save_font(font, str(HERE / f"{cut}.woff2"), options)
    return font


def named(font: Any, cut: str) -> None:
    """Copyright and licence (names 0, 13, 14) stay; every name that says which font this is becomes ours."""
    names = font["name"]
    style = cut.replace("-", " ").title()
    kept = {0, 8, 9, 11, 12, 13, 14}
    names.names = [record for record in names.names if record.nameID in kept]
    for number, text in {
        1: FAMILY,
        2: style,
        3: f"{FAMILY} {style}",
        4: f"{FAMILY} {style}",
        5: "Version 1",
        6: f"{FAMILY}-{style}".replace(" ", ""),
    }.items():
        names.setName(text, number, 3, 1, 0x409)


def add(font: Any, sign: str) -> None:
    """Draws a sign, as high as a capital and with the side room of a letter."""
    high = font["OS/2"].sCapHeight
    wide = high if sign == "◆" else round(high * 1.1)
    side = 40
    pen = TTGlyphPen(None)
    for contour in contours(sign, wide, high):
        pen.moveTo((contour[0][0] + side, contour[0][1]))
        for x, y in contour[1:]:
            pen.lineTo((x + side, y))
        pen.closePath()
    name = f"uni{ord(sign):04X}"
    font.setGlyphOrder([*font.getGlyphOrder(), name])
    glyph = pen.glyph()
    glyph.recalcBounds(font["glyf"])
    font["glyf"][name] = glyph
    font["hmtx"][name] = (wide + 2 * side, side)
    for table in font["cmap"].tables:
        if table.isUnicode():
            table.cmap[ord(sign)] = name


def contours(sign: str, wide: int, high: int) -> tuple[Contour, ...]:
    """The outlines of a sign: clockwise what is filled, against the clock what is left out of it."""
    middle, pen = wide // 2, 80
    triangle = ((0, 0), (middle, high), (wide, 0))
    square = ((0, 0), (0, high), (wide, high), (wide, 0))
    shapes: dict[str, tuple[Contour, ...]] = {
        "▲": (triangle,),
        "△": (triangle, ((round(1.8 * pen), pen), (wide - round(1.8 * pen), pen), (middle, high - 2 * pen))),
        "■": (square,),
        "□": (square, ((pen, pen), (wide - pen, pen), (wide - pen, high - pen), (pen, high - pen))),
        "◆": (((middle, 0), (0, high // 2), (middle, high), (wide, high // 2)),),
        "✗": (
            ((0, pen), (wide - pen, high), (wide, high - pen), (pen, 0)),
            ((pen, high), (wide, pen), (wide - pen, 0), (0, high - pen)),
        ),
    }
    return shapes[sign]


def module(regular: dict[int, int], bold: dict[int, int]) -> str:
    """The Python of the table: a width -> the characters that have it."""
    lines = ['"""How wide each character of the sheets\' typeface is; written by templates/fonts/subset.py."""', ""]
    lines += ["from __future__ import annotations", ""]
    for name, table in (("REGULAR", regular), ("BOLD", bold)):
        groups: dict[int, str] = {}
        for code, width in table.items():
            groups[width] = groups.get(width, "") + chr(code)
        lines.append(f"{name}: dict[int, str] = {{")
        lines += [f"    {width}: {signs!a}," for width, signs in sorted(groups.items())]
        lines.append("}")
    lines.append('"""Thousandths of the font\'s size -> the characters of that width."""')
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    main(Path(sys.argv[1]))
