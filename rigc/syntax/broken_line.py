"""Text that could not be read at one place -> the text without the statement there, as long as before."""

from __future__ import annotations

from rigc.record import Record


class Mended(Record):
    """The text to try next, and the stretch of the old one that was given up (empty where nothing was)."""

    text: str
    start: int
    end: int


def without_statement(text: str, at: int, header_end: int) -> Mended | None:
    """Gives up the statement around `at`; None where nothing is left to give up.

    `header_end` is where the block's inside begins, 0 outside of blocks. A closing brace behind a statement is kept, and
    where it alone was the fault it is put on a line of its own.
    """
    start, end = _statement_around(text, at, header_end)
    if header_end and (closing := _closing(text, start, end)) >= 0:
        if at == closing and text[at - 1] in " \t":
            return Mended(f"{text[: at - 1]}\n{text[at:]}", at, at)
        end = closing
    if not text[start:end].strip():
        return None
    return Mended(f"{text[:start]}{' ' * (end - start)}{text[end:]}", start, end)


def _statement_around(text: str, at: int, header_end: int) -> tuple[int, int]:
    """The line around `at`, with the lines that a broken chain joins to it."""
    start = text.rfind("\n", 0, at) + 1
    while start > header_end and _joins(text, start - 1):
        start = text.rfind("\n", 0, start - 1) + 1
    end = _line_end(text, at)
    while end < len(text) and _joins(text, end):
        end = _line_end(text, end + 1)
    return max(start, header_end), end


def _joins(text: str, line_end: int) -> bool:
    """Whether the line that ends there goes on in the next."""
    line = text[text.rfind("\n", 0, line_end) + 1 : line_end]
    return line.split("#")[0].rstrip().endswith(("->", "=>"))


def _line_end(text: str, at: int) -> int:
    end = text.find("\n", at)
    return len(text) if end < 0 else end


def _closing(text: str, start: int, end: int) -> int:
    """The closing brace at the end of a statement's line; -1 where there is none."""
    line = text[start:end].split("#")[0].rstrip()
    within = line.count('"') % 2  # of a text without its closing quote, as of a label: "{id} {here}
    return start + len(line) - 1 if line.endswith("}") and line[:-1].strip() and not within else -1
