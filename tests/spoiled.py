"""A good rig's text and a seed -> the text with a few of its words, lines, blocks, names and numbers gone, twice, exchanged or absurd: what
no command may fail on."""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from functools import cache
from pathlib import Path

from rigc.model.units import measures
from rigc.model.units.measures import Measure

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


@cache
def _stock_of_blocks() -> tuple[str, ...]:
    """Each block, and each line outside of blocks, of the rigs that state everything."""
    folder = Path(__file__).parent / "reach"
    return tuple(block for path in sorted(folder.glob("*.rig")) for block in _blocks(path.read_text("utf-8")))


def _blocks(text: str) -> list[str]:
    """The top-level statements of a text that is written as `fmt` writes it, without `language`, `use` and `rig`."""
    found = re.findall(r"(?m)^[a-z].*\{\n(?:  .*\n|\n)*\}\n|^[a-z].*[^{\n]\n", text)
    return [each for each in found if each.split()[0] not in ("language", "use", "rig")]


def line_in_another_block(dice: random.Random, text: str) -> str:
    """A line of a block stands in another one, most often of another kind."""
    lines = text.splitlines(keepends=True)
    inside = [number for number, line in enumerate(lines) if line.startswith("  ")]
    if len(inside) < 2:
        return text
    one, other = dice.sample(inside, 2)
    lines.insert(other, lines[one])
    del lines[one + (other < one)]
    return "".join(lines)


def block_grafted(dice: random.Random, text: str) -> str:
    """A block of another rig stands here as well."""
    return f"{text.rstrip()}\n{dice.choice(_stock_of_blocks())}"


def merged(dice: random.Random, text: str) -> str:
    """Half of another rig stands here as well."""
    blocks = _stock_of_blocks()
    return "\n".join((text.rstrip(), *(each for each in blocks if dice.random() < 0.5)))


@cache
def _names(text: str) -> tuple[str, ...]:
    return tuple(sorted(set(re.findall(r"(?m)^[a-z][a-z-]* ([a-z][a-z0-9-]*)(?= .*\{$| \{$)", text))))


def one_name(dice: random.Random, text: str) -> str:
    """A thing bears the name of another everywhere: of its kind, or not."""
    names = _names(text)
    return _called(text, *dice.sample(names, 2)) if len(names) > 1 else text


def word_for_name(dice: random.Random, text: str) -> str:
    """A thing bears a word of the language as its name, everywhere."""
    names = _names(text)
    words = [each[0] for each in _words(text) if each[0].isalpha() and each[0].islower() and each[0] not in names]
    return _called(text, dice.choice(names), dice.choice(words)) if names and words else text


def _called(text: str, name: str, other: str) -> str:
    return re.sub(rf"(?<![\w-]){re.escape(name)}(?![\w-])", other, text)


@cache
def _edges() -> dict[str, tuple[float, ...]]:
    """By unit of measure the ends of what is plausible, of all measures in it."""
    found: dict[str, set[float]] = {}
    for each in vars(measures).values():
        if isinstance(each, Measure):
            found.setdefault(each.unit, set()).update((each.low, each.high))
    return {unit: tuple(sorted(ends - {float("inf")})) for unit, ends in found.items()}


_MEASURED = re.compile(r"(?<![\w.-])(-?\d+(?:\.\d+)?) ?([A-Za-z%/]+)(?![\w/-])")


def other_measure(dice: random.Random, text: str) -> str:
    """A number bears another unit of measure: of its kind, or not."""
    here = [each for each in _MEASURED.finditer(text) if each[2] in _edges()]
    if not here:
        return text
    one = dice.choice(here)
    return text[: one.start(2)] + dice.choice(tuple(_edges())) + text[one.end(2) :]


def at_edge(dice: random.Random, text: str) -> str:
    """A number lies at an end of a range of its unit, or just inside or outside of it."""
    here = [each for each in _MEASURED.finditer(text) if each[2] in _edges()]
    if not here:
        return text
    one = dice.choice(here)
    number = dice.choice(_edges()[one[2]]) * dice.choice((1, 1, 0.999, 1.001))
    return f"{text[: one.start(1)]}{number:.6f}".rstrip("0").rstrip(".") + text[one.end(1) :]


def many_times(dice: random.Random, text: str) -> str:
    """A line or a block stands many times, with a number behind its name."""
    block = dice.choice(_blocks(text) or [text])
    count = dice.choice((2, 5, 40))
    names = _names(block)
    again = [_called(block, names[0], f"{names[0]}-{number}") if names else block for number in range(count)]
    return "\n".join((text.rstrip(), *again))


def unplaced(dice: random.Random, text: str) -> str:
    """Some or all of the stated places are gone, so that places are sought."""
    kept = dice.choice((0, 0, 0.5, 0.8))
    return _AT.sub(lambda line: line[0] if dice.random() < kept else "", text)


def other_outlines(dice: random.Random, text: str) -> str:
    """Bodies, decks, tiers and lids of other sizes: smaller than what stands there, just as large, or far larger."""
    return _SIZE.sub(lambda number: number[0] if dice.random() < 0.9 else dice.choice(_SIZES), text)


_AT = re.compile(r"(?m)^ *(?!switch|knob)[\w-]+ (?:turned \S+ )?at -?[\d.]+,.*\n")
_SIZE = re.compile(r"(?<![\w.-])\d+(?:\.\d+)?(?= (?:x \d|mm))")
_SIZES = ("0", "1", "5", "20", "60", "88", "100", "120", "200", "300", "400", "1000", "5000")

Spoil = Callable[[random.Random, str], str]

SPOILS: tuple[Spoil, ...] = (
    gone, twice, exchanged, renamed, absurd, other_size, odd_sign, line_gone, line_elsewhere, lines_gone, grafted,
    line_in_another_block, block_grafted, merged, one_name, word_for_name, other_measure, at_edge, many_times,
)  # fmt: skip
GENTLE: tuple[Spoil, ...] = (
    other_size, other_size, other_size, other_size, line_gone, lines_gone, grafted, grafted,
    block_grafted, block_grafted, line_in_another_block, at_edge, at_edge, one_name,
)  # fmt: skip
LOOSE: tuple[Spoil, ...] = (unplaced, other_outlines, other_size, other_size, line_gone, block_grafted)


def spoiled(text: str, seed: int) -> str:
    """The text with one to four spoils; the same ones for the same seed. Two in three leave mostly a rig that can be computed, and of
    these one in three places to be sought."""
    dice = random.Random(seed)
    spoils = SPOILS if seed % 3 == 0 else GENTLE
    if seed % 9 == 1 or seed % 9 == 5:
        text, spoils = unplaced(dice, text), LOOSE
    for _ in range(dice.randint(1, 4)):
        if len(_words(text)) < 2:
            break
        text = dice.choice(spoils)(dice, text)
    return text
