"""The text of `rig.lark` -> tables, and what they tell: where a text can't be read, and what may stand where. The only module that imports lark."""

from __future__ import annotations

import gc
import io
import json
import logging
import pickle
import re
from functools import cached_property
from typing import Any

from lark import Lark
from lark.exceptions import UnexpectedCharacters, UnexpectedInput, UnexpectedToken
from lark.lexer import PatternRE, PatternStr, TerminalDef
from lark.parsers.lalr_analysis import Shift

from rigc.record import Record
from rigc.syntax import mistakes
from rigc.syntax.automaton import DISSOLVED, LIST, NODE, WORD, WORDS

_LEAVES = frozenset(("NAME", "MARK", "NUMBER", "UNIT", "STRING", "DATE"))
_WORD_ENDS = r"(?![A-Za-z0-9-])"


class Stopped(Record):
    """Reading stopped at an offset of a text, at something of a `kind` and length, where one of the `expected` terminals could stand."""

    at: int
    kind: str
    length: int
    expected: frozenset[str]


def whole_word(terminal: TerminalDef) -> None:
    """A word of the language ends where the text's word ends: `outlets` is not `outlet` and the name `s`."""
    word = terminal.pattern.value
    if isinstance(terminal.pattern, PatternStr) and re.fullmatch(r"[a-z][a-z-]*", word):
        terminal.pattern, terminal.priority = PatternRE(word + _WORD_ENDS), terminal.priority or 1


class _Data(pickle.Unpickler):
    """Reads lists, texts and numbers alone: what is kept names no code."""

    def find_class(self, module: str, name: str) -> Any:
        raise pickle.UnpicklingError(f"{module}.{name}")


class Tables:
    """The grammar's tables."""

    def __init__(self, lark: Lark) -> None:
        self.lark = lark

    @classmethod
    def build(cls, text: str) -> Tables:
        """Makes the tables from the text of `rig.lark`; takes about a second."""
        return cls(
            Lark(
                text,
                parser="lalr",
                start="file",
                maybe_placeholders=True,
                propagate_positions=True,
                edit_terminals=whole_word,
            )
        )

    @classmethod
    def load(cls, saved: bytes) -> Tables | None:
        """The tables as `save` gave them; None if these bytes are not such tables."""
        logging.getLogger("lark").setLevel(logging.CRITICAL)
        collecting = gc.isenabled()
        gc.disable()
        try:
            return cls(Lark._load_from_dict(**_Data(io.BytesIO(saved)).load()))  # type: ignore[no-untyped-call]
        except Exception:  # what is cut short or of another version can fail in any way; the tables are then made anew
            return None
        finally:
            if collecting:
                gc.enable()

    def save(self) -> bytes:
        """The tables as bytes."""
        into = io.BytesIO()
        self.lark.save(into, exclude_options=("edit_terminals",))
        return into.getvalue()

    @property
    def reserved(self) -> frozenset[str]:
        """The words that some statement takes where a name may stand as well; none of them names a declared thing."""
        rivals: set[str] = set()
        for actions in self._states.values():
            if "NAME" in actions:
                rivals.update(actions)
        words = (self.literals[name] for name in rivals if name in self.literals)
        return frozenset(word for word in words if re.fullmatch(r"[a-z][a-z0-9-]*", word))

    @cached_property
    def literals(self) -> dict[str, str]:
        """The words and signs of the language, and the expressions of what is neither, by terminal."""
        return {terminal.name: terminal.pattern.value.removesuffix(_WORD_ENDS) for terminal in self.lark.terminals}

    @cached_property
    def heads(self) -> dict[str, frozenset[str]]:
        """For each block the words that begin its statements, for the top level under an empty text."""
        found = {}
        for block, opening in {**mistakes.BLOCK_OPENERS, "": ""}.items():
            parser = self.lark.parse_interactive(f"{opening}\n")
            parser.exhaust_lexer()
            accepted = parser.accepts()  # type: ignore[no-untyped-call]
            literals = self.literals
            found[block] = frozenset(literals[name] for name in accepted if literals.get(name, "-")[0].isalpha())
        return found

    def follows(self, block: str, text: str) -> frozenset[str]:
        """What may stand behind the beginning of a statement in a block (at the top level under an empty text): words and signs as they are
        written, and `NAME`, `MARK`, `NUMBER`, `UNIT`, `STRING`, `DATE`. Nothing where that beginning is none."""
        parser = self.lark.parse_interactive(f"{mistakes.BLOCK_OPENERS.get(block, '')}\n{text}")
        try:
            parser.exhaust_lexer()
        except UnexpectedInput:
            return frozenset()
        accepted = parser.accepts()  # type: ignore[no-untyped-call]
        return frozenset(name if name in _LEAVES else self.literals.get(name, "") for name in accepted) - {""}

    def stopped(self, text: str, whole: str) -> Stopped:
        """Where reading `whole`, a text with its last line ended, stops. Raises `AssertionError` where it holds no mistake."""
        try:
            self.lark.parse(whole)
        except UnexpectedToken as error:
            token = error.token
            expected = frozenset(error.accepts or error.expected)
            at = len(text.rstrip()) if token.type == "$END" else _offset(error, text)
            kind = "end of file" if token.type == "$END" else token.type
            return Stopped(at, kind, 0 if token.type in ("$END", "_NL") else len(token), expected)
        except UnexpectedCharacters as error:
            return Stopped(_offset(error, text), "character", 1, frozenset(error.allowed or ()))
        raise AssertionError(f"lark reads what the automaton does not: {text[:80]!r}")

    @property
    def _states(self) -> dict[Any, dict[str, Any]]:
        return self.lark.parser.parser._parse_table.states  # type: ignore[no-any-return]

    @cached_property
    def automaton(self) -> str:
        """What `Automaton` goes by."""
        table = self.lark.parser.parser._parse_table
        rules = {rule: number for number, rule in enumerate(self.lark.rules)}
        states: list[dict[str, int]] = [{} for _ in table.states]
        for state, actions in table.states.items():
            for name, (action, to) in actions.items():
                states[state][name] = to + 1 if action is Shift else -rules[to] - 1
        words = {
            terminal.pattern.value.removesuffix(_WORD_ENDS): terminal.name
            for terminal in self.lark.terminals
            if terminal.pattern.value.endswith(_WORD_ENDS) and terminal.priority == 1
        }
        told = {
            "states": states,
            "rules": [_rule(rule) for rule in self.lark.rules],
            "start": table.start_states["file"],
            "end": table.end_states["file"],
            "words": words,
            "signs": [*_signs([each for each in self.lark.terminals if each.name not in set(words.values())])],
        }
        return json.dumps(told, separators=(",", ":"))


def _offset(error: UnexpectedInput, text: str) -> int:
    return min(max(len(text) if error.pos_in_stream is None else error.pos_in_stream, 0), len(text))


def _signs(terminals: list[TerminalDef]) -> list[tuple[str, str]]:
    """The terminals that are no words, in the order in which lark's lexer tries them, with the words among them; without blanks and remarks, which
    begin as nothing else does."""
    ranked = sorted(
        (each for each in terminals if each.name not in ("BLANK", "COMMENT")),
        key=lambda each: (-each.priority, -each.pattern.max_width, -len(each.pattern.value), each.name),
    )
    before = [each for each in ranked if each.priority > 1]
    told = [(each.name, each.pattern.to_regexp()) for each in ranked]
    return [*told[: len(before)], (WORD, ""), *told[len(before) :]]


def _rule(rule: Any) -> list[Any]:
    """What `Automaton` goes by of a rule, as lark's tree builder would treat it."""
    name = str(rule.origin.name)
    shown = str(rule.alias or name)
    becomes = (
        DISSOLVED
        if name.startswith("_")
        else WORDS
        if shown.endswith("_word")
        else LIST
        if shown.endswith("_list") or shown == "file"
        else NODE
    )
    empty = "".join(str(int(each)) for each in rule.options.empty_indices or ())
    absent = [len(ones) for ones in empty.split("0")] if empty else [0] * (len(rule.expansion) + 1)
    counted, waiting = [], 0
    for number, part in enumerate(rule.expansion):
        waiting += absent[number]
        if rule.options.keep_all_tokens or not (part.is_term and part.filter_out):
            counted.append([number, int(not part.is_term and part.name.startswith("_")), waiting])
            waiting = 0
    alone = int(bool(rule.options.expand1) and not rule.alias)
    return [name, becomes, len(rule.expansion), counted, waiting + absent[-1], alone, shown]
