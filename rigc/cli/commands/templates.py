"""`rigc templates`: what our templates are called and hold, and copies of them to start your own from."""

from __future__ import annotations

from pathlib import Path

import click

from rigc.cli.options import listed
from rigc.cli.screen import Screen

GUIDE = "README.md"


@click.command()
@click.argument("names", nargs=-1, metavar="[NAME]...")
@click.option("-o", "--output", type=click.Path(file_okay=False, path_type=Path), help="Copy them into this folder.")
@click.option(
    "--templates", type=click.Path(exists=True, file_okay=False, path_type=Path), help="Your own: say what each does."
)
@click.option(
    "--words", metavar="PATH", help="Print the phrases that this rig's documents are made of, for a words.json."
)
@click.pass_obj
def templates(
    screen: Screen, names: tuple[str, ...], output: Path | None, templates: Path | None, words: str | None
) -> int:
    """List, print or copy the templates of the documents.

    Without a NAME they are listed; NAME prints one (README.md tells what a template is given); -o copies those of these names, all
    if none are given, and writes over no file. `rigc build --templates DIR` takes your own.
    """
    if words is not None:
        return _words(screen, words)
    if templates is not None:
        return _own(screen, templates)
    ours = _ours()
    chosen = listed(names, ours, "template") if names else tuple(ours)
    if output is not None:
        return _copied(screen, output, {name: ours[name] for name in chosen})
    if names:
        screen.out("".join(ours[name] for name in chosen))
        return 0
    from rigc.cli import seam

    width = max(len(name) for name in (*ours, *seam.sheet_names())) + 3
    screen.out("".join(f"{name:<{width}}  {_first_line(text)}\n" for name, text in ours.items()))
    own = [f"{name}.j2" for name in seam.sheet_names() if f"{name}.j2" not in ours]
    screen.out("".join(f"{name:<{width}}  as sheet.j2, until you write one of this name\n" for name in own))
    return 0


def _ours() -> dict[str, str]:
    from rigc.output.templates import our_templates
    from rigc.resources import folder

    return {**our_templates(), GUIDE: (folder("templates") / GUIDE).read_text("utf-8")}


def _first_line(text: str) -> str:
    """What the template says of itself in its comment."""
    line = next((line for line in text.splitlines() if line.startswith(("{#", "/*", "# "))), "")
    return line.strip("{#/* }").rstrip()


def _copied(screen: Screen, folder: Path, texts: dict[str, str]) -> int:
    from rigc.cli.report import save

    paths = {folder / name: text for name, text in texts.items()}
    there = [path for path in paths if path.exists() or path.is_symlink()]
    if there:
        raise click.ClickException(f"'{there[0].as_posix()}' is there already; nothing was written")
    save(paths)
    screen.progress(
        f"wrote {len(paths)} files into {folder.as_posix()}; next: rigc build --templates {folder.as_posix()}\n"
    )
    return 0


def _own(screen: Screen, folder: Path) -> int:
    """What each file of the user's does; what is wrong with one is told, with exit code 1."""
    from rigc.cli import seam
    from rigc.cli.pages import OwnPages
    from rigc.diagnostics.terminal import text
    from rigc.output.own_words import FILE
    from rigc.output.template_mistake import TemplateMistake

    ours = {*_ours(), *(f"{name}.j2" for name in seam.sheet_names())}
    try:
        with OwnPages(folder) as pages:
            added = {f"{name}.j2" for name in pages.sheet_names} - ours
            for name in pages.files:
                does = (
                    "instead of ours"
                    if name in ours
                    else "an added sheet"
                    if name in added
                    else "for others to take in"
                )
                screen.out(f"{name}  {'your wording' if name == FILE else does}\n")
    except TemplateMistake as mistake:
        screen.found(text((mistake.finding(),), colour=screen.colour))
        return 1
    return 0


def _words(screen: Screen, path: str) -> int:
    """As JSON with nothing beside each phrase, to be filled in; a phrase left so stays ours."""
    import json

    from rigc.cli import seam
    from rigc.cli.options import Given, disks
    from rigc.cli.report import NO_ANSWER, Report
    from rigc.output.own_words import phrases

    report = Report(screen, Given(None, "stdin.rig", None, (), "error"))
    (disk,) = disks([path], report.given)
    result = report.compile(disk)
    if result is None:
        return NO_ANSWER
    found = dict.fromkeys((*phrases(result.documents((), True)), *seam.fixed_words()), "")
    screen.out(json.dumps(found, ensure_ascii=False, indent=2) + "\n")
    return report.finish()
