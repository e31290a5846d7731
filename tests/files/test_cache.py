"""The cache folder is the user's own, or there is none."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from rigc.files.cache import cache_folder, thinned


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


def test_the_oldest_go_when_there_are_too_many(tmp_path: Path) -> None:
    """More than 6 of a prefix: half of 6 stay, the youngest; what has another prefix is not counted and stays."""
    for number in range(7):
        (tmp_path / f"parsed-{number}").touch()
        os.utime(tmp_path / f"parsed-{number}", ns=(number, number))
    (tmp_path / "tables-0").touch()
    thinned(tmp_path, "parsed-", 7)
    assert len(list(tmp_path.iterdir())) == 8
    thinned(tmp_path, "parsed-", 6)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["parsed-4", "parsed-5", "parsed-6", "tables-0"]
