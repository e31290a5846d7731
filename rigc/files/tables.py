"""The grammar's tables: from the user's cache folder where they are kept, else made anew from the grammar and kept there."""

from __future__ import annotations

import hashlib
import os
import sys
import tempfile
from pathlib import Path

from rigc.files.cache import cache_folder
from rigc.resources import folder
from rigc.syntax.parse import LARK_VERSION, Grammar


def grammar() -> Grammar:
    """The tables of `grammar/rig.lark`; a cache that can't be read or written costs time and nothing else."""
    text = (folder("grammar") / "rig.lark").read_text("utf-8")
    kept = _kept(text)
    if kept is not None:
        try:
            loaded = Grammar.load(kept.read_bytes())
        except OSError:
            loaded = None
        if loaded is not None:
            return loaded
    made = Grammar.build(text)
    if kept is not None:
        _keep(kept, made.save())
    return made


def _kept(text: str) -> Path | None:
    where = cache_folder()
    if where is None:
        return None
    made_of = "\n".join((text, LARK_VERSION, sys.version))
    return where / f"grammar-{hashlib.sha256(made_of.encode()).hexdigest()[:16]}.tables"


def _keep(path: Path, tables: bytes) -> None:
    try:
        handle, temporary = tempfile.mkstemp(dir=path.parent)
    except OSError:
        return
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(tables)
        Path(temporary).replace(path)
    except OSError:
        Path(temporary).unlink(missing_ok=True)
