"""A word that begins no statement where it stands, or a statement that breaks off or goes on too long -> the wording."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.near import nearest
from rigc.diagnostics.wording import joined
from rigc.source import Span
from rigc.syntax import words
from rigc.syntax.mistake import Mistake, Wording
from rigc.syntax.slips.trade_slips import our_word
from rigc.syntax.worked_lines import as_in_the_reference, worked_line

ELSEWHERE = "it belongs"
"""How the help begins where a line is right and stands in the wrong block."""
REMARKED = "make a comment of it"
"""How a mend begins that keeps what says nothing to rigc."""
_PROVENANCE = frozenset({"_NL", "MEASURED", "LEAFLET", "ASSUMED"})


_ASKED = {
    "by": 'write by "..." with the initials of who says so',
    "to": "write 'to' and the plug at the other end, or name no plug at all",
}
"""What a word that is missing at the end of a line asks for."""


def _breaks_off(m: Mistake) -> Wording | None:
    closes = m.sign == "}" and m.before.strip() and "_NL" not in m.expected
    if not closes and m.kind not in ("_NL", "end of file") and m.sign not in ("\n", ""):
        return None
    label = "something is missing here"
    if m.before.split() == ["chain"]:
        advice = "name what is joined: chain guitar -> plumb -> combo"
        return Wording("this chain is empty", "nothing stands behind it", advice)
    if m.awaits("isolated", "common"):
        message = "this outlet is said to be neither isolated nor of a common group"
        return Wording(message, label, "add 'isolated', or 'common' and the group's name")
    if m.before.split()[-1:] == ["barrel"]:
        return Wording("the sizes of this barrel are missing", label, "write outer x inner behind it, as 5.5 x 2.1 mm")
    if m.expected == {"_X"}:
        return Wording(*_sizes(m))
    if arrow := re.search(r"[ \t]*([-=]>)[ \t]*\Z", m.before):
        mends = m.instead(m.line_start + arrow.start(), m.at, "", f"delete the '{arrow[1]}'")
        return Wording(f"nothing stands behind '{arrow[1]}'", label, "go on with the next stop", mends)
    expected = words.told(m.expected, m.literals)
    known = words.signs(m.expected, m.literals)
    if len(m.expected) == 1 and known:
        if known[0] in _ASKED:
            return Wording(f"'{known[0]}' is missing at the end of this line", label, _ASKED[known[0]])
        line = worked_line(m.block, m.code)
        if line.partition(f" {known[0]} ")[2]:  # more must follow than this word
            return Wording(f"'{known[0]}' is missing at the end of this line", label, f"go on as in {line}")
        end = m.line_start + len(m.before.rstrip())
        mends = m.instead(end, end, f" {known[0]}", f"add '{known[0]}'")
        return Wording(f"'{known[0]}' is missing at the end of this line", label, mends=mends)
    return Wording(f"{expected} is missing at the end of this line", label, _advice(m, "add", expected))


def _sizes(m: Mistake) -> tuple[str, str, str]:
    """A size that lacks one of its numbers joined by `x`."""
    typed = re.search(
        r"(\d[\d.]*(?:[ \t]*[A-Za-z]+)?(?:[ \t]*x[ \t]*\d[\d.]*(?:[ \t]*[A-Za-z]+)?)*)[ \t]*(?:#.*)?\Z", m.before
    )
    given = typed[1] if typed else ""
    if m.before.split()[:1] in (["body"], ["inside"]):
        advice = "write all three: width x depth x height, as 70 x 120 x 55 mm"
        have = "one" if "x" not in given else "two"
        return f"'{given}' is only {have} of width x depth x height", "a number is missing", advice
    return f"'{given}' is only the first of two numbers", "a number is missing", "write the second behind an 'x'"


def _closing(m: Mistake) -> Wording | None:
    if m.sign != "}":
        return None
    if "{" in m.before:
        return Wording("this block is written on one line", "its statement ends here", mends=_unfolded(m))
    if m.before.strip():
        mends = m.instead(m.line_start + len(m.before.rstrip()), m.at, "\n", "put } on a line of its own")
        return Wording("the closing brace stands behind a statement", "here", mends=mends)
    return Wording(
        "this closing brace closes nothing",
        "no block is open here",
        "open its block with {",
        m.instead(m.at, m.at + 1, "", "delete it"),
    )


def _unfolded(m: Mistake) -> tuple[Mend, ...]:
    opened = m.line_start + m.before.index("{") + 1
    inside = m.text[opened : m.at].strip()
    words = "end the line behind {, and put } on a line of its own"
    return m.instead(opened, m.at, f"\n  {inside}\n", words)


def _opening(m: Mistake) -> Wording | None:
    if m.sign == "{" and not m.before.strip():
        return Wording(
            "this brace opens no block", "nothing stands before it", "write the block's first words before it"
        )
    return None


def _arrow(m: Mistake) -> Wording | None:
    if m.word not in ("->", "=>") or m.before.strip():
        return None
    text, source = m.span.source.text, m.span.source
    above = text.rfind("\n", 0, m.span.start - len(m.before))
    line = text[text.rfind("\n", 0, max(0, above)) + 1 : max(0, above)]
    if re.fullmatch(r"[ \t]*[a-z][^#\"{}]*", line):
        end = above - len(line) + len(line.rstrip())
        edit = Replace(Span(source, end, m.span.start + len(m.word)), f" {m.word}\n{m.before} ")
        mends = (Mend(f"put '{m.word}' at the end of the line above", (edit,)),)
        return Wording(f"a line does not begin with '{m.word}'", "the line above ended here", mends=mends)
    return Wording(f"nothing stands before '{m.word}'", "a name is missing here", "write where the lead comes from")


def _arrow_without_start(m: Mistake) -> Wording | None:
    if m.word in ("->", "=>") and "NAME" in m.expected:
        return Wording(f"nothing stands before '{m.word}'", "a name is missing here", "write where the lead comes from")
    return None


def _earth_of_a_supply(m: Mistake) -> Wording | None:
    """`earthed` of a supply: `minus earthed` is near, and says something else."""
    word = m.code.strip()
    if m.block != "supply" or word not in ("earthed", "double-insulated"):
        return None
    return Wording(
        f"a supply block has no statement '{word}'",
        "not said of a supply",
        "delete it: its inlet tells (`inlet mains C14` has an earth contact, C8 has none); where the minus of its outlets is joined with earth, "
        "`minus earthed` says so",
    )


def _no_statement(m: Mistake) -> Wording | None:
    """A word at the head of a line that begins no statement there."""
    mine = m.blocks().get(m.block, frozenset())
    heads = mine & set(words.signs(m.expected, m.literals))
    if m.before.strip() or not heads:
        return None
    if re.match(r"(<{7}|={7}|>{7}|[|]{7})(?=[ \t]|\Z)", m.after.split("\n")[0]):
        end = m.at + len(m.after.split("\n")[0])
        mends = m.instead(m.line_start, end + 1, "", "delete this line")
        advice = "look whether the lines about it are of one version"
        return Wording("git left a mark of a merge here", "what is left of two versions", advice, mends)
    if not re.fullmatch(r"[A-Za-z][\w-]*", m.word):
        shown = m.span.text or m.word
        return Wording(
            f"'{shown}' begins no statement", "a word is missing before it", "begin with the word of the statement"
        )
    return _statement_of(m, m.word, mine)


def _statement_elsewhere(m: Mistake) -> Wording | None:
    """A statement of another block, its word taken for a name: `chain plumb -> lant` in a power block."""
    first = m.before.strip()
    mine = m.blocks().get(m.block, frozenset())
    known = any(first in each for each in m.blocks().values())
    return _statement_of(m, first, mine) if m.block and known and first not in mine else None


_SIDES_OF_A_BODY = ("width", "depth", "height", "length", "long", "deep", "high", "w", "d", "h")


def _statement_of(m: Mistake, word: str, mine: frozenset[str]) -> Wording:
    message = f"{_block(m.block)} has no statement '{word}'" if m.block else f"no statement begins with '{word}'"
    ours = our_word(word, mine)
    sizes = next((each for each in ("body", "inside", "size") if each in mine), "")
    if word in _SIDES_OF_A_BODY and sizes and not ours.startswith("wide"):
        typed = re.search(r"\d[\d.]*[ \t]*[a-z]*", m.line)
        blanks = " x ".join(["___"] * (2 if sizes == "size" else 3))
        unit = re.sub(r"[\d. \t]", "", typed.group()) if typed else ""
        return Wording(
            message, "its sizes stand in one line", f"write all in one line: {sizes} {blanks} {unit or 'mm'}"
        )
    if ours:
        return Wording(message, f"did you mean '{ours}'?", mends=_for(m, word, ours))
    if m.block == "spares" and re.match(rf"[ \t]*{word}[ \t]+(?:lead|plug)\b|[ \t]*of[ \t]", m.line):
        mends = m.instead(m.line_start + m.line.index(word), m.line_start + m.line.index(word), "1 ", f"write 1 {word}")
        return Wording(f"how many of them travel is missing before '{word}'", "a number goes here", mends=mends)
    homes = [block for block, heads in m.blocks().items() if word in heads]
    if "" in homes and not re.search(
        r"->|\{|:", m.code
    ):  # what stands outside of blocks is a chain of jacks, a block, or no fact
        homes = [home for home in homes if home] or homes
    if homes:
        if not m.block:
            message = f"'{word}' stands outside of its block"
        return Wording(message, "this statement", f"{ELSEWHERE} {_places(homes)}")
    begun = [each for each in mine if each[:3] == word[:3]]
    near = nearest(word, sorted(mine)) or (begun[0] if len(begun) == 1 else "")
    if near:
        return Wording(message, f"did you mean '{near}'?", mends=_for(m, word, near))
    if home := _home_by_shape(m):
        return Wording(message, "this line", f"{ELSEWHERE} {_places([home])}")
    near = nearest(word, sorted({each for heads in m.blocks().values() for each in heads}))
    line = m.code.strip().replace(word, near, 1)
    homes = [block for block, heads in m.blocks().items() if near in heads and m.tries.reads(block, line) is not False]
    if near and homes:
        return Wording(message, f"did you mean '{near}'?", f"write '{near}'; it belongs {_places(homes)}")
    if m.block:
        return Wording(message, "this word", f"the language reference lists the statements of {_block(m.block)}")
    return Wording(message, "this word", "begin with a word such as unit, chain or place; begin a comment with #")


_THINGS = r"[ \t]*[a-z][\w-]*(?:[ \t]*,[ \t]*[a-z][\w-]*)*[ \t]+"
_SHAPES = {
    "place": rf"{_THINGS}(?:under[ \t]+)?at[ \t]+\d",
    "power": rf"{_THINGS}from[ \t]+[a-z][\w-]*(?:\.|[ \t]*,)",
    "mounting": rf"{_THINGS}(?:with[ \t]+[a-z]|bolted\b|screwed\b|brackets\b)",
    "leads": r"[ \t]*[A-Z]+\d+[a-z]?[ \t]+[a-z][\w.-]*[ \t]*->",
}


def _home_by_shape(m: Mistake) -> str:
    """The block to which a line that begins with a name belongs, by what stands behind the name; empty where that tells none."""
    first = m.line.split()[:1]
    heads = m.blocks().get(m.block, frozenset())
    if not m.block or not first or first[0] in heads:
        return ""
    return next((home for home, shape in _SHAPES.items() if home != m.block and re.match(shape, m.line)), "")


def _line_of_another_block(m: Mistake) -> Wording | None:
    """A line that begins with a name, as those of this block do, and goes on as those of another: `plumb at 40, 10 mm` in a mounting block."""
    home = _home_by_shape(m) if m.before.strip() else ""
    if not home or "NAME" in m.expected:
        return None
    return Wording(f"{_block(m.block)} has no such statement", "this line", f"{ELSEWHERE} {_places([home])}")


def _for(m: Mistake, word: str, ours: str) -> tuple[Mend, ...]:
    start = m.line_start + m.before.index(word) if word in m.before else m.at
    return m.instead(start, start + len(word), ours, f"write '{ours}'")


def _places(homes: list[str]) -> str:
    named = [block for block in homes if block][:3]
    return "outside of blocks" if "" in homes else f"in {_block(joined(named, 'or'))}"


def _block(name: str) -> str:
    return f"{'an' if name[0] in 'aeio' else 'a'} {name} block"


def _near_word(m: Mistake) -> Wording | None:
    expected = words.keywords(m.expected, m.literals)
    begun = [word for word in expected if len(m.word) > 1 and word.startswith(m.word)]
    near = nearest(m.word, expected) or (begun[0] if len(begun) == 1 else "")
    if near and m.word != near:
        mends = m.instead(m.at, m.at + len(m.word), near, f"write '{near}'")
        return Wording(f"'{m.word}' means nothing here", f"did you mean '{near}'?", mends=mends)
    return None


_TEXT = r"[^\s\"#{}]+"
_GOES_ON = "by|until|open|folded|seal|source|because|touches|measured|leaflet|assumed"
_BAGS = ("spares", "leads")
"""A text that lacks its quotes is its words, up to one by which the statement goes on; in these blocks a bag follows behind `in`."""


def _no_text(m: Mistake) -> Wording | None:
    if m.expected == {"STRING"}:
        whole_line = m.before.split() in (["note"], ["client"])
        text = rf"{_TEXT}(?:[ \t]+(?!(?:{'in|' if m.block in _BAGS else ''}{_GOES_ON})\b){_TEXT})*"
        typed = re.match(r"[^\"#]*[^\s\"#]" if whole_line else text, m.after)
        shown = typed.group() if typed else m.word
        if half := m.half_quoted():
            return half
        bare = re.sub(r"\A(?:is|are|called|named|no\.?|nr\.?|number)[ \t]+(?=\S)", "", shown)
        mends = m.instead(m.at, m.at + len(shown), f'"{bare}"', f'write "{bare}"')
        return Wording(f"'{bare}' has no quotes", "a text in quotes goes here", mends=mends)
    return None


def _second_statement(m: Mistake) -> Wording | None:
    """`mass 400 g draws 8 mA`."""
    mine = m.blocks().get(m.block, frozenset())
    if "_NL" not in m.expected or m.word not in mine or not m.before.strip():
        return None
    if m.word in words.signs(m.expected, m.literals):
        return None
    indent = re.match(r"[ \t]*", m.before)
    line = f"\n{indent.group() if indent else ''}"
    start = m.line_start + len(m.before.rstrip())
    mends = m.instead(start, m.at, line, f"begin a new line before '{m.word}'")
    return Wording(f"'{m.word}' begins a second statement on this line", "the first one ends before it", mends=mends)


def _comma(m: Mistake) -> Wording | None:
    if m.sign != "," or not m.expected & _PROVENANCE:
        return None
    behind = re.match(r",[ \t]*([a-z][a-z-]*)", m.after)
    sourced = behind is not None and behind[1] in ("measured", "leaflet", "assumed")
    if behind and not sourced and behind[1] in m.blocks().get(m.block, frozenset()):
        indent = re.match(r"[ \t]*", m.before)
        line = f"\n{indent.group() if indent else ''}"
        mends = m.instead(
            m.at, m.at + behind.start(1), line, f"begin a new line before '{behind[1]}', without the comma"
        )
        return Wording(f"'{behind[1]}' begins a second statement on this line", "the first one ends here", mends=mends)
    return Wording("this comma does not belong here", "this sign", mends=m.instead(m.at, m.at + 1, "", "delete it"))


def _unit_on_a_count(m: Mistake) -> Wording | None:
    counted = re.search(r"(?<![\d.])(\d+(?:\.\d+)?)[ \t]*\Z", m.before)
    if counted and m.word == "x" and m.awaits(",") and re.match(r"x[ \t]*\d", m.after):
        start = m.line_start + len(m.before.rstrip())
        mends = m.instead(start, m.at + 1, ",", "write a comma in place of the 'x'")
        return Wording("an 'x' stands between the two numbers of a place", "a comma goes here", mends=mends)
    sizes = re.search(r"\d(?: *x *\d+(?:\.\d+)?)+ *\Z", m.before)
    if sizes and m.word == "x":
        most = sizes[0].count("x") + 1
        return Wording(
            f"a size too many: {most} go here", "not this one", "delete it, or write it in a line of its own"
        )
    measure = re.fullmatch(r"[A-Za-z%]{1,4}", m.word) and m.word not in m.literals.values()
    if counted and m.word == "%" and m.before.split()[:2] == ["power", "factor"]:
        written = f"{float(counted[1]) / 100:g}"
        mends = m.instead(m.line_start + counted.start(1), m.at + 1, written, f"write {written}")
        return Wording("a power factor is no percentage", "a part of 1", mends=mends)
    if counted and measure and "UNIT" not in m.expected:
        return Wording(
            f"'{m.word}' can't follow the number {counted[1]} here",
            f"expected {words.told(m.expected, m.literals)}",
            f"{counted[1]} is a plain number here; delete '{m.word}', or put it where it belongs",
        )
    return None


def _missing_comma(m: Mistake) -> Wording | None:
    """`drop 150 300 mm`, `amps left-amp right-amp`: all that are left out are put in."""
    if not m.awaits(","):
        return None
    one = r"\d[\d.]*" if m.kind == "NUMBER" else r"[a-z][\w-]*"
    row = re.match(
        rf"{one}(?:(?:[ \t]*,[ \t]*|[ \t]+){one})*(?=[ \t]*(?:#.*)?\Z|[ \t]+[A-Za-z]+[ \t]*(?:#.*)?\Z)", m.after
    )
    if (
        row is None
        or not re.search(rf"(?<![\w.]){one}[ \t]*\Z", m.before)
        or (m.kind != "NUMBER" and "_NL" not in m.expected)
    ):
        return None
    start = m.line_start + len(m.before.rstrip())
    text = ", ".join(re.findall(one, row.group()))
    mends = m.instead(start, m.at + row.end(), f", {text}", f"write {_last(m.before)}, {text}")
    return Wording(f"no comma stands before '{m.word}'", "a comma is missing here", mends=mends)


def _last(text: str) -> str:
    return text.split()[-1].rpartition(",")[2]


def _missing_word(m: Mistake) -> Wording | None:
    """The one word that may stand here does not: `accept ... "as it is" until 2026-12-31`."""
    known = [m.literals.get(name, "") for name in m.expected]
    if len(known) != 1 or not re.fullmatch(r"[a-z][a-z-]*", known[0]) or not m.word or m.kind in ("_NL", "end of file"):
        return None
    if m.block == "mounting" and m.before.split() == ["all"]:
        return Wording(
            f"'all' is held by a strip, not '{m.word}'",
            "'with' and a strip go here",
            f"name what is so held: plumb, lant {m.word}",
        )
    if known[0] == "by":
        return Wording(
            f"'by' is missing before '{m.word}'", "who says so goes here", 'write by "..." with the initials'
        )
    if len(m.word) > 2 and known[0].startswith(m.word[:3]):
        return Wording(f"'{m.word}' means nothing here", f"did you mean '{known[0]}'?", mends=m.write(known[0]))
    if m.word in m.blocks().get(
        m.block, frozenset()
    ):  # it begins a statement of its own, so it stands in the other's place
        return Wording(f"'{m.word}' can't follow here", f"only '{known[0]}' can", mends=m.write(known[0]))
    if m.word in words.BETWEEN and known[0] in words.BETWEEN:
        return Wording(f"'{m.word}' can't stand here", f"'{known[0]}' goes here", mends=m.write(known[0]))
    mends = m.instead(m.at, m.at, f"{known[0]} ", f"write '{known[0]}' before it")
    return Wording(f"'{known[0]}' is missing before '{m.word}'", "a word is missing here", mends=mends)


def _anything(m: Mistake) -> Wording:
    expected = words.told(m.expected, m.literals)
    if m.expected <= _PROVENANCE:
        message, label = f"'{m.word}' is one word too many", "the statement ends before it"
        start = m.line_start + len(m.before.rstrip())
        rest = m.code[m.at - m.line_start :].strip()
        if rest == m.word:
            mends = m.instead(start, m.at + len(m.word), "", "delete it")
            return Wording(message, label, "begin a comment with #", mends)
        mends = m.instead(m.at, m.at, "# ", f"{REMARKED}: {m.before.strip()} # {rest}")
        return Wording(message, label, "" if mends else "delete it, or begin a comment with #", mends)
    advice = _advice(m, "write", expected)
    if "_NL" in m.expected and len(m.expected) > 1:
        advice = _advice(m, "write", words.told(m.expected - {"_NL"}, m.literals))
        advice = f"end the line before '{m.word}', or {advice}"
        if re.fullmatch(r"[a-z]{2,}", m.word):
            mends = m.instead(m.line_start + len(m.before.rstrip()), m.at + len(m.word), "", f"delete '{m.word}'")
            return Wording(f"'{m.word}' can't stand here", f"expected {expected}", advice, mends)
    return Wording(f"'{m.word}' can't stand here", f"expected {expected}", advice)


def _advice(m: Mistake, verb: str, expected: str) -> str:
    """What may stand there, if it is one of few words; else the line of the reference that is most like what was typed."""
    goes_on = m.expected & {"_NL", "_COMMA", "COMMA"} and len(m.expected) > 3
    if not expected.endswith(" more") and not goes_on:
        line = "" if "'" in expected else worked_line(m.block, m.code)
        return f"{verb} {expected}, as in {line}" if line else f"{verb} {expected}"
    return as_in_the_reference(m.block, m.code) or "see the language reference for this statement"


BROKEN_OFF: tuple[Callable[[Mistake], Wording | None], ...] = (
    _breaks_off,
    _closing,
    _opening,
    _arrow,
    _arrow_without_start,
    _earth_of_a_supply,
)
STATEMENT_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (
    _no_statement,
    _statement_elsewhere,
    _no_text,
    _near_word,
    _second_statement,
    _line_of_another_block,
    _comma,
)
LAST_RESORT: tuple[Callable[[Mistake], Wording | None], ...] = (
    _unit_on_a_count,
    _missing_comma,
    _missing_word,
    _anything,
)
GENERAL: tuple[Callable[[Mistake], Wording | None], ...] = (_no_statement, _near_word, _comma, *LAST_RESORT)
"""Those that know no more of a line than what may stand where: one that tells how the whole line reads goes before them."""
