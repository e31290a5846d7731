"""The house stands as DEVELOPERS.md draws it: imports point down, each foreign package has one home, the rim alone touches the world."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from rigc.diagnostics.explain import all_kinds

ROOT = Path(__file__).parent.parent / "rigc"
FLOORS = (
    ("record", "source", "near"),
    ("resources", "discover", "loader", "facts"),
    ("diagnostics",),
    ("syntax",),
    ("gather", "model"),
    ("traced",),
    ("analysis",),
    ("reports", "edit"),
    ("output",),
    ("previous", "stock_not_used"),
    ("compile",),
    ("proved",),
    ("files",),
    ("cli", "__init__"),
    ("__main__",),
)
HOMES = {
    "lark": {"syntax/parse.py"},
    "pint": {"model/quantities.py"},
    "networkx": {"model/graphs.py"},
    "jinja2": {"output/sandbox.py", "output/templates.py"},
    "markupsafe": {"output/escapes.py", "output/templates.py"},
    "click": {"cli"},
}
MODULES = sorted(path for path in ROOT.rglob("*.py"))


def imports(path: Path) -> set[str]:
    """Every module that a file imports, anywhere in it."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found |= {node.module} | {f"{node.module}.{alias.name}" for alias in node.names}
    return found


def floor(room: str) -> int:
    """The floor of a room, counted from the ground."""
    return next(number for number, rooms in enumerate(FLOORS) if room in rooms)


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_imports_point_down(path: Path) -> None:
    """A module imports only from its own room or from floors below; `rigc` itself only gives its version."""
    room = path.relative_to(ROOT).with_suffix("").parts[0]
    for name in imports(path):
        parts = name.split(".")
        if parts[0] == "rigc" and len(parts) > 1 and parts[1] != "__version__":
            other = parts[1]
            assert other == room or floor(other) < floor(room), f"{room} imports {name}"


@pytest.mark.parametrize("package", HOMES)
def test_foreign_packages_have_one_home(package: str) -> None:
    """lark, pint, networkx, jinja2 and click are each imported at one place."""
    users = {
        path.relative_to(ROOT).as_posix() for path in MODULES if any(n.split(".")[0] == package for n in imports(path))
    }
    homes = HOMES[package]
    assert all(any(user == home or user.startswith(f"{home}/") for home in homes) for user in users), users


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_only_the_rim_touches_the_world(path: Path) -> None:
    """Nothing outside files and cli prints, opens, or reads the environment or the clock."""
    room = path.relative_to(ROOT).parts[0]
    if room in ("files", "cli", "__main__.py"):
        return
    shipped = ("model/quantities.py", "output/templates.py", "output/typeface.py", "syntax/nodes/written.py")
    allowed = {module: {"read_text", "read_bytes"} for module in shipped}
    known = allowed.get(path.relative_to(ROOT).as_posix(), set())
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Call):
            name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            hands = {"print", "open", "write_text", "read_text", "read_bytes", "write_bytes", "getenv", "now", "today"}
            assert name not in hands - known, f"{path}: {name}"


def test_names_of_rules_are_given_once() -> None:
    """No two rules share a name."""
    found = list(all_kinds())
    assert len({kind.name for kind in found}) == len(found)


@pytest.mark.parametrize("path", sorted((ROOT / "analysis" / "checks").glob("[a-z]*.py")), ids=lambda path: path.stem)
def test_a_check_is_named_after_its_fault(path: Path) -> None:
    """File, function and rule share one name."""
    text = path.read_text("utf-8")
    assert f'"{path.stem.replace("_", "-")}"' in text
    assert f"def {path.stem}(" in text
    assert f"CHECK = {path.stem}" in text


@pytest.mark.parametrize("kind", list(all_kinds()), ids=lambda kind: kind.name)
def test_every_rule_has_a_page(kind: object) -> None:
    """What, why it matters, what to do, source."""
    page = str(getattr(kind, "page", ""))
    for heading in ("Why it matters:", "What to do:", "Source:"):
        assert heading in page, f"{kind} lacks '{heading}'"
