"""A folder of the user's -> the templates in it, as texts: nothing of them runs here, and nothing outside the folder is read."""

from __future__ import annotations

import os
from pathlib import Path

from rigc.output.own_templates import SUFFIXES, OwnTemplates
from rigc.output.template_mistake import TemplateMistake

MOST_FILES, MOST_BYTES = 500, 4 * 1024 * 1024


def read_templates(folder: Path) -> OwnTemplates:
    """The templates of the folder and of those in it, by name; hidden files and folders are left alone.

    Raises `TemplateMistake` for a file that is no UTF-8 text or cannot be read, a link that leads out, and too many.
    """
    shown = folder.as_posix()
    within = os.path.realpath(folder)
    files: list[tuple[str, str]] = []
    left = MOST_BYTES
    for path in sorted(_found(folder)):
        name = path.relative_to(folder).as_posix()
        if not Path(os.path.realpath(path)).is_relative_to(within):
            raise TemplateMistake(f"{shown}/{name}", 0, "this link leads out of the folder", "copy the file into it")
        text = _text(path, f"{shown}/{name}", left)
        left -= len(text)
        _closed_early(f"{shown}/{name}", text)
        files.append((name, text))
        if len(files) > MOST_FILES:
            raise TemplateMistake(
                shown, 0, f"there are more than {MOST_FILES} templates", "name the folder of yours alone"
            )
    return OwnTemplates(shown, tuple(files))


def _closed_early(shown: str, text: str) -> None:
    """A style stands in the page between two tags: one that holds the second would go on as the page."""
    at = text.lower().find("</style")
    if at >= 0 and shown.endswith(".css"):
        line = text.count("\n", 0, at) + 1
        raise TemplateMistake(shown, line, "the style ends itself here", "take out the tag", text=text)


def _found(folder: Path) -> list[Path]:
    paths = []
    for base, folders, names in os.walk(folder):
        folders[:] = [each for each in folders if not each.startswith(".")]
        paths += [Path(base, name) for name in names if name.endswith(SUFFIXES) and not name.startswith(".")]
    return paths


def _text(path: Path, shown: str, most: int) -> str:
    try:
        if not path.is_file():
            raise TemplateMistake(shown, 0, "this is no file", "take it out of the folder")
        with path.open("rb") as file:
            data = file.read(most + 1)
    except OSError as fault:
        why = (fault.strerror or type(fault).__name__).lower()
        raise TemplateMistake(shown, 0, f"the file cannot be read: {why}", "make it readable") from None
    if len(data) > most:
        size = f"{MOST_BYTES // 1024**2} MB"
        raise TemplateMistake(
            shown, 0, f"the templates are larger than {size} together", "take out what is no template"
        )
    try:
        return data.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as fault:
        line = data[: fault.start].count(b"\n") + 1
        raise TemplateMistake(shown, line, "the file is not UTF-8 text", "save it as UTF-8") from None
