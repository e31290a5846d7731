"""Rigs in colour wherever Pygments colours: pages of a documentation, a terminal, a notebook. Pygments finds this by its entry point."""

from __future__ import annotations

from typing import ClassVar

from pygments.lexer import RegexLexer, bygroups, default
from pygments.token import Comment, Keyword, Name, Number, Operator, Punctuation, String, Text, Whitespace

from rigc.syntax.nodes.vocabulary import vocabulary

_NAME = r"[a-z][a-z0-9]*(?:-[a-z0-9]+)*"
_NUMBER = r"[+-]?\d+(?:\.\d+)?"
_UNIT = r"[A-Za-zµμΩ\u2126°%/]+(?:[23](?![0-9A-Za-z]))?"
_ENDS = r"(?![A-Za-z0-9-])"


def _any(words: tuple[str, ...]) -> str:
    """One of the words, whole: the longest first, for some begin others."""
    return f"(?:{'|'.join(sorted(words, key=len, reverse=True))}){_ENDS}"


_V = vocabulary()


class RigLexer(RegexLexer):  # type: ignore[misc]
    """The rig language. What a word means hangs on where it stands: at the beginning of a line, behind one that names, behind a dot."""

    name = "rig"
    aliases: ClassVar = ["rig"]
    filenames: ClassVar = ["*.rig"]
    mimetypes: ClassVar = ["text/x-rig"]
    url = ""
    version_added = ""

    tokens: ClassVar = {
        "root": [
            (r"\s+", Whitespace),
            (r"#[^\n]*", Comment.Single),
            (_any(_V.blocks), Keyword.Declaration, ("line", "named")),
            (_any(_V.naming), Keyword, ("line", "named")),
            (_any(_V.heads), Keyword, "line"),
            default("line"),
        ],
        "named": [
            (rf"([ \t]+)({_NAME})(?![A-Za-z0-9])", bygroups(Whitespace, Name.Variable), "#pop"),
            default("#pop"),
        ],
        "line": [
            (r"\n", Whitespace, "#pop"),
            (r"[{}]", Punctuation, "#pop"),
            (r"[ \t]+", Whitespace),
            (r"#[^\n]*", Comment.Single),
            (r'"(?:[^"\\\n]|\\.)*"', String.Double),
            (r"\d{4}-\d{2}-\d{2}", Number),
            (
                rf"({_NUMBER})([ \t]*)(?!x[ \t]*[0-9+-])(?!{_any(_V.words)})({_UNIT})",
                bygroups(Number, Whitespace, Number.Unit),
            ),
            (_NUMBER, Number),
            (r"->|=>|\.\.|\+-|\+/-|±", Operator),
            (rf"(\.)({_NAME})", bygroups(Punctuation, Name.Attribute)),
            (r"[.,:]", Punctuation),
            (r"x(?=[ \t]*[0-9+-])", Operator),
            (_any((*_V.blocks, *_V.heads, *_V.links)), Keyword),
            (_any(_V.values), Name.Constant),
            (_NAME, Name.Variable),
            (r"[A-Z][A-Z0-9]*[a-z]?", Name.Label),
            (r".", Text),
        ],
    }
