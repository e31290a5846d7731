"""What is installed is whole: the wheel, and the source archive from which the same wheel can be made."""

from __future__ import annotations

import os
import subprocess
import sys
import tarfile
import tomllib
import zipfile
from pathlib import Path

import pytest
from cases import ROOT

BUILD = "import hatchling.build as backend, sys; print(getattr(backend, sys.argv[1])(sys.argv[2]))"


def test_each_folder_that_is_asked_for_is_packed() -> None:
    """What `resources.folder` finds beside the package in a checkout lies within it in a wheel; the stock does anyway."""
    wheel = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["tool"]["hatch"]["build"]["targets"]["wheel"]
    asked = {"grammar", "templates", "stock"}
    assert {name for name in asked if not (ROOT / "rigc" / name).is_dir()} == set(wheel["force-include"])
    assert set(wheel["force-include"].values()) == {f"rigc/{name}" for name in wheel["force-include"]}


@pytest.mark.long
def test_the_wheel_is_whole_and_made_anew_from_the_source_archive(tmp_path: Path) -> None:
    tools = tmp_path / "tools"
    subprocess.run([sys.executable, "-m", "pip", "install", "-q", "--target", tools, "hatchling"], check=True)

    def built(what: str, source: Path) -> Path:
        into = tmp_path / f"{what} of {source.name}"
        into.mkdir()
        command = [sys.executable, "-c", BUILD, what, str(into)]
        told = subprocess.run(
            command, cwd=source, env={**os.environ, "PYTHONPATH": str(tools)}, capture_output=True, check=True
        )
        return into / told.stdout.decode().split()[-1]

    archive = built("build_sdist", ROOT)
    with tarfile.open(archive) as packed:
        packed.extractall(tmp_path / "unpacked", filter="data")
    (unpacked,) = (tmp_path / "unpacked").iterdir()
    assert not [name for name in unpacked.rglob("*") if name.name in ("__pycache__", ".git", ".venv")]
    first, second = built("build_wheel", ROOT), built("build_wheel", unpacked)
    with zipfile.ZipFile(first) as one, zipfile.ZipFile(second) as other:
        assert one.namelist() == other.namelist()
        names = set(one.namelist())
        one.extractall(tmp_path / "installed")
    shipped = [*(ROOT / "templates").rglob("*"), *(ROOT / "grammar").rglob("*"), *(ROOT / "rigc").rglob("*")]
    for path in (each for each in shipped if each.is_file() and "__pycache__" not in each.parts):
        inner = path.relative_to(ROOT).as_posix()
        assert (inner if inner.startswith("rigc/") else f"rigc/{inner}") in names, inner
    away = {**os.environ, "PYTHONPATH": str(tmp_path / "installed"), "XDG_CACHE_HOME": str(tmp_path / "cache")}
    (tmp_path / "elsewhere").mkdir()
    for words in (["new"], ["-q", "build", "board.rig"], ["explain", "plugs-collide"], ["show", "stock"]):
        subprocess.run(
            [sys.executable, "-m", "rigc", *words],
            cwd=tmp_path / "elsewhere",
            env=away,
            capture_output=True,
            check=True,
        )
    assert (tmp_path / "elsewhere" / "documents" / "folder.html").is_file()
