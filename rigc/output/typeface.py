"""The typeface of pages and drawings, carried inside each file: the same letters, and widths, on every machine.

Each of its four cuts is two files of `templates/fonts/`: one with the characters that every sheet has, one with the accented
letters, which a file carries only if it has one. All other characters are those of the machine's own fonts.
"""

from __future__ import annotations

from base64 import b64encode
from functools import lru_cache
from itertools import pairwise

from rigc.resources import folder

FAMILY = "Lidfolder Sans"
FALLBACK = "system-ui, 'Liberation Sans', Helvetica, Arial, sans-serif"

PLAIN, CONDENSED = ("regular", "bold"), ("condensed", "condensed-bold")
_LOOKS = {
    "regular": "font-weight:400",
    "bold": "font-weight:700",
    "condensed": "font-weight:400;font-stretch:75%",
    "condensed-bold": "font-weight:700;font-stretch:75%",
}

SIGNS = "\u00a0°±²³µ·½×ΔΣΩμπστω–—‘’“”•…₀₁₂₃←↑→↓−√≈≠≤≥▲△■□◆✓✗"
COMMON = "".join(map(chr, range(0x20, 0x7F))) + SIGNS
"""Characters that the first file of each cut has."""
ACCENTED = "".join(sorted({*map(chr, range(0xA1, 0x180)), *"ȘșȚț„′″↔∞"} - set(COMMON)))
"""Characters that the second one has: the rest of Latin-1 and Latin Extended-A, and a few signs."""


def faces(text: str, cuts: tuple[str, ...]) -> str:
    """The CSS that gives a file with this text these cuts, keys of the four above."""
    parts = {"": COMMON, **({"-accented": ACCENTED} if set(text) & set(ACCENTED) else {})}
    return "".join(_face(cut, part, signs) for cut in cuts for part, signs in parts.items())


def page_faces(page: str) -> str:
    """The CSS of the cuts that a page of HTML is set in; the condensed ones only where a class of it wants them."""
    narrow = any(f'class="{name}' in page for name in ("dense", "written", "tight", "beside"))
    return faces(page, PLAIN + CONDENSED if narrow else PLAIN)


@lru_cache(maxsize=8)
def _face(cut: str, part: str, signs: str) -> str:
    data = b64encode((folder("templates") / "fonts" / f"{cut}{part}.woff2").read_bytes()).decode("ascii")
    return (
        f"@font-face{{font-family:'{FAMILY}';{_LOOKS[cut]};unicode-range:{_ranges(signs)};"
        f"src:url(data:font/woff2;base64,{data})format('woff2')}}\n"
    )


def _ranges(signs: str) -> str:
    codes = sorted(map(ord, signs))
    starts = [codes[0], *(after for before, after in pairwise(codes) if after != before + 1)]
    ends = [*(before for before, after in pairwise(codes) if after != before + 1), codes[-1]]
    return ",".join(f"U+{a:X}" if a == b else f"U+{a:X}-{b:X}" for a, b in zip(starts, ends, strict=True))
