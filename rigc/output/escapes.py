"""Plain text -> the same text, made harmless for Markdown, XML, a CSS string, a narrow column or a terminal."""

from __future__ import annotations

import re
from functools import lru_cache

_ACTS = re.compile(r"[\\`*\[\]|~$]|(?<![^\W_])_|_(?![^\W_])")
_ENTITY = re.compile(r"&(?=#?\w+;)")
_BREAK = re.compile(r"\r\n|[\n\r\v\f\x85\u2028\u2029]")
_CONTROL = re.compile(r"[\x00-\x1f\x7f-\x9f]+")
_NO_XML = re.compile(r"[\x00-\x1f\x7f-\x9f\ud800-\udfff\ufdd0-\ufdef\ufffe\uffff]+")
_TURNS = re.compile("[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]")
_XML = {"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;"}
_LINE_START = re.compile(r"(?:#{1,6}(?=\s|$)|[-+>=])")
_SEAM = re.compile(
    r"(?<=[_./:,;-])(?<![A-Z]\.)(?<!\u00a0[gV]/)(?<!\u00a0pF/)(?=[^\W\d_])"
)  # before a letter only: `6.35 mm` stays whole, and so do `R.K.` and `60 g/m`
_LONG = re.compile(r"(\S{12})(?=\S)")  # eight columns of such pieces and eight of numbers go on a landscape page
_BEFORE_UNIT = re.compile(
    r"(?<=\d) (?=(?:[mµk]?[VAWΩm]|VA|m?s|mm|cm|k?Hz|dBu?|[kM]?ohm|[nµp]F|k?g|°C|%|AWG)(?!\w))|(?<=\d) (?=× \d)|(?<=[≤≥<>±]) (?=\d)|(?<=\d ×) (?=\d)"
    r"|(?<=^[A-F][1-8]) (?=→ [A-F][1-8]$)|(?<=^[A-F][1-8] →) (?=[A-F][1-8]$)"  # from a zone to another
)
_SHARE = re.compile(r"\d+(?:\.\d+)?")
_NUMBERED = re.compile(r"(\d{1,9})([.)])(?=\s|$)")


def cell(text: str) -> str:
    """Text for a cell of a Markdown table: nothing in it acts as Markdown or HTML; a line break becomes `<br>`."""
    return "<br>".join(_inline(part) for part in _BREAK.split(text.strip()))


def line(text: str) -> str:
    """Text for a line of its own in Markdown: as in a cell, and its start makes no heading, list, quote or rule."""
    safe = cell(text)
    if _LINE_START.match(safe):
        return "\\" + safe
    return _NUMBERED.sub(r"\1\\\2", safe, count=1) if _NUMBERED.match(safe) else safe


@lru_cache(maxsize=1 << 10)
def css_string(text: str) -> str:
    """A quoted CSS string. All but letters, digits and spaces is written as a number, so no text can end the string or the style."""
    return '"' + "".join(_css_character(character) for character in _CONTROL.sub(" ", straight(text))) + '"'


def xml(text: str) -> str:
    """Text for an element or an attribute of XML or HTML, on one line; characters that XML forbids become spaces."""
    return "".join(_XML.get(character, character) for character in _NO_XML.sub(" ", _BREAK.sub(" ", straight(text))))


def straight(text: str) -> str:
    """The text without the marks that turn the direction of writing: one in a name would turn what stands behind it as well."""
    return text if text.isascii() or not _TURNS.search(text) else type(text)(_TURNS.sub("", text))


def spelled_out(json: str) -> str:
    """JSON that says the same, with those marks as numbers."""
    return json if json.isascii() else _TURNS.sub(lambda found: f"\\u{ord(found[0]):04x}", json)


def held(text: str) -> str:
    """The text with its numbers held to their units, and a zone to another, so that no line breaks between them."""
    return _BEFORE_UNIT.sub("\u00a0", text)


def pieces(text: str) -> list[str]:
    """The text cut where a long word may be broken to fit a narrow column; the pieces joined are the text."""
    return [piece for part in _SEAM.split(text) for piece in _LONG.split(part) if piece]


def share(text: str) -> float | None:
    """How much of a bar a figure in % fills, at most all of it; None where it is no figure."""
    return min(float(text), 100.0) if _SHARE.fullmatch(text) else None


def printable(text: str) -> str:
    """Text on one line without control characters: a name cannot steer the terminal that shows it."""
    return _CONTROL.sub(" ", _BREAK.sub(" ", straight(text))).strip()


def _inline(text: str) -> str:
    text = _ENTITY.sub("&amp;", _CONTROL.sub(" ", text).strip())
    text = _ACTS.sub(r"\\\g<0>", text).replace("<", "&lt;")
    return f"&gt;{text[1:]}" if text.startswith(">") else text  # elsewhere `->` reads better as it is


def _css_character(character: str) -> str:
    return character if character.isalnum() or character == " " else f"\\{ord(character):x} "
