"""A package's name -> its modules in name order, and what they declare: a file in a folder is a member."""

from __future__ import annotations

import os
from collections.abc import Iterator
from functools import cache
from importlib import import_module
from types import ModuleType
from typing import Any


def members(package_name: str, attribute: str) -> tuple[Any, ...]:
    """The value of `attribute` in each module of a package that has it, in the order of the modules' names."""
    modules = (import_module(name) for name in module_names(package_name))
    return tuple(vars(module)[attribute] for module in modules if attribute in vars(module))


@cache
def declaring(package_name: str, attribute: str) -> tuple[Any, ...]:
    """The value of `attribute` in each module below a package that sets it, by the modules' own names; no other is imported.
    Found once, for the source of every module is read."""
    made = [module for module in walk(package_name, f"\n{attribute} = ") if attribute in vars(module)]
    return tuple(vars(module)[attribute] for module in sorted(made, key=lambda module: _own_name(module.__name__)))


def nested(package_name: str) -> list[str]:
    """The full names of all modules below a package, at any depth, sorted; none of them is imported."""
    return sorted(name for folder in import_module(package_name).__path__ for name in _nested(package_name, folder))


def member(module_name: str, attribute: str) -> Any:
    """The value of `attribute` in one module, by its full name."""
    return vars(import_module(module_name))[attribute]


def walk(name: str, word: str = "") -> Iterator[ModuleType]:
    """The module `name`; if it is a package, also every module below it, in name order.

    With a `word`, modules whose source lacks it are left out and not imported (packages are imported all the same).
    """
    from importlib.util import find_spec  # only to explain rules

    spec = find_spec(name)
    if spec is None:
        return
    source = getattr(spec.loader, "get_source", None)
    if not word or source is None or word in (source(name) or ""):
        yield import_module(name)
    if spec.submodule_search_locations is not None:
        for inner in module_names(name):
            yield from walk(inner, word)


def module_names(package_name: str) -> list[str]:
    """The full names of the modules and packages directly in a package, sorted; names with `_` in front are left out."""
    found: set[str] = set()
    for folder in import_module(package_name).__path__:
        with os.scandir(folder) as entries:
            found.update(name for entry in entries if (name := _module_name(entry)))
    return [f"{package_name}.{name}" for name in sorted(found)]


def _nested(package_name: str, folder: str) -> Iterator[str]:
    with os.scandir(folder) as entries:
        found = [(f"{package_name}.{name}", entry) for entry in entries if (name := _module_name(entry))]
    for name, entry in found:
        if entry.is_dir():
            yield from _nested(name, entry.path)
        else:
            yield name


def _own_name(module_name: str) -> str:
    return module_name.rpartition(".")[2]


def _module_name(entry: os.DirEntry[str]) -> str:
    if entry.name.startswith(("_", ".")):
        return ""
    if entry.name.endswith(".py"):
        return entry.name[:-3]
    return entry.name if entry.is_dir() and entry.name.isidentifier() else ""
