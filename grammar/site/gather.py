"""The files of the project -> the pages of its site: those that people read as they are, and one of each rule and of the sheets.

MkDocs calls `on_files` and `on_page_markdown`. A rule's page ends with an example: the smallest rig of the tests that trips it, and
what rigc tells of it, word for word, as a test holds it.
"""

from __future__ import annotations

import posixpath
import re
from functools import cache
from pathlib import Path
from typing import Any

from rigc.cli import seam
from rigc.diagnostics.explain import all_kinds, page

ROOT = Path(__file__).resolve().parents[2]
OURS = (
    "README.md",
    "DEVELOPERS.md",
    "grammar/README.md",
    "grammar/install.md",
    "grammar/intake.md",
    "grammar/library.md",
    "grammar/editors/README.md",
    "grammar/editors/server.md",
    "templates/README.md",
)
_LINK = re.compile(r"(?<!!)\[([^\]\n]+)\]\(([^)\s]+)\)")


def on_files(files: Any, config: Any) -> Any:
    """Adds our pages to those of the site, and the colours of code."""
    from mkdocs.structure.files import File
    from pygments.formatters import HtmlFormatter

    texts = {name: (ROOT / name).read_text("utf-8") for name in OURS}
    colours = (Path(__file__).parent / "pages" / "colours.css").read_text("utf-8")
    texts |= generated() | {"colours.css": colours + HtmlFormatter().get_style_defs(".codehilite")}
    for name, text in texts.items():
        if files.get_file_from_path(name) is not None:
            files.remove(files.get_file_from_path(name))
        files.append(File.generated(config, name, content=text))
    return files


def on_page_markdown(markdown: str, page: Any, config: Any, files: Any) -> str:  # noqa: ARG001
    """A link to a file that is no page of the site becomes its text; one to a folder goes to the page that tells of it."""
    here = posixpath.dirname(page.file.src_uri)

    def mended(found: re.Match[str]) -> str:
        text, target = found[1], found[2]
        if re.match(r"[a-z]+:|#", target):
            return found[0]
        path, _, part = target.partition("#")
        whole = posixpath.normpath(posixpath.join(here, path))
        known = next((each for each in (whole, f"{whole}/README.md") if files.get_file_from_path(each)), None)
        if known is None:
            return text
        return f"[{text}]({posixpath.relpath(known, here or '.')}{f'#{part}' if part else ''})"

    return _LINK.sub(mended, markdown)


def generated() -> dict[str, str]:
    """The pages that are made: the list of rules, a page of each, the sheets."""
    kinds = all_kinds()
    lines = (f"| [{kind.name}](rules/{kind.name}.md) | {kind.level.word} | {_first(kind.page)} |" for kind in kinds)
    rules = (
        "# Rules\n\nWhat rigc can find. `rigc explain RULE` prints these pages.\n\n| Rule | Level | |\n|---|---|---|\n"
    )
    pages = {"rules.md": rules + "".join(f"{line}\n" for line in lines), "sheets.md": _sheets()}
    return pages | {f"rules/{kind.name}.md": rule_page(kind.name) for kind in kinds}


def rule_page(name: str) -> str:
    """What `rigc explain` prints, and the example."""
    told = page(all_kinds(), name)
    found = example(name)
    head = f"# {name}\n\n{told.partition(chr(10))[0]}\n\n{_prose(told)}\n"
    if found is None:
        return head
    rig, answer = found
    source = f"```rig\n{rig}```\n\n" if rig else ""
    return f"{head}\n## An example\n\n{source}rigc tells:\n\n```text\n{answer}```\n"


def example(name: str) -> tuple[str, str] | None:
    """The smallest rig of the tests that trips the rule, and what is told; of a wrong line alone only that. One that can't be checked is the last choice."""

    def how_fit(each: tuple[str, str]) -> tuple[bool, bool, int]:
        told = re.search(rf"^(.*) \[{name}\]$", each[1], re.MULTILINE)
        return told is not None and "can't-check:" in told[1], not each[0], len(each[0]) + len(each[1])

    return min(_examples().get(name, ()), key=how_fit, default=None)


@cache
def _examples() -> dict[str, list[tuple[str, str]]]:
    made: dict[str, list[tuple[str, str]]] = {}
    for path in sorted((ROOT / "tests").glob("**/expected/**/*.txt")):
        if "reports" in path.parts:  # whole folders of documents, no answers of a check
            continue
        answer = path.read_text("utf-8")
        parts = ["cases" if part == "expected" else part for part in path.relative_to(ROOT).parts]
        rig = ROOT.joinpath(*parts).with_suffix(".rig")
        for name in set(re.findall(r"\[([a-z-]+)\]$", answer, re.MULTILINE)):
            made.setdefault(name, []).append((rig.read_text("utf-8") if rig.is_file() else "", answer))
    return made


def _sheets() -> str:
    told = ((name, *title.partition(": ")[::2]) for name, title in seam.sheets())
    head = "# Sheets\n\nEach with the name that `--sheet` and `rigc show` take.\n\n| Sheet | Name | What it tells |\n|---|---|---|\n"
    return head + "".join(f"| {title} | `{name}` | {about} |\n" for name, title, about in told)


def _prose(told: str) -> str:
    """The page of a rule as paragraphs, a part beginning where its word does; what would act as Markdown is text."""
    parts = re.split(r"\n(?=\n)|\n(?=(?:Why it matters|What to do|Source|Rule):)", told.partition("\n")[2])
    plain = (
        re.sub(r"([*_\[])", r"\\\1", " ".join(part.split())).replace("<", "&lt;") for part in parts if part.strip()
    )
    return "\n\n".join(re.sub(r"^(Why it matters|What to do|Source|Rule):", r"**\1:**", part) for part in plain)


def _first(text: str) -> str:
    return " ".join(text.split("\n\n")[0].split()).replace("|", "\\|")
