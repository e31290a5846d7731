"""A rig in a folder, and the server of its page, in the test's own process."""

from __future__ import annotations

import http.client
import json
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from threading import Thread
from typing import Any

from cases import READER

from rigc.edit.starter import starter
from rigc.preview.preview import Preview
from rigc.preview.server.server import Open, Server

KEY = "the-key-of-this-run"
STARTER = starter("two-step", "Two Step", "2026-03-02", "board.rig")
PLACED = "  drive at 200, 20 mm\n  echo at 60, 20 mm\n"


def rig(folder: Path, text: str = STARTER) -> Path:
    """A board in a folder that is a project of its own."""
    (folder / "rig-root").touch()
    path = folder / "board.rig"
    path.write_text(text, "utf-8")
    return path


def preview_of(path: Path) -> Preview:
    """A rig as its page sees it."""
    return Preview(path, READER)


@contextmanager
def served(preview: Preview, port: int = 0, open_at: Open | None = None) -> Iterator[Server]:
    """A server while the block runs."""
    server = Server(preview, port, KEY, open_at)
    thread = Thread(target=server.serve_forever, kwargs={"poll_interval": 0.02})
    thread.start()
    try:
        yield server
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


def asked(server: Server, path: str, body: Any = None, method: str = "", **headers: str) -> tuple[int, dict[str, Any]]:
    """Status and JSON of an answer; `body` that is no bytes is sent as JSON, and headers as they are given (`_` for `-`)."""
    connection = http.client.HTTPConnection("127.0.0.1", server.server_port, timeout=30)
    data = body if isinstance(body, bytes) or body is None else json.dumps(body).encode()
    sent = {"X-Rigc-Key": KEY, "Content-Type": "application/json"}
    sent |= {name.replace("_", "-"): value for name, value in headers.items()}
    connection.request(method or ("GET" if data is None else "POST"), path, data, sent)
    answer = connection.getresponse()
    held = answer.read()
    connection.close()
    return answer.status, json.loads(held) if answer.headers.get_content_type() == "application/json" else {
        "text": held.decode()
    }
