"""A line as somebody typed it -> the values in it, each by what may take it, and its words."""

from __future__ import annotations

import re

from rigc.record import Record
from rigc.syntax.said.thesaurus import stem, thesaurus
from rigc.syntax.slips.said_codes import COLOURS, code_of
from rigc.syntax.spelled_units import SPELLED

_KINDS = (
    ("length", r"mm|cm|m|in|ft"),
    ("mass", r"kg|g|lb|oz"),
    ("voltage", r"m?V"),
    ("current", r"[mu]?A"),
    ("power", r"m?W|VA"),
    ("resistance", r"[kM]?(?:ohm|Ω)"),
    ("capacitance", r"[pnu]F"),
    ("inductance", r"m?H"),
    ("time", r"h|min|s|ms|us"),
    ("frequency", r"[kMG]?Hz"),
    ("pressure", r"k?Pa|psi"),
    ("angle", r"deg|°"),
    ("conductor", r"mm2|awg"),
    ("charge", r"m?Ah|Wh"),
    ("level", r"dBu"),
    ("gain", r"dB"),
    ("share", r"%"),
    ("pace", r"bpm"),
    ("money", r"[A-Z]{3}"),
    ("mass of a metre", r"g/m|g/ft"),
    ("capacitance of a metre", r"pF/m|pF/ft"),
)
UNITS = "|".join(sorted((shape for _, shape in _KINDS), key=lambda shape: ("/" in shape, len(shape)), reverse=True))
"""The units of this language."""
_NUMBER = r"(?:(?<![\w.])[+-])?\d+(?:[.,]\d+)?"
_UNIT_SIGNS = r"[A-Za-zµμΩΩ°%€$£²/]+[23]?"


class Item(Record):
    """A value of a line. `kind` is what it measures (empty for a plain number), or `text`, `name`, `mark`, `date`; `parts` its numbers with their
    units as this language has them; `at` which word of the line it stands before."""

    kind: str
    parts: tuple[str, ...]
    at: int
    ranged: bool = False


class Line(Record):
    """What was typed: the values in order, and the words without them, and whether a unit was spelled otherwise than here."""

    items: tuple[Item, ...]
    words: tuple[str, ...]
    respelled: bool = False


def unit_of(typed: str) -> str:
    """A unit as this language has it; empty where the word is none."""
    plain = typed.rstrip(".")
    for each in (plain, plain.lower()):
        ours = SPELLED.get(each, each)
        if kind_of(ours):
            return ours
    return ""


def kind_of(unit: str) -> str:
    """What a unit measures; empty where it is none."""
    return next((kind for kind, shape in _KINDS if re.fullmatch(shape, unit)), "")


_TOKEN = re.compile(
    rf'(?P<text>"(?:\\.|[^"\\])*"|“[^”]*”)|(?P<date>\d{{4}}-\d\d-\d\d)|(?P<size>{_NUMBER}(?!\d*\.\d))'
    rf"|(?P<mark>\b(?!AC\b|DC\b|DI\b|[XYWDHL]\b)[A-Z]{{1,2}}\d+[a-z]?\b|\b(?!AC\b|DC\b|DI\b|FX\b|IN\b|SN\b|PC\b)[A-Z]{{2}}\b|\b(?!I\b|[XYWDHL]\b)[A-Z]\b(?![-/.]))"
    r"|(?P<name>[a-z][\w-]*(?:\.[a-z][\w-]*)?(?![\w'/]))|(?P<word>[A-Za-z][\w'/-]*)|(?P<sign>\.\.+|->|=>|–|[^\s])"
)
_JOINS_SIZES = re.compile(r"[ \t]*(?:[xX*×]|by\b)[ \t]*(?=[+-]?\d)")
_JOINS_RANGE = re.compile(r"[ \t]*(?:\.\.+|…|–|-|to\b|till\b|until\b|and\b|/)[ \t]*(?=\d)")
_JOINS_LIST = re.compile(r"[ \t]*,[ \t]*(?:[a-zA-Z][ \t]*[:=]?[ \t]*)?(?=[+-]?\d)")
_UNIT_BEHIND = re.compile(rf"[ \t]*({_UNIT_SIGNS})(?![\w.])")
_AXES = re.compile(r"\b[xyXYwdhWDHlL][ \t]*[:=][ \t]*(?=[+-]?\d)|[\[\](){}]")
_PER_METRE = re.compile(r"[ \t]+(?:per|/|a)[ \t]+(?:metre|meter|m)\b")


def line_of(code: str, known: frozenset[str], jacks: dict[str, tuple[str, ...]]) -> Line:
    """Takes a line apart; `known` are the names that the file declares, `jacks` those of the jacks of each."""
    typed = _AXES.sub(" ", code.replace("Ω", "Ω").replace("'s ", " "))
    typed = (
        re.sub(r"\bx[ \t]?(\d+)\b", r"\1 ", typed)
        if not re.search(r"\d[ \t]*[A-Za-z]*[ \t]*x[ \t]*\d", typed)
        else typed
    )
    typed = re.sub(
        r"_([A-Za-z]+)[ \t]*[:=]?[ \t]*(\d[\d.]*)(?![\d.]*[ \t]*[A-Za-z])",
        lambda f: f" {f[2]} {f[1]}" if unit_of(f[1]) else f[0],
        typed,
    )
    typed = re.sub(rf"\b({'|'.join(COUNTS)})-(?=[a-z])", r"\1 ", typed)
    typed = _JACK_OF.sub(lambda found: _jack(found, jacks), typed)
    typed = _OF_JACK.sub(lambda found: _jack(found, jacks), typed)
    items: list[Item] = []
    words: list[str] = []
    at = 0
    while found := _TOKEN.search(typed, at):
        at = found.end()
        kind = found.lastgroup or ""
        if kind == "size":
            item, at = _sizes(typed, found.start(), len(words))
            items.append(item)
            continue
        word = found.group()
        if kind == "text":
            items.append(Item("text", (f'"{word[1:-1]}"',), len(words)))
        elif kind in ("date", "mark"):
            items.append(Item(kind, (word,), len(words)))
        elif word.lower() in COUNTS:
            items.append(Item("", (str(COUNTS.index(word.lower()) + 2),), len(words)))
        elif (
            kind == "name" and (word in known or word.partition(".")[0] in known) and not _in_a_phrase(word, typed[at:])
        ):
            items.append(Item("name", (word,), len(words)))
        elif kind == "name" and word[:-1] in known and word.endswith("s"):
            items.append(Item("name", (word[:-1],), len(words)))
        elif kind in ("name", "word"):
            if code_of(word) and not word.islower():
                items.append(Item("country", (code_of(word),), len(words)))
                continue
            words += [each for each in word.split("_") if each]
            if word.lower() in COLOURS:
                items.append(Item("colour", (COLOURS[word.lower()],), len(words)))
    respelled = any(part.split()[-1] not in code for item in items for part in item.parts if item.kind and " " in part)
    return Line(tuple(items), tuple(words), respelled)


COUNTS = ("two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")


def _in_a_phrase(name: str, behind: str) -> bool:
    """Whether a name that the file declares is a word of a phrase: `guitar cable`."""
    other = re.match(r"[ \t]+([a-z][\w-]*)", behind)
    return other is not None and (stem(name), stem(other[1])) in thesaurus()


_JACK = r"(?:dc[ \t]+)?(?:outlet|output|input|jack|socket|out|in|port)"
_JACK_OF = re.compile(
    rf"\b{_JACK}[ \t]*(?:no\.?|number|#)?[ \t]*(?P<jack>[a-z]?\d+|[a-z]+)?[ \t]+(?:of|on|from)[ \t]+(?:the[ \t]+)?(?P<thing>[a-z][\w-]*)"
)
_OF_JACK = re.compile(
    rf"\b(?P<thing>[a-z][\w-]*)(?:[ \t]+|\.|'s[ \t]+|/|:)(?:(?:{_JACK})[ \t]*(?:no\.?|number|#)?[ \t]*)?(?P<jack>[a-z]?\d+)(?![\w.]|[ \t]*(?:x\b|[A-Za-z]*V\b))"
)


def _jack(found: re.Match[str], jacks: dict[str, tuple[str, ...]]) -> str:
    """`outlet 2 of brook` and `brook output 2` as the name of that jack; as it stands where the file declares no such thing or jack."""
    mine = jacks.get(found["thing"], ())
    typed = found["jack"] or ""
    if typed in mine:
        return f"{found['thing']}.{typed}"
    number = re.sub(r"\D", "", typed)
    for jack in mine:
        if number and re.fullmatch(rf"[a-z]*{number}", jack):
            return f"{found['thing']}.{jack}"
    run = [each for each in mine if each[-1:].isdigit()]
    if number and len(run) > 1 and int(re.sub(r"\D", "", run[0])) <= int(number) <= int(re.sub(r"\D", "", run[-1])):
        return f"{found['thing']}.{re.sub(r'[0-9]+', '', run[0])}{number}"
    return found.group()


def _sizes(typed: str, start: int, at: int) -> tuple[Item, int]:
    """The quantity that begins here, with all numbers that are joined to its first."""
    numbers: list[str] = []
    units: list[str] = []
    place, ranged = start, False
    while found := re.compile(_NUMBER).match(typed, place):
        number = found.group()
        if re.search(r",\d{1,2}$", number) and not re.search(r"^\d+,\d+(?:\s*,\s*\d)", typed[found.start() :]):
            number = number.replace(",", ".")
        elif "," in number:
            found = re.compile(r"[+-]?\d+").match(typed, place) or found
            number = found.group()
        numbers.append(number)
        place = found.end()
        unit = _UNIT_BEHIND.match(typed, place)
        ours = unit_of(unit[1]) if unit else ""
        if not ours and unit and (split := re.fullmatch(r"(m?V)(?:AC|DC|ac|dc)", unit[1])):
            units.append(split[1])
            place = unit.start(1) + len(split[1])
            ours = ""
            break
        if ours and unit and not (unit[1] in ("a", "in") and re.match(r"[ \t]+\S", typed[unit.end() :])):
            place = unit.end()
            if per := _PER_METRE.match(typed, place):
                ours, place = f"{ours}/m", per.end()
        else:
            ours = ""
        units.append(ours)
        joint = None if ranged else _JOINS_SIZES.match(typed, place) or _JOINS_LIST.match(typed, place)
        if joint is None and not ranged and len(numbers) == 1 and (joint := _JOINS_RANGE.match(typed, place)):
            other = re.compile(rf"{_NUMBER}[ \t]*({_UNIT_SIGNS})?").match(typed, joint.end())
            said = unit_of(other[1]) if other and other[1] else ""
            if (
                ours
                and said != ours
                and kind_of(said) != kind_of(ours)
                and not (not said and joint.group().strip() in ("..", "-", "–", "to"))
            ):
                joint = None
            ranged = joint is not None and (bool(ours or said) or joint.group().strip() != "and")
        if joint is None:
            break
        place = joint.end()
    last = next((unit for unit in reversed(units) if unit), "")
    units += [last] * (len(numbers) - len(units))
    parts = tuple(
        f"{number} {unit}".strip() if unit and (unit != last or at_last) else number
        for number, unit, at_last in zip(numbers, units, [*[False] * (len(numbers) - 1), True], strict=True)
    )
    if last and not parts[-1].endswith(last):
        parts = (*parts[:-1], f"{numbers[-1]} {last}")
    return Item(kind_of(last), parts, at, ranged), place
