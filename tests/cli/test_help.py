"""Help and lists are told whole: no line is cut off with dots, and none ends in the middle."""

from __future__ import annotations

import re

import pytest

from rigc.cli import main
from rigc.cli.group import rigc as commands
from rigc.diagnostics.explain import all_kinds, listing, text_of


@pytest.mark.parametrize("command", [[], ["git"], *([name] for name in sorted(commands.commands))])
def test_no_line_of_help_is_cut(capfd: pytest.CaptureFixture[str], command: list[str]) -> None:
    assert main([*command, "--help"]) == 0
    out = capfd.readouterr().out
    assert "..." not in re.sub(r"\[[^\]]*\]\.\.\.|,\.\.\.|, \.\.\.", "", out)


def test_each_rule_is_listed_with_a_whole_sentence() -> None:
    kinds = all_kinds()
    for kind, line in zip(kinds, listing(kinds).splitlines(), strict=True):
        page = " ".join(text_of(kind).split())
        said = line.split(kind.level.word, 1)[1].strip()
        rest = page.removeprefix(said)
        assert rest != page
        assert rest[:1] in ("", ".") or re.match(r"\.\s", rest), line
