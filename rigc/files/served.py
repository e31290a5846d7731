"""Where a rig's page is served: told to the user's own cache by who serves it, so that an editor can light lines on it without being told."""

from __future__ import annotations

import hashlib
import http.client
import json
import os
import re
from pathlib import Path

from rigc.files.cache import cache

_ADDRESS = re.compile(r"http://127\.0\.0\.1:(\d+)/#([\w-]+)")
_PATIENCE_S = 1.0


def told_served(rig: Path, address: str) -> None:
    """From now on the page of this rig is at that address."""
    cache().write(_name(rig), address.encode("ascii"))


def light(rig: Path, file: Path, line: int) -> bool:
    """Lights what a line (from 1) of a file names on the page of a rig; whether there was one that took it."""
    found = _ADDRESS.fullmatch((cache().read(_name(rig)) or b"").decode("ascii", "replace"))
    if found is None:
        return False
    order = json.dumps({"path": os.path.realpath(file), "line": line})
    headers = {"X-Rigc-Key": found[2], "Content-Type": "application/json"}
    connection = http.client.HTTPConnection("127.0.0.1", int(found[1]), timeout=_PATIENCE_S)
    try:
        connection.request("POST", "/light", order, headers)
        return connection.getresponse().status == 200
    except (OSError, http.client.HTTPException):  # it is not served any more
        return False
    finally:
        connection.close()


def _name(rig: Path) -> str:
    return f"page-{hashlib.sha256(os.path.realpath(rig).encode('utf-8', 'surrogatepass')).hexdigest()[:24]}"
