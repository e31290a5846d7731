"""The colours of editors: made from the grammar as it is, known for each word, and right on a rig of every sort of line."""

from __future__ import annotations

import json
import os
import runpy
import shutil
import subprocess
import tomllib
from importlib.metadata import EntryPoint
from pathlib import Path

import pytest
from cases import ROOT
from pygments.token import Error, Keyword, Name, Text
from syrupy.assertion import SnapshotAssertion

from rigc.output.extras.pygments_lexer import RigLexer
from rigc.syntax.nodes.vocabulary import vocabulary

HERE = Path(__file__).parent
EDITORS = ROOT / "grammar/editors"
NODE = os.environ.get("RIGC_NODE", "")
WORDS = vocabulary().words
SAMPLE = (HERE / "sample.rig").read_text("utf-8")
EXAMPLES = sorted((ROOT / "examples").rglob("*.rig"))

needs_node = pytest.mark.skipif(not NODE or shutil.which("node") is None, reason="needs node, and RIGC_NODE")
needs_vim = pytest.mark.skipif(shutil.which("vim") is None, reason="needs vim")


def test_the_files_are_what_the_grammar_gives() -> None:
    for path, made in runpy.run_path(str(EDITORS / "derive.py"))["FILES"].items():
        assert (EDITORS / path).read_text("utf-8") == made(vocabulary()), "run python grammar/editors/derive.py"


def test_each_word_does_one_thing() -> None:
    """Every word in quotes of the grammar is known, and stands in one group."""
    groups = vocabulary()
    each = (*groups.blocks, *groups.heads, *groups.values, *groups.links)
    assert len(each) == len(set(each)) == len(WORDS)
    assert {"unit", "mains-strip", "all-units"} <= set(groups.blocks)
    assert {"mass", "chain", "input", "accept"} <= set(groups.heads)
    assert {"centre-negative", "buffered", "home"} <= set(groups.values)
    assert {"like", "of", "until"} <= set(groups.links)
    assert set(groups.naming) <= {*groups.blocks, *groups.heads}
    assert {"unit", "input", "usb"} <= set(groups.naming)


def lexed(text: str) -> list[tuple[str, str]]:
    """What stands, and its sort; blanks left out."""
    found = RigLexer(stripnl=False, ensurenl=False).get_tokens(text)
    return [(each, str(kind).removeprefix("Token.")) for kind, each in found if each.strip()]


def test_pygments_finds_the_lexer() -> None:
    """By the entry point that the package declares, and by what Pygments asks of a lexer."""
    told = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]["entry-points"]["pygments.lexers"]
    (found,) = (EntryPoint(name, value, "pygments.lexers").load() for name, value in told.items())
    assert found is RigLexer
    assert (found.aliases, found.filenames) == (["rig"], ["*.rig"])


def test_pygments(snapshot: SnapshotAssertion) -> None:
    assert lexed(SAMPLE) == snapshot


@pytest.mark.parametrize("word", WORDS)
def test_pygments_knows_the_word(word: str) -> None:
    """At the head of a line, and behind a name that no word takes."""
    known = (Keyword, Name.Constant)
    for line in (f"  {word} ", f"  tern-x {word} "):
        kinds = {each: kind for kind, each in RigLexer().get_tokens(line)}
        assert any(kinds[word] in kind for kind in known), (line, kinds)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.relative_to(ROOT / "examples").as_posix())
def test_pygments_leaves_nothing_without_a_colour(path: Path) -> None:
    text = path.read_text("utf-8")
    found = list(RigLexer(stripnl=False, ensurenl=False).get_tokens(text))
    assert "".join(each for _, each in found) == text
    assert [each for kind, each in found if kind in (Text, Error)] == []


def scoped(text: str) -> list[list[tuple[str, str]]]:
    """By vscode-textmate: for each line what stands, and its scope; blanks left out."""
    grammar = EDITORS / "vscode/syntaxes/rig.tmLanguage.json"
    ran = subprocess.run(
        ["node", str(HERE / "tokens.js"), NODE, str(grammar)], input=text.encode(), capture_output=True, check=True
    )
    lines = json.loads(ran.stdout)
    return [[(each, scope) for each, scope in line if each.strip()] for line in lines]


@needs_node
def test_textmate(snapshot: SnapshotAssertion) -> None:
    assert scoped(SAMPLE) == snapshot


@needs_node
def test_textmate_knows_each_word() -> None:
    coloured = ("keyword.", "constant.language.")
    for line in ("  {} ", "  tern-x {} "):
        found = scoped("\n".join(line.format(word) for word in WORDS))
        told = {word: dict(tokens)[word] for word, tokens in zip(WORDS, found, strict=True)}
        assert {word: scope for word, scope in told.items() if not scope.startswith(coloured)} == {}


def in_vim(text: str, folder: Path) -> list[tuple[str, str]]:
    """Each word of a text, and the group that colours its first letter."""
    (folder / "board.rig").write_text(text, "utf-8")
    told = folder / "told.txt"
    given = ("-c", f"set encoding=utf-8 rtp^={EDITORS / 'vim'}", "-c", "filetype on", "-c", "syntax on")
    subprocess.run(
        ["vim", "-es", "-u", "NONE", "-i", "NONE", *given, "-c", "e board.rig", "-S", str(HERE / "groups.vim")],
        cwd=folder,
        env={**os.environ, "RIG_TOLD": str(told)},
        stdin=subprocess.DEVNULL,
        timeout=60,
    )
    rows = (line.split("\t") for line in told.read_text("utf-8").splitlines())
    return [(word, group) for word, group in rows]


@needs_vim
def test_vim(snapshot: SnapshotAssertion, tmp_path: Path) -> None:
    assert in_vim(SAMPLE, tmp_path) == snapshot


@needs_vim
def test_vim_knows_each_word(tmp_path: Path) -> None:
    for line in ("  {}", "  tern-x {}"):
        told = in_vim("\n".join(line.format(word) for word in WORDS), tmp_path)
        groups = {word: group for word, group in told if word != "tern-x"}
        assert set(groups) == set(WORDS)
        assert {word: g for word, g in groups.items() if g not in ("rigBlock", "rigWord", "rigValue", "rigHead")} == {}


def test_the_extension_starts_the_server() -> None:
    """What it names is there: its files, and the command of rigc that it starts."""
    from rigc.cli.group import rigc

    told = json.loads((EDITORS / "vscode/package.json").read_text("utf-8"))
    named = [told["main"], *(each["path"] for each in told["contributes"]["grammars"])]
    named += [each["configuration"] for each in told["contributes"]["languages"]]
    assert all((EDITORS / "vscode" / each).is_file() for each in named)
    command = told["contributes"]["configuration"]["properties"]["rig.command"]["default"]
    assert command[0] == "rigc" and command[1] in rigc.commands


@needs_node
def test_the_extension_packs(tmp_path: Path) -> None:
    """By the usual packer, without the packages that `npm install` would add."""
    out = tmp_path / "rig.vsix"
    vsce = Path(NODE) / "node_modules/.bin/vsce"
    flags = ("--no-dependencies", "--skip-license", "--allow-missing-repository", "-o", str(out))
    folder = tmp_path / "extension"
    shutil.copytree(EDITORS / "vscode", folder, ignore=shutil.ignore_patterns("node_modules"))
    subprocess.run([str(vsce), "package", *flags], cwd=folder, check=True, capture_output=True, timeout=120)
    assert out.stat().st_size > 2000
