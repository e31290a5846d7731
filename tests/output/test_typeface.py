"""The typeface that a file carries: what it has, what it costs, and under which licence it is passed on."""

from __future__ import annotations

import re
from base64 import b64decode
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from fontTools.ttLib import TTFont
from small_sheets import LEADS, document, row

from rigc.output import html, svg
from rigc.output.typeface import ACCENTED, COMMON, FAMILY, faces, page_faces
from rigc.reports.content import Column, Drawing, Table
from rigc.reports.drawings.means.letter_widths import BOLD, REGULAR
from rigc.reports.drawings.means.lettering import EM_PER_CAPITAL, text_width
from rigc.reports.drawings.shapes import Label
from rigc.resources import folder

FONTS = folder("templates") / "fonts"
CUTS = ("regular", "bold", "condensed", "condensed-bold")
WORDS = Path(__file__).parents[2] / "rigc"
WIDE = Table("wide", "Wide", tuple(Column(f"c{at}") for at in range(12)), (row(*"abcdefghijkl"),))


def font(name: str) -> Any:
    return TTFont(FONTS / f"{name}.woff2")


@pytest.mark.parametrize("cut", CUTS)
def test_each_cut_has_its_characters(cut: str) -> None:
    assert set(font(cut).getBestCmap()) == set(map(ord, COMMON))
    assert set(font(f"{cut}-accented").getBestCmap()) == set(map(ord, ACCENTED))


@pytest.mark.parametrize("cut", CUTS)
def test_all_figures_are_of_one_width(cut: str) -> None:
    face = font(cut)
    glyphs = face.getBestCmap()
    assert len({face["hmtx"][glyphs[ord(figure)]][0] for figure in "0123456789"}) == 1


@pytest.mark.parametrize(("cut", "table"), [("regular", REGULAR), ("bold", BOLD)])
def test_the_widths_that_drawings_reckon_with_are_the_fonts(cut: str, table: dict[int, str]) -> None:
    told = {ord(sign): width for width, signs in table.items() for sign in signs}
    found: dict[int, int] = {}
    for part in ("", "-accented"):
        face = font(f"{cut}{part}")
        found |= {code: face["hmtx"][glyph][0] for code, glyph in face.getBestCmap().items()}
        assert face["OS/2"].sCapHeight / face["head"].unitsPerEm == pytest.approx(1 / EM_PER_CAPITAL)
    assert told == found


def test_a_width_by_hand() -> None:
    """'1l' in capitals of 2.5 mm: (0.600 + 0.272) x 2.5 / 0.698 x 1.01 = 3.154 mm; widths as the font editor shows them."""
    assert text_width("1l", 2.5) == pytest.approx(3.154, abs=0.001)


@pytest.mark.parametrize("name", [f"{cut}{part}" for cut in CUTS for part in ("", "-accented")])
def test_the_licence_goes_with_it_and_the_reserved_name_does_not(name: str) -> None:
    names = font(name)["name"]
    assert {str(names.getName(number, 3, 1, 0x409)) for number in (1,)} == {FAMILY}
    licence = (FONTS / "OFL.txt").read_text("utf-8")
    assert "SIL OPEN FONT LICENSE Version 1.1" in licence and licence.startswith("Copyright ©")
    (reserved,) = re.findall(r'Reserved Font Name "(\w+)"', licence)
    assert not any(reserved in str(names.getName(number, 3, 1, 0x409)) for number in (1, 3, 4, 6))


def test_a_page_carries_what_it_sets_and_no_more() -> None:
    assert page_faces(html.render(document(LEADS))).count("@font-face") == 2
    assert page_faces(html.render(document(WIDE))).count("@font-face") == 4
    assert page_faces("<p>Å").count("@font-face") == 4


def test_what_it_costs() -> None:
    """A page of all cuts and all characters stays under 60 kB for each weight."""
    assert len(faces("", ("regular", "bold"))) < 27_000
    for cut in CUTS:
        assert len(faces("É", (cut,))) < 30_000


def test_what_a_file_carries_is_the_font() -> None:
    drawing = Drawing("d", "D", "a label", 40, 10, (Label(2, 8, "A01"),))
    for text in (html.render(document(LEADS)), svg.render(document(drawing), drawing)):
        data = re.findall(r"url\(data:font/woff2;base64,([^)]+)\)", text)
        assert [b64decode(each) for each in data] == [(FONTS / f"{cut}.woff2").read_bytes() for cut in CUTS[:2]]
        assert TTFont(BytesIO(b64decode(data[0])))["name"].getDebugName(1) == FAMILY
    assert "@font-face" not in svg.inline(drawing, "k")


def test_our_own_words_need_no_other_font() -> None:
    """Every sign that the compiler's own texts hold is in the first file of each cut, but for the sign of a diameter."""
    own = {sign for path in (WORDS / "reports").rglob("*.py") for sign in path.read_text("utf-8")}
    assert "Ø" in ACCENTED
    assert {sign for sign in own if not sign.isascii()} <= {*COMMON, "Ø"}


@pytest.mark.parametrize("cut", CUTS)
def test_no_sign_is_set_on_the_letter_before_it(cut: str) -> None:
    """A statement is quoted between two signs that are accents by their name: `mutes` must not become mutès."""
    for part in ("", "-accented"):
        face = font(f"{cut}{part}")
        features = {each.FeatureTag for each in face["GPOS"].table.FeatureList.FeatureRecord}
        assert not features & {"mark", "mkmk"}
