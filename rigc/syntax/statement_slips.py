"""A word that begins no statement where it stands, or a statement that breaks off or goes on too long -> the wording."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.near import nearest
from rigc.syntax import words
from rigc.syntax.mistake import Mistake, Wording
from rigc.syntax.trade_slips import our_word

_PROVENANCE = frozenset({"_NL", "MEASURED", "LEAFLET", "ASSUMED"})


def _breaks_off(m: Mistake) -> Wording | None:
    closes = m.sign == "}" and m.before.strip() and "_NL" not in m.expected
    if not closes and m.kind not in ("_NL", "end of file") and m.sign not in ("\n", ""):
        return None
    if m.before.split() == ["chain"]:
        return "this chain is empty", "nothing stands behind it", "name what is joined: chain guitar -> plumb -> combo"
    if m.awaits("isolated", "common"):
        message = "this outlet is said to be neither isolated nor of a common group"
        return message, "something is missing here", "add 'isolated', or 'common' and the group's name"
    expected = words.told(m.expected, m.literals)
    return f"the line ends where {expected} is due", "something is missing here", _advice("add", expected)


def _closing(m: Mistake) -> Wording | None:
    if m.sign != "}":
        return None
    if "{" in m.before:
        advice = "end the line behind {, and put } on a line of its own"
        return "this block is written on one line", "its statement ends here", advice
    if m.before.strip():
        return "the closing brace stands behind a statement", "here", "put } on a line of its own"
    return "this closing brace closes nothing", "no block is open here", "delete it, or open its block with {"


def _opening(m: Mistake) -> Wording | None:
    if m.sign == "{" and not m.before.strip():
        return "this brace opens no block", "nothing stands before it", "write the block's first words before it"
    return None


def _arrow(m: Mistake) -> Wording | None:
    if m.word in ("->", "=>") and "NAME" in m.expected:
        return f"nothing stands before '{m.word}'", "a name is missing here", "write where the lead comes from"
    return None


def _no_statement(m: Mistake) -> Wording | None:
    """A word at the head of a line that begins no statement there."""
    mine = m.blocks().get(m.block, frozenset())
    heads = mine & set(words.signs(m.expected, m.literals))
    if m.before.strip() or not heads:
        return None
    if not re.fullmatch(r"[A-Za-z][\w-]*", m.word):
        shown = m.span.text or m.word
        return f"'{shown}' begins no statement", "a word is missing before it", "begin with the word of the statement"
    return _statement_of(m, m.word, mine)


def _statement_elsewhere(m: Mistake) -> Wording | None:
    """A statement of another block, its word taken for a name: `chain plumb -> lant` in a power block."""
    first = m.before.strip()
    mine = m.blocks().get(m.block, frozenset())
    known = any(first in each for each in m.blocks().values())
    return _statement_of(m, first, mine) if m.block and known and first not in mine else None


def _statement_of(m: Mistake, word: str, mine: frozenset[str]) -> Wording:
    message = f"'{word}' is no statement of {_block(m.block)}" if m.block else f"'{word}' begins no statement"
    ours = our_word(word, mine)
    if ours:
        return message, f"did you mean '{ours}'?", f"write '{ours}'"
    homes = [block for block, heads in m.blocks().items() if word in heads]
    if homes:
        if not m.block:
            message = f"'{word}' stands outside of its block"
        return message, "this statement", f"it belongs {_places(homes)}"
    near = nearest(word, sorted(mine))
    if near:
        return message, f"did you mean '{near}'?", f"write '{near}'"
    near = nearest(word, sorted({each for heads in m.blocks().values() for each in heads}))
    if near:
        homes = [block for block, heads in m.blocks().items() if near in heads]
        return message, f"did you mean '{near}'?", f"write '{near}'; it belongs {_places(homes)}"
    if m.block:
        return message, "this word", f"the language reference lists the statements of {_block(m.block)}"
    return message, "this word", "begin with a word such as unit, chain or place; write # before a remark"


def _places(homes: list[str]) -> str:
    named = [block for block in homes if block][:3]
    return "outside of blocks" if "" in homes else f"in {' or '.join(_block(block) for block in named)}"


def _block(name: str) -> str:
    return f"{'an' if name[0] in 'aeio' else 'a'} {name} block"


def _near_word(m: Mistake) -> Wording | None:
    expected = words.keywords(m.expected, m.literals)
    begun = [word for word in expected if len(m.word) > 1 and word.startswith(m.word)]
    near = nearest(m.word, expected) or (begun[0] if len(begun) == 1 else "")
    if near and m.word != near:
        return f"'{m.word}' means nothing here", f"did you mean '{near}'?", f"write '{near}'"
    return None


def _no_text(m: Mistake) -> Wording | None:
    if m.expected == {"STRING"}:
        typed = re.match(r"[^\"]*[^\s\"]" if m.before.split() in (["note"], ["client"]) else r"[^\s\"]+", m.after)
        shown = typed.group() if typed else m.word
        return f"'{shown}' has no quotes", "a text in quotes goes here", f'write "{shown}"'
    return None


def _unit_on_a_count(m: Mistake) -> Wording | None:
    counted = re.search(r"(?<![\d.])(\d+(?:\.\d+)?)[ \t]*\Z", m.before)
    measure = re.fullmatch(r"[A-Za-z%]{1,4}", m.word) and m.word not in m.literals.values()
    if counted and measure and "UNIT" not in m.expected:
        return (
            f"'{m.word}' can't follow the number {counted[1]} here",
            f"expected {words.told(m.expected, m.literals)}",
            f"{counted[1]} is a plain number here; delete '{m.word}', or put it where it belongs",
        )
    return None


def _anything(m: Mistake) -> Wording | None:
    expected = words.told(m.expected, m.literals)
    if m.expected <= _PROVENANCE:
        advice = f"delete it, or begin a new line before '{m.word}'"
        return f"'{m.word}' is one word too many", "the statement ends before it", advice
    advice = _advice("write", expected)
    if "_NL" in m.expected and len(m.expected) > 1:
        advice = _advice("write", words.told(m.expected - {"_NL"}, m.literals))
        advice = f"end the line before '{m.word}', or {advice}"
    return f"'{m.word}' can't stand here", f"expected {expected}", advice


def _advice(verb: str, expected: str) -> str:
    return "see the language reference for this statement" if expected.endswith(" more") else f"{verb} {expected}"


STATEMENT_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (
    _breaks_off,
    _closing,
    _opening,
    _arrow,
    _no_statement,
    _statement_elsewhere,
    _no_text,
    _near_word,
)
LAST_RESORT: tuple[Callable[[Mistake], Wording | None], ...] = (_unit_on_a_count, _anything)
