"""A real Chromium, driven over its own protocol through two pipes: no package, no port. One serves all tests of a process that only look at
files: to start it takes longer than most pages."""

from __future__ import annotations

import atexit
import base64
import fcntl
import json
import os
import select
import subprocess
import tempfile
import time
from functools import cache
from pathlib import Path
from typing import Any

FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
PATIENCE_S = 180
"""A busy machine is no fault of the page."""
_KEYS = {"ArrowLeft": 37, "ArrowUp": 38, "ArrowRight": 39, "ArrowDown": 40, "Enter": 13, "Escape": 27, "Tab": 9}
SHIFT, CONTROL = 8, 2


def scripted(page: str, script: str) -> str:
    """A sheet's page with a script at its end, which its policy would forbid."""
    assert page.count("default-src 'none'") == 1
    page = page.replace("default-src 'none'", "default-src 'none'; script-src 'unsafe-inline'")
    return page.replace("</body>", f"{script}</body>")


class Browser:
    """One browser; each page is a window of its own."""

    def __init__(self, profile: Path) -> None:
        to_it, self._out = os.pipe()
        self._in, from_it = os.pipe()
        ends = [fcntl.fcntl(end, fcntl.F_DUPFD, 10) for end in (to_it, from_it)]  # clear of the numbers that it wants

        def placed() -> None:
            os.dup2(ends[0], 3)
            os.dup2(ends[1], 4)

        null = subprocess.DEVNULL
        command = ["chromium", *FLAGS, f"--user-data-dir={profile}", "--window-size=1400,900"]
        command += ["--remote-debugging-pipe", "about:blank"]
        self._process = subprocess.Popen(command, pass_fds=(3, 4), stdout=null, stderr=null, preexec_fn=placed)
        for end in (to_it, from_it, *ends):
            os.close(end)
        self._held = b""
        self._count = 0
        self.events: list[dict[str, Any]] = []

    def ask(self, method: str, session: str = "", **given: Any) -> dict[str, Any]:
        """What the browser answers."""
        self._count += 1
        number = self._count
        asked = {"id": number, "method": method, "params": given} | ({"sessionId": session} if session else {})
        os.write(self._out, json.dumps(asked).encode() + b"\0")
        while True:
            told = self._next()
            if told.get("id") == number:
                assert "error" not in told, (method, told)
                found: dict[str, Any] = told["result"]
                return found
            self.events.append(told)

    def empty(self, address: str = "about:blank") -> Page:
        """A new window, in which an address may be loading still."""
        target = self.ask("Target.createTarget", url=address, newWindow=True)["targetId"]
        session = self.ask("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        return Page(self, session)

    def page(self, address: str) -> Page:
        """A new window at an address, which is there."""
        page = self.empty(address)
        page.ask("Page.enable")
        while not any(each["method"] == "Page.domContentEventFired" for each in self.events):
            self.events.append(self._next())
        page.ask("Runtime.enable")
        page.ask("Log.enable")
        return page

    def close(self) -> None:
        """Ends it."""
        self._process.terminate()
        self._process.wait(timeout=PATIENCE_S)
        os.close(self._out)
        os.close(self._in)

    def _next(self) -> Any:
        while b"\0" not in self._held:
            ready, _, _ = select.select([self._in], [], [], PATIENCE_S)
            assert ready, "the browser does not answer"
            data = os.read(self._in, 1 << 16)
            assert data, "the browser has ended"
            self._held += data
        message, self._held = self._held.split(b"\0", 1)
        return json.loads(message)


class Page:
    """One window."""

    def __init__(self, browser: Browser, session: str) -> None:
        self.browser, self.session = browser, session

    def ask(self, method: str, **given: Any) -> dict[str, Any]:
        """What the browser answers about this page."""
        return self.browser.ask(method, self.session, **given)

    def close(self) -> None:
        """Closes the window."""
        self.ask("Page.close")

    def run(self, script: str) -> Any:
        """What an expression comes to; a promise is waited for."""
        told = self.ask("Runtime.evaluate", expression=script, awaitPromise=True, returnByValue=True)
        assert "exceptionDetails" not in told, told["exceptionDetails"]
        return told["result"].get("value")

    def until(self, script: str) -> Any:
        """Waits until an expression is true, and gives it."""
        deadline = time.monotonic() + PATIENCE_S
        while not (found := self.run(f"(value => value instanceof Node || value)({script})")):
            if time.monotonic() > deadline:
                raise TimeoutError(f"{script}; the focus is on {self.run('document.activeElement.outerHTML')[:200]}")
            time.sleep(0.05)
        return found

    def key(self, key: str, modifiers: int = 0) -> None:
        """Presses and lets go a key."""
        code = _KEYS.get(key, ord(key.upper()[0]))
        typed = "\r" if key == "Enter" else key if len(key) == 1 and not modifiers else ""
        text = {"text": typed} if typed else {}
        given = {"key": key, "windowsVirtualKeyCode": code, "modifiers": modifiers}
        self.ask("Input.dispatchKeyEvent", type="keyDown", **given, **text)
        self.ask("Input.dispatchKeyEvent", type="keyUp", **given)

    def mouse(self, sort: str, x: float, y: float) -> None:
        """`Pressed`, `Moved` or `Released`, in pixels of the window."""
        held = {"button": "left", "clickCount": 1, "buttons": 0 if sort == "Released" else 1}
        self.ask("Input.dispatchMouseEvent", type=f"mouse{sort}", x=x, y=y, **held)

    def middle(self, selector: str) -> tuple[float, float]:
        """Where the middle of an element is."""
        box = f"(box => [box.x + box.width / 2, box.y + box.height / 2])(document.querySelector({json.dumps(selector)}).getBoundingClientRect())"
        x, y = self.run(box)
        return x, y

    def printed(self, path: Path) -> None:
        """Writes what is printed of it as PDF, on paper of the size that its style asks for."""
        given = {"printBackground": True, "preferCSSPageSize": True, "displayHeaderFooter": False}
        path.write_bytes(base64.b64decode(self.ask("Page.printToPDF", **given)["data"]))

    def picture(self, path: Path) -> None:
        """Writes what is to be seen as PNG."""
        path.write_bytes(base64.b64decode(self.ask("Page.captureScreenshot")["data"]))

    def complaints(self) -> list[str]:
        """What the page logged as an error, or threw, since the last time."""
        self.run("1")
        found, others = [], []
        for each in self.browser.events:
            if each.get("sessionId") != self.session:
                others.append(each)
            elif each["method"] == "Runtime.exceptionThrown":
                found.append(json.dumps(each["params"])[:500])
            elif each["method"] == "Log.entryAdded" and each["params"]["entry"]["level"] == "error":
                found.append(each["params"]["entry"]["text"] + each["params"]["entry"].get("url", ""))
        self.browser.events = others
        return found


@cache
def _shared() -> Browser:
    profile = tempfile.TemporaryDirectory(prefix="rigc-browser-", ignore_cleanup_errors=True)
    browser = Browser(Path(profile.name))
    atexit.register(profile.cleanup)
    atexit.register(browser.close)
    return browser


def as_pdf(page: Path) -> Path:
    """What is printed of the page in a file, as a PDF beside it."""
    pdf = page.with_suffix(".pdf")
    shown = _shown(page)
    shown.printed(pdf)
    shown.close()
    return pdf


def told(page: Path, id: str) -> Any:
    """What a script of the page in a file writes into an element, as JSON."""
    shown = _shown(page)
    found = json.loads(shown.until(f"document.getElementById({json.dumps(id)})?.textContent"))
    shown.close()
    return found


def _shown(page: Path) -> Page:
    """A window with the page in a file, its typefaces too."""
    shown = _shared().empty()
    shown.ask("Page.navigate", url=page.as_uri())
    shown.until(f"location.href === {json.dumps(page.as_uri())} && document.readyState === 'complete'")
    shown.run("document.fonts.ready.then(() => null)")
    return shown
