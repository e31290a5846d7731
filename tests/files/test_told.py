"""A check tells the same with a cache, without one and with a spoiled one; what is kept hangs on every file that was read, and runs nothing."""

from __future__ import annotations

import os
import pickle
import subprocess
import sys
from pathlib import Path
from shutil import copy, copytree

import pytest
from cases import ROOT

from rigc.cli import main
from rigc.compile import compile_rig
from rigc.diagnostics.saved import restored, saved
from rigc.files import reader
from rigc.files.cache import Cache
from rigc.files.disk import Disk
from rigc.files.reader import CachedReader
from rigc.source import Said
from rigc.syntax.tables import Tables

BOARDS = ("back-bedroom", "tide-line", "harbour-keys", "long-haul")
SMALL = 'language 1\n\nuse "stock.rig"\n\nrig small {\n  revision A 2026-03-02 "first try"\n}\n'
STOCK = "language 1\n"


@pytest.fixture(scope="module")
def tables(tmp_path_factory: pytest.TempPathFactory) -> list[Path]:
    """The grammar's tables as a cache keeps them; to make them takes longer than any check here."""
    home = tmp_path_factory.mktemp("tables")
    (home / "small.rig").write_text("language 1\n")
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(home))
        patch.setattr(reader, "STATES", home / "none")
        main(["check", str(home / "small.rig")])
    return [each for sort in ("tables", "states", "reserved") for each in (home / "rigc").glob(f"{sort}-*")]


@pytest.fixture
def kept(tmp_path: Path, tables: list[Path], monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder of the cache, which holds nothing but the grammar's tables; rigc itself has none, as in a checkout that was edited."""
    monkeypatch.setattr(reader, "STATES", tmp_path / "none")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setenv("RIGC_DEBUG", "1")
    folder = tmp_path / "cache" / "rigc"
    folder.mkdir(mode=0o700, parents=True)
    for each in tables:
        copy(each, folder)
    return folder


@pytest.fixture
def small(tmp_path: Path, kept: Path) -> Path:  # noqa: ARG001
    (tmp_path / "small.rig").write_text(SMALL)
    (tmp_path / "stock.rig").write_text(STOCK)
    return tmp_path / "small.rig"


def check(path: Path, capfd: pytest.CaptureFixture[str], *more: str) -> tuple[int, str, str]:
    return (main(["check", *more, str(path)]), *capfd.readouterr())


def told(kept: Path) -> list[Path]:
    return list(kept.glob("told-*"))


@pytest.mark.parametrize("board", BOARDS)
def test_a_second_check_tells_the_same(board: str, kept: Path, capfd: pytest.CaptureFixture[str]) -> None:
    path = ROOT / "examples" / board / "board.rig"
    for more in ([], ["--findings", "jsonl"]):
        first = check(path, capfd, *more)
        assert told(kept)
        assert check(path, capfd, *more) == first


@pytest.mark.usefixtures("kept")
def test_a_check_tells_the_same_without_a_cache(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    path = ROOT / "examples" / "back-bedroom" / "board.rig"
    first = check(path, capfd)
    (tmp_path / "file").touch()
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "file"))
    assert check(path, capfd) == first


@pytest.mark.usefixtures("kept")
def test_the_second_check_loads_no_compiler() -> None:
    path = ROOT / "examples" / "back-bedroom" / "board.rig"
    code = (
        f"import sys; from rigc.cli import main; main(['check', {str(path)!r}]);"
        "sys.exit(str([name for name in ('lark', 'pint', 'networkx', 'rigc.compile') if name in sys.modules]))"
    )
    runs = [subprocess.run([sys.executable, "-c", code], capture_output=True, text=True) for _ in range(2)]
    assert runs[0].stdout == runs[1].stdout != ""
    assert runs[1].stderr.splitlines()[-1] == "[]"


def test_a_change_of_any_file_is_seen(small: Path, capfd: pytest.CaptureFixture[str]) -> None:
    before = check(small, capfd)
    (small.parent / "stock.rig").write_text("language 1\nunit marl {\n")
    with_unit = check(small, capfd)
    assert before != with_unit
    (small.parent / "stock.rig").write_text(STOCK)
    assert check(small, capfd) == before
    small.write_text(SMALL + "\nunits\n")
    assert check(small, capfd) not in (before, with_unit)


def test_what_is_asked_is_part_of_what_is_kept(small: Path, kept: Path, capfd: pytest.CaptureFixture[str]) -> None:
    for more in ([], ["--on", "2030-01-01"], ["--effort", "10"]):
        check(small, capfd, *more)
    assert len(told(kept)) == 3


def test_a_file_that_is_not_there_is_looked_for_again(
    small: Path, kept: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    """What is said of it hangs on the folder, too, so that nothing is kept."""
    (small.parent / "stock.rig").rename(small.parent / "stocks.rig")
    code, out, _ = check(small, capfd)
    assert (code, told(kept)) == (1, [])
    assert "did you mean" in out or "stocks.rig" in out
    (small.parent / "stocks.rig").rename(small.parent / "stock.rig")
    assert check(small, capfd)[1] != out


def test_a_small_edit_is_read_beside_what_is_kept(
    kept: Path, tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    """The parse that is kept stays until much has changed, and what is told is what a run with nothing kept tells."""
    path = tmp_path / "board.rig"
    text = (ROOT / "examples" / "back-bedroom" / "board.rig").read_text("utf-8").replace("../bench/", "")
    copytree(ROOT / "examples" / "bench", tmp_path, dirs_exist_ok=True)
    path.write_text(text)
    check(path, capfd)
    before = {each.name: each.read_bytes() for each in kept.glob("parsed-*")}
    path.write_text(text.replace("draws 8 mA", "draws 800 mA"))
    edited = check(path, capfd)
    assert {each.name: each.read_bytes() for each in kept.glob("parsed-*")} == before
    for each in (*kept.glob("parsed-*"), *told(kept)):
        each.unlink()
    assert check(path, capfd) == edited


@pytest.mark.parametrize("board", ["back-bedroom", "harbour-keys"])
def test_remarks_on_lines_of_their_own_and_empty_lines_change_nothing_but_places(
    board: str, kept: Path, tmp_path: Path, capfd: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """What is told after such an edit, in places too, is what a run with nothing kept tells, and nothing is compiled."""
    for folder in (board, "bench"):
        copytree(ROOT / "examples" / folder, tmp_path / folder)
    (tmp_path / "rig-root").touch()
    path = tmp_path / board / "board.rig"
    lines = path.read_text("utf-8").splitlines(keepends=True)
    check(path, capfd)
    remarks = ("# first\n", "\n", '  # a "quote that is not closed\n', "# two\n\t\n# lines {\n")
    more = [f"{line}{remarks[at // 7 % 4] if at % 7 == 0 else ''}" for at, line in enumerate(lines)]
    less = [line for line in lines if line.strip() and not line.lstrip().startswith("#")]
    fresh, again = [], []
    for text in ("".join(lines) + "# last", "".join(more), "".join(less)):
        path.write_text(text)
        with monkeypatch.context() as patch:
            patch.setattr("rigc.cli.report.compiled", None)
            again.append(check(path, capfd, "--findings", "text", "--findings", "jsonl"))
        before = told(kept)
        for each in before:
            each.rename(each.with_name(f"away-{each.name}"))
        fresh.append(check(path, capfd, "--findings", "text", "--findings", "jsonl"))
        for each in before:
            each.with_name(f"away-{each.name}").replace(each)
    assert again == fresh
    assert len({out for _, out, _ in again}) == 3


def test_lines_count_while_an_error_stands(small: Path, capfd: pytest.CaptureFixture[str]) -> None:
    """Where no rig is, the last line is pointed at, whatever it holds."""
    small.write_text("language 1\n")
    first = check(small, capfd)
    small.write_text("language 1\n# a remark\n")
    assert "# a remark" in check(small, capfd)[1]
    small.write_text("language 1\n")
    assert check(small, capfd) == first


def test_what_is_said_stands_where_it_did() -> None:
    text = "# one\n\nunit a {\n  # two\n  mass 3 g # three\n\t\n}\n# end"
    said = Said(text)
    assert said.text == "unit a {\n  mass 3 g # three\n}\n"
    for word in ("unit", "a {", "mass", "g #", "three", "}"):
        at = text.index(word)
        assert said.text[said.inside(at) or 0 :].startswith(word)
        assert said.outside(said.text.index(word)) == at
    assert [said.inside(text.index(word)) for word in ("# one", "# two", "# end", "\t\n")] == [None] * 4
    assert (said.inside(len(text)), said.outside(len(said.text))) == (len(said.text), len(text))


@pytest.mark.parametrize("spoil", ["cut", "turned", "empty", "other", "swapped"])
def test_a_spoiled_cache_is_as_none(spoil: str, kept: Path, tmp_path: Path, capfd: pytest.CaptureFixture[str]) -> None:
    copytree(ROOT / "examples" / "back-bedroom", tmp_path / "back-bedroom")
    copytree(ROOT / "examples" / "bench", tmp_path / "bench")
    (tmp_path / "rig-root").touch()
    path = tmp_path / "back-bedroom" / "board.rig"
    first = check(path, capfd)
    documents = ["build", "-o", str(tmp_path / "out"), "--sheet", "cable-list", str(path)]
    main(documents)
    capfd.readouterr()
    built = [each.read_bytes() for each in sorted((tmp_path / "out").iterdir())]
    files = sorted(kept.iterdir())
    assert {each.name.partition("-")[0] for each in files} >= {"told", "parsed", "reserved", "tables", "body", "built"}
    if spoil != "turned":  # to make the tables anew takes longer than all else here
        files = [each for each in files if not each.name.startswith("tables-")]
    whole = [each.read_bytes() for each in files]
    for each, data, other in zip(files, whole, [*whole[1:], whole[0]], strict=True):
        middle = len(data) // 2
        each.write_bytes(
            {
                "cut": data[:middle],
                "turned": data[:middle] + bytes([data[middle] ^ 1]) + data[middle + 1 :],
                "empty": b"",
                "other": b"\x80\x05cos\nsystem\n(S'false'\ntR.",
                "swapped": other,
            }[spoil]
        )
    assert check(path, capfd) == first
    main(documents)
    assert [each.read_bytes() for each in sorted((tmp_path / "out").iterdir())] == built


class Hostile:
    """What runs code when it is read from a pickle."""

    def __init__(self, mark: Path) -> None:
        self.mark = mark

    def __reduce__(self) -> tuple[object, tuple[str]]:
        return os.mkdir, (str(self.mark),)


def test_no_code_is_run_by_reading_what_was_parsed(
    small: Path, kept: Path, tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    first = check(small, capfd)
    parsed = list(kept.glob("parsed-*"))
    assert parsed
    for each in parsed:
        saved = each.read_bytes()[32:]
        end = 40 + int.from_bytes(saved[32:40])
        Cache(kept).write(each.name, saved[:end] + pickle.dumps(Hostile(tmp_path / "done")))
    for each in told(kept):
        each.unlink()
    assert check(small, capfd) == first
    assert Tables.load(pickle.dumps({"data": Hostile(tmp_path / "done"), "memo": {}})) is None
    assert not (tmp_path / "done").exists()


def test_findings_come_back_as_they_were() -> None:
    disk = Disk(ROOT / "examples" / "long-haul" / "board.rig")
    made = compile_rig(disk, disk.name, CachedReader())
    text = saved(made.findings, made.sources)
    assert text is not None
    again = restored(text, made.sources)
    assert len(again) == len(made.findings)
    for one, other in zip(again, made.findings, strict=True):
        assert one.replace(kind=other.kind, follow=()) == other.replace(follow=())
        assert (one.kind.name, one.kind.rule, one.kind.source) == (other.kind.name, other.kind.rule, other.kind.source)
        assert str(one.span) == str(other.span)
        assert len(one.follow) == len(other.follow)
    assert saved(made.findings, made.sources[1:]) is None
