"""The loader of a command: names, the project's edge, each file once."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from rigc.files.disk import Disk, project_root
from rigc.loader import Unreadable, used_name


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """A project with a rig in a folder, its stock beside, and a file outside."""
    root = tmp_path / "project"
    (root / "rigs" / "touring").mkdir(parents=True)
    (root / "rig-root").touch()
    (root / "stock.rig").write_text("stock")
    (root / "rigs" / "touring" / "board.rig").write_text("board")
    (tmp_path / "outside.rig").write_text("outside")
    return root


def test_names_are_relative_to_the_named_file(project: Path) -> None:
    disk = Disk(project / "rigs" / "touring" / "board.rig")
    assert disk("board.rig").text == "board"
    stock = disk("../../stock.rig")
    assert (stock.name, stock.text) == ("../../stock.rig", "stock")
    assert disk.names == ("board.rig", "../../stock.rig")


def test_two_ways_to_write_a_path_are_one_source(project: Path) -> None:
    disk = Disk(project / "rigs" / "touring" / "board.rig")
    assert disk("../touring/./board.rig") is disk("board.rig")


def test_a_name_is_taken_from_the_file_that_uses_it() -> None:
    assert used_name("board.rig", "bench/stock.rig") == "bench/stock.rig"
    assert used_name("bench/stock.rig", "cable.rig") == "bench/cable.rig"
    assert used_name("bench/stock.rig", "../board.rig") == "board.rig"
    assert used_name("../stock.rig", "../cable.rig") == "../../cable.rig"


def test_leaving_the_project_is_refused_unless_the_root_is_given(project: Path) -> None:
    board = project / "rigs" / "touring" / "board.rig"
    with pytest.raises(Unreadable, match=r"'../../../outside.rig' lies outside the project") as caught:
        Disk(board)("../../../outside.rig")
    assert "--root" in caught.value.help
    assert Disk(board, root=project.parent)("../../../outside.rig").text == "outside"


@pytest.mark.parametrize("name", ["link.rig", "/etc/hostname"])
def test_no_link_and_no_absolute_path_leads_out(project: Path, name: str) -> None:
    folder = project / "rigs" / "touring"
    (folder / "link.rig").symlink_to(project.parent / "outside.rig")
    with pytest.raises(Unreadable, match="lies outside the project"):
        Disk(folder / "board.rig")(name)


def test_the_named_file_itself_may_be_a_link_to_anywhere(project: Path) -> None:
    link = project / "rigs" / "touring" / "link.rig"
    link.symlink_to(project.parent / "outside.rig")
    assert Disk(link)("link.rig").text == "outside"


def test_the_root_is_the_nearest_folder_that_is_marked(project: Path) -> None:
    touring = project / "rigs" / "touring"
    assert project_root(touring) == project
    (project / "rigs" / ".git").mkdir()
    assert project_root(touring) == project / "rigs"


def test_without_a_mark_the_root_is_the_files_own_folder(tmp_path: Path) -> None:
    if any((above / ".git").exists() or (above / "rig-root").exists() for above in tmp_path.parents):
        pytest.fail("the temporary folder lies inside a project; give another --basetemp")
    assert project_root(tmp_path) == tmp_path


def test_bytes_given_stand_for_the_named_file_alone(project: Path) -> None:
    disk = Disk(project / "rigs" / "touring" / "new.rig", given=b"typed\r\n")
    assert disk("new.rig").text == "typed\n"
    assert disk("board.rig").text == "board"


def test_names_are_shown_as_typed(project: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(project)
    disk = Disk(Path("rigs/touring/board.rig"))
    disk("board.rig")
    assert disk.shown("board.rig") == "rigs/touring/board.rig"
    assert disk.shown("shipped/plugs.rig") == "shipped/plugs.rig"
    assert Disk(Path("stock.rig")).shown("stock.rig") == "stock.rig"


def test_a_circle_of_links_is_no_file(project: Path) -> None:
    folder = project / "rigs" / "touring"
    (folder / "one.rig").symlink_to(folder / "two.rig")
    (folder / "two.rig").symlink_to(folder / "one.rig")
    with pytest.raises(Unreadable, match=r"cannot read 'one\.rig': too many levels of symbolic links"):
        Disk(folder / "board.rig")("one.rig")


def test_two_dots_behind_a_link_go_where_the_system_goes(project: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(project.parent)
    (project.parent / "short").symlink_to(project / "rigs" / "touring")
    (project / "rigs" / "a.rig").write_text("behind the link")
    assert Disk(Path("short/../a.rig"))("a.rig").text == "behind the link"


def test_a_file_beside_is_shown_without_detours(project: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(project)
    disk = Disk(Path("rigs/touring/board.rig"))
    disk("../../stock.rig")
    assert disk.shown("../../stock.rig") == "stock.rig"


def test_a_set_that_a_killed_run_left_is_whole_before_it_is_read(tmp_path: Path) -> None:
    (tmp_path / "board.rig").write_text("new board\n")
    (tmp_path / "stock.rig").write_text("old stock\n")
    (tmp_path / ".stock.rig.0000aaaa.new").write_text("new stock\n")
    note = {"to": "finish", "first": ".", "made": {"board.rig": False, "stock.rig": False}}
    (tmp_path / ".rigc.0000aaaa.set").write_text(json.dumps(note))
    assert Disk(tmp_path / "board.rig")("stock.rig").text == "new stock\n"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["board.rig", "stock.rig"]
