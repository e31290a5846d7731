"""A file -> what can be told of it before it is read: signs that are no text, blanks that are none, marks that a merge left.

What is told is also put out of the way, so that all other mistakes are found in the same run: the text comes back as long
as it was, so that every place in it stays where it is.
"""

from __future__ import annotations

import re
import unicodedata

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Mend, Replace
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax.each_slip_once import MOST_PLACES
from rigc.syntax.mistakes import MALFORMED, UNREADABLE

_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f\ud800-\udfff\ufffe\uffff]")
_KEPT = r'"(?:\\.|[^"\\\n])*"|#[^\n]*'
_BLANK = "\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000"
_UNSEEN = "\u00ad\u200b-\u200f\u2060\ufeff"
_ODD = re.compile(rf"{_KEPT}|([{_BLANK}])|([{_UNSEEN}])")
_MERGE = re.compile(
    r"^<<<<<<<[^\n]*\n(?P<ours>(?:.*\n)*?)(?:\|\|\|\|\|\|\|[^\n]*\n(?:.*\n)*?)?=======\n(?P<theirs>(?:.*\n)*?)>>>>>>>[^\n]*(?:\n|\Z)",
    re.MULTILINE,
)
_BROKEN_TEXT = re.compile(
    r'^(?:[^"#\n]|"[^"\n]*")*(?P<quote>"[^"\\\n{}]*?)(?P<between>[ \t]*\n[ \t]*)[^"#\n{}]*"(?=[ \t]*$)', re.MULTILINE
)
"""A text whose quote closes at the end of the next line, which holds no other."""


class Looked(Record):
    """The text to read, as long as the source's; what was found; and what of the source is not in the text."""

    text: str
    findings: tuple[Diagnostic, ...]
    passed_over: tuple[Span, ...]


def looked_at(source: Source) -> Looked | None:
    """The source before reading; None where it is no text at all, which `no_text` tells."""
    if _CONTROL.search(source.text):
        return None
    text, merged, passed_over = _without_merges(source)
    text, broken = _with_whole_texts(source, text)
    text, odd = _with_plain_blanks(source, text)
    return Looked(text, (*merged, *broken, *odd), passed_over)


def no_text(source: Source) -> Diagnostic:
    """The finding on the first sign that never belongs in text."""
    control = _CONTROL.search(source.text)
    assert control is not None
    return UNREADABLE.at(
        Span(source, control.start(), control.end()),
        f"the sign U+{ord(control.group()):04X} is no text",
        label="this sign",
        help="save the file as plain text in UTF-8",
    )


def _without_merges(source: Source) -> tuple[str, tuple[Diagnostic, ...], tuple[Span, ...]]:
    """The text with the first of the two versions at each place that a merge left open."""
    text, findings, gone = source.text, [], []
    for merge in _MERGE.finditer(source.text) if "<<<<<<<" in source.text else ():
        whole = Span(source, merge.start(), merge.end())
        findings.append(_merge(source, merge, whole))
        gone.append(whole)
        for start, end in ((merge.start(), merge.start("ours")), (merge.end("ours"), merge.end())):
            text = text[:start] + re.sub(r"[^\n]", " ", text[start:end]) + text[end:]
    return text, tuple(findings), tuple(gone)


def _merge(source: Source, merge: re.Match[str], whole: Span) -> Diagnostic:
    first = source.text.find("\n", merge.start())
    marks = [source.text.index("\n=======\n", merge.end("ours") - 1) + 1, source.text.rindex(">>>>>>>", 0, merge.end())]
    return MALFORMED.at(
        Span(source, merge.start(), first),
        "git left two versions of these lines here: a merge was not finished",
        label="the first version begins here",
        also=(
            Label(Span(source, marks[0], marks[0] + 7), "the second begins here"),
            Label(Span(source, marks[1], marks[1] + 7), "and ends here"),
        ),
        mends=(
            Mend("keep the first version and delete the marks", (Replace(whole, merge["ours"]),)),
            Mend("keep the second version and delete the marks", (Replace(whole, merge["theirs"]),)),
        ),
    )


def _with_whole_texts(source: Source, text: str) -> tuple[str, tuple[Diagnostic, ...]]:
    """The text with each text in quotes that goes on in the next line on one line."""
    findings = []
    for broken in _BROKEN_TEXT.finditer(text):
        start, end = broken.span("between")
        findings.append(
            MALFORMED.at(
                Span(source, broken.start("quote"), start),
                "this text goes on in the next line, and a text ends with its line",
                label="opened here",
                also=(Label(Span(source, broken.end() - 1, broken.end()), "closed here"),),
                mends=(
                    Mend(
                        r"write both parts on one line, with \n between them",
                        (Replace(Span(source, start, end), r"\n"),),
                    ),
                ),
            )
        )
        text = text[:start] + " " * (end - start) + text[end:]
    return text, tuple(findings)


def _with_plain_blanks(source: Source, text: str) -> tuple[str, tuple[Diagnostic, ...]]:
    found = [each for each in _ODD.finditer(text) if each[1] or each[2]] if not text.isascii() else []
    if not found:
        return text, ()
    spans = [Span(source, each.start(), each.end()) for each in found]
    sign = found[0].group()
    what = "is no plain blank" if found[0][1] else "can't be seen"
    name = unicodedata.name(sign, "no name").lower()
    told = MALFORMED.at(
        spans[0],
        f"the sign here is a {name} (U+{ord(sign):04X}), which {what}",
        label="here",
        also=tuple(Label(span, "and here") for span in spans[1:MOST_PLACES]),
        note=f"{len(spans)} of them are in this file" if len(spans) > MOST_PLACES else "",
        mends=(
            Mend(
                "type a plain blank in its place" if found[0][1] else "delete it",
                tuple(Replace(span, " " if each[1] else "") for span, each in zip(spans, found, strict=True)),
            ),
        ),
    )
    letters = list(text)
    for each in found:
        letters[each.start()] = " "
    return "".join(letters), (told,)
