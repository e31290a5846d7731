"""A line in the words of one who has not seen the reference -> the wording that tells it in ours, with the numbers, names and texts that he typed."""

from __future__ import annotations

import re
from functools import cache, lru_cache

from rigc.syntax.mistake import Mistake, Wording
from rigc.syntax.said.lines import Meant, meant
from rigc.syntax.slips.line_slips import OUT_OF_ORDER, as_it_reads

_DECLARES = "unit|amp|desk|supply|instrument|source|listener|mains-strip|cable|plug|strip|deck|panel|case|scenario"
_ELSEWHERE = ("", "power", "place", "mounting", "preset", "midi", "scenario")
"""Blocks in which a line may be meant that says nothing where it stands; the top level under an empty text."""
_SURE = 4.0
_LITTLE_SURE = 0.5
HALF_SURE = 2.5
_LABEL = "the line is not read from here on"


def in_words_of_the_trade(m: Mistake) -> Wording | None:
    """`battery compartment 30 x 55 mm at 20, 40 mm`: where the first words, though one of them may be ours, together mean another thing."""
    told = _said(m)
    return _lines(m, told) if told is not None and told.led else None


def in_other_words(m: Mistake) -> Wording | None:
    """`Current draw: 30mA`, `runs on 9 V centre negative`: where all that was typed is said by lines that read."""
    told = _said(m)
    if told is None or (_begins(m) and (not told.foreign or m.expected == {"STRING"})):
        return None
    if told.foreign:
        return _lines(m, told)
    word = m.code.split()[0]
    return _in_order(m) or _lines(m, told) if not _named(m, word) else None


def _named(m: Mistake, word: str) -> bool:
    """Whether a word is the name of a thing of the file or the number of a lead."""
    return word.partition(".")[0] in _declared(m.span.source.text) or bool(re.match(r"[A-Z]+\d", word))


def _in_order(m: Mistake) -> Wording | None:
    """The same words in the order in which they read."""
    told = as_it_reads(m)
    return told if told is not None and told.message == OUT_OF_ORDER else None


def as_it_is_meant(m: Mistake) -> Wording | None:
    """The same where it is less sure, or where another block is the place of it."""
    here = _here(m)
    if here is not None and here.whole and not here.blanks and not _same(here.texts, m.code):
        return _lines(m, here)
    return where_it_belongs(m, max(_SURE, here.sure if here else 0))


def where_it_belongs(m: Mistake, least: float = _SURE) -> Wording | None:
    """`plugs into hum` in the block of a unit: the line of another block by which it is said."""
    others = ((each, told) for each in _ELSEWHERE if each != m.block and (told := _meant(m, each)) is not None)
    other = max(others, key=lambda pair: pair[1].sure, default=None)
    if other is None or not other[1].whole or other[1].blanks or not other[1].foreign or other[1].sure < least:
        return None
    block, told = other
    where = f"in a {block} block" if block else "outside of blocks"
    return Wording(f"'{_shown(m)}' is not how this is written", _LABEL, f"it belongs {where}: {_told(told.shown)}")


def as_far_as_it_is_meant(m: Mistake, least: float = _LITTLE_SURE) -> Wording | None:
    """`tape everything`: what of the line is understood, with blanks for what is missing; if it is as sure as that at least."""
    here = _here(m)
    if (
        here is None
        or here.sure < least
        or not (here.values or here.led)
        or _same(here.texts, m.code)
        or not (here.foreign or not _begins(m))
    ):
        return None
    return Wording(_message(m, here), _LABEL, f"write it so: {_told(here.shown)}")


def _here(m: Mistake) -> Meant | None:
    """What is meant in the block of the line: where its first word begins a statement there, of that statement alone."""
    here = _meant(m, m.block)
    return None if here is not None and _begins(m) and here.texts[0].split()[0] != m.code.split()[0] else here


def _begins(m: Mistake) -> bool:
    """Whether the line begins with a word by which statements of its block begin."""
    return bool(m.code.split()) and m.code.split()[0] in _heads(m)


def _heads(m: Mistake) -> frozenset[str]:
    return m.blocks().get(m.block, frozenset())


def reads_elsewhere(m: Mistake) -> bool:
    """Whether the line reads in a block whose statements begin with its first word."""
    first = m.code.split()[0] if m.code.split() else ""
    return any(m.tries.reads(block, m.code.strip()) for block, heads in m.blocks().items() if first in heads)


def _said(m: Mistake) -> Meant | None:
    """What says all that was typed, and is not just that."""
    told = _meant(m, m.block)
    return (
        told
        if told is not None and told.whole and not told.blanks and told.sure >= _SURE and not _same(told.texts, m.code)
        else None
    )


def _message(m: Mistake, told: Meant) -> str:
    if len(told.texts) > 1:
        return f"{len(told.texts)} facts stand in one line"
    first = re.match(r"[ \t]*([A-Za-z][\w-]*)", m.code)
    heads = _heads(m)
    if first and heads and first[1] not in heads and told.texts[0].split()[0] in heads:
        return (
            f"{_block(m.block)} has no statement '{first[1]}'" if m.block else f"no statement begins with '{first[1]}'"
        )
    return f"'{_shown(m)}' is not how this is written"


def _block(name: str) -> str:
    return f"{'an' if name[0] in 'aeio' else 'a'} {name} block"


def _lines(m: Mistake, told: Meant) -> Wording:
    code = m.code
    indent = code[: len(code) - len(code.lstrip())]
    start = m.line_start + len(indent)
    text = f"\n{indent}".join(told.texts)
    several = len(told.texts) > 1
    words = f"write {len(told.texts)} lines: {_told(told.texts)}" if several else f"write {told.texts[0]}"
    first, head = code.split()[0], told.texts[0].split()[0]
    label = f"here it is '{head}'" if not several and first not in (head, *_heads(m)) and head in _heads(m) else _LABEL
    return Wording(_message(m, told), label, mends=m.instead(start, start + len(code.strip()), text, words))


_MOST_SHOWN = 60


def _shown(m: Mistake) -> str:
    code = m.code.strip()
    return code if len(code) <= _MOST_SHOWN else m.word


def _told(lines: tuple[str, ...]) -> str:
    return lines[0] if len(lines) == 1 else " and ".join(f"`{line}`" for line in lines)


def _same(texts: tuple[str, ...], code: str) -> bool:
    return len(texts) == 1 and texts[0].split() == code.split()


def _meant(m: Mistake, block: str) -> Meant | None:
    """What the line of a mistake means in a block."""
    code = m.code.strip()
    if "{" in code or "}" in code or not re.search(r"[A-Za-z0-9]", code):
        return None
    mine = _block_name(m) if block != m.block and m.block else ""
    return m.tries.once((block, code, mine), lambda: _meant_of(m, block, code, mine))


def _meant_of(m: Mistake, block: str, code: str, mine: str) -> Meant | None:
    known = _declared(m.span.source.text)
    decks = [name for name, kind in known.items() if kind == "deck"]
    called = dict.fromkeys(("board", "pedalboard", "deck"), decks[0]) if len(decks) == 1 else {}
    told = meant(
        block,
        code,
        _words(tuple(m.literals.values())),
        known,
        lambda line: bool(m.tries.reads(block, line)),
        (mine,) if mine else (),
        called,
        _jacks(m.span.source.text),
    )
    return None if told is None else _of_run(told, code)


def _of_run(told: Meant, code: str) -> Meant:
    """With the run of names that was typed, where the lines have one name: `outlet o1..o4`."""
    run = re.search(r"\b([a-z]+\d+)\.\.[a-z]*\d+\b", code)
    if run is None:
        return told
    first = re.compile(rf"^((?:outlet|input|output)[ \t]+){run[1]}(?=[ \t])")
    texts, shown = (tuple(first.sub(rf"\1{run[0]}", line) for line in lines) for lines in (told.texts, told.shown))
    whole: Meant = told.replace(texts=texts, shown=shown)
    return whole


@cache
def _words(literals: tuple[str, ...]) -> frozenset[str]:
    return frozenset(each for each in literals if re.fullmatch(r"[a-z][a-z-]*", each))


@lru_cache(maxsize=2)
def _declared(text: str) -> dict[str, str]:
    """The names that the file declares, each with the word that declares it."""
    return {
        found[2]: found[1] for found in re.finditer(rf"^[ \t]*({_DECLARES})[ \t]+([a-z][\w-]*)[^\n]*\{{", text, re.M)
    }


def _block_name(m: Mistake) -> str:
    """The name of the thing in whose block the mistake is."""
    opened = re.findall(
        rf"^[ \t]*{re.escape(m.block)}[ \t]+([a-z][\w-]*)[^{{}}\n]*\{{", m.span.source.text[: m.span.start], re.M
    )
    return opened[-1] if opened else ""


@lru_cache(maxsize=2)
def _jacks(text: str) -> dict[str, tuple[str, ...]]:
    """For each thing of the file the names of its jacks and outlets, of runs the first and the last."""
    blocks = re.finditer(rf"^[ \t]*(?:{_DECLARES})[ \t]+([a-z][\w-]*)[^{{\n]*\{{(.*?)^[ \t]*\}}", text, re.M | re.S)
    shape = re.compile(r"^[ \t]*(?:outlet|input|output|inlet|jack)[ \t]+([a-z]\w*)(?:\.\.([a-z]\w*))?", re.M)
    return {found[1]: tuple(name for jack in shape.findall(found[2]) for name in jack if name) for found in blocks}
