"""The cache folder is the user's own, or there is none."""

from __future__ import annotations

import os
import time
from functools import partial
from pathlib import Path

import pytest

from rigc.files.cache import Cache, cache_folder, tidied


@pytest.fixture
def base(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    return tmp_path / "cache"


def test_it_is_made_for_the_user_alone(base: Path) -> None:
    assert cache_folder() == base / "rigc"
    assert (base / "rigc").stat().st_mode & 0o777 == 0o700
    assert cache_folder() == base / "rigc"


def test_rights_for_others_make_it_none(base: Path) -> None:
    (base / "rigc").mkdir(parents=True, mode=0o755)
    (base / "rigc").chmod(0o755)
    assert cache_folder() is None


def test_a_link_is_not_followed(base: Path, tmp_path: Path) -> None:
    base.mkdir()
    (tmp_path / "elsewhere").mkdir(mode=0o700)
    (base / "rigc").symlink_to(tmp_path / "elsewhere")
    assert cache_folder() is None


def test_another_owner_makes_it_none(base: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert cache_folder() == base / "rigc"
    mine = os.geteuid()
    monkeypatch.setattr("os.geteuid", lambda: mine + 1)
    assert cache_folder() is None


def test_where_it_cannot_be_made_there_is_none(base: Path) -> None:
    base.write_text("a file, not a folder")
    assert cache_folder() is None


def test_a_relative_setting_does_not_count(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    # XDG Base Directory Specification 0.8: "All paths set in these environment variables must be absolute."
    monkeypatch.setenv("XDG_CACHE_HOME", "here")
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setattr("sys.platform", "linux")
    assert cache_folder() == tmp_path / ".cache" / "rigc"


def test_what_was_not_read_for_longest_goes(tmp_path: Path) -> None:
    """Seven files of 10 bytes, the first read longest ago. 70 bytes are no more than 70; of at most 69, half is 34: three files (30) stay."""
    now = time.time_ns()
    for number in range(7):
        (tmp_path / f"parsed-{number}").write_bytes(bytes(10))
        os.utime(tmp_path / f"parsed-{number}", ns=(now, now + number - 7))
    tidied(tmp_path, 70)
    assert len(list(tmp_path.iterdir())) == 7
    tidied(tmp_path, 69)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["parsed-4", "parsed-5", "parsed-6"]


def test_what_nobody_reads_goes_however_small(tmp_path: Path) -> None:
    cache = Cache(tmp_path)
    for name, days in (("told-read", 50), ("told-old", 61), ("new-left", 0.1)):
        cache.write(name, b"data")
        os.utime(tmp_path / name, (time.time() - days * 86400,) * 2)
    (tmp_path / "new-living").touch()
    assert cache.read("told-read") == b"data"  # read today: its age begins anew
    tidied(tmp_path)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["new-living", "told-read", "written"]
    assert time.time() - (tmp_path / "told-read").stat().st_mtime < 3600


def test_all_of_a_shop_is_kept_and_the_folder_stays_within_its_bound(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """220 small files stay; of large ones no more is ever there than the bound and what is written before the next look."""
    monkeypatch.setattr("rigc.files.cache.tidied", partial(tidied, most=100_000))
    monkeypatch.setattr("rigc.files.cache._TIDIED_AFTER", 1_000_000)  # 220 blocks of 4,096 bytes are 0.9 million
    cache = Cache(tmp_path)
    for number in range(220):
        cache.write(f"told-{number}", b"")
    assert all(cache.read(f"told-{number}") == b"" for number in range(220))
    for number in range(120):
        cache.write(f"parsed-{number}", bytes(10_000))
        assert sum(path.stat().st_size for path in tmp_path.glob("parsed-*")) < 1_100_000
    assert cache.read("parsed-119") == bytes(10_000)
