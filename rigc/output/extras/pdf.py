"""Pages of HTML -> PDF, by weasyprint (extra `pdf`).

Of the well-kept engines it is the one that installs like any Python package, gives the same bytes each time, runs no script and
fetches nothing: a browser's print needs the browser, writes the hour into the file, and would open whatever a template of unknown
hands names. What of our style it does not know is written here in the words that it does.
"""

from __future__ import annotations

import re
from typing import Any

from rigc.output.extras.missing_extra import MissingExtra, of_extra

_HALO = re.compile(
    r'(<text [^>]*?)( stroke="[^"]*" stroke-width="[^"]*" stroke-linejoin="round") paint-order="stroke"(.*?</text>)',
    re.DOTALL,
)
_KNOWN = (
    (re.compile(r"font-stretch:\s*75%"), "font-stretch:condensed"),
    (re.compile(r"(?<![\w-])rotate:\s*([^;}]+)"), r"transform:rotate(\1)"),
)


def render(page: str) -> bytes:
    """The page as PDF. Raises `MissingExtra` where the engine, or a library of the system that it needs, is not installed."""
    engine = _engine()
    text = _HALO.sub(r"\1\2\3\1\3", page)  # an edge that the letters stand on, not one that is laid over them
    for unknown, known in _KNOWN:
        text = unknown.sub(known, text)
    within = engine.URLFetcher(
        allowed_protocols=("data",)
    )  # what the page itself holds; no file and no address that it names
    held: bytes = engine.HTML(string=text, url_fetcher=within).write_pdf()
    return held


def _engine() -> Any:
    import logging

    logging.getLogger("weasyprint").addHandler(
        logging.NullHandler()
    )  # that a browser's rule is unknown to it is no news
    try:
        with of_extra("pdf", "PDF", "weasyprint"):
            import weasyprint
    except OSError as fault:
        raise MissingExtra(
            f"PDF needs a library of the system that is not there: {' '.join(str(fault).split())[:120]}",
            "install pango (on Debian: apt install libpango-1.0-0 libpangoft2-1.0-0)",
        ) from None
    return weasyprint
