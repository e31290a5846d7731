"""Lines by which it is sought what another was to be: so many for one file, and what was sought before counts as if it was sought again."""

from __future__ import annotations

import pytest

from rigc.syntax import lines_tried
from rigc.syntax.lines_tried import LinesTried, Sought

KEY = ("unit", "mass g 400", False)


def sought(lines: LinesTried, readings: int) -> list[str]:
    """What a search comes to that reads so many lines, of which the last one reads."""

    def seek() -> list[str]:
        return [text for text in map(str, range(1, readings + 1)) if lines.reads("unit", text)]

    return lines.sought(KEY, seek)


@pytest.mark.parametrize(
    ("before", "found"),
    [
        (0, ["5"]),
        (4, ["5"]),
        (5, ["5"]),
        (6, []),
    ],  # ten readings for one file: six before leave four, and the fifth line is the one that reads
)
def test_what_is_known_counts_as_if_it_was_read(monkeypatch: pytest.MonkeyPatch, before: int, found: list[str]) -> None:
    monkeypatch.setattr(lines_tried, "MOST", 10)
    known: Sought = {}
    first = LinesTried(lambda _, line: line == "5", known)
    assert sought(first, 5) == ["5"]
    assert known == {KEY: (["5"], 5)}
    for kept in (known, dict[lines_tried.Key, tuple[list[str], int]]()):
        again = LinesTried(lambda _, line: line == "5", kept)
        for _ in range(before):
            again.reads("unit", "another")
        assert sought(again, 5) == found
        assert [again.reads("unit", "5") for _ in range(6 - before)] == [*[True] * (5 - before), None][: 6 - before]


def test_what_was_cut_short_is_not_kept(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(lines_tried, "MOST", 4)
    known: Sought = {}
    assert sought(LinesTried(lambda _, line: line == "5", known), 5) == []
    assert known == {}
