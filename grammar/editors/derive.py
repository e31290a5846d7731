"""Writes the colours of the editors from the grammar: `python grammar/editors/derive.py`, after each change of rig.lark.

A TextMate grammar (`vscode/syntaxes/rig.tmLanguage.json`, which other editors read, too) and a Vim syntax file. What Pygments uses needs
no file: its lexer reads the grammar itself.
"""

from __future__ import annotations

import json
from pathlib import Path

from rigc.syntax.nodes.vocabulary import Vocabulary, vocabulary

HERE = Path(__file__).parent
NAME = "[a-z][a-z0-9]*(?:-[a-z0-9]+)*"
NUMBER = r"[+-]?\d+(?:\.\d+)?"
UNIT = r"[A-Za-zµμΩ\x{2126}°%/]+(?:[23](?![0-9A-Za-z]))?"


def any_of(words: tuple[str, ...]) -> str:
    """One of the words, whole; the longest first, for some begin others."""
    return f"(?:{'|'.join(sorted(words, key=len, reverse=True))})(?![A-Za-z0-9-])"


def textmate(words: Vocabulary) -> str:
    """The grammar for editors that colour by TextMate's rules. One line is one statement, so every rule lies within a line."""
    plain = tuple(each for each in (*words.blocks, *words.heads, *words.links))
    rules = [
        {"name": "comment.line.number-sign.rig", "match": "#.*$"},
        {
            "name": "string.quoted.double.rig",
            "begin": '"',
            "end": '"|$',
            "patterns": [{"name": "constant.character.escape.rig", "match": r"\\."}],
        },
        {
            "match": rf"(?:^|(?<=\{{))[ \t]*({any_of(words.blocks)})(?:[ \t]+({NAME})(?![A-Za-z0-9]))?",
            "captures": {"1": {"name": "keyword.control.block.rig"}, "2": {"name": "entity.name.type.rig"}},
        },
        {
            "match": rf"(?:^|(?<=\{{))[ \t]*({any_of(words.naming)})(?:[ \t]+({NAME})(?![A-Za-z0-9]))?",
            "captures": {"1": {"name": "keyword.other.statement.rig"}, "2": {"name": "variable.other.rig"}},
        },
        {
            "match": rf"(?:^|(?<=\{{))[ \t]*({any_of(words.heads)})",
            "captures": {"1": {"name": "keyword.other.statement.rig"}},
        },
        {"name": "constant.numeric.date.rig", "match": r"\d{4}-\d{2}-\d{2}"},
        {
            "match": rf"({NUMBER})[ \t]*(?!x[ \t]*[0-9+-])(?!{any_of(words.words)})({UNIT})",
            "captures": {"1": {"name": "constant.numeric.rig"}, "2": {"name": "keyword.other.unit.rig"}},
        },
        {"name": "constant.numeric.rig", "match": NUMBER},
        {"name": "keyword.operator.rig", "match": r"->|=>|\.\.|\+-|\+/-|±|x(?=[ \t]*[0-9+-])"},
        {
            "match": rf"(\.)({NAME})",
            "captures": {"1": {"name": "punctuation.accessor.rig"}, "2": {"name": "variable.other.member.rig"}},
        },
        {"name": "keyword.other.rig", "match": any_of(plain)},
        {"name": "constant.language.rig", "match": any_of(words.values)},
        {"name": "variable.other.rig", "match": rf"{NAME}(?![A-Za-z0-9])"},
        {"name": "constant.other.mark.rig", "match": "[A-Z][A-Z0-9]*[a-z]?(?![A-Za-z0-9])"},
    ]
    made = {"name": "rig", "scopeName": "source.rig", "fileTypes": ["rig"], "patterns": rules}
    return json.dumps(made, ensure_ascii=False, indent=2) + "\n"


def vim(words: Vocabulary) -> str:
    """The syntax file of Vim; a later rule wins where two match at one place, a keyword over all."""
    name = NAME.replace("(?:", "%(")
    start = r"%(^|\{)@1<=\s*"
    lines = [
        '" Written by grammar/editors/derive.py from grammar/rig.lark.',
        'if exists("b:current_syntax")',
        "  finish",
        "endif",
        "syntax case match",
        "syntax iskeyword @,48-57,-",
        "syntax sync minlines=1",
        rf"syntax match rigName /\v<{name}>/",
        r"syntax match rigMark /\v<[A-Z][A-Z0-9]*[a-z]?>/",
        rf"syntax match rigUnit /\v%(x[ \t]*[0-9+-]|%({_vim_words(words.words)})>)@![A-Za-zµμΩ°%\/]+[23]?/ contained",
        r"syntax match rigNumber /\v[+-]?\d+%(\.\d+)?/ nextgroup=rigUnit skipwhite",
        r"syntax match rigDate /\v\d{4}-\d{2}-\d{2}/",
        r"syntax match rigSign /\v-\>|\=\>|\.\.|\+-|\+\/-|±|x\ze[ \t]*[0-9+-]/",
        *(f"syntax keyword rigValue {line}" for line in _lines(words.values)),
        *(f"syntax keyword rigWord {line}" for line in _lines((*words.heads, *words.links))),
        *(f"syntax keyword rigBlock {line}" for line in _lines(words.blocks)),
        rf"syntax match rigJack /\v\.%({name})>/",
        rf"syntax match rigHead /\v{start}%({_vim_words(words.naming)})>/ contains=rigWord nextgroup=rigNamed skipwhite",
        rf"syntax match rigNamed /\v<{name}>/ contained",
        r'syntax region rigText start=/"/ skip=/\\./ end=/"/ oneline',
        "syntax match rigComment /#.*/ contains=@Spell",
        "highlight default link rigName Identifier",
        "highlight default link rigNamed Identifier",
        "highlight default link rigHead Statement",
        "highlight default link rigJack Special",
        "highlight default link rigMark Label",
        "highlight default link rigUnit Type",
        "highlight default link rigNumber Number",
        "highlight default link rigDate Number",
        "highlight default link rigSign Operator",
        "highlight default link rigValue Constant",
        "highlight default link rigWord Statement",
        "highlight default link rigBlock Structure",
        "highlight default link rigText String",
        "highlight default link rigComment Comment",
        'let b:current_syntax = "rig"',
    ]
    return "".join(f"{line}\n" for line in lines)


def _vim_words(words: tuple[str, ...]) -> str:
    return "|".join(sorted(words, key=len, reverse=True))


def _lines(words: tuple[str, ...]) -> list[str]:
    """Eight words a line."""
    return [" ".join(words[at : at + 8]) for at in range(0, len(words), 8)]


FILES = {"vscode/syntaxes/rig.tmLanguage.json": textmate, "vim/syntax/rig.vim": vim}


if __name__ == "__main__":
    for path, made in FILES.items():
        (HERE / path).write_text(made(vocabulary()), "utf-8")
