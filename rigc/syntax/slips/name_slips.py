"""A name, mark or date that is written as none can be -> the wording."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.near import nearest
from rigc.source import Span
from rigc.syntax.mistake import Mistake, Wording
from rigc.syntax.slips.said_codes import COLOURS, code_of

NAMES = "names are lower case with hyphens"
MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
_CAPITALS = {
    "country": "a country is its two capital letters (ISO 3166-1)",
    "origin": "a country is its two capital letters (ISO 3166-1)",
    "band": "a country is its two capital letters (ISO 3166-1)",
    "revision": "a revision is a capital letter",
    "follows": "a revision is a capital letter",
    "colour": "a colour is its two capital letters (IEC 60757)",
}


def _foreign(m: Mistake) -> Wording | None:
    inside = m.kind == "character" or m.span.text != m.whole
    if inside and any(ord(sign) > 127 and sign.isalpha() for sign in m.whole):
        return Wording(
            f"'{m.whole}' holds signs that no word of this language holds",
            "here",
            "names use a to z, digits and hyphens; put the full name in quotes behind it",
        )
    return None


def _capitals(m: Mistake) -> Wording | None:
    goes_on = m.whole != m.word and re.fullmatch(r"[a-z][a-z0-9-]*", m.whole.removesuffix(m.word))
    if ("NAME" in m.expected or goes_on) and re.fullmatch(r"(?=.*[A-Z_])[A-Za-z0-9][A-Za-z0-9_-]*", m.whole):
        name = re.sub(r"-+", "-", m.whole.lower().replace("_", "-")).strip("-")
        return Wording(f"'{m.whole}' is no name", "a name goes here", mends=_renamed(m, m.whole, name))
    return None


def _digit_first(m: Mistake) -> Wording | None:
    found = re.fullmatch(r"(\d+)(?:st|nd|rd|th)?-?([a-z][a-z0-9-]*)", m.word)
    if found and "NAME" in m.expected:
        name = f"{found[2]}-{found[1]}"
        return Wording(f"'{m.word}' is no name", "a name begins with a letter", mends=_renamed(m, m.word, name))
    return None


def _renamed(m: Mistake, typed: str, name: str) -> tuple[Mend, ...]:
    """The mend that writes another name at every place of the file where this one stands as a word."""
    source = m.span.source
    word = rf'"(?:\\.|[^"\\\n])*"|#[^\n]*|(?<![\w.-])({re.escape(typed)})(?![\w-])'
    spans = [Span(source, f.start(1), f.end(1)) for f in re.finditer(word, source.text) if f[1]]
    return (Mend(f"write {name}; {NAMES}", tuple(Replace(span, name) for span in spans)),)


def _parts(m: Mistake) -> Wording | None:
    """`unit lant.2 {`, `unit green lant {` and `unit lant green fuzz {`."""
    first = re.fullmatch(r"[ \t]*[a-z-]+[ \t]+([a-z][a-z0-9-]*)[ \t]*", m.before)
    if first is None or not m.awaits("{"):
        return None
    start = m.line_start + first.start(1)
    if m.sign == "." and (rest := re.match(r"\.([a-z0-9]+)", m.after)):
        name = f"{first[1]}-{rest[1]}"
        return Wording(
            "a name holds no dot", "this dot", mends=m.instead(start, m.at + rest.end(), name, f"write {name}")
        )
    if "STRING" in m.expected and (half := m.half_quoted()):
        return half
    if (title := re.match(r"[A-Za-z][^\"{#]*[^\"{#\s]", m.after)) and "STRING" in m.expected:
        text = f'"{title.group()}"'
        quoted = m.instead(m.at, m.at + title.end(), text, f"write {text}")
        joined = f"{first[1]}-{re.sub(r'[^a-z0-9]+', '-', title.group().lower())}"
        one = m.instead(start, m.at + title.end(), joined, f"write {joined}")
        return Wording(f"'{title.group()}' has no quotes", "a title goes in quotes", mends=(*quoted, *one))
    if re.fullmatch(r"[a-z][a-z0-9-]*", m.word):
        name = f"{first[1]}-{m.word}"
        return Wording(
            f"'{first[1]} {m.word}' is no name",
            "one word goes here",
            mends=m.instead(start, m.at + len(m.word), name, f"write {name}; {NAMES}"),
        )
    return None


def _mark(m: Mistake) -> Wording | None:
    """A revision, a country, a colour or the number of a lead that is not in capitals."""
    head = m.before.split()[:1]
    if "MARK" not in m.expected or "NAME" in m.expected:
        return None
    said = _CAPITALS.get(head[0], "") if head else ""
    if head == ["plug-top"]:
        advice = "write the letter of its type, as in plug-top C, or plug-top alone"
        return Wording(f"'{m.word}' is not how the pins of a plug are told", "a capital letter goes here", advice)
    if head == ["inlet"] and m.word.isalpha():
        kinds = [word for name in m.expected if (word := m.literals.get(name, "")).replace("-", "").isalpha()]
        if near := nearest(m.word, kinds):
            return Wording(f"'{m.word}' is no kind of inlet", f"did you mean '{near}'?", mends=m.write(near))
        advice = "write its number by IEC 60320: C14 where it has a contact for earth, C8 where it has two pins"
        return Wording(f"'{m.word}' is no number of a mains inlet", "a number such as C14 goes here", advice)
    small = re.fullmatch(r"[a-z]+[0-9]*[a-z]?", m.word)
    if small and (not said or len(m.word) <= 2):
        capital = m.word.upper()
        return Wording(said or f"'{m.word}' is written in small letters", "a capital goes here", mends=m.write(capital))
    if said and m.ends:
        return Wording(f"{said}, and is missing here", "capitals go here", f"write for example {_example(head[0])}")
    if (
        said
        and (typed := re.match(r'"([^"\n]*)"|[A-Za-z]+', m.after))
        and (code := _code(head[0], typed[1] or typed[0]))
    ):
        mends = m.instead(m.at, m.at + typed.end(), code, f"write '{code}'")
        return Wording(f"{said}, not {typed[0] if typed[1] else repr(typed[0])}", "capitals go here", mends=mends)
    if said and m.word:
        return Wording(f"{said}, not '{m.word}'", "capitals go here", f"write for example {_example(head[0])}")
    return None


_CODED = ("country", "origin", "band")


def _code(head: str, typed: str) -> str:
    """The capitals that are meant, where they can be told: those in quotes, a country by its name or its longer code, a colour by its name."""
    if head == "colour":
        return COLOURS.get(typed.lower(), "")
    if head in _CODED:
        return code_of(typed) or (typed if re.fullmatch(r"[A-Z]{2}", typed) else "")
    return typed if re.fullmatch(r"[A-Z][0-9]?", typed) else ""


def _example(head: str) -> str:
    return {"colour": "BU", "revision": "B", "follows": "A"}.get(head, "DE")


def _date(m: Mistake) -> Wording | None:
    if "DATE" not in m.expected:
        return None
    for shape in _DATES:
        if typed := shape.match(m.after):
            days = dict.fromkeys(_days(typed.groupdict()))
            start, end = m.at, m.at + typed.end()
            mends = tuple(mend for day in days for mend in m.instead(start, end, day, f"write {day}"))
            help = "" if mends else "write year-month-day, as 2026-03-02"
            return Wording(f"'{typed.group()}' is not how a date is written", "year-month-day goes here", help, mends)
    return None


_DATES = (
    re.compile(r"(?P<y>\d{4})[./-](?P<m>\d{1,2})[./-](?P<d>\d{1,2})"),
    re.compile(r"(?P<d>\d{1,2})(?P<by>[./-])[ ]?(?P<m>\d{1,2})[./-][ ]?(?P<y>\d{4})"),
    re.compile(r"(?P<d>\d{1,2})(?:st|nd|rd|th|\.)?[ ]+(?P<name>[A-Za-z]{3,9})[ ,]+(?P<y>\d{4})"),
    re.compile(r"(?P<name>[A-Za-z]{3,9})[ ]+(?P<d>\d{1,2})(?:st|nd|rd|th)?[ ,]+(?P<y>\d{4})"),
    re.compile(r"\d+[./-]\d+[./-]\d+"),
)


def _days(typed: dict[str, str]) -> list[str]:
    """The days that may be meant, as year-month-day: of `02/03/2026` two, since people differ in which comes first."""
    if "y" not in typed:
        return []
    month = typed.get("m") or str(_month(typed.get("name", "")))
    orders = [(month, typed["d"])]
    if typed.get("by") in ("/", "-"):
        orders.append((typed["d"], month))
    return [
        f"{typed['y']}-{int(one):02}-{int(other):02}"
        for one, other in orders
        if 1 <= int(one) <= 12 and 1 <= int(other) <= 31
    ]


def _month(name: str) -> int:
    shorts = [month[:3].lower() for month in MONTHS]
    return shorts.index(name[:3].lower()) + 1 if name[:3].lower() in shorts else 0


NAME_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (
    _foreign,
    _date,
    _digit_first,
    _parts,
    _mark,
    _capitals,
)
