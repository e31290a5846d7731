"""Two revisions given as texts -> what the compiler makes of the later one, which follows the earlier one."""

from __future__ import annotations

import re

from cases import READER, ROOT, results_of

from rigc.analysis.results import Results
from rigc.compile import Compiled, compile_rig
from rigc.files.disk import Disk
from rigc.loader import Loader
from rigc.source import Source

LONG_HAUL = (ROOT / "examples/long-haul/board.rig").read_text("utf-8")
EXAMPLE_D = (ROOT / "examples/long-haul-d/board.rig").read_text("utf-8")
LONG_HAUL_D = re.sub(
    r"^  (?:follows|change) [^\n]*\n|^# -+ the board of revision C.*", "", EXAMPLE_D, flags=re.MULTILINE | re.DOTALL
)
"""The design of revision D alone: what the example says of the board that was built, and of its changes, is left out."""


def compiled_after(old: str, new: str, head: str = "") -> Compiled:
    """Both texts stand beside the examples; `head` are lines more for the later rig block, `{` and all else stays."""
    return compile_rig(_beside(old, new, head), "after.rig", READER)


def _beside(old: str, new: str, head: str) -> Loader:
    letter = re.search(r"^  revision (\w+)", old, re.MULTILINE)
    assert letter is not None
    follows = f'\\g<0>\n  follows {letter[1]} "before.rig"\n{head}'
    texts = {"before.rig": old, "after.rig": re.sub(r"^  revision .*$", follows, new, count=1, flags=re.MULTILINE)}
    disk = Disk(ROOT / "examples/long-haul/after.rig", root=ROOT)

    def load(name: str) -> Source:
        return Source(name, texts[name]) if name in texts else disk(name)

    return load


def results_after(old: str, new: str, head: str = "") -> Results:
    """What follows from the later rig; both texts must be free of errors in names and quantities."""
    return results_of(_beside(old, new, head), "after.rig")
