"""A good rig's text and a seed -> the text with a few of its words gone, twice, exchanged or absurd: what no command may fail on."""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from functools import cache
from pathlib import Path

_WORD = re.compile(r'"(?:\\.|[^"\\\n])*"|->|=>|\.\.|[A-Za-z][\w-]*|-?\d+(?:\.\d+)?|[^\s\w]')
_NUMBER = re.compile(r"(?<![\w.-])-?\d+(?:\.\d+)?(?![\w.-])")

ABSURD = (
    "0", "-1", "-0", "0.0001", "99999", "9999999999999", f"1{'0' * 400}", "1e9", "nan", "NaN", "inf", "-inf", "1_000",
    "00", "0x10", "1,5", "\u00bd", "\u0663", "\uff15", "\u221e", "1.2.3", ".5", "5.",
)  # fmt: skip
ODD_SIGNS = (
    "\u00e9", "e\u0301", "\u202e", "\u200b", "\ufeff", "\U0001f3b8", "\u03a9", "\u2212", "\u2192", "\u00a0", "\u2028",
    "\x00", "\x1b[31m", "\ud800", "\t", "\r", "\\", "{", "}", '"', "#", "<b>&amp;</b>", "|", "=1+1", "{{ 7 }}",
)  # fmt: skip


def _words(text: str) -> list[re.Match[str]]:
    return list(_WORD.finditer(text))


def gone(dice: random.Random, text: str) -> str:
    """A word is missing."""
    one = dice.choice(_words(text))
    return text[: one.start()] + text[one.end() :]


def twice(dice: random.Random, text: str) -> str:
    """A word stands twice."""
    one = dice.choice(_words(text))
    return f"{text[: one.end()]} {text[one.start() :]}"


def exchanged(dice: random.Random, text: str) -> str:
    """Two words stand in each other's place."""
    one, other = sorted(dice.sample(_words(text), 2), key=re.Match.start)
    return text[: one.start()] + other[0] + text[one.end() : other.start()] + one[0] + text[other.end() :]


def renamed(dice: random.Random, text: str) -> str:
    """A word is another word of the file."""
    one, other = dice.sample(_words(text), 2)
    return text[: one.start()] + other[0] + text[one.end() :]


def absurd(dice: random.Random, text: str) -> str:
    """A number is none, or one that can't be."""
    numbers = list(_NUMBER.finditer(text))
    if not numbers:
        return text
    one = dice.choice(numbers)
    return text[: one.start()] + dice.choice(ABSURD) + text[one.end() :]


def other_size(dice: random.Random, text: str) -> str:
    """A number is another: nought, or smaller or larger."""
    numbers = list(_NUMBER.finditer(text))
    if not numbers:
        return text
    one = dice.choice(numbers)
    number = f"{float(one[0]) * dice.choice((0, 0.3, 0.5, 0.8, 0.9, 1.1, 1.5, 2, 3, 10)):.6f}".rstrip("0").rstrip(".")
    return text[: one.start()] + number + text[one.end() :]


def odd_sign(dice: random.Random, text: str) -> str:
    """A sign that nobody types stands somewhere, most often inside a text between quotes."""
    texts = [each for each in _words(text) if each[0].startswith('"') and len(each[0]) > 2]
    at = dice.choice(texts).start() + 1 if texts and dice.random() < 0.7 else dice.randrange(len(text))
    return text[:at] + dice.choice(ODD_SIGNS) + text[at:]


def line_gone(dice: random.Random, text: str) -> str:
    """A line is missing."""
    lines = text.splitlines(keepends=True)
    del lines[dice.randrange(len(lines))]
    return "".join(lines)


def line_elsewhere(dice: random.Random, text: str) -> str:
    """A line stands at another place as well."""
    lines = text.splitlines(keepends=True)
    lines.insert(dice.randrange(len(lines)), dice.choice(lines))
    return "".join(lines)


def lines_gone(dice: random.Random, text: str) -> str:
    """A twentieth of the lines of the blocks is missing."""
    return "".join(each for each in text.splitlines(keepends=True) if each[:2] != "  " or dice.random() > 0.05)


@cache
def _stock_of_lines() -> dict[str, tuple[str, ...]]:
    """By the first word of a block the lines that such blocks hold in the rigs that state everything; `` is what stands in none."""
    found: dict[str, list[str]] = {}
    for path in sorted((Path(__file__).parent / "reach").glob("*.rig")):
        block = ""
        for line in path.read_text("utf-8").splitlines():
            if line.startswith("  "):
                found.setdefault(block, []).append(line)
            elif line.endswith("{"):
                block = line.split()[0]
            elif line and line[0].isalpha():
                found.setdefault("", []).append(line)
    return {block: tuple(lines) for block, lines in found.items()}


def grafted(dice: random.Random, text: str) -> str:
    """A line that stands in another rig stands here, in a block of its kind or in none, with one of its numbers another."""
    lines = text.splitlines(keepends=True)
    heads = [number for number, line in enumerate(lines) if line.split()[:1] and line.split()[0] in _stock_of_lines()]
    if not heads:
        return text
    head = dice.choice((*heads, -1))
    block = "" if head < 0 else lines[head].split()[0]
    line = dice.choice(_stock_of_lines()[block])
    number = list(_NUMBER.finditer(line))
    if number and dice.random() < 0.5:
        line = dice.choice((absurd, other_size))(dice, line)
    lines.insert(head + 1 if head >= 0 else len(lines), f"{line}\n")
    return "".join(lines)


Spoil = Callable[[random.Random, str], str]

SPOILS: tuple[Spoil, ...] = (
    gone, twice, exchanged, renamed, absurd, other_size, odd_sign, line_gone, line_elsewhere, lines_gone, grafted,
)  # fmt: skip
GENTLE: tuple[Spoil, ...] = (other_size, other_size, other_size, other_size, line_gone, lines_gone, grafted)


def spoiled(text: str, seed: int) -> str:
    """The text with one to four spoils; the same ones for the same seed. Two in three leave mostly a rig that can be computed."""
    dice = random.Random(seed)
    spoils = SPOILS if seed % 3 == 0 else GENTLE
    for _ in range(dice.randint(1, 4)):
        if len(_words(text)) < 2:
            break
        text = dice.choice(spoils)(dice, text)
    return text
