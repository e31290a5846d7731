"""`rigc build`: check rigs, then write their documents, all or none."""

from __future__ import annotations

from functools import partial
from pathlib import Path

import click

from rigc.cli.destination import FORMS, Destination, Documents, Render
from rigc.cli.options import Given, disks, listed, rig_options
from rigc.cli.screen import Screen


@click.command()
@click.argument("paths", nargs=-1, metavar="[PATH]...")
@click.option("-o", "--output", metavar="DIR|FILE|-", help="Where to (default: documents/ beside the rig).")
@click.option("--sheet", "sheets", multiple=True, metavar="NAME,...", help="Only these sheets.")
@click.option("--to", "forms", multiple=True, metavar="|".join(FORMS), help="Only this format. Repeatable.")
@click.option("--paper", type=click.Choice(["a4", "letter"]), default="a4", help="The paper of the printed pages.")
@click.option("--templates", type=click.Path(exists=True, file_okay=False, path_type=Path), help="Your own templates.")
@click.option("--draft", is_flag=True, help="Write in spite of errors; every page is marked DRAFT.")
@rig_options
@click.pass_obj
def build(
    screen: Screen,
    paths: tuple[str, ...],
    output: str | None,
    sheets: tuple[str, ...],
    forms: tuple[str, ...],
    paper: str,
    templates: Path | None,
    draft: bool,
    given: Given,
) -> int:
    """Check rigs and write their documents.

    Nothing is written if one of them has errors.
    """
    from rigc.cli import seam
    from rigc.cli.report import Report

    report = Report(screen, given)
    rigs = disks(paths, given)
    target = Destination(output, listed(forms, FORMS, "format") if forms else (), len(rigs))
    if target.is_stdout and report.uses_stdout:
        raise click.UsageError("standard output is for the documents; give --findings a file")
    names = listed(sheets, list(seam.sheet_names()), "sheet") if sheets else ()
    results = [report.compile(disk) for disk in rigs]
    if all(result and (draft or not result.has_errors) for result in results):
        made = [
            (Path(disk.typed_folder), result.documents(names, draft))
            for disk, result in zip(rigs, results, strict=True)
            if result
        ]
        _write(screen, target, _texts(target, made, partial(render_documents, paper=paper, templates=templates)))
    else:
        screen.err(
            f"nothing was written{'' if draft or report.unreadable else '; --draft writes in spite of errors'}\n"
        )
    return report.finish()


def _texts(target: Destination, made: list[tuple[Path, Documents]], render: Render) -> dict[Path, str]:
    from rigc.cli import seam

    texts: dict[Path, str] = {}
    for folder, documents in made:
        for path, text in target.texts(folder, documents, render, seam.drawing_files).items():
            if path in texts:
                raise click.UsageError(f"two rigs would both write '{path}'; build each with an -o of its own")
            texts[path] = text
    return texts


def render_documents(documents: Documents, form: str, paper: str, templates: Path | None) -> str:
    """The documents as one text; a mistake in a template of the user's ends the command with exit code 2."""
    from rigc.cli import seam
    from rigc.output.template_mistake import TemplateMistake

    try:
        return seam.rendered(documents, form, paper, templates)
    except TemplateMistake as fault:
        raise click.ClickException(f"{fault}; nothing was written") from None


def _write(screen: Screen, target: Destination, texts: dict[Path, str]) -> None:
    if target.is_stdout:
        screen.out("".join(texts.values()))
        return
    from rigc.cli.report import save

    changed = save(texts)
    if screen.verbose:
        screen.err("".join(f"{'wrote' if path in changed else 'unchanged'} {path.as_posix()}\n" for path in texts))
    folders = ", ".join(dict.fromkeys(path.parent.as_posix() for path in texts))
    none = "these sheets have no drawings" if target.forms == ("svg",) else "this much is no rig yet"
    where = f" in {folders}" if folders else f": {none}"
    screen.progress(
        f"{len(texts)} files{where}, {len(changed)} of them changed\n" if texts else f"nothing was written{where}\n"
    )
