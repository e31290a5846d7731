"""Whatever the bytes: a source, or a refusal that says where and why."""

from __future__ import annotations

import errno
import os
import time
from pathlib import Path

import pytest

from rigc.files.reading import SIZE_LIMIT, decode, read_source
from rigc.loader import Unreadable


@pytest.mark.parametrize(
    "data",
    [b"language 1\nrig x\n", b"language 1\r\nrig x\r\n", b"language 1\rrig x\r", b"\xef\xbb\xbflanguage 1\nrig x\n"],
)
def test_line_ends_and_mark_do_not_matter(data: bytes) -> None:
    source = decode(data, "board.rig")
    assert source.text == "language 1\nrig x\n"
    assert source.data == data


def test_an_empty_file_is_a_source() -> None:
    assert decode(b"", "board.rig").text == ""


@pytest.mark.parametrize(
    ("data", "line", "column", "said"),
    [
        (
            b"\xff",
            1,
            1,
            "is not saved as UTF-8: 'ÿ' (0xff) in 'ÿ' is of an older encoding (line 1, byte 1 of the file)",
        ),
        (
            b"unit plumb\nnote \xc3\xa9\xe9\n",
            2,
            7,
            "'é' (0xe9) in 'note Ã©é' is of an older encoding (line 2, byte 19 of the file)",
        ),
        (b"\xef\xbb\xbfa\xff", 1, 2, "(line 1, byte 5 of the file)"),
        (b"a\r\nb\rc\xed\xa0\x80", 3, 2, "0xed"),  # a lone surrogate, as some programs write them
        (b"one\ntwo\0", 2, 4, "a NUL byte (line 2, byte 8 of the file)"),
        (b"\xff\xfeu\0n\0", 1, 1, "UTF-16"),
        (b"cut off \xe2\x82", 1, 9, "0xe2"),
    ],
)
def test_bytes_that_are_no_text(data: bytes, line: int, column: int, said: str) -> None:
    with pytest.raises(Unreadable) as caught:
        decode(data, "board.rig")
    assert (caught.value.line, caught.value.column) == (line, column)
    assert said in caught.value.message
    assert str(caught.value) == f"board.rig:{line}:{column}: error: {caught.value.message}"


def test_a_file_at_the_limit_is_read_and_one_byte_more_is_not(tmp_path: Path) -> None:
    file = tmp_path / "board.rig"
    file.write_bytes(b"#" * SIZE_LIMIT)
    assert len(read_source(file, "board.rig").text) == 4 * 1024 * 1024
    file.write_bytes(b"#" * (SIZE_LIMIT + 1))
    with pytest.raises(Unreadable, match=r"'board\.rig' is larger than 4 MiB"):
        read_source(file, "board.rig")


def test_a_huge_file_is_refused_without_being_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = tmp_path / "board.rig"
    with file.open("wb") as hole:
        hole.truncate(50 * 1000 * 1000)
    monkeypatch.setattr("rigc.files.reading.decode", _must_not_run)
    start = time.process_time()
    with pytest.raises(Unreadable, match="larger than 4 MiB"):
        read_source(file, "board.rig")
    assert time.process_time() - start < 0.1  # reading and decoding it takes longer by far


def test_an_endless_device_is_refused() -> None:
    with pytest.raises(Unreadable, match="larger than 4 MiB"):
        read_source(Path("/dev/zero"), "zero")


def test_a_folder_names_a_rig_in_it(tmp_path: Path) -> None:
    (tmp_path / "long-haul.rig").touch()
    with pytest.raises(Unreadable, match="cannot read 'x': it is a folder") as caught:
        read_source(tmp_path, "x")
    assert caught.value.help == "name a file in it, such as 'long-haul.rig'"


def test_a_missing_file_names_its_neighbour(tmp_path: Path) -> None:
    (tmp_path / "stock.rig").touch()
    with pytest.raises(Unreadable, match="there is no such file") as caught:
        read_source(tmp_path / "stok.rig", "bench/stok.rig")
    assert caught.value.help == "did you mean 'stock.rig'?"


@pytest.mark.parametrize("name", ["board.rig/x.rig", "a\0b", "n" * 300])
def test_impossible_paths(tmp_path: Path, name: str) -> None:
    (tmp_path / "board.rig").touch()
    with pytest.raises(Unreadable, match="cannot read"):
        read_source(tmp_path / name, name)


def test_a_pipe_that_nobody_may_ever_write_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "board.rig")
    with pytest.raises(Unreadable, match=r"cannot read 'board\.rig': it is a pipe, not a file") as caught:
        read_source(tmp_path / "board.rig", "board.rig")
    assert caught.value.help == "put its text into a file, or give it to: rigc check -"


def test_what_a_shell_hands_over_is_read() -> None:
    """`rigc check <(...)` names the end of a pipe that is being written."""
    end, begin = os.pipe()
    os.write(begin, b"language 1\n")
    os.close(begin)
    assert read_source(Path(f"/dev/fd/{end}"), "x").text == "language 1\n"
    os.close(end)


def test_links_that_lead_in_a_circle(tmp_path: Path) -> None:
    (tmp_path / "a.rig").symlink_to("b.rig")
    (tmp_path / "b.rig").symlink_to("a.rig")
    with pytest.raises(Unreadable, match=r"cannot read 'a\.rig': too many levels of symbolic links") as caught:
        read_source(tmp_path / "a.rig", "a.rig")
    assert (caught.value.help, caught.value.near) == ("make it a file, or a link to one", "")


def test_a_file_that_may_not_be_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*_: object) -> None:
        raise PermissionError(errno.EACCES, "Permission denied")  # as root is never told

    (tmp_path / "a.rig").touch()
    monkeypatch.setattr(Path, "open", refused)
    with pytest.raises(Unreadable, match="permission denied") as caught:
        read_source(tmp_path / "a.rig", "a.rig")
    assert caught.value.help == "let it be read by who runs rigc"


def _must_not_run(*_: object) -> None:
    raise AssertionError("the file was read")
