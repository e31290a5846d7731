"""Every drawing of the worked boards in a real browser: letters that cover letters, what leaves its ground, and true size.

Skipped where the programs are missing.
"""

from __future__ import annotations

import re
import shutil
import subprocess
from pathlib import Path

import pytest
from browser import scripted, told
from cases import ROOT, compiled
from test_print import printed

from rigc.output import html
from rigc.output.extras import pdf
from rigc.output.layout import Layout
from rigc.reports.content import Document, Drawing
from rigc.reports.drawings.deck.full_size import RULER
from rigc.reports.drawings.shapes import COLOURS

MISSING = [program for program in ("chromium", "pdftoppm") if shutil.which(program) is None]

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(bool(MISSING), reason=f"not installed: {', '.join(MISSING)}"),
]

BOARDS = ("long-haul", "back-bedroom")
INCH, LINE_MM = 25.4, 0.25

# What the browser drew, in mm on each drawing: letters as the box of their capitals (0.7 of the font's size), turned as they stand.
PROBE = """<script>
document.fonts.ready.then(() => {
const faults = [];
let seen = 0;
for (const svg of document.querySelectorAll('figure svg')) {
  const title = svg.querySelector('title').textContent;
  const ground = svg.viewBox.baseVal;
  const toGround = svg.getScreenCTM().inverse();
  const boxOf = (element, box) => {
    const matrix = toGround.multiply(element.getScreenCTM());
    const corners = [[0, 0], [1, 0], [0, 1], [1, 1]].map(([across, down]) =>
      new DOMPoint(box.x + box.width * across, box.y + box.height * down).matrixTransform(matrix));
    const xs = corners.map(corner => corner.x), ys = corners.map(corner => corner.y);
    return {left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys)};
  };
  const outside = box => box.left < -0.5 || box.top < -0.5 || box.right > ground.width + 0.5 || box.bottom > ground.height + 0.5;
  const letters = [];
  for (const text of svg.querySelectorAll('text')) {
    const size = parseFloat(text.getAttribute('font-size')), base = parseFloat(text.getAttribute('y'));
    const drawn = text.getBBox();
    const box = boxOf(text, {x: drawn.x, width: drawn.width, y: base - 0.7 * size, height: 0.7 * size});
    letters.push({words: text.textContent, box});
    if (outside(box)) faults.push(`${title}: '${text.textContent}' leaves its ground`);
  }
  for (const shape of svg.querySelectorAll('path, rect, circle')) {
    if (outside(boxOf(shape, shape.getBBox()))) faults.push(`${title}: a shape leaves its ground`);
  }
  letters.forEach((one, at) => letters.slice(at + 1).forEach(other => {
    const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
    const down = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
    if (across > 0.1 && down > 0.1) faults.push(`${title}: '${one.words}' and '${other.words}'`);
  }));
  seen += 1;
}
document.body.innerHTML = '<pre id="probe">' + JSON.stringify({seen, faults}).replace(/</g, '&lt;') + '</pre>';
});
</script>"""


def documents(board: str) -> tuple[Document, ...]:
    return compiled(ROOT / f"examples/{board}/board.rig").documents()


def drawn(board: str) -> tuple[Document, ...]:
    """The documents of a board that have a drawing."""
    return tuple(each for each in documents(board) if any(isinstance(block, Drawing) for block in each.sheet.blocks))


def probed(text: str, folder: Path) -> tuple[int, list[str]]:
    """How many drawings a page has, and what is wrong with them."""
    page = folder / "page.html"
    page.write_text(scripted(text, PROBE), encoding="utf-8")
    found = told(page, "probe")
    return found["seen"], found["faults"]


@pytest.mark.parametrize("board", BOARDS)
def test_nothing_overlaps_or_leaves_its_ground(tmp_path: Path, board: str) -> None:
    made = drawn(board)
    count = sum(isinstance(block, Drawing) for each in made for block in each.sheet.blocks)
    seen, faults = probed(html.render(made), tmp_path)
    assert seen == count > 10
    assert faults == []


def test_the_probe_tells_both_faults(tmp_path: Path) -> None:
    """A label over another and one outside: without this the test above could not fail."""
    from small_sheets import document

    from rigc.reports.drawings.shapes import Label

    bad = Drawing(
        "bad", "Bad", "two faults", 60, 20, (Label(5, 10, "marl"), Label(6, 10, "lant"), Label(58, 15, "plumb"))
    )
    assert probed(html.render(document(bad)), tmp_path) == (
        1,
        ["Bad: 'plumb' leaves its ground", "Bad: 'marl' and 'lant'"],
    )


@pytest.mark.parametrize("engine", ["browser", "weasyprint"])
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_rulers_of_a_tile_print_true(tmp_path: Path, paper: str, engine: str) -> None:
    """On the page of the first tile, in dots of 1/600 in, which are 0.042 mm wide; a line's half width stands out at the corner."""
    (sheet,) = (each for each in documents("back-bedroom") if each.sheet.name == "plan-full-size")
    tile = next(
        block for block in sheet.sheet.blocks if isinstance(block, Drawing) and block.name.startswith("full-size")
    )
    made = tmp_path / "tile.pdf"
    if engine == "browser":
        made = printed(tmp_path, sheet, paper)
    else:
        pytest.importorskip("weasyprint")
        made.write_bytes(pdf.render(html.render(sheet, Layout(paper))))
    command = ["pdftoppm", "-r", "600", "-f", "2", "-l", "2", "-singlefile", str(made), str(tmp_path / "tile")]
    subprocess.run(command, check=True, timeout=120)
    data = (tmp_path / "tile.ppm").read_bytes()
    head = re.match(rb"P6\s+(\d+)\s+(\d+)\s+255\s", data)
    assert head is not None
    blue, row = bytes.fromhex(COLOURS["blue"][1:]), int(head[1]) * 3
    across = max(len(run) for run in re.findall(b"(?:" + re.escape(blue) + b")+", data)) / 3
    rows = [at for at in range(int(head[2])) if blue in data[head.end() + at * row : head.end() + (at + 1) * row]]
    assert rows == list(range(rows[0], rows[-1] + 1))
    corner = LINE_MM / 2
    beside = RULER + 0.5  # the tile less its ruler and its edge is what the ruler measures
    assert across / 600 * INCH - corner == pytest.approx(tile.width_mm - beside, abs=0.1)
    assert len(rows) / 600 * INCH - corner == pytest.approx(tile.height_mm - beside, abs=0.1)
