"""The house stands as DEVELOPERS.md draws it: imports point down, each foreign package has one home, the rim alone touches the world."""

from __future__ import annotations

import ast
import re
import subprocess
from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest

from rigc.diagnostics.explain import all_kinds

ROOT = Path(__file__).parent.parent / "rigc"
FLOORS = (
    ("record", "source"),
    ("resources", "discover", "loader", "facts", "solvers"),
    ("diagnostics",),
    ("syntax",),
    ("gather", "model"),
    ("traced",),
    ("analysis",),
    ("reports", "edit"),
    ("output",),
    ("previous",),
    ("compile",),
    ("proved",),
    ("files",),
    ("editor",),
    ("preview",),
    ("cli", "__init__"),
    ("__main__",),
)
HOMES = {
    "lark": {"syntax/tables.py"},
    "pint": {"model/units/quantities.py"},
    "networkx": {"model/graphs.py"},
    "jinja2": {"output/sandbox.py", "output/templates.py"},
    "markupsafe": {"output/escapes.py", "output/templates.py"},
    "click": {"cli"},
    "ezdxf": {"output/extras/dxf.py"},
    "weasyprint": {"output/extras/pdf.py"},
    "openpyxl": {"files/intake/books/xlsx_book.py", "files/intake/template.py", "output/extras/xlsx.py"},
    "odf": {"files/intake/books/ods_book.py"},
    "pygments": {"output/extras/pygments_lexer.py"},
    "pygls": {"editor/server"},
    "ortools": {"analysis/laying/search/solver"},
    "lsprotocol": {"editor/server"},
}
SUBJECTS = (
    "deck",
    "feeds",
    "leads",
    "signal",
    "routes",
    "ground",
    "power",
    "mains",
    "control",
    "mounting",
    "stores",
    "weight",
    "tests",
    "faults",
    "laying",
    "revision",
    "findings",
)
MOST_NAMES = 24
MODULES = sorted(path for path in ROOT.rglob("*.py"))


@cache
def parsed(path: Path) -> ast.Module:
    """A file, read once for all tests."""
    return ast.parse(path.read_text("utf-8"))


@cache
def imports(path: Path) -> set[str]:
    """Every module that a file imports, anywhere in it."""
    found: set[str] = set()
    for node in ast.walk(parsed(path)):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found |= {node.module} | {f"{node.module}.{alias.name}" for alias in node.names}
    return found


def floor(room: str) -> int:
    """The floor of a room, counted from the ground."""
    return next(number for number, rooms in enumerate(FLOORS) if room in rooms)


def test_imports_point_down() -> None:
    """A module imports only from its own room or from floors below; `rigc` itself only gives its version."""
    wrong = []
    for path in MODULES:
        room = path.relative_to(ROOT).with_suffix("").parts[0]
        for name in imports(path):
            parts = name.split(".")
            if parts[0] == "rigc" and len(parts) > 1 and parts[1] not in ("__version__", room):
                wrong += [f"{path} imports {name}"] * (floor(parts[1]) >= floor(room))
    assert wrong == []


def test_a_subject_reads_those_before_it() -> None:
    """Results of one subject rest on results of subjects before it, so that no two need each other; checks look at any of them."""
    wrong = []
    for path in (ROOT / "analysis").rglob("*.py"):
        parts = path.relative_to(ROOT).with_suffix("").parts
        for name in imports(path) if len(parts) > 2 and "checks" not in parts else ():
            others = name.split(".")
            if others[:2] == ["rigc", "analysis"] and len(others) > 2 and others[2] in SUBJECTS:
                wrong += [f"{path} imports {name}"] * (SUBJECTS.index(others[2]) > SUBJECTS.index(parts[1]))
    assert wrong == []


def test_a_check_is_asked_through_all_of_them() -> None:
    """Nobody imports a check; its rule may be named by who finds the same fault elsewhere, and by checks beside it."""
    wrong = []
    for path in MODULES:
        for name in imports(path):
            before, inside, module = name.partition(".checks.")
            beside = ROOT.parent.joinpath(*before.split("."), "checks")
            if inside and "." in module and not module.endswith("KIND") and path.parent != beside:
                wrong.append(f"{path} imports {name}")
    assert wrong == []


def test_the_rooms_are_the_subjects() -> None:
    """Analysis has a room for each subject and reports none that analysis lacks, but for what shows several subjects at once."""
    rooms = {path.relative_to(ROOT).parts[:2] for path in MODULES if len(path.relative_to(ROOT).parts) > 2}
    analysis, reports = ({inner for outer, inner in rooms if outer == room} for room in ("analysis", "reports"))
    assert analysis == set(SUBJECTS)
    assert reports - set(SUBJECTS) == {"drawings", "front", "schedule", "sheets", "views"}


def test_no_folder_is_a_crowd() -> None:
    """What one folder holds is seen at a glance."""
    held: dict[Path, set[str]] = {}
    for path in MODULES:
        for inner, folder in pairwise((path, *path.parents)):
            if ROOT in inner.parents and inner.name != "__init__.py":
                held.setdefault(folder, set()).add(inner.name)
    assert {folder: len(names) for folder, names in held.items() if len(names) > MOST_NAMES} == {}


@pytest.mark.parametrize("package", HOMES)
def test_foreign_packages_have_one_home(package: str) -> None:
    """lark, pint, networkx, jinja2 and click are each imported at one place."""
    users = {
        path.relative_to(ROOT).as_posix() for path in MODULES if any(n.split(".")[0] == package for n in imports(path))
    }
    homes = HOMES[package]
    assert all(any(user == home or user.startswith(f"{home}/") for home in homes) for user in users), users


def test_only_the_rim_touches_the_world() -> None:
    """Nothing outside files and cli prints, opens, or reads the environment or the clock."""
    hands = {"print", "open", "write_text", "read_text", "read_bytes", "write_bytes", "getenv", "now", "today"}
    shipped = (
        "model/units/quantities.py",
        "output/ready.py",
        "output/templates.py",
        "output/typeface.py",
        "syntax/nodes/written.py",
        "syntax/worked_lines.py",
    )
    allowed = {module: {"read_text", "read_bytes"} for module in shipped}
    wrong = []
    for path in MODULES:
        place = path.relative_to(ROOT)
        if place.parts[0] in ("files", "cli", "__main__.py"):
            continue
        calls = [node.func for node in ast.walk(parsed(path)) if isinstance(node, ast.Call)]
        names = {each.attr if isinstance(each, ast.Attribute) else getattr(each, "id", "") for each in calls}
        wrong += [f"{place}: {name}" for name in names & (hands - allowed.get(place.as_posix(), set()))]
    assert wrong == []


def test_names_of_rules_are_given_once() -> None:
    """No two rules share a name."""
    found = list(all_kinds())
    assert len({kind.name for kind in found}) == len(found)


def test_a_check_is_named_after_its_fault() -> None:
    """File, function and rule share one name."""
    wrong = []
    for path in sorted((ROOT / "analysis").glob("**/checks/[a-z]*.py")):
        text, name = path.read_text("utf-8"), path.stem
        words = (f'"{name.replace("_", "-")}"', f"def {name}(", f"CHECK = {name}")
        wrong += [f"{path} lacks {each}" for each in words if each not in text]
    assert wrong == []


def test_every_rule_has_a_page() -> None:
    """What, why it matters, what to do, source."""
    headings = ("Why it matters:", "What to do:", "Source:")
    assert [(kind.name, each) for kind in all_kinds() for each in headings if each not in str(kind.page)] == []


def test_the_map_names_what_is_there() -> None:
    """Every file and folder in DEVELOPERS.md, as it stands there or as the end of a path."""
    top = ROOT.parent
    named = re.findall(r"`([\w./-]+(?:\.(?:py|rig|md|lark|txt|css)|/))`", (top / "DEVELOPERS.md").read_text("utf-8"))
    there = {
        f"/{path.relative_to(top)}{'/' * path.is_dir()}"
        for room in ("rigc", "tests", "templates", "grammar", ".ci")
        for path in (top / room).rglob("*")
    }
    there |= {f"/{path.name}{'/' * path.is_dir()}" for path in top.iterdir()}
    assert len(named) > 50
    assert [name for name in named if not any(path.endswith(f"/{name}") for path in there)] == []


def test_nothing_else_stands_at_the_top() -> None:
    """Of what git holds; what somebody built beside it is his."""
    top = ROOT.parent
    if not (top / ".git").exists():
        pytest.skip("no repository: what was unpacked can't be told from what was made since")
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=top, capture_output=True, text=True, check=True).stdout
    names = {each.partition("/")[0] for each in listed.split("\0") if each}
    rooms = {"rigc", "grammar", "templates", "tests", "examples"}
    assert {each for each in names if not each.startswith(".")} == {
        "README.md",
        "DEVELOPERS.md",
        "pyproject.toml",
        *rooms,
    }
