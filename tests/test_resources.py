"""The folders that ship with rigc are found."""

from __future__ import annotations

from pathlib import Path

import pytest

from rigc import resources


@pytest.mark.parametrize("name", ["grammar", "templates", "stock"])
def test_each_folder_is_found_in_a_checkout(name: str) -> None:
    assert resources.folder(name).is_dir()


def test_the_inner_folder_comes_first(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    package = tmp_path / "rigc"
    (tmp_path / "templates").mkdir()
    monkeypatch.setattr(resources, "PACKAGE", package)
    assert resources.folder("templates") == tmp_path / "templates"
    (package / "templates").mkdir(parents=True)
    assert resources.folder("templates") == package / "templates"
