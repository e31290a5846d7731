"""All files or none, whatever goes wrong half-way."""

from __future__ import annotations

import contextlib
import errno
import itertools
import json
import os
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from rigc.files import writing
from rigc.files.folder_lock import alone_in
from rigc.files.journal import settle_for_reading
from rigc.files.writing import NotWritable, write_all


def listing(folder: Path) -> dict[str, str]:
    """Every file below a folder, hidden ones too, and its text."""
    return {str(path.relative_to(folder)): path.read_text() for path in sorted(folder.rglob("*")) if path.is_file()}


@pytest.fixture
def old(tmp_path: Path) -> Path:
    for name in ("a.md", "b.md"):
        (tmp_path / name).write_text(f"old {name}\n")
    return tmp_path


def new_texts(folder: Path) -> dict[Path, str]:
    return {folder / name: f"new {name}\n" for name in ("a.md", "b.md", "made/c.md")}


OLD = {"a.md": "old a.md\n", "b.md": "old b.md\n"}
NEW = {"a.md": "new a.md\n", "b.md": "new b.md\n", "made/c.md": "new made/c.md\n"}


def test_everything_is_written_and_nothing_else_left(old: Path) -> None:
    changed = write_all(new_texts(old))
    assert changed == tuple(new_texts(old))
    assert listing(old) == {"a.md": "new a.md\n", "b.md": "new b.md\n", "made/c.md": "new made/c.md\n"}


def test_bytes_are_utf8_and_line_ends_are_kept(tmp_path: Path) -> None:
    write_all({tmp_path / "x": "4.7 kΩ\nrow\r\n"})
    assert (tmp_path / "x").read_bytes() == b"4.7 k\xce\xa9\nrow\r\n"


def test_an_unchanged_file_keeps_its_time_stamp(old: Path) -> None:
    os.utime(old / "a.md", (1000, 1000))
    assert write_all({old / "a.md": "old a.md\n", old / "b.md": "new\n"}) == (old / "b.md",)
    assert (old / "a.md").stat().st_mtime == 1000


def test_what_somebody_saved_meanwhile_is_not_written_over(old: Path) -> None:
    texts = new_texts(old)
    read = {path: path.read_bytes() for path in texts if path.exists()}
    mine = next(iter(read))
    mine.write_text("saved by hand\n", "utf-8")
    before = listing(old)
    with pytest.raises(NotWritable, match="somebody has saved it since it was read; nothing was written"):
        write_all(texts, read)
    assert listing(old) == before
    write_all(texts, {path: path.read_bytes() for path in read})
    assert listing(old) != before


def test_the_rights_of_a_file_stay(old: Path) -> None:
    (old / "a.md").chmod(0o640)
    write_all({old / "a.md": "new\n"})
    assert (old / "a.md").stat().st_mode & 0o777 == 0o640


def test_a_link_stays_a_link(old: Path) -> None:
    (old / "link.md").symlink_to(old / "a.md")
    write_all({old / "link.md": "new\n"})
    assert (old / "link.md").is_symlink()
    assert (old / "a.md").read_text() == "new\n"


def failing_after(number: int, fault: BaseException, real: Callable[..., Any]) -> Callable[..., Any]:
    """A function that works that many times, and then does half its work and raises."""
    left = iter(range(number))

    def call(path: Path, *rest: object) -> object:
        if next(left, None) is None:
            if rest and isinstance(rest[0], bytes):
                real(path, rest[0][:3])
            raise fault
        return real(path, *rest)

    return call


@pytest.mark.parametrize("written", [0, 1, 2])
def test_a_full_disk_leaves_the_old_files(old: Path, monkeypatch: pytest.MonkeyPatch, written: int) -> None:
    full = OSError(errno.ENOSPC, "No space left on device")
    monkeypatch.setattr(writing, "_write", failing_after(written, full, writing._write))
    with pytest.raises(NotWritable, match=r"cannot write '.*': no space left on device; nothing was written"):
        write_all(new_texts(old))
    assert listing(old) == OLD
    assert not (old / "made").exists()


@pytest.mark.parametrize("renamed", [0, 1, 2])
@pytest.mark.parametrize("fault", [KeyboardInterrupt(), OSError(errno.EIO, "Input/output error")])
def test_a_fault_among_the_renames_puts_the_old_files_back(
    old: Path, monkeypatch: pytest.MonkeyPatch, renamed: int, fault: BaseException
) -> None:
    os.utime(old / "a.md", (1000, 1000))
    real = Path.replace
    faulty = failing_after(renamed, fault, real)

    def replace(path: Path, target: Path) -> object:
        return (faulty if path.suffix == ".new" else real)(path, target)

    monkeypatch.setattr(Path, "replace", replace)
    with pytest.raises(KeyboardInterrupt if isinstance(fault, KeyboardInterrupt) else NotWritable):
        write_all(new_texts(old))
    assert listing(old) == OLD
    assert (old / "a.md").stat().st_mtime == 1000
    assert not (old / "made").exists()


def test_an_interrupt_right_after_a_rename_undoes_it(old: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    real = Path.replace

    def replace(path: Path, target: Path) -> None:
        real(path, target)
        if path.suffix == ".new" and target.name == "c.md":
            raise KeyboardInterrupt

    monkeypatch.setattr(Path, "replace", replace)
    with pytest.raises(KeyboardInterrupt):
        write_all(new_texts(old))
    assert listing(old) == OLD


def test_without_links_a_copy_guards_the_old_file(old: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def no_links(*_: object) -> None:
        raise OSError(errno.EPERM, "Operation not permitted")

    monkeypatch.setattr(Path, "hardlink_to", no_links)
    real = Path.replace
    faulty = failing_after(2, KeyboardInterrupt(), real)
    monkeypatch.setattr(Path, "replace", lambda path, to: (faulty if path.suffix == ".new" else real)(path, to))
    with pytest.raises(KeyboardInterrupt):
        write_all(new_texts(old))
    assert listing(old) == OLD


def test_a_folder_below_a_file_cannot_be_made(old: Path) -> None:
    with pytest.raises(NotWritable, match="a part of its path is a file, not a folder; nothing was written"):
        write_all({old / "b.md": "new\n", old / "a.md" / "documents" / "x.md": "x\n"})
    assert listing(old) == OLD


def test_a_folder_in_the_place_of_a_file(old: Path) -> None:
    (old / "x.md").mkdir()
    with pytest.raises(NotWritable, match=r"cannot write '.*x.md': it is a folder"):
        write_all({old / "a.md": "new\n", old / "x.md": "x\n"})
    assert listing(old) == OLD


def test_an_old_file_that_cannot_be_put_back_is_kept_and_named(old: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    real = Path.replace

    def replace(path: Path, target: Path) -> object:
        if path.suffix == ".old" or target.name == "b.md":
            raise OSError(errno.EIO, "Input/output error")
        return real(path, target)

    monkeypatch.setattr(Path, "replace", replace)
    with pytest.raises(
        NotWritable, match=r"input/output error; the old '.*a\.md' is now '.*\.a\.md\.[0-9a-f]{8}\.old'"
    ):
        write_all({old / "a.md": "new\n", old / "b.md": "new\n"})
    (kept,) = old.glob(".a.md.*.old")
    assert kept.read_text() == "old a.md\n"
    monkeypatch.undo()
    write_all({old / "c.md": "new\n"})
    assert listing(old) == {**OLD, "c.md": "new\n"}  # the next run puts it back


def test_a_second_interrupt_does_not_stop_the_undoing(old: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    real = Path.replace
    interrupts = iter([True])

    def replace(path: Path, target: Path) -> object:
        if (path.suffix == ".new" and target.name == "c.md") or (path.suffix == ".old" and next(interrupts, False)):
            raise KeyboardInterrupt
        return real(path, target)

    monkeypatch.setattr(Path, "replace", replace)
    with pytest.raises(KeyboardInterrupt):
        write_all(new_texts(old))
    assert listing(old) == OLD


LEFT = {".a.md.0000aaaa.new": "half a te", ".b.md.0000aaaa.old": "older b.md\n", ".rigc.0000aaaa.set.part": "{"}
"""What a killed run left without a note. An old text that is no longer the target's stays: it may be the only one that there is."""


def test_what_a_killed_run_left_is_cleared(old: Path) -> None:
    for name, text in LEFT.items():
        (old / name).write_text(text)
    (old / ".a.md.0000aaaa.old").hardlink_to(old / "a.md")
    write_all({old / "b.md": "new b.md\n"})
    assert set(listing(old)) == {"a.md", "b.md", ".b.md.0000aaaa.old"}


def test_where_no_lock_can_be_had_only_what_is_an_hour_old_is_cleared(
    old: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "fcntl", None)
    for name, text in LEFT.items():
        (old / name).write_text(text)
    write_all({old / "a.md": "new a.md\n"})
    assert len(listing(old)) == 5
    later = time.time() + 3601
    monkeypatch.setattr("time.time", lambda: later)
    write_all({old / "a.md": "newer a.md\n"})
    assert set(listing(old)) == {"a.md", "b.md", ".b.md.0000aaaa.old"}


STEPS = (
    (Path, "replace"),
    (Path, "unlink"),
    (Path, "hardlink_to"),
    (Path, "mkdir"),
    (Path, "write_text"),
    (writing, "_write"),
)


def killed_at(step: int, texts: dict[Path, str], fault_at: str = "") -> bool:
    """Writes in a child that is killed before its step of that number; a rename to `fault_at` fails, so that it goes back. Whether it was killed."""
    child = os.fork()
    if child == 0:
        left = iter(range(step))
        for home, name in STEPS:
            real = getattr(home, name)

            def counted(path: Path, *rest: Any, real: Any = real, name: str = name, **more: Any) -> Any:
                if next(left, None) is None:
                    os._exit(9)
                if name == "replace" and path.suffix == ".new" and rest[0].name == fault_at:
                    raise OSError(errno.EIO, "Input/output error")
                return real(path, *rest, **more)

            setattr(home, name, counted)
        with contextlib.suppress(NotWritable):
            write_all(texts)
        os._exit(0)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 9


@pytest.mark.parametrize("reads", [False, True])
@pytest.mark.parametrize("fault_at", ["", "b.md", "c.md"])
def test_a_set_is_whole_after_the_next_run_wherever_it_was_killed(tmp_path: Path, fault_at: str, reads: bool) -> None:
    """The next run writes something else there, or only reads there."""
    outcomes = []
    for step in itertools.count():
        folder = tmp_path / str(step)
        (folder / "made").mkdir(parents=True)
        (folder / "made" / "d.md").write_text("d\n")
        for name in ("a.md", "b.md"):
            (folder / name).write_text(f"old {name}\n")
        killed = killed_at(step, new_texts(folder), fault_at)
        if reads:
            settle_for_reading(folder)
        else:
            write_all({folder / "made" / "e.md": "e\n", folder / "f.md": "f\n"})
        found = listing(folder)
        texts = {name: text for name, text in found.items() if name in ("a.md", "b.md", "made/c.md")}
        assert texts in (OLD, NEW)
        if not reads:
            assert {name for name in found if name not in texts} == {"made/d.md", "made/e.md", "f.md"}
        outcomes.append(texts == NEW)
        if not killed:
            break
    assert step > 10
    assert outcomes == sorted(outcomes) if not fault_at else not outcomes[-1]


def test_a_note_from_elsewhere_reaches_no_other_folder(old: Path, tmp_path_factory: pytest.TempPathFactory) -> None:
    """A folder that came from a stranger may hold any note: what lies outside it stays."""
    other = tmp_path_factory.mktemp("other") / "precious"
    other.write_text("precious\n")
    note = {"to": "go back", "first": ".", "made": {os.path.relpath(other, old): True, "a.md": False}}
    (old / ".rigc.0000aaaa.set").write_text(json.dumps(note))
    (old / ".rigc.0000bbbb.set").write_text('{"to": "go back", "first": 7, "made": []}')
    (old / ".rigc.0000cccc.set").write_text("[")
    write_all({old / "b.md": "new b.md\n"})
    assert other.read_text() == "precious\n"
    assert listing(old) == {"a.md": "old a.md\n", "b.md": "new b.md\n"}


def test_two_runs_do_not_mix_their_sets(tmp_path: Path) -> None:
    children = []
    for run in range(4):
        child = os.fork()
        if child == 0:
            for _ in range(20):
                write_all({tmp_path / f"{number}.md": f"run {run}\n" for number in range(5)})
            os._exit(0)
        children.append(child)
    assert [os.waitpid(child, 0)[1] for child in children] == [0, 0, 0, 0]
    assert len(set(listing(tmp_path).values())) == 1
    assert len(listing(tmp_path)) == 5


def test_another_run_that_does_not_end_is_told(old: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("rigc.files.folder_lock.PATIENCE_S", 0.05)
    told = r"cannot write '.*a\.md': another rigc is writing there; wait until it is done; nothing was written"
    with alone_in((old,)), pytest.raises(NotWritable, match=told):
        write_all({old / "a.md": "new\n"})
    assert listing(old) == OLD
