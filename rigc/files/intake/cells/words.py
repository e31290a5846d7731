"""Words as people type them (`true bypass`, `centre neg`, `1/4" mono`) -> the words of the language."""

from __future__ import annotations

import re

from rigc.diagnostics.near import nearest
from rigc.files.intake.cells.unclear import Unclear

_SAME = {
    "bypass": {
        "true bypass": "true", "tb": "true", "hardwire": "true", "relay": "true", "buffered bypass": "buffered", "buffer": "buffered",
        "trails bypass": "trails", "with trails": "trails", "always on": "always-on", "none": "always-on",
    },
    "unpowered": {"passes signal": "passes", "passes sound": "passes", "pass": "passes", "mute": "mutes", "muted": "mutes", "silent": "mutes", "no sound": "mutes"},
    "ground": {"neg": "negative", "pos": "positive", "floating": "isolated"},
    "feet": {"no": "none", "no feet": "none", "taken off": "removed", "off": "removed", "stay on": "stay"},
    "base": {"smooth": "flat", "rough": "textured", "screw heads": "screws"},
    "source": {
        "m": "measured", "measurement": "measured", "manual": "leaflet", "datasheet": "leaflet", "data sheet": "leaflet", "spec": "leaflet",
        "spec sheet": "leaflet", "specs": "leaflet", "label": "leaflet", "guess": "assumed", "guessed": "assumed", "estimate": "assumed", "estimated": "assumed",
        "assumption": "assumed",
    },
    "jack": {
        "mono": "ts", "1/4 mono": "ts", "mono 1/4": "ts", "6.3 mm mono": "ts", "6.35 mm mono": "ts", "1/4 ts": "ts", "ts 1/4": "ts", "6.3 mm ts": "ts",
        "6.35 mm ts": "ts", "1/4 trs": "trs", "trs 1/4": "trs", "6.3 mm trs": "trs", "6.35 mm trs": "trs", "3.5 mm trs": "mini-trs",
        "mini trs": "mini-trs", "mini-jack trs": "mini-trs", "xlr-3": "xlr", "xlr 3-pin": "xlr", "din 5": "din", "5-pin din": "din",
    },
}  # fmt: skip
_TRAITS = {
    "digital": "digital", "analogue": "analogue", "analog": "analogue", "passive": "passive", "high gain": "high gain", "high-gain": "high gain",
    "delay": "delay", "reverb": "reverb", "tails": "tails", "inverts": "inverts", "inverts polarity": "inverts", "non-inverting": "non-inverting",
    "splitter": "splitter", "reverse-protected": "reverse-protected", "wants pickup": "wants pickup", "dry-kill": "dry-kill",
}  # fmt: skip
_NEGATIVE = r"(?:neg(?:ative)?|minus|[-−–]ve|[-−–])"
_POSITIVE = r"(?:pos(?:itive)?|plus|\+ve|\+)"
_CENTRE = r"(?:cent(?:re|er)|ctr|c|tip|inner)\.?"


def word(typed: str, words: tuple[str, ...], kind: str) -> str:
    """The word of a column that takes one of some. Raises `Unclear`."""
    text = " ".join(
        typed.lower().replace('"', "").replace("″", "").replace("inch", "").replace(",", ".").split()
    ).strip(" .")
    for spelled in (text, text.replace(" ", "-"), _SAME.get(kind, {}).get(text, "")):
        if spelled in words:
            return spelled
    near = nearest(text, words)
    first = f"write {', '.join(words[:-1])} or {words[-1]}"
    raise Unclear("it is none of the words of its column" + (f"; '{near}' is" if near else ""), first)


def polarity(typed: str) -> str:
    """`centre-negative` or `centre-positive`, or nothing where the text is neither. A tip is the centre of a barrel."""
    text = " ".join(typed.lower().split()).strip(" .()")
    for name, pole, other in (("centre-negative", _NEGATIVE, _POSITIVE), ("centre-positive", _POSITIVE, _NEGATIVE)):
        if re.fullmatch(rf"{_CENTRE}[\s:=-]*{pole}\.?|{pole}\.?[\s-]*{_CENTRE}", text) and not re.fullmatch(
            rf"{_CENTRE}[\s:=]*{other}", text
        ):
            return name
    return ""


def traits(typed: str) -> tuple[str, ...]:
    """The properties in a text. Raises `Unclear` where one is none."""
    parts = [" ".join(part.lower().split()) for part in re.split(r"[,;/+&\n]|\band\b", typed)]
    found = [(part, _TRAITS.get(part, "")) for part in parts if part]
    strange = next((part for part, said in found if not said), "")
    if strange:
        near = nearest(strange, _TRAITS)
        raise Unclear(
            f"'{strange}' is no trait that checks ask for" + (f"; '{near}' is" if near else ""),
            "write traits by commas, or move it to a column 'Note'",
        )
    return tuple(dict.fromkeys(said for _, said in found))
