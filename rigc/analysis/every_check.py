"""Every check, in whichever room it lives: a file in a folder named `checks` is one."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from importlib import import_module
from typing import Any

from rigc.discover import nested

Check = Callable[..., Any]


@cache
def homes() -> dict[str, str]:
    """The modules of all checks by the checks' names, in the order of these; none of them is imported."""
    found = [name for name in nested("rigc.analysis") if name.split(".")[-2] == "checks"]
    return {name.rpartition(".")[2]: name for name in sorted(found, key=lambda name: name.rpartition(".")[2])}


def check(name: str) -> Check:
    """The check of that name."""
    found: Check = vars(import_module(homes()[name]))["CHECK"]
    return found


def all_checks() -> tuple[Check, ...]:
    """Every check, in the order of their names."""
    return tuple(check(name) for name in homes())
