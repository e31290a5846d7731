"""The page in a real Chromium: what a hand at the mouse, at the keys, and an editor beside it see. Skipped where the browser is missing."""

from __future__ import annotations

import json
import re
import shutil
from collections.abc import Iterator
from importlib.util import find_spec
from pathlib import Path

import pytest
from browser import CONTROL, SHIFT, Browser, Page
from served import PLACED, STARTER, preview_of, rig, served

from rigc.preview.preview import Preview
from rigc.preview.server.server import Server

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(shutil.which("chromium") is None, reason="not installed: chromium"),
]

TOLD = "document.getElementById('told').textContent"
SAID = "document.getElementById('said').textContent"
MOVED = STARTER.replace("drive at 200, 20 mm", "drive at 212, 20 mm")


@pytest.fixture(scope="module")
def browser(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Browser]:
    found = Browser(tmp_path_factory.mktemp("profile"))
    yield found
    found.close()


@pytest.fixture
def preview(tmp_path: Path) -> Preview:
    return preview_of(rig(tmp_path))


@pytest.fixture
def server(preview: Preview) -> Iterator[Server]:
    with served(preview) as found:
        yield found


@pytest.fixture
def page(browser: Browser, server: Server) -> Iterator[Page]:
    found = shown(browser, server)
    yield found
    found.close()


def shown(browser: Browser, server: Server) -> Page:
    """A window that shows the plan."""
    page = browser.page(server.address)
    page.until("document.querySelectorAll('.over .body').length === 3")
    return page


def label(page: Page, name: str) -> str:
    """What a thing on the plan says of itself."""
    return str(page.run(f"document.querySelector('.body[data-name={name}]').getAttribute('aria-label')"))


def saved(preview: Preview, text: str) -> None:
    """As an editor saves, and as the watch sees it."""
    preview.rig.write_text(text, "utf-8")
    preview.refresh()


def axe(page: Page) -> list[str]:
    """What an open rule engine for WCAG holds against the page as it is. It can't decide the contrast over a picture."""
    spec = find_spec("axe_core_python")
    assert spec is not None and spec.origin is not None
    page.run(f"{(Path(spec.origin).parent / 'axe.min.js').read_text('utf-8')}; 0")
    found = page.run("axe.run(document, {resultTypes: ['violations']}).then(found => JSON.stringify(found.violations))")
    return [f"{each['id']}: {each['nodes'][0]['html'][:200]}" for each in json.loads(found)]


def test_a_unit_is_dragged_told_of_written_and_taken_back(page: Page, preview: Preview) -> None:
    """12 mm to the right; what it does is told before the button is let go, and until then nothing is written."""
    x, y = page.middle(".body[data-name=drive]")
    a_mm = page.run("document.querySelector('.over').getScreenCTM().a") / page.run(
        "320 / document.querySelector('.plan svg rect + rect').width.baseVal.value"
    )
    page.mouse("Moved", x, y)
    page.mouse("Pressed", x, y)
    page.mouse("Moved", x + 6 * a_mm, y)
    page.mouse("Moved", x + 12 * a_mm, y)
    page.until(f"{TOLD}.startsWith('drive at 212, 20 mm.') && {TOLD}.includes('Finished lengths: ')")
    page.until("Number(document.querySelector('.free')?.dataset.count) > 0")
    assert page.run("document.querySelectorAll('.ghost rect').length") == 1
    assert preview.rig.read_text("utf-8") == STARTER
    page.mouse("Released", x + 12 * a_mm, y)
    page.until("document.getElementById('undo').textContent === 'Take back: drive to 212, 20 mm'")
    assert preview.rig.read_text("utf-8") == MOVED
    page.until("document.querySelector('.body[data-name=drive]').getAttribute('aria-label') === 'drive, at 212, 20 mm'")
    assert page.run("document.querySelectorAll('.ghost rect').length") == 0
    assert axe(page) == []
    page.run("document.activeElement.blur()")
    page.key("z", CONTROL)
    page.until("document.querySelector('.body[data-name=drive]').getAttribute('aria-label') === 'drive, at 200, 20 mm'")
    assert preview.rig.read_text("utf-8") == STARTER
    page.key("z", CONTROL | SHIFT)
    page.until("document.querySelector('.body[data-name=drive]').getAttribute('aria-label') === 'drive, at 212, 20 mm'")
    assert page.complaints() == []


def test_a_place_that_clashes_is_told_while_it_is_dragged(page: Page, preview: Preview) -> None:
    x, y = page.middle(".body[data-name=drive]")
    over, _ = page.middle(".body[data-name=echo]")
    page.mouse("Moved", x, y)
    page.mouse("Pressed", x, y)
    page.mouse("Moved", over, y)
    page.until(f"{TOLD}.includes(\"New error: 'drive' and 'echo' overlap\")")
    page.until("document.querySelector('.ghost').classList.contains('against')")
    page.key("Escape")
    page.until(f"{TOLD} === 'drive: given up: nothing is written.'")
    page.mouse("Released", over, y)
    assert preview.rig.read_text("utf-8") == STARTER


def test_all_of_it_by_the_keys_alone(page: Page, preview: Preview) -> None:
    """Arrow keys, with Shift by 10 mm; Enter sets; Escape gives up; the focus stays on the unit though it is drawn anew."""
    page.run("document.querySelector('#find').focus()")
    while page.run("document.activeElement.dataset.name ?? ''") != "drive":
        page.key("Tab")
    page.key("ArrowRight", SHIFT)
    page.key("ArrowRight")
    page.key("ArrowRight")
    page.until(f"{SAID}.startsWith('drive at 212, 20 mm.')")
    assert preview.rig.read_text("utf-8") == STARTER
    page.key("Enter")
    page.until(f"{SAID}.startsWith('written: drive at 212, 20 mm.')")
    assert preview.rig.read_text("utf-8") == MOVED
    page.until("document.activeElement.getAttribute('aria-label') === 'drive, at 212, 20 mm'")
    page.key("ArrowUp")
    page.key("Escape")
    page.until(f"{SAID} === 'drive: given up: nothing is written.'")
    page.key("z", CONTROL)
    page.until("document.activeElement.getAttribute('aria-label') === 'drive, at 200, 20 mm'")
    assert preview.rig.read_text("utf-8") == STARTER
    page.key("Enter")
    page.until("document.querySelector('#picked form')")
    page.run(
        "document.querySelector('#picked input[name=x]').select(); document.querySelector('#picked input[name=x]').focus()"
    )
    for digit in "212":
        page.key(digit)
    page.until(f"{SAID}.startsWith('drive at 212, 20 mm.')")
    page.key("Enter")
    page.until(f"{SAID}.startsWith('written: drive at 212, 20 mm.')")
    assert preview.rig.read_text("utf-8") == MOVED


def test_what_is_picked_is_lit_everywhere(page: Page) -> None:
    """A lead and a number of a sheet, a line of the source, a finding."""
    page.run("document.querySelector('[data-sheet=cable-list]').click()")
    inside = "document.querySelector('.inside').shadowRoot"
    page.until(f"document.querySelector('.inside') && {inside}.querySelector('[data-why]')")
    page.run(f"{inside}.querySelector('button[data-why=\"A2.cut\"]').click()")
    page.until("document.getElementById('picked-head').textContent === 'How A2.cut came about'")
    assert "formula" in page.run("document.getElementById('picked').innerText")
    page.run(f"{inside}.querySelector('button[data-name=A2]').click()")
    page.until("document.getElementById('picked-head').textContent.startsWith('A2: ')")
    line = STARTER[: STARTER.index("  echo at 60")].count("\n") + 1
    page.run(f"document.getElementById('line-0-{line}').click()")
    page.until("document.getElementById('picked-head').textContent === 'echo: delay'")
    page.until(f"document.getElementById('line-0-{line}').getAttribute('aria-selected') === 'true'")
    assert page.run(f"{inside}.querySelectorAll('.lit[data-name=echo]').length") > 0
    assert axe(page) == []
    page.run("document.querySelector('[data-sheet=plan]').click()")
    page.until("document.querySelector('.body.lit')?.dataset.name === 'echo'")
    page.run("document.querySelector('#found button').click()")
    page.until("document.querySelectorAll('[aria-selected=true]').length > 0")
    assert page.complaints() == []


def test_a_line_that_an_editor_is_at_is_lit(page: Page, preview: Preview) -> None:
    line = STARTER[: STARTER.index("  echo at 60")].count("\n") + 1
    preview.light(preview.rig, line)
    page.until("document.querySelector('.body.lit')?.dataset.name === 'echo'")
    page.until(f"document.getElementById('line-0-{line}').getAttribute('aria-selected') === 'true'")


def test_a_broken_file_keeps_the_drawing_and_marks_it_old(page: Page, preview: Preview) -> None:
    saved(preview, STARTER.replace("draws 8 mA", "draws 8 mAh"))
    page.until("!document.getElementById('broken').hidden")
    assert "OLD: it is of the last good save" in page.run("document.getElementById('broken').textContent")
    line = STARTER[: STARTER.index("draws 8 mA")].count("\n") + 1
    assert f"(board.rig:{line})" in page.run("document.getElementById('found').innerText")
    page.until("document.querySelector('.pane.old .body[data-name=drive]')")
    page.until(f"document.getElementById('line-0-{line}').classList.contains('wrong')")
    assert page.run("document.title") == "OLD: Two Step, revision A"
    assert axe(page) == []
    x, y = page.middle(".body[data-name=drive]")
    page.mouse("Pressed", x, y)
    page.mouse("Moved", x + 40, y)
    page.mouse("Released", x + 40, y)
    assert page.run("document.querySelectorAll('.ghost').length") == 0
    saved(preview, STARTER)
    page.until("document.getElementById('broken').hidden && !document.querySelector('.pane.old')")


def test_a_lost_connection_is_told_and_tried_again(browser: Browser, preview: Preview) -> None:
    with served(preview) as server:
        page, port = shown(browser, server), server.server_port
    page.until("!document.getElementById('lost').hidden")
    assert page.run("document.getElementById('lost').textContent").startswith("The connection to rigc is lost.")
    assert page.run("document.querySelectorAll('.over .body').length") == 3
    with served(preview, port):
        page.until("document.getElementById('lost').hidden")
        saved(preview, MOVED)
        page.until(
            "document.querySelector('.body[data-name=drive]').getAttribute('aria-label') === 'drive, at 212, 20 mm'"
        )


def test_a_wrong_key_is_told(browser: Browser, server: Server) -> None:
    page = browser.page(server.address[:-1])
    page.until("document.getElementById('lost').textContent.includes('the key is wrong')")


def test_two_windows_show_the_same_and_never_write_over_each_other(
    browser: Browser, server: Server, page: Page, preview: Preview
) -> None:
    other = shown(browser, server)
    page.run("document.querySelector('.body[data-name=drive]').focus()")
    page.key("ArrowUp")
    page.until(f"{SAID}.startsWith('drive at 200, 21 mm.')")
    other.run("document.querySelector('.body[data-name=echo]').focus()")
    other.key("ArrowRight")
    other.until(f"{SAID}.startsWith('echo at 61, 20 mm.')")
    other.key("Enter")
    other.until(f"{SAID}.startsWith('written: ')")
    page.until(f"{TOLD}.includes('the file was saved meanwhile')")
    page.key("Enter")
    page.until("document.querySelector('.body[data-name=echo]').getAttribute('aria-label') === 'echo, at 61, 20 mm'")
    assert preview.rig.read_text("utf-8") == STARTER.replace("echo at 60", "echo at 61")
    page.run("document.getElementById('undo').click()")
    other.until("document.querySelector('.body[data-name=echo]').getAttribute('aria-label') === 'echo, at 60, 20 mm'")
    assert PLACED in preview.rig.read_text("utf-8")
    other.close()


def test_two_revisions_side_by_side(browser: Browser, tmp_path: Path) -> None:
    rig(tmp_path)
    path = tmp_path / "next.rig"
    text = STARTER.replace(
        'revision A 2026-03-02 "first draft"', 'revision B 2026-04-02 "second"\n  follows A "board.rig"'
    )
    path.write_text(text.replace("drive at 200", "drive at 190"), "utf-8")
    with served(preview_of(path)) as server:
        page = shown(browser, server)
        choose = "(each => { each.value = 'followed'; each.dispatchEvent(new Event('change')); })"
        page.run(f"{choose}(document.getElementById('beside'))")
        page.until("document.querySelectorAll('.pane').length === 2")
        heads = page.run("[...document.querySelectorAll('.pane > h2')].map(each => each.textContent)")
        assert heads == ["Two Step, revision A (revision A, which it follows)", "Two Step, revision B"]
        labels = "[...document.querySelectorAll('.body[data-name=drive]')].map(each => each.getAttribute('aria-label'))"
        assert page.run(labels) == ["drive, at 200, 20 mm", "drive, at 190, 20 mm"]
        page.run("document.querySelector('[data-sheet=wiring-sheet]').click()")
        page.until(
            "[...document.querySelectorAll('.inside')].filter(each => each.shadowRoot.querySelector('table')).length === 2"
        )
        assert axe(page) == []
        assert page.run("document.documentElement.scrollHeight <= innerHeight")  # a long sheet scrolls in its own part


def test_texts_of_a_rig_are_text_on_the_page(browser: Browser, tmp_path: Path) -> None:
    """Of a plan, a sheet, what is picked and the source: markup in a text makes no element, and nothing of it runs."""
    said = "<img src=x onerror=document.title='ran'><script>document.title='ran'</script>{{7}}` |"
    text = re.sub(r'"(?![^"]*\.rig")[^"\n]*"', json.dumps(said), STARTER)
    with served(preview_of(rig(tmp_path, text))) as server:
        page = shown(browser, server)
        page.run("document.querySelector('[data-sheet=unit-schedule]').click()")
        inside = "document.querySelector('.inside').shadowRoot"
        page.until(f"document.querySelector('.inside') && {inside}.querySelector('table')")
        assert said in page.run(f"{inside}.textContent")
        line = text[: text.index("  echo at 60")].count("\n") + 1
        page.run(f"document.getElementById('line-0-{line}').click()")
        page.until("document.getElementById('picked-head').textContent.startsWith('echo: ')")
        assert page.run("document.getElementById('picked-head').textContent") == f"echo: {said}"
        made = f"[...document.querySelectorAll('img, script:not([src])'), ...{inside}.querySelectorAll('img, script')]"
        assert page.run(f"{made}.length") == 0
        assert page.run("document.title").count("ran") == page.run("document.title").count("='ran'")
        assert page.complaints() == []
        page.close()
