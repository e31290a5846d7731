"""A file in a folder is a member."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from rigc.discover import members, module_names, walk


@pytest.fixture
def den(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> str:
    package = tmp_path / "den_of_modules"
    (package / "inner").mkdir(parents=True)
    for name, text in {
        "__init__.py": "",
        "weir.py": "CHECK = 'weir'\n",
        "alder.py": "CHECK = 'alder'\n",
        "brook.py": "OTHER = 1\n",
        "_draft.py": "raise AssertionError('not a member')\n",
        "notes.txt": "no module\n",
        "inner/__init__.py": "",
        "inner/reed.py": "CHECK = 'reed'\n",
    }.items():
        (package / name).write_text(text)
    monkeypatch.syspath_prepend(str(tmp_path))
    yield_name = package.name
    for known in [name for name in sys.modules if name.startswith(yield_name)]:
        monkeypatch.delitem(sys.modules, known)
    return yield_name


def test_members_come_in_the_order_of_file_names(den: str) -> None:
    assert members(den, "CHECK") == ("alder", "weir")


def test_names_leave_out_private_modules_and_other_files(den: str) -> None:
    assert module_names(den) == [f"{den}.{name}" for name in ("alder", "brook", "inner", "weir")]


def test_walk_goes_into_packages(den: str) -> None:
    names = [module.__name__.removeprefix(den) for module in walk(den)]
    assert names == ["", ".alder", ".brook", ".inner", ".inner.reed", ".weir"]
