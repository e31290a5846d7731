"""A fault in a template -> its file, its line and what is wrong: neither a fault of the rig nor a bug of rigc.

It lives apart from `templates` so that a caller can catch it without loading the template engine.
"""

from __future__ import annotations


class TemplateMistake(Exception):
    """A template cannot be read or filled in; `line` counts from 1, and is 0 where no line is to blame."""

    def __init__(self, file: str, line: int, message: str) -> None:
        place = f"{file}:{line}" if line else file
        super().__init__(f"{place}: {message}")
        self.file = file
        self.line = line
        self.message = message
