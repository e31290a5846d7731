"""Makes `rigc/syntax/states.txt` and `templates/ready/` when rigc is built or installed: what reading goes by, without which the first run
takes a second more, and our templates as code, which each run would make anew."""

from __future__ import annotations

import sys
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface


class States(BuildHookInterface[Any]):
    """Asks the package that is being built for it, before its files are gathered."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:  # noqa: ARG002
        """Writes the files into the source tree; a checkout does not keep them."""
        sys.path.insert(0, self.root)
        from rigc.files.reader import STATES, shipped_states
        from rigc.output.ready import READY
        from rigc.output.templates import made_ready

        STATES.write_text(shipped_states(), "ascii")
        READY.mkdir(exist_ok=True)
        for name, text in made_ready().items():
            (READY / name).write_text(text, "utf-8")
