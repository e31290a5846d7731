"""`rigc intake`: a client's list of gear -> units as source text, and what must be asked."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from rigc.cli.commands.completion import rigs
from rigc.cli.screen import Screen

if TYPE_CHECKING:
    from rigc.files.intake.found import Question
    from rigc.files.intake.source_text import Intake


@click.command()
@click.argument("file", type=click.Path(path_type=Path), shell_complete=rigs)
@click.option(
    "-o",
    "--output",
    type=click.Path(dir_okay=False, path_type=Path),
    metavar="FILE",
    help="Where to (default: standard output); never over anything.",
)
@click.option("--template", is_flag=True, help="Write an empty list as FILE instead, for the client to fill in.")
@click.pass_obj
def intake(screen: Screen, file: Path, output: Path | None, template: bool) -> int:
    """Take a list of gear in, as CSV, XLSX or ODS, and print its units as source text.

    Each fact bears the cell that it came from. Nothing is guessed: a cell that is not understood is asked about, and kept as a
    comment. At the end stands what is still missing of each unit. Exit code 1 if something was asked.
    """
    from rigc.output.extras.missing_extra import MissingExtra

    try:
        return _template(screen, file) if template else _taken_in(screen, file, output)
    except MissingExtra as fault:
        raise click.ClickException(f"{fault}\n  do: {fault.help}") from None


def _template(screen: Screen, file: Path) -> int:
    from rigc.cli.report import save
    from rigc.files.intake.template import template

    if file.suffix.lower() != ".xlsx":
        raise click.UsageError(f"the empty list is XLSX; name it '{file.with_suffix('.xlsx').name}'")
    _refuse(file)
    save({file: template()})
    screen.progress(f"wrote {file.as_posix()}; when it is filled in: rigc intake {file.as_posix()}\n")
    return 0


def _taken_in(screen: Screen, file: Path, output: Path | None) -> int:
    from rigc.cli import seam
    from rigc.cli.report import save
    from rigc.files.intake.books import book
    from rigc.files.intake.books.book import NoBook
    from rigc.files.intake.source_text import intake as take_in
    from rigc.files.reading import read_spreadsheet
    from rigc.loader import Unreadable

    if output is not None:
        _refuse(output)
    try:
        data, saved = read_spreadsheet(file)
        made = take_in(book(file.name, data, saved), seam.reader())
    except (NoBook, Unreadable) as fault:
        raise click.ClickException(f"{fault}" + (f"\n  do: {fault.help}" if fault.help else "")) from None
    if output is None:
        screen.out(made.text)
    else:
        save({output: made.text})
    screen.err(_told(file.name, made))
    return int(bool(made.questions))


def _refuse(path: Path) -> None:
    if path.exists() or path.is_symlink():
        raise click.ClickException(f"'{path.as_posix()}' is there already; nothing was written")


def _told(name: str, made: Intake) -> str:
    """What was read in an odd way, what must be asked, each with one thing to do, what is missing of which unit, and the sum."""
    lines = [f"{name} {remark}" for remark in made.found.remarks]
    alike: dict[tuple[str, str], list[Question]] = {}
    for each in made.questions:
        alike.setdefault((each.why, each.do), []).append(each)
    for (why, do), several in alike.items():
        told = [f"{each.where}{f' ({each.name})' if each.name else ''}" for each in several]
        lines += (
            [f"{name}, {told[0]}: {why}"] if len(told) == 1 else [f"{name}: {why}:", *(f"  {each}" for each in told)]
        )
        lines.append(f"  do: {do}")
    lacking = {unit: ", ".join(fact.key for fact in facts) for unit, facts in made.missing.items() if facts}
    if lacking:
        lines.append("missing, without which checks can't tell:")
        lines += [f"  {unit}: {facts}" for unit, facts in lacking.items()]
    facts = sum(len(unit.facts) for unit in made.found.units)
    count = sum(len(each) for each in made.missing.values())
    sums = ((len(made.missing), "unit"), (facts, "fact"), (len(made.questions), "question"), (count, "missing fact"))
    lines.append(", ".join(f"{number} {word}{'' if number == 1 else 's'}" for number, word in sums))
    return "".join(f"{line}\n" for line in lines)
