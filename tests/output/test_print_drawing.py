"""What a browser prints of a drawing, measured on the page. Skipped where the programs are missing."""

from __future__ import annotations

import re
import shutil
import subprocess
from itertools import pairwise
from pathlib import Path

import pytest
from small_sheets import document
from test_print import printed

from rigc.reports.content import Drawing
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import COLOURS, Label, Line

MISSING = [program for program in ("chromium", "pdftoppm", "pdftotext") if shutil.which(program) is None]

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(bool(MISSING), reason=f"not installed: {', '.join(MISSING)}"),
]

DPI = 400
INCH = 25.4
WIDEST = 183  # mm: A4 without the filing edge of 20 mm and the right margin of 7 mm
TEXTS = (
    "plain lead, 3 m",
    "everything on",
    "WIDE CAPITALS",
    "1 234 567.89 kohm",
    "minimum −12.5 dB",
    "fill jitter (ill)",
)


def crossed(width: float, across: float) -> Drawing:
    """A drawing with a horizontal line of `across` mm in vermillion and an upright one of 100 mm in blue."""
    lines = (
        Line(10, 5, 10 + across, 5, "vermillion", width_mm=0.5),
        Line(5, 5, 5, 105, "blue", width_mm=0.5),
    )
    return Drawing("crossed", "Crossed", "two lines", width, 110, lines)


def measured(pdf: Path, folder: Path) -> tuple[float, float]:
    """Length in mm of the longest run of vermillion across the first page, and of blue down it."""
    subprocess.run(["pdftoppm", "-r", str(DPI), "-singlefile", str(pdf), str(folder / "page")], check=True, timeout=120)
    data = (folder / "page.ppm").read_bytes()
    head = re.match(rb"P6\s+(\d+)\s+(\d+)\s+255\s", data)
    assert head is not None
    row = int(head[1]) * 3
    vermillion, blue = (bytes.fromhex(COLOURS[name][1:]) for name in ("vermillion", "blue"))
    runs = re.findall(b"(?:" + re.escape(vermillion) + b")+", data)
    rows = [at for at in range(int(head[2])) if blue in data[head.end() + at * row : head.end() + (at + 1) * row]]
    assert all(after - before == 1 for before, after in pairwise(rows))
    return max(len(run) for run in runs) / 3 / DPI * INCH, len(rows) / DPI * INCH


def test_100_mm_print_as_100_mm(tmp_path: Path) -> None:
    across, down = measured(printed(tmp_path, document(crossed(180, 100)), "a4"), tmp_path)
    assert across == pytest.approx(100, abs=0.2)
    assert down == pytest.approx(100, abs=0.2)


def test_a_drawing_wider_than_the_paper_is_made_smaller_both_ways(tmp_path: Path) -> None:
    across, down = measured(printed(tmp_path, document(crossed(250, 200)), "a4"), tmp_path)
    assert across == pytest.approx(200 * WIDEST / 250, abs=0.3)
    assert down == pytest.approx(100 * WIDEST / 250, abs=0.3)


def test_a_label_takes_no_more_room_than_is_reckoned_for_it(tmp_path: Path) -> None:
    labels = tuple(Label(5, 10 + 8 * at, text) for at, text in enumerate(TEXTS))
    pdf = printed(tmp_path, document(Drawing("texts", "Texts", "labels", 180, 60, labels)), "a4")
    words = subprocess.run(["pdftotext", "-bbox-layout", str(pdf), "-"], check=True, capture_output=True, timeout=60)
    lines = re.findall(r'<line xMin="([\d.]+)" .*?xMax="([\d.]+)" .*?>(.*?)</line>', words.stdout.decode(), re.DOTALL)
    widths = {
        " ".join(re.findall(r">([^<]+)</word>", line)): (float(end) - float(start)) / 72 * INCH
        for start, end, line in lines
    }
    for text in TEXTS:
        assert 0.6 * text_width(text, 2.5) < widths[text] <= text_width(text, 2.5)
