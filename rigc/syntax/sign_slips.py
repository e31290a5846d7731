"""A sign that this language does not know, where another language or a word processor would write it -> the wording."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.syntax import words
from rigc.syntax.mistake import Mistake, Wording

DASHES = "\u2212\u2010\u2011\u2012\u2013\u2014"
REPLACED = {"×": "x", "→": "->", "⇒": "=>", "…": ".."}
RANGE = re.compile(r"(\d+(?:\.\d+)?)[ \t]*\Z")


def _unclosed_text(m: Mistake) -> Wording | None:
    if m.kind != "character" or m.sign != '"':
        return None
    if not re.match(r'"(?:\\.|[^"\\])*"', m.after):
        return "this text has no closing quote", "opened here", 'end it with " on the same line'
    bad = re.search(r"\\[^\"\\n]", m.after)
    sign = bad.group() if bad else "\\"
    return f"'{sign}' means nothing inside a text", "in this text", r"write \" for a quote, \\ for a backslash"


def _quotes(m: Mistake) -> Wording | None:
    if m.sign and m.sign in "\u201c\u201d\u201e\u00ab\u00bb\u2018\u2019'`":
        return f"{m.sign} is not the quote of this language", "a text begins here", 'use the plain quote "'
    return None


def _text_for_a_word(m: Mistake) -> Wording | None:
    if m.kind != "STRING":
        return None
    typed = m.span.text[1:-1]
    if "NAME" in m.expected:
        return f'a name goes here, not the text "{typed}"', "a text in quotes", "write a name without quotes"
    if "NUMBER" in m.expected and re.match(r"[+-]?\d", typed):
        return f'"{typed}" is in quotes', "a number and its unit go here", f"write it without quotes: {typed}"
    return None


def _range(m: Mistake) -> Wording | None:
    """`8.7-9.6` and its like."""
    low, high = RANGE.search(m.before), re.match(rf"(?:[{DASHES}-]|to\b)[ \t]*(\d+(?:\.\d+)?)", m.after)
    if low is None or high is None or (m.sign not in DASHES and ".." not in words.signs(m.expected, m.literals)):
        return None
    typed = f"{low[1]}{' ' * m.after.startswith('to')}{high.group()}"
    return f"'{typed}' is no range", "two dots go here", f"write {low[1]}..{high[1]}"


def _minus(m: Mistake) -> Wording | None:
    if m.sign and m.sign in DASHES:
        return f"{m.sign} is not a minus sign that can be read", "this sign", "use the plain hyphen: -20 dBu"
    return None


def _decimal_comma(m: Mistake) -> Wording | None:
    whole, part = re.search(r"(\d+)\Z", m.before), re.match(r",(\d+)", m.after)
    if whole and part:
        return (
            f"'{whole[1]},{part[1]}' is written with a comma",
            "a comma here",
            f"write {whole[1]}.{part[1]} with a point",
        )
    return None


def _replaced(m: Mistake) -> Wording | None:
    if m.sign == "," and m.awaits("->"):
        return "a comma joins nothing in a chain", "this sign", "write ->"
    if m.sign in REPLACED:
        return f"{m.sign} is no sign of this language", "this sign", f"write {REPLACED[m.sign]}"
    return None


def _value_sign(m: Mistake) -> Wording | None:
    if m.sign and m.sign in "=:" and m.before.strip():
        return f"'{m.sign}' means nothing here", "this sign", "delete it; what is told stands right behind the word"
    return None


def _semicolon(m: Mistake) -> Wording | None:
    if m.sign == ";":
        return "a semicolon ends no statement", "this sign", "delete it; begin a new line for the next statement"
    return None


def _remark(m: Mistake) -> Wording | None:
    if m.word.startswith(("//", "/*", "--")):
        return f"'{m.word[:2]}' begins no remark", "from here on", "write # before a remark"
    return None


def _brace_alone(m: Mistake) -> Wording | None:
    if m.kind == "_NL" and m.awaits("{") and m.text[m.at :].lstrip().startswith("{"):
        return "the opening brace stands on a line of its own", "the line ends here", "put { at the end of this line"
    return None


SIGN_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (
    _unclosed_text,
    _quotes,
    _text_for_a_word,
    _range,
    _minus,
    _decimal_comma,
    _replaced,
    _value_sign,
    _semicolon,
    _remark,
    _brace_alone,
)
