"""A rig as text -> the documents for its build.

    source (files) -> statements (syntax) -> the rig (model) -> what follows from it (analysis)
    -> sheets (reports) -> text (output) -> files

`rigc.compile` runs these phases in order; `rigc.cli` and `rigc.files` are the only ones that touch terminal and disk. A program that imports
rigc uses what stands in `__all__`, and nothing else (`grammar/library.md`).
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from rigc.files.compiled_rig import CompiledRig, Finding, Value, compile_rig
    from rigc.loader import Unreadable

__all__ = ["CompiledRig", "Finding", "Unreadable", "Value", "__version__", "compile_rig"]

__version__ = "0.1.0"


def __getattr__(name: str) -> Any:
    """What is promised is loaded when it is asked for: a command that needs none of it starts sooner."""
    if name not in __all__:
        raise AttributeError(f"module 'rigc' has no attribute '{name}'")
    from importlib import import_module

    return getattr(import_module("rigc.loader" if name == "Unreadable" else "rigc.files.compiled_rig"), name)
