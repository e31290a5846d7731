"""What people who write rigs each week get wrong in a hurry, out of other notations or half deleted -> the wording."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

from rigc.syntax.mistake import Mistake, Wording
from rigc.syntax.worked_lines import as_in_the_reference

_ABOUT = r"~|≈|ca\.?|about|approx\.?"
_MOST = r"<=?|≤|max\.?|up to"
_LEAST = r">=?|≥|min\.?|over"
_JACK_WORDS = ("input", "output", "outlet", "inlet", "usb")
_BLOCKS_OF_JACKS = ("power", "midi", "control", "leads")


def _capital_word(m: Mistake) -> Wording | None:
    """`Mass 400 g`."""
    small = m.word.lower()
    if m.before.strip() or m.word == small or small not in m.blocks().get(m.block, frozenset()):
        return None
    message = f"'{m.word}' is written with {'a capital' if m.word[1:].islower() else 'capitals'}"
    return Wording(message, "words of the language are in small letters", mends=m.write(small))


def _glued(m: Mistake) -> Wording | None:
    """`draws60mA`."""
    found = re.match(r"([ \t]*)([a-z-]+)(?=\d)", m.line)
    if found is None or m.before.strip() or found[2] not in m.blocks().get(m.block, frozenset()):
        return None
    at = m.line_start + found.end()
    line = f"{found[2]} {m.code[found.end() :].strip()}"
    return Wording(
        f"no blank stands behind '{found[2]}'", "one goes here", mends=m.instead(at, at, " ", f"write {line}")
    )


def _outlet_by_number(m: Mistake) -> Wording | None:
    """`fen from outlet 2`: of the one supply that the file declares, where it has such an outlet; else with a blank for its name."""
    found = re.match(
        r"([ \t]*[a-z][\w, -]*?[ \t]+from[ \t]+)(?:outlet|output|out|socket|no\.?|#)[ \t]*(?:no\.?|#)?[ \t]*(\d+)[ \t]*\Z",
        m.code,
    )
    if m.block != "power" or found is None:
        return None
    text = m.span.source.text
    supplies = re.findall(r"^[ \t]*supply[ \t]+([a-z][\w-]*)", text, re.M)
    stems = dict.fromkeys(re.findall(r"^[ \t]*outlet[ \t]+([a-z]+)\d", text, re.M))
    message = f"'{m.code.strip()}' does not say of which supply"
    if len(supplies) != 1 or len(stems) != 1:
        return Wording(
            message,
            "a supply and its outlet go here",
            f"write both with a dot between them: {found[1].strip()} SUPPLY.o{found[2]}",
        )
    line = f"{found[1]}{supplies[0]}.{next(iter(stems))}{found[2]}"
    start = m.line_start
    return Wording(
        message,
        "a supply and its outlet go here",
        mends=m.instead(start, start + len(m.code.rstrip()), line, f"write {line.strip()}"),
    )


def _word_before_the_statement(m: Mistake) -> Wording | None:
    """`signal chain guitar -> amp`, `power supply mill {`: the statement begins with its second word."""
    begins = m.blocks().get("", frozenset())
    found = re.match(r"([a-z][\w-]*)[ \t]+([a-z-]+)[ \t]+[\w\"]", m.line)
    if found is None or found[2] not in begins or m.at - m.line_start not in (found.start(1), found.start(2)):
        return None
    start = m.line_start + found.start(1)
    mends = m.instead(start, m.line_start + found.start(2), "", f"write {m.code[found.start(2) :].strip()}")
    label = "one word too many" if m.at == start else "the statement begins here"
    return Wording(f"'{found[1]}' stands before '{found[2]}'", label, mends=mends)


def _shouted(m: Mistake) -> Wording | None:
    """`chain GUITAR -> TERN`: all names of the line are declared in small letters."""
    if m.before.split()[:1] not in (["chain"], ["loop"]) or "NAME" not in m.expected or not m.word.isupper():
        return None
    line = m.code
    names = dict.fromkeys(re.findall(r"\b[A-Z][A-Z0-9-]+\b", line))
    declared = {
        name for name in names if re.search(rf"^[a-z-]+[ \t]+{re.escape(name.lower())}\b", m.span.source.text, re.M)
    }
    if m.word not in declared:
        return None
    made = re.sub(r"\b[A-Z][A-Z0-9-]+\b", lambda found: found[0].lower() if found[0] in declared else found[0], line)
    mends = m.instead(m.line_start, m.line_start + len(line), made, f"write {made.strip()}")
    return Wording(f"'{m.word}' is written in capitals", "names are in small letters", mends=mends)


def _long_arrow(m: Mistake) -> Wording | None:
    found = re.match(r"-{2,}>|={2,}>", m.after)
    if found is None:
        return None
    mends = m.rewritten(r"-{2,}>", "->") or m.rewritten(r"={2,}>", "=>")
    return Wording(f"'{found.group()}' is no arrow of this language", "this sign", mends=mends)


def _in_for_inches(m: Mistake) -> Wording | None:
    """`1 audio lead 700 in "lid"`: the word before the bag was read as the unit that the length lacks."""
    length = re.search(r"\d([ \t]+)in[ \t]*\Z", m.before)
    if m.block != "spares" or length is None or not m.after.startswith('"'):
        return None
    start = m.line_start + length.start(1)
    mends = m.instead(start, start, " mm", "write mm behind the number")
    return Wording("the length before 'in' has no unit, so 'in' is read as inches", "a bag is named here", mends=mends)


def _ac_or_dc(m: Mistake) -> Wording | None:
    """`needs 9 V ac/dc`: on the plate of what takes either."""
    either = re.match(r"/[ \t]*(?:ac|dc)\b", m.after, re.IGNORECASE)
    kind = re.search(r"\b(?:ac|dc)[ \t]*\Z", m.before, re.IGNORECASE)
    if either is None or kind is None:
        return None
    start, end = m.line_start + kind.start(), m.at + either.end()
    mends = (*m.instead(start, end, "dc", "write dc"), *m.instead(start, end, "ac", "write ac"))
    return Wording(
        "a unit that takes either is stated with the one that feeds it", "one of both goes here", mends=mends
    )


def _named_with_a_sign(m: Mistake) -> Wording | None:
    """`tern: brook.o1` in the power block, `tern: 200, 20 mm` in that of places."""
    word = {"power": "from", "place": "at"}.get(m.block, "")
    if not word or not m.sign or m.sign not in ":=" or not re.fullmatch(r"[ \t]*[a-z][\w-]*[ \t]*", m.before):
        return None
    gone = re.match(r".[ \t]*", m.after)
    start = m.line_start + len(m.before.rstrip())
    mends = m.instead(start, m.at + (gone.end() if gone else 1), f" {word} ", f"write '{word}' in its place")
    return Wording(f"'{m.sign}' means nothing here", "this sign", mends=mends)


def _blank_for_a_dot(m: Mistake) -> Wording | None:
    """`tern from brook o1`."""
    thing = re.search(r"(?:from|->|,)[ \t]*([a-z][\w-]*)([ \t]+)\Z", m.before)
    if m.block not in _BLOCKS_OF_JACKS or thing is None or not re.fullmatch(r"[a-z]+\d*", m.word):
        return None
    if m.word in m.literals.values() or "NUMBER" in m.expected:
        return None
    text = f"{thing[1]}.{m.word}"
    return Wording(
        f"'{m.word}' stands behind a blank",
        "a jack or an outlet stands behind a dot",
        mends=m.instead(m.at - len(thing[2]), m.at, ".", f"write {text}"),
    )


def _sign_before_a_number(m: Mistake) -> Wording | None:
    """`mass ~400 g`, `draws < 8 mA`, `at x 200 y 20 mm`."""
    if "NUMBER" not in m.expected:
        return None
    found = re.match(rf"({_ABOUT}|{_MOST}|{_LEAST}|[a-z])[ \t]*[:=]?[ \t]*(?=[+-]?\d)", m.after)
    if found is None or (found[1] == "x" and re.search(r"\d[ \t]*\Z", m.before)):
        return None
    said, number = found[1], m.after[found.end() :].partition("#")[0].strip()
    if len(said) == 1 and said.isalpha():
        letter = r"[ \t,]+[a-z][ \t]*[:=]?[ \t]*(?=[+-]?\d)"
        code = m.text[m.at - 1 : m.line_end].partition("#")[0]
        made = re.sub(letter, ", ", re.sub(letter, " ", code, count=1))
        mends = m.instead(m.at - 1, m.at - 1 + len(code), made, f"write the numbers alone: {made.strip()}")
        return Wording(f"'{said}' is not written before a number here", "the number alone goes here", mends=mends)
    mends = m.instead(m.at, m.at + found.end(), "", f"write the figure alone: {number}")
    if re.fullmatch(_ABOUT, said):
        return Wording(f"'{said}' means nothing here", "a number goes here", "mark it with `assumed` behind it", mends)
    return Wording(f"'{said}' means nothing here", "one figure goes here", mends=mends)


def _volts_and_kind(m: Mistake) -> Wording | None:
    """`needs 9VDC`."""
    found = re.search(r"(\d[\d.]*)[ \t]*(m?V)[ \t-]?(DC|AC|dc|ac)[ \t]*\Z", m.before)
    if found is None or not m.awaits("dc", "ac"):
        return None
    text = f"{found[1]} {found[2]} {found[3].lower()}"
    mends = m.instead(m.line_start + found.start(), m.at, text, f"write {text}")
    return Wording(f"'{found.group().strip()}' is one word", "voltage and kind of current are two", mends=mends)


def _side_by_side(m: Mistake) -> Wording | None:
    """`chain guitar -> tern + fen -> combo`."""
    if m.sign not in ("+", "|", "&") or m.before.split()[:1] not in (["chain"], ["loop"]):
        return None
    advice = "write what is in parallel in a blend block, or as two chains from a unit with two outputs"
    return Wording(f"'{m.sign}' joins nothing", "a chain is one way", advice)


def _joined_outlets(m: Mistake) -> Wording | None:
    """`pine from hearth.o1 + hearth.o2`: one unit on two outlets."""
    other = re.match(r"(?:[+&]|and\b|plus\b)[ \t]*([a-z][\w-]*\.[\w-]+)[ \t]*(?=#|$)", m.after)
    if m.block != "power" or other is None or not re.search(r"\bfrom[ \t]+[a-z][\w-]*\.[\w-]+[ \t]*\Z", m.before):
        return None
    start, first = m.line_start + len(m.before.rstrip()), m.before.strip()
    mends = tuple(
        mend
        for how in ("series", "parallel")
        for mend in m.instead(start, m.at + other.end(), f", {other[1]} {how}", f"write {first}, {other[1]} {how}")
    )
    return Wording(
        f"'{m.word or m.sign}' joins no outlets", "a comma goes here, and how they are joined behind them", mends=mends
    )


def _preset_by_title(m: Mistake) -> Wording | None:
    """`preset "Loud"` in a song."""
    typed = re.match(r'("[^"\n]*")', m.after)
    if m.block != "song" or m.before.split() != ["preset"] or typed is None:
        return None
    number = re.search(rf"^[ \t]*preset[ \t]+(\d+)[ \t]+{re.escape(typed[1])}", m.span.source.text, re.M)
    mends = () if number is None else m.instead(m.at, m.at + typed.end(), number[1], f"write preset {number[1]}")
    return Wording(
        f"a song names its preset by number, not by {typed[1]}", "a number goes here", "write its number", mends
    )


def _note_without_number(m: Mistake) -> Wording | None:
    """`field-note 2026-05-11 "..."`: the year was read as the number of the note."""
    dated = re.fullmatch(r"[ \t]*field-note[ \t]+(\d{4})", m.before)
    if dated is None or not re.match(r"-\d\d-\d\d", m.after):
        return None
    taken = [int(each) for each in re.findall(r"^[ \t]*field-note[ \t]+(\d{1,3})[ \t]", m.span.source.text, re.M)]
    text = f"{max(taken, default=0) + 1} {dated[1]}"
    mends = m.instead(m.line_start + dated.start(1), m.at, text, f"write field-note {text}{m.after[:6]}")
    return Wording("this field note has no number", "its number goes before its date", mends=mends)


def _test_by_name(m: Mistake) -> Wording | None:
    """`test voltage at brook.o1`."""
    if m.block != "tests" or m.before.split()[-1:] != ["test"] or not m.word.isalpha():
        return None
    advice = "write its number; `rigc explain reading-outside-limit` lists them"
    return Wording(f"'{m.word}' is no test: a test is told by its number", "a number goes here", advice)


def _by_the_calendar(m: Mistake) -> Wording | None:
    """`every 2 months "..."`."""
    if m.block != "tests" or not re.fullmatch(r"[ \t]*every[ \t]+\d+[ \t]*", m.before) or not m.awaits("shows"):
        return None
    rest = m.after[len(m.word) :].partition("#")[0].strip()
    return Wording(
        f"'{m.word}' is no count of shows",
        "upkeep is told in shows",
        f"write after how many shows: every ___ shows {rest}",
    )


def _quote_within(m: Mistake) -> Wording | None:
    """`supply wart "5" plug-top" {`."""
    held = re.search(r'"([^"\\]*"[^"\\]*)"(?=[ \t]*(?:\{|#|$))', m.code)
    if held is None or m.code.count('"') != 3 or not m.line_start + held.start() < m.at <= m.line_start + held.end():
        return None
    text = held[1].replace('"', '\\"')
    mends = m.instead(m.line_start + held.start(1), m.line_start + held.end(1), text, f'write "{text}"')
    return Wording("a quote stands inside this text", "the text ends before here", mends=mends)


def _chain_in_a_block(m: Mistake) -> Wording | None:
    """`haze -> swan` in a power block."""
    if m.word not in ("->", "=>") or m.block not in ("power", "place", "mounting", "preset", "tests", "spares"):
        return None
    if not re.fullmatch(r"[ \t]*[a-z][\w-]*[ \t]*", m.before) or (m.block == "power" and "." in m.code):
        return None
    advice = f"write it outside of blocks: chain {m.code.strip()}"
    return Wording(f"'{m.code.strip()}' is a way of sound, of which this block says nothing", "this line", advice)


_NOTHING = "none|unknown|no|nothing|n/a"


def _taken_back(m: Mistake) -> Wording | None:
    """`no starts`, `starts none`: of what a thing is like, one fact shall not hold."""
    heads = m.blocks().get(m.block, frozenset())
    said = re.match(r"[ \t]*(?:no|without|not|drop|remove|delete)[ \t]+([a-z-]+)\b", m.code) or re.match(
        rf"[ \t]*([a-z-]+)[ \t]+(?:{_NOTHING})(?=[ \t]*$)", m.code.rstrip()
    )
    if said is None or not m.block or said[1] not in heads or f"{m.before}{m.word}".split()[:1] == ["note"]:
        return None
    if m.code.split()[0] == said[1] and "NUMBER" not in m.expected:
        return None  # a word goes there, and another wording knows which
    text = m.span.source.text[: m.span.start]
    opened = re.findall(rf"^[ \t]*{re.escape(m.block)}[ \t]+[^{{}}\n]*\{{", text, re.M)
    like = re.search(r"\blike[ \t]+([a-z][\w-]*)", opened[-1]) if opened else None
    line = as_in_the_reference(m.block, said[1])
    if like is None:
        return Wording(
            f"'{m.code.strip()}' states nothing",
            "this line",
            "leave the line out: what is not stated is not known, and is asked for where it counts",
        )
    return Wording(
        f"'{m.code.strip()}' takes back nothing of what '{like[1]}' states",
        "what is like it bears it too",
        f"state what it is here, or write this thing out without 'like {like[1]}'{f'; {line}' if line else ''}",
    )


def _follows_a_file(m: Mistake) -> Wording | None:
    """`follows "board-a.rig"`."""
    typed = re.match(r'("[^"\n]*")', m.after)
    if m.before.split() != ["follows"] or typed is None:
        return None
    advice = f"write the letter of that revision before its file: follows A {typed[1]}"
    return Wording(f"it is not said which revision {typed[1]} is", "a capital letter goes before the file", advice)


_RANGED = ("accepts", "rail", "treadle", "band", "tier")


def _one_end(m: Mistake) -> Wording | None:
    """`accepts 9 V`, `rail 45 mm tape 25 mm`: one number where a range goes."""
    typed = re.match(r"[ \t]*((?:[a-z][a-z-]*[ \t]+){1,2}?)(\d[\d.]*)[ \t]*([A-Za-z]*)[ \t]*\Z", m.before)
    if (
        typed is None
        or typed[1].split()[0] not in _RANGED
        or not m.awaits("..")
        or re.match(r"[+-]?\d|\W{1,3}[ \t]*\d|(?:up )?to\b|till\b", m.after)
    ):
        return None
    unit = f" {typed[3]}" if typed[3] else ""
    if two := re.fullmatch(r"(\d+)\.(\d{2,})", typed[2]):
        start = m.line_start + typed.start(2)
        text = f"{two[1]}..{two[2]}"
        return Wording(
            f"'{typed[2]}' has one dot",
            "two dots go between the ends of a range",
            mends=m.instead(start, start + len(typed[2]), text, f"write {text}"),
        )
    advice = f"write from where to where: {typed[1].strip()} ___..___{unit}"
    if typed[1].strip() == "accepts":
        advice += "; or delete the line, if it works at no other voltage than it needs"
    return Wording(f"'{typed[2]}{unit}' is one end of a range", "two dots and the other end go here", advice)


def _numbered(m: Mistake) -> Wording | None:
    """`outlet 1..2 9 V dc`."""
    first = m.before.split()[:1]
    if (
        not first
        or first[0] not in _JACK_WORDS
        or len(m.before.split()) > 1
        or not re.match(r"\d+(?!\d*[ \t]*[VA])", m.after)
    ):
        return None
    letter = {"input": "in", "output": "out", "outlet": "o"}.get(first[0], first[0])
    found = re.match(r"(\d+)(?:[ \t]*(?:\.\.|-)[ \t]*(\d+))?", m.after)
    assert found is not None
    text = f"{letter}{found[1]}" + (f"..{letter}{found[2]}" if found[2] else "")
    mends = m.instead(m.at, m.at + found.end(), text, f"write {text}")
    return Wording(f"'{found.group()}' is no name", "a name begins with a letter", mends=mends)


def _bushing_alone(m: Mistake) -> Wording | None:
    if m.word not in ("bonded", "insulated") or m.before.split()[:1] not in (["input"], ["output"]):
        return None
    advice = f"write where the jack is before it: right ___ mm up ___ mm {m.word}"
    return Wording(f"'{m.word}' stands without the jack's place", "side, distance and height go before it", advice)


def _who_first(m: Mistake) -> Wording | None:
    """`measured by "R.K." 2026-02-14`."""
    if m.kind != "DATE" or not re.search(r"\b(measured|leaflet|assumed)[ \t]+by\b", m.before):
        return None
    shape = r'\b(measured|leaflet|assumed)[ \t]+by[ \t]+("[^"]*")[ \t]+(\d{4}-\d\d-\d\d)'
    mends = m.rewritten(shape, r"\1 \3 by \2")
    return Wording("the date goes before `by`, not behind it", "this date", mends=mends)


def _degree_sign(m: Mistake) -> Wording | None:
    found = re.search(r"\d[ \t]*([º˚])", m.line)
    if found is None or not re.search(r"\bturned\b|\bangle\b", m.before + m.word):
        return None
    mends = m.rewritten(r"(?<=\d)[ \t]*[º˚]", " deg")
    return Wording(f"{found[1]} is not the sign of degrees", "this sign", mends=mends)


def _place_of_one_number(m: Mistake) -> Wording | None:
    if m.block != "place":
        return None
    found = re.search(r"\bat[ \t]+([+-]?\d[\d.]*[ \t]*[a-z]*)[ \t]*\Z", m.before) if m.awaits(",") and m.ends else None
    found = found or re.search(
        r"\bat[ \t]+(?:([+-]?\d[\d.]*)[ \t]*,[ \t]*[a-z]*|,[ \t]*([+-]?\d[\d.]*)[ \t]*[a-z]*)[ \t]*\Z", m.code
    )
    if found is None:
        return None
    only = found[1] or found[2]
    advice = "write both: from the left edge, then from the front edge, as 200, 20 mm"
    return Wording(f"'{only.strip()}' is only one of the two numbers of a place", "a number is missing", advice)


def _rule_by_code(m: Mistake) -> Wording | None:
    if m.before.split() != ["accept"] or not re.match(r"[A-Z]+\d+\b", m.after):
        return None
    advice = "write the rule's name, as it stands in brackets behind the finding; `rigc explain` lists them"
    return Wording(f"'{m.word}' is no rule: a rule is called by its name", "a rule's name goes here", advice)


def _holds_nothing(m: Mistake) -> Wording | None:
    held = re.match(r"[ \t]*loop[ \t]+\d+[ \t]+of[ \t]+[a-z][\w-]*[ \t]+(holds)[ \t]*\Z", m.before)
    if held is None or not m.ends:
        return None
    mends = m.instead(
        m.line_start + held.start(1), m.line_start + held.end(1), "empty", "write 'empty' if nothing is in it"
    )
    return Wording("it is not said what this loop holds", "units go here", "name its units: `holds hum -> marl`", mends)


_MOST_COUNTS = 64


def _range_of_counts(m: Mistake) -> Wording | None:
    """`loops 1..8 of brain`, `done 1..3`: where plain numbers are listed."""
    low, high = re.search(r"(?<![\w.])(\d+)[ \t]*\Z", m.before), re.match(r"\.\.[ \t]*(\d+)(?![\w.])", m.after)
    if low is None or high is None or not m.awaits(","):
        return None
    first, last = int(low[1]), int(high[1])
    if not first < last < first + _MOST_COUNTS:
        return None
    text = ", ".join(map(str, range(first, last + 1)))
    mends = m.instead(m.line_start + low.start(1), m.at + high.end(), text, f"write {text}")
    return Wording(f"'{low[1]}..{last}' is no list of numbers", "each number is written here", mends=mends)


def _under_somewhere(m: Mistake) -> Wording | None:
    """`brook under`: the player does not mind where."""
    found = re.fullmatch(r"[ \t]*([a-z][\w-]*)[ \t]+under[ \t]*", m.before)
    deck = re.search(r"^[ \t]*deck[ \t]+([a-z][\w-]*)", m.span.source.text, re.M)
    if m.block != "place" or found is None or not m.ends or deck is None:
        return None
    start, text = m.line_start + found.start(1), f"{found[1]} beneath {deck[1]}"
    return Wording(
        f"it is not said where '{found[1]}' hangs",
        "a place goes here, or rigc chooses one",
        f"state it: {found[1]} under at ___, ___ mm",
        m.instead(start, m.line_start + len(m.before.rstrip()), text, f"let rigc choose: write {text}"),
    )


def _two_ends(m: Mistake) -> Wording | None:
    """`chain lant => left-amp, right-amp`: each side goes elsewhere."""
    found = re.search(r"([a-z][\w-]*)[ \t]*=>[ \t]*([a-z][\w.-]*)[ \t]*\Z", m.before)
    behind = re.match(r",[ \t]*([a-z][\w.-]*)[ \t]*(?:#.*)?\Z", m.after)
    if m.before.split()[:1] != ["chain"] or found is None or behind is None:
        return None
    thing, ends = found[1], (found[2], behind[1])
    sides = _output_pair(m.span.source.text, thing)
    said = "one hop has one end", f"each side of '{thing}' goes to its own"
    if sides is None:
        blank = _told_lines(f"chain {thing}.___ -> {end}" for end in ends)
        return Wording(*said, f"write a chain for each side, by its jack: {blank}")
    lines = [f"chain {thing}.{side} -> {end}" for side, end in zip(sides, ends, strict=True)]
    whole = re.match(rf"[ \t]*chain[ \t]+{re.escape(thing)}[ \t]*=>", m.before)
    kept = [] if whole else [m.before[: found.end(1)].rstrip()]
    end = m.line_start + len(m.code.rstrip())
    mends = m.instead(m.line_start, end, "\n".join((*kept, *lines)), f"write {_told_lines(lines)}")
    return Wording(*said, mends=mends)


def _told_lines(lines: Iterable[str]) -> str:
    """Statements told one behind the other."""
    return " and ".join(f"`{line}`" for line in lines)


def _output_pair(text: str, thing: str) -> tuple[str, str] | None:
    """The stereo pair of outputs that the block of a thing states."""
    block = re.search(rf"^[ \t]*[a-z]+[ \t]+{re.escape(thing)}\b[^{{\n]*\{{(.*?)^[ \t]*\}}", text, re.M | re.S)
    for pair in re.finditer(r"^[ \t]*pair[ \t]+([\w-]+)[ \t]*,[ \t]*([\w-]+)", block[1] if block else "", re.M):
        if block and re.search(rf"^[ \t]*output[ \t]+{re.escape(pair[1])}\b", block[1], re.M):
            return pair[1], pair[2]
    return None


HURRIED_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (
    _capital_word,
    _glued,
    _outlet_by_number,
    _word_before_the_statement,
    _shouted,
    _long_arrow,
    _in_for_inches,
    _ac_or_dc,
    _named_with_a_sign,
    _blank_for_a_dot,
    _sign_before_a_number,
    _volts_and_kind,
    _side_by_side,
    _joined_outlets,
    _preset_by_title,
    _chain_in_a_block,
    _taken_back,
    _follows_a_file,
    _note_without_number,
    _test_by_name,
    _by_the_calendar,
    _quote_within,
    _one_end,
    _numbered,
    _bushing_alone,
    _who_first,
    _degree_sign,
    _place_of_one_number,
    _rule_by_code,
    _holds_nothing,
    _range_of_counts,
    _under_somewhere,
    _two_ends,
)
