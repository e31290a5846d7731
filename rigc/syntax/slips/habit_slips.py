"""What people are used to from leaflets, tables and other notations, where this language wants another order or sign -> the wording."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.diagnostics.near import nearest
from rigc.syntax.mistake import Mistake, Wording

_BY_UNIT = {"V": "needs", "mA": "draws", "g": "mass", "kg": "mass", "ms": "latency"}
RANGED = frozenset({"mains", "accepts", "rail", "tier", "treadle", "band", "tape"})
"""Statements in which two dots go between the ends of a range."""
_HOMES = {"at": "place", "under": "place", "row": "place", "within": "place", "from": "power", "alone": "power", "with": "mounting"}  # fmt: skip
_JACKS = {
    "radio": "wireless",
    "air": "wireless",
    "antenna": "wireless",
    "mono": "ts",
    "stereo": "trs",
    "tip-sleeve": "ts",
    "tip-ring-sleeve": "trs",
}


def _size_sign(m: Mistake) -> Wording | None:
    """`70 X 120 X 55 mm`, `70*120*55 mm` and `70 by 120 by 55 mm`."""
    found = re.search(r"\d[ \t]*([X*]|by)[ \t]*\d", m.line)
    if found is None or m.before.split()[:1] not in (["body"], ["size"], ["inside"], ["inlet"], ["connector"]):
        return None
    mends = m.rewritten(r"(?<=\d)[ \t]*(?:[X*]|by)[ \t]*(?=\d)", " x ")
    return Wording(f"'{found[1]}' does not join sizes", "a small x goes between them", mends=mends)


def _inch_sign(m: Mistake) -> Wording | None:
    if m.sign != '"' or not re.search(r"(?<!-)\b\d[\d.]*[ \t]*\Z", m.before):
        return None
    if m.code.count('"') == 1:  # the others bear another unit
        mends = m.instead(m.at, m.at + 1, " in", f"write {m.code.strip().replace(chr(34), ' in')}")
        return Wording('" is not the sign of inches', "this sign", mends=mends)
    signs = r'(?<=\d)[ \t]*"'
    line = re.sub(signs, "", m.code).rstrip()
    mends = m.instead(m.line_start, m.line_start + len(m.code), f"{line} in", f"write {line.strip()} in")
    return Wording('" is not the sign of inches', "this sign", mends=mends)


def _one_size(m: Mistake) -> Wording | None:
    """`inlet dc barrel 2.1 mm rear ...`."""
    alone = re.match(r"(\d[\d.]*)[ \t]*mm\b", m.after)
    if (
        alone
        and m.awaits("barrel", "mini-jack")
        and re.fullmatch(r"[ \t]*(?:inlet[ \t]+[a-z][\w-]*|connector)[ \t]+", m.before)
    ):
        advice = f"measure outside and inside, and write its kind and both sizes: {m.before.strip()} barrel ___ x {alone[1]} mm"
        return Wording(f"'{alone[0]}' is one size of a barrel", "its kind and both sizes go here", advice)
    if "_X" not in m.expected or "barrel" not in m.before.split():
        return None
    return Wording("a barrel has two sizes: outer x inner", "the second is missing", "write both, as 5.5 x 2.1 mm")


def _nameless_jack(m: Mistake) -> Wording | None:
    """`input ts 1 Mohm`: what kind of jack it is stands where its name should."""
    found = re.fullmatch(r"[ \t]*(input|output)[ \t]+(ts|trs|xlr)[ \t]+", m.before)
    if found is None or not m.awaits("ts", "trs", "xlr"):
        return None
    name, start = found[1].removesuffix("put"), m.line_start + found.start(2)
    mends = m.instead(start, start, f"{name} ", f"write {found[1]} {name} {found[2]}")
    return Wording(
        f"this {found[1]} has no name: '{found[2]}' is its kind", "its name goes before its kind", mends=mends
    )


def _needs_all(m: Mistake) -> Wording | None:
    """`needs 9V DC, 45mA, centre negative`: all that a power inlet wants, in one line."""
    found = re.match(
        r"([ \t]*)needs[ \t]+(\d[\d.]*)[ \t]*V(?:[ \t]*(dc|ac))?[,;/ \t]+(\d[\d.]*)[ \t]*mA\b"
        r"(?:[,;/ \t]+(?:cent(?:re|er)|tip)[ \t-]*(neg|pos)[a-z]*)?[ \t.]*\Z",
        m.code,
        re.IGNORECASE,
    )
    if m.block != "unit" or found is None:
        return None
    lines = [f"needs {found[2]} V {(found[3] or 'dc').lower()}", f"draws {found[4]} mA"]
    if found[5]:
        lines.append(f"polarity centre-{'negative' if found[5].lower() == 'neg' else 'positive'}")
    text = f"\n{found[1]}".join(lines)
    start = m.line_start + len(found[1])
    mends = m.instead(start, m.line_start + len(m.code.rstrip()), text, f"write {len(lines)} lines: {'; '.join(lines)}")
    return Wording(f"{len(lines)} facts stand in one line", "from here on", mends=mends)


def _bare_point(m: Mistake) -> Wording | None:
    """`mass .395 kg`."""
    found = re.match(r"\.\d+", m.after)
    if found is None or "NUMBER" not in m.expected or re.search(r"[A-Z]\d+\Z", m.before):
        return None
    mends = m.instead(m.at, m.at, "0", f"write 0{found.group()}")
    return Wording(f"'{found.group()}' begins with its point", "a digit goes before it", mends=mends)


def _held_by(m: Mistake) -> Wording | None:
    """`tern on hook` in a mounting block."""
    if m.block != "mounting" or m.word not in ("on", "by", "using", "via", "to", "in") or not m.awaits("with"):
        return None
    return Wording(f"'{m.word}' does not say what holds it", "did you mean 'with'?", mends=m.write("with"))


def _jack_kind(m: Mistake) -> Wording | None:
    size = re.match(
        r"(?:1/4|6\.3(?:5)?|6)[ \t]*(?:\"|in\b|inch\b|mm\b|'')?[ \t-]*(mono|stereo|ts|trs)?(?:[ \t-]*(?:jack|plug|phone|socket))?(?![\w.])",
        m.after,
    )
    if size and m.awaits("ts", "trs", "xlr"):
        ours = "trs" if size[1] in ("stereo", "trs") else "ts"
        mends = m.instead(m.at, m.at + size.end(), ours, f"write '{ours}'")
        message = f"'{size.group().strip()}' is the size of a jack, not its kind"
        return Wording(message, f"did you mean '{ours}'?", "" if size[1] else "'trs' if it has three poles", mends)
    small = re.match(
        r"(?:3\.5[ \t]*mm|1/8[ \t]*(?:\"|in\b|inch\b)?|minijack|mini)(?:[ \t-]*(?:jack|plug|socket|trs))?(?![\w.])",
        m.after,
    )
    if small and m.awaits("mini-trs"):
        mends = m.instead(m.at, m.at + small.end(), "mini-trs", "write 'mini-trs'")
        return Wording(
            f"'{small.group().strip()}' is the size of a jack, not its kind", "did you mean 'mini-trs'?", mends=mends
        )
    if not m.awaits("ts", "trs", "xlr") or m.kind == "character" or not m.word.isascii():
        return None
    kinds = "ts is the two-pole jack of a guitar lead, trs the three-pole one, mini-trs that of 3.5 mm"
    if m.ends:
        return Wording("the kind of this jack is missing", "a kind of jack goes here", kinds)
    ours = _JACKS.get(m.word.lower(), "") or nearest(m.word, ("ts", "trs", "mini-trs", "xlr", "din", "wireless"))
    if ours:
        return Wording(f"'{m.word}' is no kind of jack here", f"did you mean '{ours}'?", mends=m.write(ours))
    return Wording(f"'{m.word}' is no kind of jack", "a kind of jack goes here", kinds)


def _kind_first(m: Mistake) -> Wording | None:
    """`needs dc 9 V`."""
    if m.word not in ("dc", "ac") or m.before.split()[:1] != ["needs"]:
        return None
    mends = m.rewritten(r"\b(dc|ac)[ \t]+(\d[\d.]*[ \t]*m?V)\b", r"\2 \1")
    help = "" if mends else f"write the number of volts before it: needs 9 V {m.word}"
    return Wording(f"'{m.word}' stands behind the voltage", "a number goes here", help, mends)


def _hyphen_range(m: Mistake) -> Wording | None:
    """`mains 100-240 V 50-60 Hz`."""
    if not m.before.split() or m.before.split()[0] not in RANGED:
        return None
    found = re.search(r"\d[\d.]*[ \t]*-[ \t]*\d[\d.]*", m.line)
    if found is None:
        return None
    mends = m.rewritten(r"(?<=\d)[ \t]*-[ \t]*(?=\d)", "..")
    return Wording(f"'{found.group()}' is no range", "two dots go between the numbers", mends=mends)


def _bullet(m: Mistake) -> Wording | None:
    found = re.match(r"[-*•‣+][ \t]*(?=[a-z])", m.after)
    if m.before.strip() or found is None:
        return None
    mends = m.instead(m.at, m.at + found.end(), "", "delete the bullet")
    return Wording("a bullet begins no statement", "this sign", mends=mends)


def _figure_first(m: Mistake) -> Wording | None:
    """`9 V dc` alone on its line."""
    found = re.match(r"\d[\d.]*[ \t]*([A-Za-z]+)\b[^#\n]*", m.after)
    if m.before.strip() or found is None or m.block != "unit" or found[1] not in _BY_UNIT:
        return None
    word = _BY_UNIT[found[1]]
    mends = m.instead(m.at, m.at, f"{word} ", f"write {word} {found.group().strip()}")
    return Wording(
        f"a statement begins with its word, not with {found.group().strip()}", "a word is missing", mends=mends
    )


def _outside(m: Mistake) -> Wording | None:
    """`tern at 200, 20 mm` at the top level."""
    words = m.after.split()
    if m.block or m.before.strip() or len(words) < 3 or any(words[0] in heads for heads in m.blocks().values()):
        return None
    home = _HOMES.get(words[1], "")
    if not home or not re.fullmatch(r"[a-z][a-z0-9-]*,?", words[0]):
        return None
    return Wording(
        f"'{words[0]} {words[1]} ...' stands outside of its block",
        "this statement",
        f"write it in the {home} block: {home} {{ ... }}",
    )


def _feed_turned(m: Mistake) -> Wording | None:
    """`brook.o1 -> tern` and `tern -> brook.o1` in the power block."""
    right = re.match(r"[ \t]*[a-z][\w-]*[ \t]*(->|=>|to|on|by|[:=>])[ \t]*[a-z][\w-]*\.[\w-]+", m.line)
    if m.block == "power" and right is not None and m.line_start + right.start(1) == m.at:
        return Wording(
            f"'{right[1]}' feeds nothing",
            "did you mean 'from'?",
            mends=m.instead(m.at, m.at + len(right[1]), " from " if right[1] in ":=>" else "from", "write 'from'"),
        )
    found = re.match(
        r"[ \t]*([a-z][\w-]*\.[\w-]+)[ \t]*(?:->|=>|from|to|feeds|[:=>])[ \t]*([a-z][\w-]*)[ \t]*(?:#.*)?\Z", m.line
    )
    if m.block != "power" or m.sign != "." or found is None:
        return None
    text = f"{found[2]} from {found[1]}"
    mends = m.instead(m.line_start + found.start(1), m.line_start + found.end(2), text, f"write {text}")
    return Wording("the unit stands first, then its outlet", "an outlet here", mends=mends)


def _title_for_a_name(m: Mistake) -> Wording | None:
    """`chain guitar -> "overdrive"`, `unit "Green Overdrive" {` and `like "delay"`."""
    if m.kind != "STRING" or "NAME" not in m.expected:
        return None
    title, end = m.span.text[1:-1], m.at + len(m.span.text)
    if m.before.split()[-1:] == ["like"]:
        start = m.line_start + m.before.rindex("like")
        mends = m.instead(start, m.at, "", "delete 'like'")
        return Wording("it is not said what this is like", "a name goes here", "name what it is like", mends)
    named = re.search(
        rf'^[ \t]*[a-z]+[ \t]+([a-z][a-z0-9-]*)[^"\n]*"{re.escape(title)}"', m.span.source.text, re.MULTILINE
    )
    if named:
        mends = m.instead(m.at, end, named[1], f"write {named[1]}: a chain is written in names, not in titles")
        return Wording(f"\"{title}\" is the title of '{named[1]}'", "its name goes here", mends=mends)
    name = re.sub(r"[^a-z0-9]+", "-", title.lower()).strip("-")
    if m.awaits("{") or len(m.before.split()) == 1:
        if not re.match(r"[a-z]", name) or name == title:
            return None
        help = f"write a name before it, for example {name}"
        return Wording(f'a name is missing before the title "{title}"', "a name goes here", help)
    return None


def _chain_in_braces(m: Mistake) -> Wording | None:
    if m.sign != "{" or m.before.split()[:1] != ["chain"]:
        return None
    held = re.match(r"\{[ \t]*\n?[ \t]*([^{}\n]*?)[ \t]*\n?[ \t]*\}", m.text[m.at :])
    message, help = "a chain is one statement, no block", "write it without braces"
    if held and held[1]:
        mends = m.instead(m.at, m.at + held.end(), held[1], f"write chain {held[1]}")
        return Wording(message, "no brace goes here", mends=mends)
    return Wording(message, "no brace goes here", help)


def _no_date(m: Mistake) -> Wording | None:
    if m.expected == {"DATE"} and m.sign == '"':
        return Wording(
            "the date is missing", "year-month-day goes before this text", "write it before the text, as 2026-03-02"
        )
    return None


def _not_isolated(m: Mistake) -> Wording | None:
    if not m.awaits("isolated", "common") or m.word not in ("front", "rear", "left", "right"):
        return None
    advice = f"write 'isolated' before '{m.word}', or 'common' and the group's name"
    return Wording("this outlet is said to be neither isolated nor of a common group", "it goes here", advice)


def _turn(m: Mistake) -> Wording | None:
    """`tern at 200, 20 mm 90 deg` and `tern at 200 x 20 mm`."""
    if m.block == "place" and m.awaits("turned") and re.match(r"-?\d+[ \t]*(?:deg|°)", m.after):
        mends = m.instead(m.at, m.at, "turned ", f"write turned {m.after.strip()}")
        return Wording(f"'{m.word}' stands right behind the place", "a word is missing before it", mends=mends)
    if m.block == "place" and re.search(r"\bat[ \t]+-?\d[\d.]*[ \t]*\Z", m.before) and m.word == "x":
        mends = m.rewritten(r"(?<=\d)[ \t]*x[ \t]*(?=-?\d)", ", ")
        return Wording("a comma goes between the two numbers of a place", "here", mends=mends)
    return None


def _points(m: Mistake) -> Wording | None:
    """`at 200,5, 20,5 mm`."""
    found = re.search(r"(\d+),(\d+),[ \t]*(\d+),(\d+)", m.line)
    if m.sign != "," or found is None:
        return None
    mends = m.rewritten(r"(\d+),(\d+),[ \t]*(\d+),(\d+)", r"\1.\2, \3.\4")
    return Wording(f"'{found[1]},{found[2]}' is written with a comma", "a decimal point, never a comma", mends=mends)


HABIT_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (
    _needs_all,
    _nameless_jack,
    _bare_point,
    _held_by,
    _size_sign,
    _inch_sign,
    _title_for_a_name,
    _hyphen_range,
    _bullet,
    _figure_first,
    _points,
    _turn,
    _one_size,
    _jack_kind,
    _kind_first,
    _outside,
    _feed_turned,
    _chain_in_braces,
    _no_date,
    _not_isolated,
)
