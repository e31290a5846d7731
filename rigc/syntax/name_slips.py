"""A name, mark or date that is written as none can be -> the wording."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.syntax.mistake import Mistake, Wording

NAMES = "names are lower case with hyphens"


def _foreign(m: Mistake) -> Wording | None:
    inside = m.kind == "character" or m.span.text != m.whole
    if inside and any(ord(sign) > 127 and sign.isalpha() for sign in m.whole):
        return (
            f"'{m.whole}' holds signs that no word of this language holds",
            "here",
            "names use a to z, digits and hyphens; put the full name in quotes behind it",
        )
    return None


def _capitals(m: Mistake) -> Wording | None:
    goes_on = m.whole != m.word and re.fullmatch(r"[a-z][a-z0-9-]*", m.whole.removesuffix(m.word))
    if ("NAME" in m.expected or goes_on) and re.fullmatch(r"(?=.*[A-Z_])[A-Za-z0-9][A-Za-z0-9_-]*", m.whole):
        name = re.sub(r"-+", "-", m.whole.lower().replace("_", "-")).strip("-")
        return f"'{m.whole}' is no name", "a name goes here", f"{NAMES}: {name}"
    return None


def _digit_first(m: Mistake) -> Wording | None:
    found = re.fullmatch(r"(\d+)-?([a-z][a-z0-9-]*)", m.word)
    if found and "NAME" in m.expected:
        return f"'{m.word}' is no name", "a name goes here", f"begin it with a letter: {found[2]}-{found[1]}"
    return None


def _parts(m: Mistake) -> Wording | None:
    """`unit lant.2 {` and `unit green lant {`."""
    first = re.fullmatch(r"[ \t]*[a-z-]+[ \t]+([a-z][a-z0-9-]*)[ \t]*", m.before)
    if first is None or not m.awaits("{"):
        return None
    if m.sign == "." and (rest := re.match(r"\.([a-z0-9]+)", m.after)):
        return "a name holds no dot", "this dot", f"{NAMES}: {first[1]}-{rest[1]}"
    if re.fullmatch(r"[a-z][a-z0-9-]*", m.word):
        name = f"{first[1]}-{m.word}"
        return f"'{first[1]} {m.word}' is no name", "one word goes here", f"{NAMES}: {name}"
    return None


def _small_mark(m: Mistake) -> Wording | None:
    if "MARK" in m.expected and "NAME" not in m.expected and re.fullmatch(r"[a-z]+[0-9]*[a-z]?", m.word):
        return f"'{m.word}' is no mark", "a mark goes here", f"marks are in capitals: {m.word.upper()}"
    return None


def _date(m: Mistake) -> Wording | None:
    if "DATE" in m.expected and (typed := re.match(r"\d+[./-]\d+[./-]\d+", m.after)):
        return f"'{typed.group()}' is no date", "a date goes here", "write year-month-day, as 2026-03-02"
    return None


NAME_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (
    _foreign,
    _date,
    _digit_first,
    _parts,
    _small_mark,
    _capitals,
)
