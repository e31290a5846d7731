"""Every sheet of boards of unlike kinds in a real browser: within reach of all, nothing to scroll, nothing fetched. Skipped where it is missing.

The rules of accessibility are those of axe-core (an open rule engine for WCAG); it cannot decide the contrast of letters on a drawing,
which test_grey.py reckons from the colours.
"""

from __future__ import annotations

import json
import re
import shutil
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import html5lib
import pytest
from browser import scripted, told
from cases import ROOT, compiled
from small_sheets import COLUMNS, document, first_daily, row

from rigc.output import html
from rigc.reports.content import Column, Table

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(shutil.which("chromium") is None, reason="not installed: chromium"),
]

NARROW = 400

# A frame as wide as a telephone holds the page, and tells the tables that can be scrolled in it and what sticks out of it.
FOLDED = """<!DOCTYPE html><title>frame</title><iframe id="frame" width="%d" height="900"></iframe><script>
const text = %s;
const frame = document.getElementById('frame');
frame.onload = () => frame.contentDocument.fonts.ready.then(() => {
  const page = frame.contentDocument, faults = [];
  for (const part of page.querySelectorAll('.wide')) {
    if (part.scrollWidth > part.clientWidth + 1) faults.push(part.getAttribute('aria-label'));
  }
  for (const cell of page.querySelectorAll('.folds [data-head]')) {
    const value = page.createRange(), head = 8 * parseFloat(getComputedStyle(cell).fontSize);
    value.selectNodeContents(cell);
    const under = [...value.getClientRects()].some(line => line.width && line.left < cell.getBoundingClientRect().left + head);
    if (under) faults.push('under its head: ' + cell.textContent);
  }
  if (page.documentElement.scrollWidth > %d) faults.push('the page itself');
  document.body.innerHTML = '<pre id="told">' + JSON.stringify(faults).replace(/&/g, '&amp;').replace(/</g, '&lt;') + '</pre>';
});
frame.srcdoc = text;
</script>"""

AXE = """<script>%s</script><script>
axe.run(document, {resultTypes: ['violations', 'incomplete']}).then(found => {
  const told = each => each.map(rule => rule.id + ': ' + rule.nodes[0].html.slice(0, 120));
  const parts = [told(found.violations), told(found.incomplete.filter(rule => rule.id !== 'color-contrast')), found.passes.length];
  document.body.innerHTML = '<pre id="told">' + JSON.stringify(parts).replace(/&/g, '&amp;').replace(/</g, '&lt;') + '</pre>';
});</script>"""


def axe(text: str, folder: Path) -> Any:
    spec = find_spec("axe_core_python")
    assert spec is not None and spec.origin is not None
    engine = (Path(spec.origin).parent / "axe.min.js").read_text("utf-8").replace("</script", "<\\/script")
    page = folder / "page.html"
    page.write_text(scripted(text, AXE % engine), encoding="utf-8")
    return told(page, "told")


def folded(text: str, folder: Path) -> Any:
    frame = folder / "frame.html"
    frame.write_text(FOLDED % (NARROW, json.dumps(text).replace("</", "<\\/"), NARROW), encoding="utf-8")
    return told(frame, "told")


@pytest.mark.parametrize("rig", first_daily())
def test_every_sheet_of_a_board(tmp_path: Path, rig: str) -> None:
    text = html.render(compiled(ROOT / rig).documents())
    html5lib.HTMLParser(strict=True).parse(text)  # raises at the first mistake
    fetched = re.findall(
        r"""(?:src|href|srcset|action|data|poster)=["']?(?!#)[^"'\s>]+|url\((?!data:)[^)]*\)|@import""", text
    )
    assert fetched == []
    violations, undecided, passes = axe(text, tmp_path)
    assert (violations, undecided) == ([], [])
    assert passes > 20
    assert folded(text, tmp_path) == []


def test_the_probes_tell_faults(tmp_path: Path) -> None:
    """A button without a name, a word too long for the frame and a stray end tag: without this the test above could not fail."""
    text = html.render(document(Table("t", "A table", COLUMNS, (row("L01", "1", "make"),))))
    violations, _, _ = axe(text.replace("</main>", "<button></button></main>"), tmp_path)
    assert any(each.startswith("button-name") for each in violations)
    wide = text.replace("</style>", ".wide table { width: 900px; }</style>", 1)
    assert folded(wide, tmp_path) == ["A table"]
    with pytest.raises(html5lib.html5parser.ParseError):
        html5lib.HTMLParser(strict=True).parse(text.replace("</main>", "</div></main>"))


def test_a_table_of_many_columns_folds_behind_its_heads() -> None:
    columns = (Column("lead"), Column("cut", "mm", number=True), Column("from"), Column("to"))
    rows = row("L01", "153", "", "marl"), row("L02", "90", "lant", "marl")
    text = html.render(document(Table("t", "T", columns, rows)))
    assert '<th scope="row">L01' in text
    assert '<td class="number" data-head="cut, mm">153' in text
    assert '<td data-head="to">marl' in text
    assert text.count("data-head=") == 5
    assert "data-head=" not in html.render(document(Table("t", "T", COLUMNS, (row("L01", "153", "make"),))))
