"""The server: each request -> one answer; and a stream that tells each page when there is something new."""

from __future__ import annotations

import json
import math
from collections.abc import Callable
from contextlib import suppress
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs, unquote, urlsplit

from rigc.edit.move import CannotMove
from rigc.files.preview_pages import Page, pages
from rigc.files.writing import NotWritable
from rigc.loader import Unreadable
from rigc.preview.answers import moves, plans, sheet, sources, state, thing
from rigc.preview.history import EditedSince, NothingToDo
from rigc.preview.look import Look
from rigc.preview.preview import Preview, Stale
from rigc.preview.server.guard import HEADERS, Guard, Refusal

BEAT_S = 5.0
"""So often the stream says that it lives."""
SLOWEST_S = 30
"""So long a request may take to come in."""
NOW = "now"

Open = Callable[[Path, int], None]
"""Opens a file at a line in the user's editor."""


class Refused(Exception):
    """A request that is not answered."""

    def __init__(self, status: int, words: str) -> None:
        super().__init__(words)
        self.refusal = Refusal(status, words)


class Server(ThreadingHTTPServer):
    """On the loopback alone. Port 0 is any that is free."""

    daemon_threads = True

    def __init__(self, preview: Preview, port: int, key: str, open_at: Open | None = None) -> None:
        self.preview = preview
        self.ended = False
        super().__init__(("127.0.0.1", port), _Asked)
        self.key = key
        self.guard = Guard(self.server_port, key)
        self.open_at = open_at
        self.pages: dict[str, Page] = pages()

    @property
    def address(self) -> str:
        """What the user opens; the key stands where no browser sends it."""
        return f"http://127.0.0.1:{self.server_port}/#{self.key}"

    def server_close(self) -> None:
        """Answers nobody any more, whoever is still connected included."""
        self.ended = True
        with self.preview.news:
            self.preview.news.notify_all()
        super().server_close()

    def handle_error(self, request: Any, client_address: Any) -> None:
        """A browser that went away is no fault; what is one was answered as one."""


class _Asked(BaseHTTPRequestHandler):
    server: Server
    protocol_version = "HTTP/1.1"
    timeout = SLOWEST_S

    def version_string(self) -> str:
        return "rigc"

    def log_message(self, format: str, *args: Any) -> None:
        """Nothing is logged: an address holds names of files."""

    def do_GET(self) -> None:
        """Pages for anybody on this machine; all that is of the rig for who has the key."""
        self._answer(self._get)

    def do_POST(self) -> None:
        """What tries or writes."""
        self._answer(self._post)

    def _answer(self, answered: Callable[[], Any]) -> None:
        self.close_connection = True  # a connection that is kept can end just when the browser uses it again
        try:
            refusal = self.server.guard.stranger(self.headers)
            if refusal is None:
                answered()
                return
        except Refused as fault:
            refusal = fault.refusal
        except (BrokenPipeError, ConnectionResetError, TimeoutError):
            return
        except Exception as fault:
            refusal = Refusal(500, f"a bug in rigc, not in the rig: {type(fault).__name__}: {fault}")
        self._send(refusal.status, "application/json", _json({"words": refusal.words}))

    def _get(self) -> None:
        asked = urlsplit(self.path)
        page = self.server.pages.get(asked.path)
        if page is not None:
            self._send(200, page.sort, page.data)
            return
        self._known()
        if asked.path == "/events":
            self._stream()
            return
        _, what, *rest = unquote(asked.path).split("/", 2)
        query = {name: values[-1] for name, values in parse_qs(asked.query).items()}
        question = _QUESTIONS.get(what)
        if question is None:
            raise Refused(404, "there is no such page")
        preview = self.server.preview
        with preview.lock:
            found = question(preview, "".join(rest), query.get("of", NOW))
        if found is None:
            raise Refused(404, "there is nothing of that name")
        if what == "state":
            found |= {"opens": self.server.open_at is not None}
        self._send(200, "application/json", _json(found))

    def _post(self) -> None:
        self._known()
        order = _ORDERS.get(self.path)
        if order is None:
            raise Refused(404, "there is no such page")
        length = self.server.guard.body(self.headers)
        if isinstance(length, Refusal):
            raise Refused(length.status, length.words)
        try:
            given = json.loads(self.rfile.read(length))
        except (ValueError, RecursionError):
            given = None
        if not isinstance(given, dict):
            raise Refused(400, "that is no JSON object")
        try:
            found = order(self.server, given)
        except Stale:
            raise Refused(
                409, "the file was saved meanwhile: nothing was written; look at it as it is now, then move again"
            ) from None
        except EditedSince as fault:
            raise Refused(409, str(fault)) from None
        except (CannotMove, NothingToDo) as fault:
            raise Refused(422, str(fault)) from None
        except NotWritable as fault:
            raise Refused(500, str(fault)) from None
        self._send(200, "application/json", _json(found))

    def _known(self) -> None:
        refusal = self.server.guard.unknown(self.headers)
        if refusal is not None:
            raise Refused(refusal.status, refusal.words)

    def _stream(self) -> None:
        """Server-sent events: the number of the newest state, now and whenever it changes, lines that an editor lights, and a beat in
        between."""
        self._head(200, "text/event-stream", None)
        preview, number = self.server.preview, -1
        lights = preview.lights
        while not self.server.ended:
            with preview.news:
                if (preview.number, preview.lights) == (number, lights):
                    preview.news.wait(BEAT_S)
                told, shown, (file, line) = preview.number, preview.lights, preview.lit
            parts = [f"data: {told}\n\n"] if told != number else []
            if shown != lights:
                parts.append(f"event: light\ndata: {json.dumps({'file': file, 'line': line})}\n\n")
            self.wfile.write("".join(parts or [": beat\n\n"]).encode())
            self.wfile.flush()
            number, lights = told, shown

    def _send(self, status: int, sort: str, data: bytes) -> None:
        with suppress(BrokenPipeError, ConnectionResetError):
            self._head(status, sort, len(data))
            self.wfile.write(data)

    def _head(self, status: int, sort: str, length: int | None) -> None:
        self.send_response(status)
        self.send_header("Content-Type", sort)
        if length is not None:
            self.send_header("Content-Length", str(length))
        self.send_header("Connection", "close")
        for name, value in HEADERS.items():
            self.send_header(name, value)
        self.end_headers()


def _json(found: Any) -> bytes:
    return json.dumps(found, ensure_ascii=False).encode("utf-8", "replace")


def _good(preview: Preview) -> Look:
    if preview.good is None:
        raise Refused(404, "nothing is drawn yet")
    return preview.good


def _sheet(preview: Preview, name: str, of: str) -> Any:
    made = _good(preview).made if of == NOW else _beside(preview, of)
    return sheet.sheet(made, name)


def _plans(preview: Preview, _name: str, of: str) -> Any:
    results = (_good(preview).made if of == NOW else _beside(preview, of)).results
    if results is None:
        return None
    head = results.rig.head
    return {"head": f"{head.title}, revision {head.letter}", "plans": plans.plans(results)}


def _beside(preview: Preview, of: str) -> Any:
    try:
        made = preview.beside(of)
    except Unreadable as fault:
        raise Refused(404, fault.message) from None
    if made is None or made.results is None:
        raise Refused(
            404, "that revision has errors in its names or quantities" if made else "there is no such revision"
        )
    return made


def _thing(preview: Preview, name: str, _of: str) -> Any:
    good = _good(preview)
    return thing.thing(good, (preview.now or good).draft, name)


def _sources(preview: Preview, _name: str, _of: str) -> Any:
    look = preview.now or preview.good
    return {"files": [] if look is None else sources.sources(look)}


_QUESTIONS: dict[str, Callable[[Preview, str, str], Any]] = {
    "state": lambda preview, _name, _of: state.state(preview),
    "sheet": _sheet,
    "plans": _plans,
    "thing": _thing,
    "why": lambda preview, name, _of: thing.why(_good(preview), name),
    "free": lambda preview, name, _of: moves.free(_good(preview), name),
    "sources": _sources,
}


def _move(given: dict[str, Any]) -> tuple[str, float, float, str]:
    name, x, y, seen = (given.get(field) for field in ("thing", "x", "y", "hash"))
    numbers = all(isinstance(each, int | float) and not isinstance(each, bool) for each in (x, y))
    if not isinstance(name, str) or not isinstance(seen, str) or not numbers:
        raise Refused(400, "a move has a thing, x and y in mm, and the hash of what was seen")
    assert x is not None and y is not None
    if not (math.isfinite(x) and math.isfinite(y)):
        raise Refused(400, "x and y are lengths in mm")
    return name, round(float(x), 1), round(float(y), 1), seen


def _open(server: Server, given: dict[str, Any]) -> Any:
    file, line = given.get("file"), given.get("line")
    with server.preview.lock:
        path = server.preview.path(file) if isinstance(file, str) else None
    if path is None or not isinstance(line, int):
        raise Refused(404, "the rig has no such file of its own")
    if server.open_at is None:
        raise Refused(422, "no editor was named: rigc serve --editor")
    server.open_at(path, max(1, line))
    return {"words": f"{file}:{line} is opened"}


def _light(server: Server, given: dict[str, Any]) -> Any:
    path, line = given.get("path"), given.get("line")
    with server.preview.lock:
        known = isinstance(path, str) and isinstance(line, int) and server.preview.light(Path(path), line)
    if not known:
        raise Refused(404, "the rig has no such file")
    return {}


_ORDERS: dict[str, Callable[[Server, dict[str, Any]], Any]] = {
    "/try": lambda server, given: moves.told(server.preview.try_move(*_move(given))),
    "/move": lambda server, given: moves.told(server.preview.move(*_move(given))),
    "/undo": lambda server, _given: {"words": f"taken back: {server.preview.undo().words}"},
    "/redo": lambda server, _given: {"words": f"done again: {server.preview.undo(again=True).words}"},
    "/open": _open,
    "/light": _light,
}
