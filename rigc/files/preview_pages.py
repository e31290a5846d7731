"""The preview page's own files, which hold nothing of any rig: by the path at which a browser asks for them."""

from __future__ import annotations

from rigc.record import Record
from rigc.resources import folder

_SORTS = {
    ".html": "text/html; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".woff2": "font/woff2",
}


class Page(Record):
    """Its sort, and its bytes."""

    sort: str
    data: bytes


def pages() -> dict[str, Page]:
    """All of them, read once."""
    templates = folder("templates")
    files = {f"/{path.name}": path for path in (templates / "preview").iterdir() if path.suffix in _SORTS}
    files |= {f"/{path.name}": path for path in (templates / "fonts").iterdir() if path.suffix == ".woff2"}
    files["/sheet.css"] = templates / "sheet.css"
    files["/"] = files["/page.html"]
    return {name: Page(_SORTS[path.suffix], path.read_bytes()) for name, path in files.items()}
