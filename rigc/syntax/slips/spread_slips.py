"""What a quantity may be off by, written as nearly everybody writes it -> the wording, with the two ways of this language."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.syntax.mistake import Mistake, Wording
from rigc.syntax.slips.habit_slips import RANGED
from rigc.syntax.slips.sign_slips import DASHES

_SIGN = r"(?:\+/?-|±)"
_NUMBER = r"\d+(?:\.\d+)?"
_UNIT = (
    r"(?:%|°C?|(?:[pnuµμmckM]?(?:VA|V|Ah|A|Wh|W|H|F|Hz|ohm|Ω|Ω|m|g|s|Pa)|in|ft|lb|oz|min|h|psi|deg|dBu?|bpm|awg|[A-Z]{3})"
    r"(?:/m|/ft|2)?(?![A-Za-z0-9]))"
)
_QUANTITY = rf"{_NUMBER}(?:[ \t]*{_UNIT})?"
_IN_WORDS = r"\+[ \t]+-|-[ \t]*/?[ \t]*\+|plus[ \t-]*(?:or[ \t]+)?minus|give or take|tolerance|tol\.?|within|off by"
_SPREAD = "_PLUS_MINUS"


def _spaced(quantity: str) -> str:
    """`10 %` of `10%`."""
    return re.sub(rf"\A({_NUMBER})[ \t]*({_UNIT})?\Z", r"\1 \2", quantity).strip()


def _behind_a_quantity(m: Mistake) -> bool:
    """Whether what stands before the place is a number with its unit, without a spread."""
    found = re.search(rf"(\S+[ \t]+)?(?<![\d.]){_NUMBER}[ \t]*{_UNIT}[ \t]*\Z", m.before)
    return found is not None and not re.match(rf"{_SIGN}|to\b", found[1] or "")


def _unit_behind_the_spread(m: Mistake) -> Wording | None:
    """`350±10% mA`."""
    before = re.search(rf"({_NUMBER})[ \t]*{_SIGN}[ \t]*({_NUMBER})[ \t]*%[ \t]*\Z", m.before)
    unit = re.match(_UNIT, m.after)
    if before is None or unit is None:
        return None
    text = f"{before[1]} {unit.group()} +- {before[2]} %"
    mends = m.instead(m.line_start + before.start(), m.at + unit.end(), text, f"write {text}")
    return Wording(f"the unit of '{before[1]}' stands behind its spread", "this unit", mends=mends)


def _in_brackets(m: Mistake) -> Wording | None:
    """`350 mA (+- 10 %)`."""
    found = re.match(rf"\([ \t]*{_SIGN}[ \t]*({_QUANTITY})[ \t]*\)(?:[ \t]*({_UNIT}))?", m.after)
    bare = re.search(rf"(?<![\d.])({_NUMBER})[ \t]*\Z", m.before)
    if found is not None and found[2] and bare is not None:
        off = _spaced(found[1]) if re.search(_UNIT, found[1]) else f"{found[1]} {found[2]}"
        text = f"{bare[1]} {found[2]} +- {off}"
        mends = m.instead(m.line_start + bare.start(), m.at + found.end(), text, f"write {text}")
        return Wording(f"'{found.group()}' stands in brackets", "no brackets go here", mends=mends)
    if found is None or found[2] or not _behind_a_quantity(m):
        return None
    text = f"+- {_spaced(found[1])}"
    mends = m.instead(m.at, m.at + found.end(), text, f"write {text}")
    return Wording(f"'{found.group()}' stands in brackets", "no brackets go here", mends=mends)


def _in_other_words(m: Mistake) -> Wording | None:
    """`350 mA plus minus 10 %`, `350 mA -+ 10 %`, `350 mA tolerance 10 %`."""
    found = re.match(rf"({_IN_WORDS})[ \t]*:?[ \t]*{_SIGN}?[ \t]*({_QUANTITY})(?=\s|#|\Z)", m.after)
    if found is None or not _behind_a_quantity(m):
        return None
    text = f"+- {_spaced(found[2])}"
    mends = m.instead(m.at, m.at + found.end(), text, f"write {text}")
    return Wording(f"'{found[1]}' is written +- here", "this", mends=mends)


_TURNED = ("volume", "tone")


def _one_way(m: Mistake) -> Wording | None:
    """`350 mA + 10 %`, `350 mA +10 -5 %`, `350 mA 10 %`."""
    found = re.match(rf"([+-]?)[ \t]*({_QUANTITY})(?=\s|#|\Z)", m.after)
    if found is None or not _behind_a_quantity(m) or not (found[1] or found[2].endswith("%")):
        return None
    if not found[1] and m.before.split()[0] in _TURNED:
        return None  # how far a control is turned up
    unit = re.search(rf"({_UNIT})[ \t]*\Z", m.before)
    ends = f"from ___ to ___ {unit[1] if unit else ''}".rstrip()
    if other := re.match(rf"[ \t]*/?[ \t]*[+-][ \t]*{_QUANTITY}(?=\s|#|\Z)", m.after[found.end() :]):
        typed = m.after[: found.end() + other.end()]
        return Wording(f"'{typed}' is more one way than the other", "two sides", f"write both ends: {ends}")
    low = re.search(rf"({_NUMBER})[^\d]*\Z", m.before)
    high = re.match(rf"-[ \t]*({_NUMBER})", m.after)
    if high and (m.after[1:2].isdigit() or (low and float(high[1]) > float(low[1]))):
        return None  # `40-60`, `40 mA - 60 mA`: a range
    text = f"+- {_spaced(found[2])}"
    mends = m.instead(m.at, m.at + found.end(), text, f"write {text}")
    said = "goes one way only" if found[1] else "stands behind a number without a sign"
    return Wording(f"'{found.group()}' {said}", "if it is off by this", f"write both ends: {ends}", mends)


def _range(m: Mistake) -> Wording | None:
    """`40-60 mA`, `40 to 60 mA`, `40..60 mA`, `from 40..60 mA` where one quantity goes."""
    begins_nothing = m.kind == "character"  # all words are awaited there
    if m.awaits("..") and (not begins_nothing or not RANGED.isdisjoint(m.before.split()[:1])):
        return None
    low = re.search(rf"(?<![+±\d.-])(from[ \t]+)?(?<![\d.])({_QUANTITY})[ \t]*\Z", m.before)
    joint = r"to\b|and\b|or\b" if m.before.split()[:1] == ["needs"] else r"to\b|and\b"
    high = re.match(rf"(?:\.\.|[{DASHES}-]|{joint})[ \t]*({_QUANTITY})(?=\s|#|\Z)", m.after)
    if low is None or high is None or not re.search(_UNIT, low[2] + high[1]):
        return None
    typed = m.line[low.start() : m.at - m.line_start + high.end()]
    if re.search(rf"{_SIGN}[ \t]*{_QUANTITY}[ \t]*\Z", m.before):
        return Wording(
            f"'{typed}' is a range; a spread is one number", "from here on", "write the most that it may be off by"
        )
    text = f"from {_spaced(low[2])} to {_spaced(high[1])}"
    mends = m.instead(m.line_start + low.start(), m.at + high.end(), text, f"write {text}")
    advice = f"write one of both: of what it draws, weighs or measures the larger, {_spaced(high[1])}"
    if m.before.split()[:1] == ["needs"]:
        window = f"accepts {low[2].split()[0]}..{_spaced(high[1])}"
        advice = f"write the voltage that it is made for, and where it works in a line of its own: `{window}`"
        return Wording(f"'{typed}' is a range; what it needs is one voltage", "from here on", advice)
    return Wording(f"'{typed}' is a range; one figure goes here, or from where to where", "from here on", advice, mends)


def _between(m: Mistake) -> Wording | None:
    """`between 40 and 60 mA`."""
    found = re.match(rf"between[ \t]+({_QUANTITY})[ \t]+and[ \t]+({_QUANTITY})(?=\s|#|\Z)", m.after)
    if found is None or "NUMBER" not in m.expected:
        return None
    text = f"from {_spaced(found[1])} to {_spaced(found[2])}"
    mends = m.instead(m.at, m.at + found.end(), text, f"write {text}")
    return Wording("'between' means nothing here", "a number goes here", mends=mends)


def _out_of_place(m: Mistake) -> Wording | None:
    """`+- 1` behind what is off by nothing, behind a range or another spread; `draws +- 350 mA`."""
    found = re.match(rf"({_SIGN})(?:[ \t]*({_QUANTITY}))?", m.after)
    if found is None or _SPREAD in m.expected:
        return None
    typed = found.group()
    if "NUMBER" in m.expected and (not found[2] or found[2].endswith("%")):
        advice = "write before it the number that is off by it"
        return Wording(f"'{found[1]}' has no number before it", "a number goes here", advice)
    if "NUMBER" in m.expected:
        text = _spaced(found[2])
        mends = m.instead(m.at, m.at + found.end(), text, f"write {text}")
        return Wording(f"'{found[1]}' has no number before it", "a number goes here", mends=mends)
    start = m.line_start + len(m.before.rstrip())
    mends = m.instead(start, m.at + found.end(), "", f"delete '{typed}'")
    if re.search(rf"from[ \t]+{_QUANTITY}([ \t]+to[ \t]+{_QUANTITY})?[ \t]*\Z", m.before):
        return Wording(f"a range says itself how far it goes; '{typed}' is too much", "this", mends=mends)
    if re.search(rf"{_SIGN}[ \t]*{_QUANTITY}[ \t]*\Z", m.before):
        return Wording(f"'{typed}' is a second spread", "one goes here", mends=mends)
    said = "a quantity with a unit may be off by something, nothing else is"
    return Wording(f"'{typed}' has no meaning here: {said}", "no spread goes here", mends=mends)


def without_spreads(m: Mistake) -> Mistake:
    """As if no spread could stand there: it may stand wherever a quantity does, and no list of what is expected is longer for it."""
    begun = {"FROM"} if "NUMBER" in m.expected else set()
    found: Mistake = m.replace(expected=m.expected - {_SPREAD} - begun)
    return found


SPREAD_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (
    _unit_behind_the_spread,
    _in_brackets,
    _in_other_words,
    _one_way,
    _range,
    _between,
    _out_of_place,
)
