"""A sign that this language does not know, where another language or a word processor would write it -> the wording."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.diagnostics.mend import Mend, Replace
from rigc.syntax import words
from rigc.syntax.mistake import Mistake, Wording

DASHES = "\u2212\u2010\u2011\u2012\u2013\u2014"
REPLACED = {"×": "x", "→": "->", "⟶": "->", "➔": "->", "➜": "->", "⇒": "=>", "…": ".."}
RANGE = re.compile(r"(\d+(?:\.\d+)?)[ \t]*\Z")
_DOUBLE, _SINGLE = "\u201c\u201d\u201e\u00ab\u00bb", "\u2018\u2019'`"


def _unclosed_text(m: Mistake) -> Wording | None:
    if m.kind != "character" or m.sign != '"':
        return None
    if not re.match(r'"(?:\\.|[^"\\])*"', m.after):
        held = re.match(r'"(.*?)[ \t]*(?:\{[ \t]*)?(?:#.*)?\Z', m.after)
        end = m.at + (held.end(1) if held else len(m.after))
        text = f'{m.text[m.at : end]}"'
        return Wording("this text has no closing quote", "opened here", mends=m.instead(end, end, '"', f"write {text}"))
    bad = re.search(r"\\[^\"\\n]", m.after)
    sign = bad.group() if bad else "\\"
    if m.before.split()[:1] in (["use"], ["follows"]) and (path := re.match(r'"[^"\n]*"', m.after)):
        text = re.sub(r"\\+", "/", path.group())
        mends = m.instead(m.at, m.at + path.end(), text, f"write {text}")
        return Wording("a path is written with /, not with a backslash", "in this path", mends=mends)
    advice = r"write \" for a quote, \\ for a backslash, \n for a new line"
    return Wording(f"'{sign}' means nothing inside a text", "in this text", advice)


def _quotes(m: Mistake) -> Wording | None:
    if not m.sign or m.sign not in _DOUBLE + _SINGLE:
        return None
    message, label = f"{m.sign} is not the quote of this language", "a text begins here"
    closing = _DOUBLE if m.sign in _DOUBLE else _SINGLE
    text = r'([^"\\{}]*'
    end = r"(?=[ \t]*(?:[{#]|\Z))"
    if held := re.match(rf'.{text})["{closing}]{end}', m.after) or re.match(rf'.{text}?)["{closing}]', m.after):
        text = f'"{held[1]}"'
        return Wording(message, label, mends=m.instead(m.at, m.at + held.end(), text, f"write {text}"))
    return Wording(message, label, 'use the plain quote "')


def _text_for_a_word(m: Mistake) -> Wording | None:
    if m.kind != "STRING":
        return None
    typed, end = m.span.text[1:-1], m.at + len(m.span.text)
    if "NAME" in m.expected:
        message, label = f'a name goes here, not the text "{typed}"', "a text in quotes"
        if re.fullmatch(r"[a-z][a-z0-9-]*", typed):
            return Wording(message, label, mends=m.instead(m.at, end, typed, f"write {typed} without quotes"))
        return Wording(message, label, "write a name without quotes")
    if typed in words.keywords(m.expected, m.literals):
        mends = m.instead(m.at, end, typed, f"write {m.before.strip()} {typed}")
        return Wording(f'"{typed}" is in quotes', "a word of the language goes here", mends=mends)
    if "NUMBER" in m.expected and re.match(r"[+-]?\d", typed):
        mends = m.instead(m.at, end, typed, f"write it without quotes: {typed}")
        return Wording(f'"{typed}" is in quotes', "a number and its unit go here", mends=mends)
    return None


def _range(m: Mistake) -> Wording | None:
    """`8.7-9.6` and its like."""
    low, high = RANGE.search(m.before), re.match(rf"(?:[{DASHES}-]|to\b)[ \t]*(\d+(?:\.\d+)?)", m.after)
    if low is None or high is None or (m.sign not in DASHES and ".." not in words.signs(m.expected, m.literals)):
        return None
    typed = f"{low[1]}{' ' * m.after.startswith('to')}{high.group()}"
    text = f"{low[1]}..{high[1]}"
    mends = m.instead(m.line_start + low.start(), m.at + high.end(), text, f"write {text}")
    return Wording(f"'{typed}' is no range", "two dots go here", mends=mends)


def _dash_in_a_name(m: Mistake) -> Wording | None:
    begun, rest = re.search(r"[a-z][a-z0-9-]*\Z", m.before), re.match(rf"[{DASHES}]([a-z0-9-]+)", m.after)
    if begun is None or rest is None:
        return None
    text = f"{begun.group()}-{rest[1]}"
    mends = m.instead(m.line_start + begun.start(), m.at + rest.end(), text, f"write {text}")
    return Wording(f"{m.sign} is not the hyphen of a name", "this sign", mends=mends)


def _minus(m: Mistake) -> Wording | None:
    if not m.sign or m.sign not in DASHES:
        return None
    message = f"{m.sign} is not a minus sign that can be read"
    if number := re.match(r".[ \t]*(\d[\d.]*)", m.after):
        text = f"-{number[1]}"
        mends = m.instead(m.at, m.at + number.end(), text, f"use the plain hyphen: {text}")
        return Wording(message, "this sign", mends=mends)
    return Wording(message, "this sign", "use the plain hyphen: -20 dBu")


def _decimal_comma(m: Mistake) -> Wording | None:
    whole, part = re.search(r"(\d+)\Z", m.before), re.match(r",(\d+)", m.after)
    if whole is None or part is None:
        return None
    start, end = m.line_start + whole.start(), m.at + part.end()
    point = f"{whole[1]}.{part[1]}"
    decimal = m.instead(start, end, point, f"write {point} with a point")
    if len(whole[1]) <= 3 and len(part[1]) == 3 and whole[1][0] != "0":
        message = f"'{whole[1]},{part[1]}' has a comma in its number"
        thousands = f"{whole[1]}{part[1]}"
        mends = (*m.instead(start, end, thousands, f"write {thousands}"), *decimal)
        return Wording(message, "a comma here", mends=mends)
    return Wording(f"'{whole[1]},{part[1]}' is written with a comma", "a comma here", mends=decimal)


def _replaced(m: Mistake) -> Wording | None:
    if m.sign == "," and m.awaits("->"):
        mends = _everywhere(m, {",": " ->"}, "write -> in its place")
        return Wording("a comma joins nothing in a chain", "this sign", mends=mends)
    if m.sign in REPLACED:
        mends = _everywhere(m, {m.sign: REPLACED[m.sign]}, f"write {REPLACED[m.sign]}")
        return Wording(f"{m.sign} is no sign of this language", "this sign", mends=mends)
    return None


def _everywhere(m: Mistake, signs: dict[str, str], words: str) -> tuple[Mend, ...]:
    """The mend that writes other signs for these, wherever they stand in the rest of the statement but in texts."""
    rest = re.match(r"(?:.*(?:->|=>|→|⇒|,)[ \t]*(?:#.*)?\n)*.*", m.text[m.at :])
    held = re.sub(r'"[^"\n]*"|#.*', lambda text: " " * len(text.group()), rest.group() if rest else m.after)
    edits = tuple(
        Replace(m.place(m.at + at, m.at + at + 1), signs[sign]) for at, sign in enumerate(held) if sign in signs
    )
    return (Mend(words, edits),)


def _value_sign(m: Mistake) -> Wording | None:
    if not m.sign or m.sign not in "=:" or not m.before.strip():
        return None
    blank = "" if m.before[-1] in " \t" or m.text[m.at + 1 : m.at + 2] in (" ", "\t") else " "
    gone = re.match(r".[ \t]*", m.after) if m.before[-1] in " \t" else None
    words = f"delete the '{m.sign}': the value comes straight after the word"
    mends = m.instead(m.at, m.at + (gone.end() if gone else 1), blank, words)
    return Wording(f"'{m.sign}' means nothing here", "this sign", mends=mends)


def _semicolon(m: Mistake) -> Wording | None:
    if m.sign != ";":
        return None
    if m.before.split()[:1] == ["chain"] and m.awaits("->"):
        return Wording(
            "a semicolon joins nothing in a chain",
            "this sign",
            mends=_everywhere(m, {";": " ->"}, "write -> in its place"),
        )
    message = "a semicolon ends no statement"
    rest = re.match(r";[ \t]*([^\s#;}]?)", m.after)
    if rest is None or not rest[1]:
        return Wording(message, "this sign", mends=m.instead(m.at, m.at + 1, "", "delete it"))
    indent = re.match(r"[ \t]*", m.before)
    line = f"\n{indent.group() if indent else ''}"
    mends = m.instead(m.at, m.at + rest.start(1), line, "delete it and begin a new line for the next statement")
    return Wording(message, "this sign", mends=mends)


def _comment(m: Mistake) -> Wording | None:
    if not m.after.startswith(("//", "/*", "--", "<!--")):
        return None
    sign = "<!--" if m.sign == "<" else m.word[:2]
    held = re.match(r"(?:/\*|<!--)[ \t]*(.*?)[ \t]*(?:\*/|-->)[ \t]*\Z", m.after)
    end, text = (m.at + held.end(), f"# {held[1]}") if held else (m.at + len(sign), "#")
    mends = m.instead(m.at, end, text, "begin a comment with #")
    return Wording(f"'{sign}' does not begin a comment", "from here on", mends=mends)


def _brace_alone(m: Mistake) -> Wording | None:
    if m.kind == "_NL" and m.awaits("{") and (brace := re.match(r"\s*\{", m.text[m.at :])):
        start = m.line_start + len(m.before.rstrip())
        mends = m.instead(start, m.at + brace.end(), " {", "put { at the end of this line")
        return Wording("the opening brace stands on a line of its own", "the line ends here", mends=mends)
    return None


SIGN_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (
    _unclosed_text,
    _quotes,
    _text_for_a_word,
    _range,
    _dash_in_a_name,
    _minus,
    _decimal_comma,
    _replaced,
    _value_sign,
    _semicolon,
    _comment,
    _brace_alone,
)
