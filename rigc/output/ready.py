"""Our templates as code, made when rigc is built or installed: read only where they were made of these templates by this rigc and engine.

It lies beside the templates, as trusted as all that is installed; what earlier runs kept is never code.
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from functools import cache
from importlib.machinery import SourceFileLoader
from pathlib import Path
from types import CodeType

from rigc.resources import folder

READY = folder("templates") / "ready"
MADE_OF = "made-of.txt"
"""The file there that tells of what the code beside it was made."""


def file_name(escaped: bool, name: str) -> str:
    """The file of a template's code; one that prints by itself is other code where its text is escaped."""
    return f"{'escaped' if escaped else 'plain'}-{name}.py"


def code_of(escaped: bool, name: str, made_of: str) -> CodeType | None:
    """The code of one of our templates; None where none was made, or of something else."""
    if _made_of() != made_of:
        return None
    path = READY / file_name(escaped, name)
    try:
        code = SourceFileLoader(path.stem, str(path)).get_code(path.stem)
    except (OSError, ImportError, SyntaxError, ValueError):
        return None
    return None if code is None else code.replace(co_filename=f"builtin/{name}")


def digest(texts: Mapping[str, str], engine: str) -> str:
    """What stands for the templates, for how they are made to code, and for the version of what makes it; empty where that is not to be had."""
    home = Path(__file__).parent
    try:
        code = [(home / name).read_bytes() for name in ("templates.py", "sandbox.py")]
    except OSError:
        return ""
    told = [f"{name}\0{text}".encode() for name, text in texts.items()]
    return hashlib.sha256(b"\0".join((engine.encode(), *told, *code))).hexdigest()


@cache
def _made_of() -> str:
    try:
        return (READY / MADE_OF).read_text("ascii")
    except (OSError, ValueError):
        return "nothing"
