"""Example rigs with small slips of the hand in them: compiling tells of them, in whole sentences, and never raises."""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from functools import partial

import pytest
from written import compiled_text

from rigc.diagnostics.diagnostic import Diagnostic, Level

BOARDS = ("examples/back-bedroom/board.rig", "examples/tide-line/board.rig")
SEEDS = range(16)

UNITS = (
    "mm",
    "cm",
    "m",
    "in",
    "mA",
    "A",
    "W",
    "V",
    "pF",
    "nF",
    "ohm",
    "kohm",
    "Mohm",
    "H",
    "kg",
    "g",
    "Hz",
    "dBu",
    "dB",
    "%",
    "ms",
    "deg",
)
_NUMBER = re.compile(r"(?<![\w.-])\d+(?:\.\d+)?(?![\w.-])")
_MEASURED = re.compile(r"(?<=\d )(?:" + "|".join(UNITS) + r")\b")
_CHOICES = (
    ("true", "buffered", "trails", "always-on", "unknown"),
    ("passes", "mutes", "latches"),
    ("negative", "positive", "isolated"),
    ("centre-negative", "centre-positive"),
    ("dc", "ac"),
    ("digital", "analogue", "passive", "delay", "inverts", "wants pickup", "high gain", "dry-kill", "set wet"),
    ("ts", "trs", "xlr", "mini-trs"),
    ("linear", "switch-mode", "unregulated"),
    ("earthed", "double-insulated"),
    ("measured", "leaflet", "assumed"),
    ("insulated", "bonded"),
    ("left", "right", "front", "rear"),
)
_FACT = re.compile(
    r"  (?!input|output|inlet|midi|expression|control|usb|loop|pair|outlet|jack|revision)[a-z][a-z-]*\b(?!.*->)"
)
_NO_SENTENCE = re.compile(
    r"\b(?:None|nan|inf|True|False)\b|  |<[a-z]+ ?[a-z.]* at 0x|\{\w*\}|''|\be[+-]\d\d\b|\de[+-]?\d"
)


def twice(text: str, chance: random.Random) -> str:
    """A line stands twice, perhaps elsewhere."""
    lines = text.splitlines(keepends=True)
    line = chance.choice(lines)
    lines.insert(chance.randrange(len(lines)), line)
    return "".join(lines)


def gone(text: str, chance: random.Random) -> str:
    """A line is missing."""
    lines = text.splitlines(keepends=True)
    del lines[chance.randrange(len(lines))]
    return "".join(lines)


def exchanged(text: str, chance: random.Random) -> str:
    """Two lines stand in each other's place."""
    lines = text.splitlines(keepends=True)
    one, other = chance.sample(range(len(lines)), 2)
    lines[one], lines[other] = lines[other], lines[one]
    return "".join(lines)


def other_number(text: str, chance: random.Random) -> str:
    """A number is halved, doubled, nought, far too large or negative."""
    found = chance.choice(list(_NUMBER.finditer(text)))
    factor = chance.choice((0.5, 1.5, 2, 3, 3, 0, 10_000, -1))
    number = f"{factor * float(found[0]):.6f}".rstrip("0").rstrip(".")
    return text[: found.start()] + number + text[found.end() :]


def other_unit(text: str, chance: random.Random) -> str:
    """A quantity bears another unit of measure."""
    found = chance.choice(list(_MEASURED.finditer(text)))
    return text[: found.start()] + chance.choice(UNITS) + text[found.end() :]


def other_name(text: str, chance: random.Random) -> str:
    """A name of a thing stands where another belongs, or a jack where another belongs."""
    names: set[str] = set(re.findall(r"(?m)^(?:unit|amp|supply|instrument|deck) ([a-z][\w-]*)", text))
    jacks: list[str] = re.findall(r"\b[a-z][\w-]*(\.[a-z]\w*)", text)
    used = [found for found in re.finditer(r"(?<!\.)\b[a-z][\w-]*", text) if found[0] in names]
    if not used:
        return text
    one = chance.choice(used)
    end = one.end()
    other: str = chance.choice(sorted(names))
    if jacks and chance.random() < 0.3:
        other = f"{one[0]}{chance.choice(jacks)}"
        behind = re.match(r"\.\w+", text[end:])
        end += behind.end() if behind else 0
    return text[: one.start()] + other + text[end:]


def facts_gone(text: str, chance: random.Random) -> str:
    """A tenth of what the blocks state is missing."""
    return "".join(line for line in text.splitlines(keepends=True) if not _FACT.match(line) or chance.random() > 0.1)


def other_way(text: str, chance: random.Random) -> str:
    """A word of a few that exclude each other stands for another of them."""
    words = chance.choice(_CHOICES)
    found = list(re.finditer(rf"(?<=[ ])(?:{'|'.join(words)})\b", text))
    if not found:
        return text
    one = chance.choice(found)
    return text[: one.start()] + chance.choice(words) + text[one.end() :]


def other_word(text: str, chance: random.Random) -> str:
    """A word of the file stands in place of another."""
    words = list(re.finditer(r"[A-Za-z][\w-]*", text))
    one, other = chance.sample(words, 2)
    return text[: one.start()] + other[0] + text[one.end() :]


def cut(text: str, chance: random.Random) -> str:
    """The file ends in the middle."""
    return text[: chance.randrange(len(text))]


SLIPS: tuple[Callable[[str, random.Random], str], ...] = (
    twice, gone, facts_gone, exchanged, other_number, other_unit, other_word, other_name,
    other_way,
)  # fmt: skip


def faults(finding: Diagnostic) -> list[str]:
    """What is wrong with a finding itself: no place and nothing to do where it is an error, no whole sentence."""
    told = [finding.message, finding.advice, finding.label, finding.note, *(label.text for label in finding.also)]
    wrong = [f"no sentence: {text}" for text in told if _NO_SENTENCE.search(text)]
    if finding.level is Level.ERROR and finding.span is None:
        wrong.append("an error without a place")
    if finding.level in (Level.ERROR, Level.CANT_CHECK) and not finding.advice:
        wrong.append("nothing to do about it")
    return [f"{finding.kind.name} {finding.message}: {each}" for each in wrong]


GENTLE = (gone, facts_gone, facts_gone, other_number, other_way, other_way)


def worn(text: str, seed: int) -> str:
    """The text with slips that mostly leave a rig that can be computed."""
    chance = random.Random(seed)
    for _ in range(chance.randint(1, 4)):
        text = chance.choice(GENTLE)(text, chance)
    return text


def slipped(text: str, seed: int) -> str:
    """The text with one to three slips; the same ones for the same seed."""
    chance = random.Random(seed)
    for _ in range(chance.randint(1, 3)):
        text = chance.choice(SLIPS)(text, chance)
    return cut(text, chance) if chance.random() < 0.1 else text


@pytest.mark.parametrize("board", BOARDS)
def test_slips_of_the_hand(board: str) -> None:
    """What is written wrong, told in findings that can be used."""
    for seed in SEEDS:
        made = compiled_text(board, partial(slipped, seed=seed))
        assert not [fault for finding in made.findings for fault in faults(finding)], f"seed {seed}"


@pytest.mark.parametrize("board", BOARDS)
def test_facts_that_are_odd_or_missing(board: str) -> None:
    """What is written well and is not so: computed as far as it goes, for all sheets."""
    for seed in SEEDS:
        made = compiled_text(board, partial(worn, seed=seed))
        assert not [fault for finding in made.findings for fault in faults(finding)], f"seed {seed}"
        if seed % 8 == 0:
            made.documents()
