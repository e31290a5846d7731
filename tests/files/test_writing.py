"""All files or none, whatever goes wrong half-way."""

from __future__ import annotations

import errno
import os
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from rigc.files import writing
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
    with pytest.raises(NotWritable, match=r"input/output error; the old '.*a\.md' is now '.*\.a\.md\.\d+\.old'"):
        write_all({old / "a.md": "new\n", old / "b.md": "new\n"})
    assert (old / f".a.md.{os.getpid()}.old").read_text() == "old a.md\n"


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


def test_what_a_killed_run_left_is_cleared(old: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Of the old texts only those that are the target's still: the other may be the only one that there is."""
    (old / ".a.md.7.new").write_text("half a te")
    (old / ".a.md.7.old").hardlink_to(old / "a.md")
    (old / ".b.md.7.old").write_text("older b.md\n")
    (old / ".other.7.new").write_text("of another")
    write_all({old / "a.md": "new a.md\n", old / "b.md": "new b.md\n"})
    assert len(listing(old)) == 6
    later = time.time() + 4000
    monkeypatch.setattr("time.time", lambda: later)
    (old / "a.md").write_text("old a.md\n")
    (old / ".a.md.7.old").unlink()
    (old / ".a.md.7.old").hardlink_to(old / "a.md")
    write_all({old / "a.md": "newer a.md\n", old / "b.md": "newer b.md\n"})
    assert set(listing(old)) == {"a.md", "b.md", ".b.md.7.old", ".other.7.new"}
