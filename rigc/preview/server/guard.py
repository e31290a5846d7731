"""Who may ask: only a page of this server, with the key that its address holds. A page from elsewhere can neither read nor write.

A name that was pointed at this machine (DNS rebinding) shows in the header Host, a foreign page in Origin and in Sec-Fetch-Site; the
key stands behind # in the address, which no browser sends anywhere, and comes as a header, which no foreign page can set.
"""

from __future__ import annotations

import hmac
from email.message import Message

from rigc.record import Record

KEY_HEADER = "X-Rigc-Key"
MOST_BYTES = 16 * 1024
"""The longest body that is read: a move takes a hundredth of it."""

HEADERS = {
    "Content-Security-Policy": "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; connect-src 'self'; "
    "base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Cache-Control": "no-store",
}
"""What every answer bears."""


class Refusal(Record):
    """A status of HTTP, and why in a line."""

    status: int
    words: str


class Guard:
    """For one server: its port, and the key of this run."""

    def __init__(self, port: int, key: str) -> None:
        self.hosts = (f"127.0.0.1:{port}", f"localhost:{port}")
        self._key = key

    def stranger(self, headers: Message[str, str]) -> Refusal | None:
        """Why nothing at all is answered: the request is meant for another name, or comes from another page."""
        host = headers.get("Host", "")
        if host not in self.hosts:
            return Refusal(421, "this is not the address of the page")
        if headers.get("Origin", f"http://{host}") != f"http://{host}":
            return Refusal(403, "another page may not ask")
        if headers.get("Sec-Fetch-Site", "none") not in ("same-origin", "none"):
            return Refusal(403, "another page may not ask")
        return None

    def unknown(self, headers: Message[str, str]) -> Refusal | None:
        """Why nothing of the rig is told."""
        given = headers.get(KEY_HEADER, "").encode("utf-8", "replace")
        if hmac.compare_digest(given, self._key.encode("ascii")):
            return None
        return Refusal(401, "the key is wrong: open the address that rigc serve has printed")

    def body(self, headers: Message[str, str]) -> Refusal | int:
        """How many bytes of a body are read; or why none."""
        if headers.get("Content-Type", "").partition(";")[0].strip() != "application/json":
            return Refusal(415, "send JSON")
        length = headers.get("Content-Length", "")
        if not (length.isascii() and length.isdigit()) or headers.get("Transfer-Encoding"):
            return Refusal(411, "say how long it is")
        if len(length) > 9 or int(length) > MOST_BYTES:
            return Refusal(413, f"more than {MOST_BYTES} bytes are not read")
        return int(length)
