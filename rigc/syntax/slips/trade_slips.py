"""Words of the trade that this language says otherwise, run together or the wrong way round -> the wording."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.diagnostics.near import nearest
from rigc.syntax import words
from rigc.syntax.mistake import Mistake, Wording
from rigc.syntax.said.thesaurus import thesaurus, words_of
from rigc.syntax.worked_lines import worked_lines

_BYPASSES = {"none": "always-on", "no": "always-on", "never": "always-on", "off": "always-on", "relay": "true", "hard": "true", "hardwire": "true", "mechanical": "true",
    "true-bypass": "true", "buffer": "buffered", "soft": "buffered", "spillover": "trails", "trail": "trails", "tails": "trails"}  # fmt: skip
"""What people and leaflets call a bypass, and which of ours it is; common speech, no source."""

_SIDES = {"back": "rear", "behind": "rear", "side": "", "top": "", "bottom": "", "face": ""}
"""What people say for a side of a unit, and the side that is surely meant."""


def our_word(word: str, mine: frozenset[str] | list[str]) -> str:
    """What this language says for a word of the trade, if that may stand here; else nothing."""
    told = thesaurus().get(words_of(word), ())
    return next((ours for ours in told if ours != word and ours.split()[0] in mine and _of_one_block(ours, mine)), "")


def _of_one_block(ours: str, mine: frozenset[str] | list[str]) -> bool:
    """Whether a statement of several words, where the reference shows it, stands in a block whose statements begin with these words."""
    if " " not in ours:
        return True
    shown = [rows for rows in worked_lines().values() if any(row.startswith(f"{ours} ") for row in rows)]
    return not shown or any(
        row.split()[0] in mine for rows in shown for row in rows if not row.startswith(ours.split()[0])
    )


def in_our_words(line: str, heads: frozenset[str]) -> str:
    """The line with its first word as this language says it in that block."""
    word = line.split()[0] if line.split() else ""
    return line.replace(word, our_word(word, heads) or word, 1) if word not in heads else line


_JOINING = r"(?:(?:in)?to|(?:and )?then|and|goes to|feeds|via|through|next)\b"


def _no_arrow(m: Mistake) -> Wording | None:
    """`guitar > marl`, `guitar to marl`, `chain guitar marl lant`."""
    if not m.awaits("->") or m.before.split()[:1] == ["path"]:
        return None
    typed = re.match(rf"[-=~\u2013\u2014]*>|[-=~\u2013\u2014]+|{_JOINING}", m.after)
    if typed and not re.search(rf"^[ \t]*[a-z-]+[ \t]+{re.escape(typed.group())}\b", m.span.source.text, re.M):
        mends = _arrows(m, typed.group())
        return Wording(f"'{typed.group()}' joins nothing", "an arrow goes here", mends=mends)
    if not re.fullmatch(r"[a-z][a-z0-9-]*", m.word):
        return None
    names = re.match(r"[a-z][\w.-]*(?:[ \t]+(?:(?:->|=>)[ \t]*)?[a-z][\w.-]*)*", m.after)
    rest = names.group() if names else m.word
    joined = re.sub(r"(?<=[\w])[ \t]+(?=[a-z])", " -> ", rest)
    start = m.line_start + len(m.before.rstrip())
    whole = f"{m.before.strip()} -> {joined}"
    mends = m.instead(start, m.at + len(rest), f" -> {joined}", f"write {whole}")
    named = re.fullmatch(r"[ \t]*chain[ \t]+([a-z][a-z0-9-]*)[ \t]+", m.before)
    if named and re.search(r"->|=>", m.after):
        colon = m.instead(start, start, ":", f"write a colon behind its name: chain {named[1]}: {m.after.split()[0]}")
        mends = (*colon, *mends)
    return Wording(f"'{m.word}' stands behind another name", "an arrow is missing before it", mends=mends)


def _arrows(m: Mistake, typed: str) -> tuple[Mend, ...]:
    """The mend that writes an arrow wherever this sign or word stands in the rest of the line."""
    apart = r"[ \t]" if re.fullmatch(r"[-\u2013\u2014]", typed) else r"[ \t\w]"  # a hyphen may stand within a name
    sign = re.compile(rf"(?<={apart}){re.escape(typed)}(?={apart})")
    line = m.text[m.at - 1 : m.line_end].partition("#")[0]
    spans = [m.place(m.at - 1 + found.start(), m.at - 1 + found.end()) for found in sign.finditer(line)]
    return (Mend("write ->", tuple(Replace(span, "->") for span in spans)),)


def _after(m: Mistake) -> Wording | None:
    """`order lant after marl`: what `before` would turn round."""
    order = re.match(r"[ \t]*order[ \t]+([a-z][a-z0-9-]*)[ \t]+\Z", m.before)
    other = re.match(r"(?:after|behind)[ \t]+([a-z][a-z0-9-]*)", m.after)
    if order and other:
        text = f"order {other[1]} before {order[1]}"
        start = m.line_start + m.before.index("order")
        mends = m.instead(start, m.at + other.end(), text, f"write it the other way round: {text}")
        return Wording(f"an order is told with 'before', not with '{m.word}'", "this word", mends=mends)
    return None


def _adaptor(m: Mistake) -> Wording | None:
    """`D14 doubling for lant`."""
    kind = re.match(r"[ \t]*[A-Z]+\d+[a-z]?[ \t]+([a-z-]+)[ \t]+\Z", m.before)
    if m.block == "leads" and kind and m.word == "for":
        advice = "write 'series', 'parallel', 'reversing' or 'size' before 'for'"
        near = (
            "reversing"
            if kind[1].startswith("revers")
            else nearest(kind[1], ("series", "parallel", "reversing", "size"))
        )
        start = m.line_start + m.before.index(kind[1])
        mends = m.instead(start, start + len(kind[1]), near, f"write {near}") if near else ()
        return Wording(f"'{kind[1]}' is no kind of adaptor", "an adaptor is told here", "" if near else advice, mends)
    return None


def _spare(m: Mistake) -> Wording | None:
    """`1 fuse in "lid pocket"`."""
    if m.block == "spares" and m.awaits("of") and re.match(r"[a-z]", m.word):
        text = f'of "{m.word}"'
        mends = m.instead(m.at, m.at + len(m.word), text, f"write {text}")
        return Wording(f"'{m.word}' is no kind of lead or plug", "anything else is a text", mends=mends)
    return None


def _place(m: Mistake) -> Wording | None:
    """`marl 100, 10 mm`."""
    if m.block == "place" and m.awaits("at") and re.match(r"-?\d", m.after):
        mends = m.instead(m.at, m.at, "at ", f"write at {m.after.partition('#')[0].strip()}")
        return Wording(f"'{m.word}' stands right behind the name", "a word is missing before it", mends=mends)
    return None


def _battery(m: Mistake) -> Wording | None:
    """`battery 9 V 500 mAh only`, `battery 500 mAh`, `battery 37 Wh only`."""
    if m.expected != {"STRING"} or m.before.split() != ["battery"]:
        return None
    if held := re.match(
        r"(?:\d[\d.]*[ \t]*(?:m?Ah|(Wh))\b(?:[ \t]+at[ \t]+\d[\d.]*[ \t]*V\b)?(?:[ \t]+only\b)?|only\b)", m.after
    ):
        pack = m.block == "supply"
        does, kind = ("gives from", "lithium pack") if pack else ("takes", "9 V block")
        message, label = f"it is not said which battery it {does}", "its kind goes here"
        if held[1] and not pack:
            return Wording(message, label, _charge_of(held.group()))
        what = "" if held.group() == "only" else " before its energy" if held[1] else " before its charge"
        return Wording(message, label, f'write its kind{what}, for example battery "{kind}" {held.group()}')
    typed = re.match(r'[^"#\n]*?[^\s"#](?=[ \t]+\d[\d.]*[ \t]*(?:m?Ah|Wh)\b|[ \t]+only\b|[ \t]*(?:#|\n|\Z))', m.after)
    if typed is None:
        return None
    text = f'"{typed.group()}"'
    mends = m.instead(m.at, m.at + typed.end(), text, f"write battery {text}")
    return Wording(
        f"'{typed.group()}', the kind of a battery, has no quotes", "a text in quotes goes here", mends=mends
    )


def _charge_of(energy: str) -> str:
    """What to write in place of an energy where a charge is wanted: only a supply states its pack in Wh."""
    only = " only" if energy.endswith("only") else ""
    return f'write its kind, and its charge in place of the energy: battery "lithium pack" ___ mAh{only}; mAh = 1000 × Wh / V of its cells'


def _fuse(m: Mistake) -> Wording | None:
    """`fuse T630mAL250V`, `fuse 5 x 20 mm T 1 A`, `fuse "T 1 A"`: as it stands on the fuse, or its size first."""
    line = re.match(r"([ \t]*fuse[ \t]+)([^#\n]*?)[ \t]*(?:#|\n|\Z)", m.text[m.line_start : m.line_end])
    if line is None:
        return None
    size = r"(?P<{}>\d+(?:\.\d+)?[ \t]*(?:mm)?[ \t]*[x×][ \t]*\d+(?:\.\d+)?[ \t]*(?:mm)?)"
    told = re.fullmatch(
        rf'"?(?:{size.format("first")}[ \t]*)?(?P<kind>FF|F|M|TT|T)?[ \t]*(?P<rating>\d+(?:\.\d+)?)[ \t]*(?P<unit>m?A)(?P<behind>[ \t]*(?:FF|F|M|TT|T)\b)?'
        rf'[ \t]*(?:{size.format("last")})?[ \t]*(?P<more>[LHE]?[ \t]*(?:\d+[ \t]*V)?)(?:[ \t]*{size.format("end")})?"?(?:[ \t]*at[ \t]*(?P<mains>\d+)[ \t]*V)?',
        line[2],
    )
    if told is None:
        return None
    number = re.compile(r"\d+(?:\.\d+)?")
    sized = told["first"] or told["last"] or told["end"] or ""
    across_and_long = f"{' x '.join(number.findall(sized))} mm" if sized else ""
    more = re.sub(r"^([LHE])[ \t]*(\d+)[ \t]*V$", r"\1 \2 V", told["more"].strip())
    parts = (
        "fuse",
        told["kind"] or (told["behind"] or "").strip(),
        f"{told['rating']} {told['unit']}",
        across_and_long,
        f"at {told['mains']} V" if told["mains"] else "",
        f'"{more}"' if more else "",
    )
    text = " ".join(part for part in parts if part)
    start = m.line_start + line.start(0) + len(line[1]) - len(line[1].lstrip())
    mends = m.instead(start, m.line_start + line.end(2), text, f"write {text}")
    return Wording("a fuse is told part by part, its size behind its rating", "these are the parts of one", mends=mends)


def _others(m: Mistake) -> Wording | None:
    """`others from mill.o2`."""
    if m.block == "power" and m.sign == "." and m.before.split()[:2] == ["others", "from"]:
        gone = re.match(r"\.[a-z0-9-]+", m.after)
        mends = m.instead(
            m.at, m.at + (gone.end() if gone else 1), "", "name the supply alone: rigc chooses the outlets"
        )
        return Wording("an outlet is named for all other units", "this dot", mends=mends)
    return None


def _side(m: Mistake) -> Wording | None:
    """`input in ts 1 Mohm top 80 mm`."""
    if not m.awaits("left", "rear") or m.word.lower() not in _SIDES:
        return None
    if ours := _SIDES.get(m.word.lower(), ""):
        return Wording(f"'{m.word}' is no side of a unit here", f"did you mean '{ours}'?", mends=m.write(ours))
    if m.before.split()[:1] == ["vents"]:
        return Wording(f"'{m.word}' is no side of a unit here", "a side goes here", "write left, right, front or rear")
    advice = "write the side to which its plug points: left, right, front or rear"
    return Wording(f"'{m.word}' is no side on which a jack can be", "a side goes here", advice)


def _polarity(m: Mistake) -> Wording | None:
    """A polarity that does not say what is in the middle: `negative`, `-`."""
    if not m.awaits("centre-negative", "centre-positive"):
        return None
    typed = re.match(r"[^\s#]+(?:[ \t]+[A-Za-z-]+)?", m.after)
    said = typed.group().lower() if typed else ""
    sign = "negative" if re.search(r"neg|minus", said) else "positive" if re.search(r"pos|plus", said) else ""
    if re.search(r"cent|middle|tip|inner|inside|pin", said) and sign:
        text = f"centre-{sign}"
        shown = typed.group() if typed else m.word
        return Wording(
            f"'{shown}' is not how a polarity is written",
            f"did you mean '{text}'?",
            mends=m.instead(m.at, m.at + len(shown), text, f"write '{text}'"),
        )
    advice = "look at the drawing beside the inlet, then write 'centre-negative' or 'centre-positive'"
    if m.ends:
        return Wording("it is not said which pole is in the middle", "which one?", advice)
    return Wording(f"'{m.word}' does not say which pole is in the middle", "which one?", advice)


def _bypass(m: Mistake) -> Wording | None:
    """`bypass none`, `bypass relay`."""
    if m.block not in ("unit", "all-units") or m.before.split() != ["bypass"]:
        return None
    ours = _BYPASSES.get(m.word.lower(), "") or nearest(m.word, ("true", "buffered", "trails", "always-on", "unknown"))
    if not ours:
        return None
    return Wording(f"'{m.word}' is no kind of bypass here", f"did you mean '{ours}'?", mends=m.write(ours))


def _own_jack(m: Mistake) -> Wording | None:
    """`output out ts 10 kohm` of an instrument, which has one jack."""
    if m.block != "instrument" or m.before.strip() or m.word not in ("output", "input", "jack", "impedance"):
        return None
    ohms = re.search(r"\d[\d.]*[ \t]*[kM]?(?:ohm|Ω)", m.after)
    message = f"an instrument has one jack, 'out'; an '{m.word}' is not declared"
    if ohms is None or m.word == "input":
        return Wording(
            message, "this statement", mends=(Mend("delete the line", (Delete(m.place(m.at, m.line_end)),)),)
        )
    start, end, line = m.at, m.line_start + len(m.code.rstrip()), f"resistance {ohms.group()}"
    mends = (
        *m.instead(start, end, line, f"write {line} (of its pickup)"),
        *m.instead(start, end, f"active\n{' ' * len(m.before)}{line}", f"write active and {line} (of its own buffer)"),
    )
    return Wording(message, "this statement", mends=mends)


def _left_open(m: Mistake) -> Wording | None:
    """`others` or `fen anywhere` in a place block."""
    open_ended = re.fullmatch(
        r"[a-z][\w-]*[ \t]+(?:is[ \t]+)?(?:at[ \t]+)?(?:anywhere|somewhere|wherever|auto|automatic|free)",
        m.code.strip(),
    )
    if m.block != "place" or not (open_ended or (m.ends and m.code.split() in (["others"], ["all"], ["rest"]))):
        return None
    line = m.place(m.line_start, m.line_start + len(m.code.rstrip()))
    mends = (Mend("delete the line: what has no place gets one", (Delete(line),)),)
    return Wording(f"'{m.code.strip()}' places nothing", "here", mends=mends)


def _fraction(m: Mistake) -> Wording | None:
    """`2 3/4 x 4 3/4 x 2 in`."""
    found = re.compile(r"(\d+)[ \t-]+(\d+)/(\d+)|(\d+)/(\d+)")
    typed = [each for each in found.finditer(m.line) if (each[3] or each[5]) not in (None, "0")]
    near = [each for each in typed if each.start() <= m.at - m.line_start <= each.end()]
    if not near:
        return None
    edits = tuple(
        Replace(m.place(m.line_start + each.start(), m.line_start + each.end()), _decimal(each)) for each in typed
    )
    written = found.sub(_decimal, m.line).strip()
    message = f"'{near[0].group()}' is written as a fraction"
    return Wording(message, "a fraction", mends=(Mend(f"write {written}", edits),))


def _decimal(fraction: re.Match[str]) -> str:
    whole, top, bottom = int(fraction[1] or 0), int(fraction[2] or fraction[4]), int(fraction[3] or fraction[5])
    return f"{whole + top / bottom:.4f}".rstrip("0").rstrip(".")


def _said_otherwise(m: Mistake) -> Wording | None:
    ours = our_word(m.word, words.keywords(m.expected, m.literals))
    if ours and m.before.strip():
        mends = m.instead(m.at, m.at + len(m.word), ours, f"write '{ours}'")
        return Wording(f"'{m.word}' means nothing here", f"did you mean '{ours}'?", mends=mends)
    return None


TRADE_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (
    _polarity,
    _bypass,
    _battery,
    _fuse,
    _own_jack,
    _left_open,
    _fraction,
    _side,
    _after,
    _adaptor,
    _spare,
    _place,
    _others,
    _no_arrow,
    _said_otherwise,
)
