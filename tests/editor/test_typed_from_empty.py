"""A rig is typed word by word into an empty file: each word of the language, each declared name and each unit is offered where it goes."""

from __future__ import annotations

import re
from pathlib import Path

from editor.desk import LEADS, STARTER, Desk

_NEW = re.compile(r"(unit|supply|instrument|amp|deck|rig|cable|input|output|inlet|outlet)$")
"""Behind these a new name is given."""
_FREE = re.compile(r'"[^"]*"|[+-]?\d[\w.-]*|[{},:]|\.\.|[A-Z]\w*')
"""Texts, numbers, dates, signs and marks: what a person states."""
UNIT_FIRST_SEEN_IN = {"H", "pF", "dBu", "kohm", "Hz", "W", "V", "mA", "g", "mm", "m", "Mohm"}
"""A unit is offered when a line of that first word has been typed before; the first time one writes it oneself."""


def test_every_word_is_offered_where_it_goes(tmp_path: Path) -> None:
    text = re.sub(r"#[^\n]*", "", STARTER.replace("others from mains-box", "drive from mains-box.o1") + LEADS)
    desk = Desk(tmp_path, "")
    missing, asked = [], 0
    for found in re.finditer(r'"[^"]*"|[-=]>|\.\.|[.,:{}]|[A-Za-z0-9µ+-][\w-]*', text):
        word, before = found.group(), text[: found.start()]
        line = before.rpartition("\n")[2].strip()
        if _FREE.fullmatch(word) or word == "." or word == "x" or _NEW.fullmatch(line) or line.endswith(".."):
            continue
        desk.put(before)
        asked += 1
        whole_or_port = any(label == word or label.startswith(f"{word}.") for label in desk.offered())
        if not whole_or_port and word not in UNIT_FIRST_SEEN_IN:
            missing.append(f"{line} | {word}")
    assert not missing, "; ".join(missing)
    assert asked > 150
