"""What is installed is whole: the wheel, and the source archive from which the same wheel can be made."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
import tarfile
import tomllib
import zipfile
from hashlib import sha256
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


def test_the_bill_lists_what_is_shipped_and_needed() -> None:
    """Each package that rigc or one of its extras names, in the version with which everything last passed, with a licence; and the
    typeface's files as they are. `python .ci/bill.py` makes it anew."""
    bill = json.loads((ROOT / ".ci" / "rigc.cdx.json").read_text("utf-8"))
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    passed = dict(line.lower().split("==") for line in (ROOT / ".ci" / "versions.txt").read_text("utf-8").split())
    listed = {each["name"]: each for each in bill["components"]}
    extras = (each for name, each in project["optional-dependencies"].items() if name not in ("test", "docs"))
    named = {re.split("[><=]", each)[0].lower(): "required" for each in project["dependencies"]}
    named |= {re.split("[><=]", each)[0].lower(): "optional" for extra in extras for each in extra}
    assert {name: (listed[name]["version"], listed[name]["scope"]) for name in named} == {
        name: (passed[name], scope) for name, scope in named.items()
    }
    assert bill["metadata"]["component"]["version"] == project["version"]
    assert all(each["licenses"][0]["license"].get("name") != "not stated" for each in listed.values())
    files = {each["name"]: each["hashes"][0]["content"] for each in bill["components"][-1]["components"]}
    fonts = sorted((ROOT / "templates" / "fonts").glob("*.woff2"))
    assert files == {path.relative_to(ROOT).as_posix(): sha256(path.read_bytes()).hexdigest() for path in fonts}


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
